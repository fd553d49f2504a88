// What is read off the weekly pass about cash: the lowest point, the need, the buffer, the way back. Each leads to the
// flows that made it, and those to their weeks and documents.
// Worked figure: opening 36,000 + chains pay 0 − deposits 30,000 − slotting 18,300 = −12,300 in week 9.
import { type Decimal, dec } from '../money/decimal.ts';
import { FLOW_NAMES } from '../rollout/types.ts';
import { daysFigure } from './days.ts';
import { BALANCE_WORDS, FLOW_WORDS } from './flow-words.ts';
import { flowToLow, passOf, sumSeries } from './runs.ts';
import { thresholdLine } from './threshold.ts';
import type { CashFigure, ExplanationLine, Run } from './types.ts';
import { unitsFigure } from './units.ts';
import {
  amountOf,
  comingTo,
  type Draft,
  exactMoney,
  line,
  moneyPart,
  part,
  type Scene,
  sumFormula,
  typed,
} from './write.ts';

export function cashFigure(scene: Scene, figure: CashFigure): Draft {
  switch (figure) {
    case 'lowestCash':
      return lowestCash(scene);
    case 'cashNeed':
      return cashNeed(scene);
    case 'depthFromZero':
      return depthFromZero(scene);
    case 'bufferAmount':
      return buffer(scene);
    case 'backAboveOpeningWeek':
      return backAbove(scene);
    case 'endCash':
      return endCash(scene);
    case 'daysInventory':
    case 'daysReceivable':
    case 'daysPayable':
    case 'cashCycleDays':
      return daysFigure(scene, figure);
    default:
      return unitsFigure(scene, figure);
  }
}

/** Cash on the first day: typed, or counted as zero while it isn't known. */
export function openingCash(scene: Scene, run: Run): ExplanationLine {
  const known = scene.plan.business.openingCashAmount !== null;
  const base = moneyPart(scene, passOf(scene, run).openingCash, {
    label: 'Cash on the first day',
    reason: known ? '' : 'Not entered: counted as zero',
    owner: 'ours',
  });
  return typed(scene, 'business/openingCashAmount', base);
}

/** Opening cash and every flow up to the low of a week; `sign` −1 turns them over, for a need. */
function linesToLow(scene: Scene, run: Run, week: number, sign: 1 | -1): ExplanationLine[] {
  const pass = passOf(scene, run);
  return FLOW_NAMES.flatMap((flow) => {
    const { amount, toWeek } = flowToLow(pass, flow, week);
    if (amount === 0) return [];
    const { label, owner } = FLOW_WORDS[flow];
    const reason = toWeek === 0 ? 'In week 0' : `In weeks 0 to ${toWeek}`;
    return [
      moneyPart(scene, sign * amount, {
        label,
        reason,
        owner,
        explains: { of: 'flow', run, flow, fromWeek: 0, toWeek },
      }),
    ];
  });
}

function lowestCash(scene: Scene): Draft {
  const { lowestCash: lowest, lowestWeek, floorNotSeen } = scene.results.reading;
  const lines = [openingCash(scene, 'plan'), ...linesToLow(scene, 'plan', lowestWeek, 1)];
  return {
    title: `Lowest cash, ${scene.say.week(lowestWeek)}`,
    value: scene.say.money(lowest),
    exact: amountOf(scene, lowest).toFixed(),
    meaning: 'The deepest point of cash within any week, with the funding the plan counts on.',
    formula: sumFormula(scene, lines, amountOf(scene, lowest)),
    lines,
    caution: floorNotSeen ? 'The low falls in the last four weeks: the floor is not seen.' : null,
  };
}

function cashNeed(scene: Scene): Draft {
  const { cashNeed: need, cashNeedWeek } = scene.results.reading;
  const base = {
    title: cashNeedWeek === null ? 'Cash need' : `Cash need, ${scene.say.week(cashNeedWeek)}`,
    value: scene.say.money(need),
    exact: amountOf(scene, need).toFixed(),
    meaning:
      'What has to be found beside our own cash so that the plan never runs out: new funding is not counted.',
    caution: null,
  };
  const week = cashNeedWeek ?? lowWeek(scene);
  const low = passOf(scene, 'unfunded').low[week] ?? 0;
  const opening = openingCash(scene, 'unfunded');
  if (cashNeedWeek === null) {
    const lines = [opening, ...linesToLow(scene, 'unfunded', week, 1)].map((each) => ({
      ...each,
      adds: null,
    }));
    const formula = `lowest is ${exactMoney(scene, low)} in ${scene.say.week(week)}: nothing is short`;
    return { ...base, formula, lines };
  }
  const turned = part(scene, dec(opening.adds ?? '0').negated(), opening);
  const lines = [{ ...opening, ...pick(turned) }, ...linesToLow(scene, 'unfunded', week, -1)];
  return { ...base, formula: sumFormula(scene, lines, amountOf(scene, need)), lines };
}

function pick({ value, adds }: ExplanationLine): Pick<ExplanationLine, 'value' | 'adds'> {
  return { value, adds };
}

/** First week with the lowest cash, without new funding. */
function lowWeek(scene: Scene): number {
  const { low } = passOf(scene, 'unfunded');
  return low.reduce((lowest, cash, week) => (cash < (low[lowest] ?? 0) ? week : lowest), 0);
}

function depthFromZero(scene: Scene): Draft {
  const { depthFromZero: depth } = scene.results.reading;
  const lines = linesToLow(scene, 'unfunded', lowWeek(scene), -1);
  return {
    title: 'Depth from zero',
    value: scene.say.money(depth),
    exact: amountOf(scene, depth).toFixed(),
    meaning: 'How deep the hole is that the plan digs, were it to start with no cash and no new funding.',
    formula:
      lines.length === 0
        ? 'nothing is paid out before money comes in'
        : sumFormula(scene, lines, amountOf(scene, depth)),
    lines: [...lines, { ...openingCash(scene, 'unfunded'), adds: null, reason: 'Left out of this figure' }],
    caution: null,
  };
}

/** Each outgoing flow's mean week, times the buffer's weeks. */
function buffer(scene: Scene): Draft {
  const { plan, results, say } = scene;
  const { pass } = results;
  const weeks = plan.thresholds.cashBufferWeeks;
  const total = amountOf(scene, results.reading.bufferAmount);
  const parts = FLOW_NAMES.flatMap((flow) => {
    const out = pass.flows[flow].reduce((sum, amount) => sum - Math.min(0, amount), 0);
    if (out === 0) return [];
    const { label, owner } = FLOW_WORDS[flow];
    return [
      moneyPart(scene, Math.round((weeks * out) / pass.weeks), {
        label,
        reason: `${say.count(weeks)} weeks of ${exactMoney(scene, out)} over ${say.count(pass.weeks)} weeks`,
        owner,
        explains: { of: 'flow', run: 'plan', flow, fromWeek: 0, toWeek: pass.weeks - 1 },
      }),
    ];
  });
  const out = FLOW_NAMES.reduce((sum, flow) => sum - outgoing(pass.flows[flow]), 0);
  const lines = comingTo(scene, total, parts, 'Lines are rounded one by one');
  return {
    title: 'Cash buffer',
    value: say.money(results.reading.bufferAmount),
    exact: total.toFixed(),
    meaning: 'What cash should not fall below: so many weeks of mean outgoings.',
    formula: `${say.count(weeks)} × ${exactMoney(scene, out)} paid out ÷ ${say.count(pass.weeks)} weeks = ${exactMoney(scene, results.reading.bufferAmount)}`,
    lines: [
      ...lines,
      thresholdLine(scene, 'cashBufferWeeks'),
      typed(scene, 'horizonWeeks', { label: 'Weeks of the plan', value: say.count(plan.horizonWeeks) }),
    ],
    caution: null,
  };
}

function outgoing(series: Float64Array): number {
  return series.reduce((sum, amount) => sum + Math.min(0, amount), 0);
}

function backAbove(scene: Scene): Draft {
  const { say, results } = scene;
  const week = results.reading.backAboveOpeningWeek;
  const pass = passOf(scene, 'unfunded');
  const opening = { ...openingCash(scene, 'unfunded'), adds: null };
  const cashOf = (at: number) =>
    line({
      label: `Cash, ${say.week(at)}`,
      value: exactMoney(scene, pass.balances.cash[at] ?? 0),
      owner: 'ours',
      explains: { of: 'week', run: 'unfunded', week: at, figure: 'cash' },
    });
  const last = pass.weeks - 1;
  const shown = week === null ? [last] : [...(week > 0 ? [week - 1] : []), week];
  return {
    title: 'Back above the opening',
    value: week === null ? `not within ${say.count(pass.weeks)} weeks` : say.week(week),
    exact: week === null ? null : String(week),
    meaning:
      'The first week from which cash stays at or above what it was on the first day, without new funding.',
    formula:
      week === null
        ? `at the end cash is ${exactMoney(scene, pass.balances.cash[last] ?? 0)}, still below ${opening.value}`
        : `from ${say.week(week)} on, week-end cash never again falls below ${opening.value}`,
    lines: [opening, ...shown.map(cashOf)],
    caution: null,
  };
}

function endCash(scene: Scene): Draft {
  const { pass, reading } = scene.results;
  const last = pass.weeks - 1;
  const total: Decimal = amountOf(scene, reading.endCash);
  const flows = FLOW_NAMES.flatMap((flow) => {
    const amount = sumSeries(pass.flows[flow], 0, last);
    if (amount === 0) return [];
    const { label, owner } = FLOW_WORDS[flow];
    const explains = { of: 'flow', run: 'plan', flow, fromWeek: 0, toWeek: last } as const;
    return [moneyPart(scene, amount, { label, owner, explains })];
  });
  const lines = [openingCash(scene, 'plan'), ...flows];
  return {
    title: `Cash at the end, ${scene.say.week(last)}`,
    value: scene.say.money(reading.endCash),
    exact: total.toFixed(),
    meaning: BALANCE_WORDS.cash.meaning,
    formula: sumFormula(scene, lines, total),
    lines,
    caution: null,
  };
}
