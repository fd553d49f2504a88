// How long money is bound: days of stock, of receivables and of payables over the last 13 weeks, and the cash cycle they
// make. Worked figure: 40 days of stock + 41 of receivables − 20 of payables = 61 days.
import { nearest } from '../deals/curve.ts';
import { countLine } from './inputs.ts';
import { sumSeries } from './runs.ts';
import type { CashFigure, ExplanationLine } from './types.ts';
import { comingTo, type Draft, exactMoney, exactNumber, line, part, type Scene, typed } from './write.ts';

type DaysFigure = 'daysInventory' | 'daysReceivable' | 'daysPayable' | 'cashCycleDays';
type OneDays = Exclude<DaysFigure, 'cashCycleDays'>;

const LAST_WEEKS = 13;

const WORDS: Record<DaysFigure, { name: string; meaning: string }> = {
  daysInventory: { name: 'Days of stock', meaning: 'How many days of cost of sales stand in stock (DIO).' },
  daysReceivable: { name: 'Days of receivables', meaning: 'How many days of sales wait to be paid (DSO).' },
  daysPayable: {
    name: 'Days of payables',
    meaning: 'How many days of cost of sales suppliers wait for (DPO).',
  },
  cashCycleDays: {
    name: 'Cash cycle, days',
    meaning: 'Days between paying for goods and being paid for them: stock + receivables − payables.',
  },
};

export function daysFigure(scene: Scene, figure: DaysFigure): Draft {
  return figure === 'cashCycleDays' ? cycle(scene) : oneFigure(scene, figure);
}

const BALANCES = {
  daysInventory: 'stock',
  daysReceivable: 'receivables',
  daysPayable: 'payables',
} as const satisfies Record<OneDays, string>;

function oneFigure(scene: Scene, figure: OneDays): Draft {
  const { pass, reading } = scene.results;
  const days = reading[figure];
  const from = Math.max(0, pass.weeks - LAST_WEEKS);
  const weeks = pass.weeks - from;
  const balance = BALANCES[figure];
  const mean = Math.round(sumSeries(pass.balances[balance], from, pass.weeks - 1) / weeks);
  const isSales = figure === 'daysReceivable';
  const base = isSales ? pass.profit.invoiced : pass.profit.costOfSales;
  const over = sumSeries(base, from, pass.weeks - 1) * (isSales ? 1 : -1);
  const { name, meaning } = WORDS[figure];
  const quotient = `${exactMoney(scene, mean)} × ${7 * weeks} days ÷ ${exactMoney(scene, over)} ${isSales ? 'invoiced' : 'cost of sales'}`;
  return {
    title: name,
    value: days === null ? 'not known: nothing sold in the last 13 weeks' : scene.say.number(days),
    exact: days === null ? null : nearest(days, 4).toFixed(),
    meaning,
    formula: days === null ? quotient : `${quotient} = ${exactNumber(scene, nearest(days, 2))}`,
    lines: [
      line({
        label: `${name.replace('Days of ', 'Mean ')}, last ${weeks} week-ends`,
        value: exactMoney(scene, mean),
        explains: { of: 'week', run: 'plan', week: pass.weeks - 1, figure: balance },
      }),
      ...termLines(scene, figure),
    ],
    caution: `Over the last ${weeks} weeks of the plan; deposits paid ahead are not in it.`,
  };
}

/** The fields that set how long money is bound. */
function termLines(scene: Scene, figure: OneDays): ExplanationLine[] {
  const { items, accounts } = scene.plan;
  if (figure === 'daysReceivable') {
    return accounts.flatMap(({ id, name, terms }) => [
      countLine(scene, `accounts/${id}/terms/paymentDays`, `Payment days, ${name}`, terms.paymentDays),
      countLine(scene, `accounts/${id}/terms/latenessDays`, `Days late, ${name}`, terms.latenessDays),
    ]);
  }
  if (figure === 'daysPayable') {
    return items.map(({ id, name, supply }) =>
      countLine(scene, `items/${id}/supply/supplierDays`, `Supplier’s days, ${name}`, supply.supplierDays),
    );
  }
  return items.flatMap(({ id, name, supply }) => [
    countLine(scene, `items/${id}/supply/leadWeeks`, `Weeks to make, ${name}`, supply.leadWeeks),
    countLine(scene, `items/${id}/supply/coverWeeks`, `Weeks of cover, ${name}`, supply.coverWeeks),
    typed(scene, `items/${id}/supply/minimumOrderUnits`, {
      label: `Minimum order, ${name}`,
      value: scene.say.count(supply.minimumOrderUnits),
    }),
  ]);
}

function cycle(scene: Scene): Draft {
  const { reading } = scene.results;
  const days = reading.cashCycleDays;
  const shown = (figure: OneDays & CashFigure, sign: 1 | -1) => {
    const own = reading[figure];
    const from = { label: WORDS[figure].name, explains: { of: 'cash', figure } as const };
    if (own === null) return line({ ...from, value: 'not known' });
    const counted = days === null ? { adds: null } : {};
    return { ...part(scene, nearest(sign * own, 4), from), ...counted };
  };
  const parts = [shown('daysInventory', 1), shown('daysReceivable', 1), shown('daysPayable', -1)];
  const total = days === null ? null : nearest(days, 4);
  return {
    title: WORDS.cashCycleDays.name,
    value: days === null ? 'not known: nothing sold in the last 13 weeks' : scene.say.number(days),
    exact: total === null ? null : total.toFixed(),
    meaning: WORDS.cashCycleDays.meaning,
    formula:
      total === null
        ? 'stock + receivables − payables'
        : `stock + receivables − payables = ${exactNumber(scene, total)}`,
    lines: total === null ? parts : comingTo(scene, total, parts, 'Lines are rounded to 4 decimals'),
    caution: null,
  };
}
