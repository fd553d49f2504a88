// The cash of every week in rows: what it opens with, what comes in and goes out, the lowest moment, what it closes with.
// Worked figure: opens 36,000, 4,000 in, 9,000 out: lowest 27,000 since money goes out first, closes 31,000.
import { FLOW_NAMES, type FlowName, type PassResult } from '../../domain/rollout/types.ts';
import type { TableColumn, TableRow } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

export interface WeekCash {
  opening: number;
  cameIn: number;
  wentOut: number;
  low: number;
  close: number;
  /** Flows that aren't zero, in the order of the model. */
  flows: readonly { name: FlowName; amount: number }[];
}

/** One week's cash, in whole minor units. */
export function weekCash(pass: PassResult, week: number): WeekCash {
  const flows = FLOW_NAMES.map((name) => ({ name, amount: pass.flows[name][week] ?? 0 })).filter(
    ({ amount }) => amount !== 0,
  );
  const sum = (some: typeof flows) => some.reduce((total, { amount }) => total + amount, 0);
  return {
    opening: week === 0 ? pass.openingCash : (pass.balances.cash[week - 1] ?? 0),
    cameIn: sum(flows.filter(({ amount }) => amount > 0)),
    wentOut: sum(flows.filter(({ amount }) => amount < 0)),
    low: pass.low[week] ?? 0,
    close: pass.balances.cash[week] ?? 0,
    flows,
  };
}

export const WEEK_COLUMNS: readonly TableColumn[] = [
  { key: 'week', label: 'Week', kind: 'text' },
  { key: 'opening', label: 'Opens', kind: 'number' },
  { key: 'in', label: 'In', kind: 'number' },
  { key: 'out', label: 'Out', kind: 'number' },
  { key: 'low', label: 'Lowest', kind: 'number' },
  { key: 'close', label: 'Closes', kind: 'number' },
];

/** The lowest week stands out. */
export function weekRows(pass: PassResult, lowestWeek: number, say: ScreenSay): TableRow[] {
  return Array.from({ length: pass.weeks }, (_, week) => {
    const { opening, cameIn, wentOut, low, close } = weekCash(pass, week);
    return {
      id: String(week),
      strong: week === lowestWeek,
      cells: [say.week(week), ...[opening, cameIn, wentOut, low, close].map(say.moneyExact)],
    };
  });
}
