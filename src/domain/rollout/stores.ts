// The store side of a week: doors closing (step 2), deliveries arriving (step 4), shoppers buying (step 7), stores
// ordering (step 8). Used by the pass with limits and by the pass without (free.ts).
// Worked figure: target 480, stock 300, in transit 60, 10 doors, case of 12: (120 − 9 x 11 / 2) / 12 = 5.9, five cases.
import type { Cell, Cohort, Compiled } from './compiled.ts';
import type { CellStates } from './state.ts';

/** One cell in one week of a run. */
export interface CellWeek {
  compiled: Compiled;
  cells: CellStates;
  index: number;
  week: number;
}

/** Units that leave the shelves because doors close this week: all when none is left, else their share, rounded down. */
export function closingUnits(cohort: Cohort, stock: number, week: number): number {
  if (cohort.closes[week] !== 1) return 0;
  const before = cohort.doors[week - 1] ?? 0;
  const now = cohort.doors[week] ?? 0;
  if (now === 0) return stock;
  return Math.floor((stock * (before - now)) / before);
}

/** Puts the week's arrivals on the shelf. Returns the units that arrived at closed doors instead. */
export function arrive(at: CellWeek, open: boolean, units: number): number {
  const { cells, index } = at;
  cells.transit[index] = (cells.transit[index] ?? 0) - units;
  if (!open) return units;
  cells.stock[index] = (cells.stock[index] ?? 0) + units;
  return 0;
}

/** Shoppers: whole units wanted this week; the fraction is carried. */
export function demandOfWeek(at: CellWeek): number {
  const { compiled, cells, index, week } = at;
  const { hot } = compiled;
  const millionths = (hot.demand[week * hot.count + index] ?? 0) + (cells.demandCarry[index] ?? 0);
  if (millionths < 1_000_000) {
    cells.demandCarry[index] = millionths;
    return 0;
  }
  const demand = Math.floor(millionths / 1_000_000);
  cells.demandCarry[index] = millionths - demand * 1_000_000;
  return demand;
}

/** Units the cohort orders at the end of a week, in full cases a door at a time; 0 when none or when doors will be gone. */
export function reorder(at: CellWeek): number {
  const { compiled, cells, index, week } = at;
  const { hot } = compiled;
  const place = week * hot.count + index;
  const doors = hot.doors[place] ?? 0;
  if (doors === 0) return 0;
  const there = (cells.stock[index] ?? 0) + (cells.transit[index] ?? 0) + (cells.open[index] ?? 0);
  const gap = (hot.target[place] ?? 0) - there;
  const caseUnits = hot.caseUnits[index] ?? 1;
  const beyondRounding = gap - ((doors - 1) * (caseUnits - 1)) / 2;
  if (beyondRounding < caseUnits) return 0;
  // Ordered now, shipped next week, there transit weeks later: nothing is ordered for closed doors.
  const arrival = week + 1 + (hot.transitWeeks[index] ?? 0);
  if (arrival < compiled.reach && (hot.doors[arrival * hot.count + index] ?? 0) === 0) return 0;
  return Math.floor(beyondRounding / caseUnits) * caseUnits;
}

/** The opening fill is ordered so that it arrives in the opening week, when it does open. */
export function fillOrder(compiled: Compiled, cell: Cell): number {
  const cohort = compiled.cohorts[cell.cohort] as Cohort;
  const opens = cell.openWeek >= compiled.reach || (cohort.doors[cell.openWeek] ?? 0) > 0;
  return opens ? cell.fillUnits : 0;
}
