// The store side of a week: doors closing (step 2), deliveries arriving and returns leaving (step 4), shoppers buying
// (step 7), stores ordering (step 8). Used by the pass with limits and, cell by cell, by the pass without (free.ts).
// Worked figure: target 480, stock 300, in transit 60, 10 doors, case of 12: (120 − 9 x 11 / 2) / 12 = 5.9, five cases.
import type { Cell, Cohort } from './compiled.ts';
import type { CellState } from './state.ts';

/** Units that leave the shelves because doors close this week: all when none is left, else their share, rounded down. */
export function closingUnits(cohort: Cohort, cell: CellState, week: number): number {
  if (week === 0 || week <= cohort.openWeek) return 0;
  const before = cohort.doors[week - 1] ?? 0;
  const now = cohort.doors[week] ?? 0;
  if (now >= before) return 0;
  if (now === 0) return cell.stock;
  return Math.floor((cell.stock * (before - now)) / before);
}

/** Units arriving this week; put on the shelf when the cohort has doors, returned as lost to closed doors otherwise. */
export function arrive(cohort: Cohort, cell: CellState, week: number): { shelved: number; closed: number } {
  const units = cell.arriving[week] ?? 0;
  if (units === 0) return { shelved: 0, closed: 0 };
  cell.transit -= units;
  const open = (cohort.doors[week] ?? 0) > 0;
  if (!open) return { shelved: 0, closed: units };
  cell.stock += units;
  return { shelved: units, closed: 0 };
}

/** Shoppers: whole units wanted this week (the fraction carried), bought as far as stock in stores reaches. */
export function sell(cell: Cell, state: CellState, week: number): { demand: number; sold: number } {
  const millionths = (cell.demand[week] ?? 0) + state.demandCarry;
  const demand = Math.floor(millionths / 1_000_000);
  state.demandCarry = millionths - demand * 1_000_000;
  const sold = Math.min(demand, state.stock);
  state.stock -= sold;
  return { demand, sold };
}

/** Units the cohort orders at the end of a week, in full cases a door at a time; 0 when none or when a cut is known. */
export function reorder(args: { cell: Cell; cohort: Cohort; state: CellState; week: number }): number {
  const { cell, cohort, state, week } = args;
  const doors = cohort.doors[week] ?? 0;
  if (doors === 0 || week < cell.openWeek) return 0;
  // Ordered now, shipped next week, there transit weeks later: nothing is ordered for closed doors.
  if (closedBy(cohort, week + 1 + cell.transitWeeks)) return 0;
  const gap = (cell.target[week] ?? 0) - state.stock - state.transit - state.open;
  const cases = Math.floor((gap - ((doors - 1) * (cell.caseUnits - 1)) / 2) / cell.caseUnits);
  return cases > 0 ? cases * cell.caseUnits : 0;
}

/** The opening fill is ordered so that it arrives in the opening week, when it does open. */
export function fillOrder(cell: Cell, cohort: Cohort, week: number): number {
  if (cell.fillUnits === 0 || week !== cell.openWeek - cell.transitWeeks - 1) return 0;
  return closedBy(cohort, cell.openWeek) ? 0 : cell.fillUnits;
}

/** True when a planned cut has taken all doors by that week (the plan's reach counts as open). */
function closedBy(cohort: Cohort, week: number): boolean {
  return week < cohort.doors.length && (cohort.doors[week] ?? 0) === 0 && week >= cohort.openWeek;
}
