// A balance at the end of a week: what it was the week before, and every posting of the week that moved it. Cash goes by
// its flows, each of which has its own documents.
// Worked figure: receivables 4,200.00 + invoices 1,248.00 − paid by the chain 1,223.04 − taken off 24.96 = 4,200.00.

import { type BalanceName, FLOW_NAMES, type FlowName } from '../rollout/types.ts';
import { effectOf } from '../statements/ledger.ts';
import { openingCash } from './cash.ts';
import { BALANCE_WORDS, FLOW_WORDS } from './flow-words.ts';
import { entriesOf, entryLines } from './posting-lines.ts';
import { countsToLow, journalOf, passOf } from './runs.ts';
import type { ExplanationLine, FigureKey, Run } from './types.ts';
import {
  amountOf,
  type Draft,
  line,
  moneyPart,
  part,
  type Scene,
  sumFormula,
  sumOf,
  typed,
} from './write.ts';

type WeekKey = Extract<FigureKey, { of: 'week' }>;

/** Null when the week lies beyond the plan's horizon. */
export function weekFigure(scene: Scene, key: WeekKey): Draft | null {
  const { run, week, figure } = key;
  const pass = passOf(scene, run);
  if (week >= pass.weeks) return null;
  const amount = (figure === 'low' ? pass.low : pass.balances[figure])[week] ?? 0;
  const total = amountOf(scene, amount);
  const { label, meaning } = BALANCE_WORDS[figure];
  const lines = linesOf(scene, key, total);
  return {
    title: `${label}, ${scene.say.week(week)}`,
    value: scene.say.money(amount),
    exact: total.toFixed(),
    meaning,
    formula: sumFormula(scene, lines, total),
    lines,
    caution: run === 'unfunded' ? 'On the plan without the new funding it counts on.' : null,
  };
}

function linesOf(
  scene: Scene,
  { run, week, figure }: WeekKey,
  total: ReturnType<typeof amountOf>,
): ExplanationLine[] {
  if (figure === 'low' || figure === 'cash') {
    return [...cashBefore(scene, run, week), ...flowLines(scene, run, week, figure)];
  }
  const at = { scene, compiled: scene.results.compiled, week, journal: journalOf(scene, run) };
  const moved = entriesOf(at.journal, week, (event) => effectOf(event, figure) !== 0).flatMap((entry) =>
    entryLines(at, entry, effectOf(entry.event, figure) as 1 | -1),
  );
  if (week > 0) return [before(scene, run, week, figure), ...moved];
  const opening = total.minus(sumOf(moved));
  if (opening.isZero()) return moved;
  const label = `${BALANCE_WORDS[figure].label} on the first day`;
  return [typed(scene, openingPath(scene, figure), part(scene, opening, { label })), ...moved];
}

function before(scene: Scene, run: Run, week: number, figure: BalanceName): ExplanationLine {
  return moneyPart(scene, passOf(scene, run).balances[figure][week - 1] ?? 0, {
    label: `${BALANCE_WORDS[figure].label}, ${scene.say.week(week - 1)}`,
    owner: BALANCE_WORDS[figure].owner,
    explains: { of: 'week', run, week: week - 1, figure },
  });
}

function cashBefore(scene: Scene, run: Run, week: number): ExplanationLine[] {
  return week === 0 ? [openingCash(scene, run)] : [before(scene, run, week, 'cash')];
}

function flowLines(scene: Scene, run: Run, week: number, figure: 'low' | 'cash'): ExplanationLine[] {
  const pass = passOf(scene, run);
  const counts = (flow: FlowName, amount: number) => figure === 'cash' || countsToLow(flow, amount);
  return FLOW_NAMES.flatMap((flow) => {
    const amount = pass.flows[flow][week] ?? 0;
    if (amount === 0) return [];
    const { label, owner } = FLOW_WORDS[flow];
    const explains = { of: 'flow', run, flow, fromWeek: week, toWeek: week } as const;
    const made = moneyPart(scene, amount, { label, owner, explains });
    if (counts(flow, amount)) return [made];
    return [line({ ...made, adds: null, reason: 'Comes in after the week’s payments: not counted here' })];
  });
}

/** Where the opening books of a balance are typed. */
function openingPath({ plan }: Scene, figure: Exclude<BalanceName, 'cash'>): string {
  const [item] = plan.items;
  switch (figure) {
    case 'stock':
      return plan.items.length === 1 && item ? `items/${item.id}/opening/stockAmount` : 'items';
    case 'deposits':
      return plan.items.length === 1 && item ? `items/${item.id}/opening/onOrder` : 'items';
    case 'paidIn':
      return 'business/openingBooks/paidInAmount';
    case 'retained':
      return 'business/openingBooks';
    default:
      return `business/openingBooks/${figure}`;
  }
}
