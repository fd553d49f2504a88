// The store side of a week: doors closing (step 2), deliveries arriving (step 4), shoppers buying (step 7), stores
// ordering (step 8). Used by the pass with limits and by the pass without (free.ts).
// Worked figure: target 480, stock 300, in transit 60, 10 doors, case of 12: (120 − 9 x 11 / 2) / 12 = 5.9, five cases.

import { type CellStates, plus } from './cell-states.ts';
import type { Cell, Cohort, Compiled, CompiledAccount, HotCells } from './compiled.ts';

/** One cell in one week of a run. */
export interface CellWeek {
  compiled: Compiled;
  cells: CellStates;
  index: number;
  week: number;
}

/** Units that leave the shelves because doors close this week: all when none is left, else their share, rounded down. */
export function closingUnits(cohort: Cohort, stock: number, week: number): number {
  if (!isClosing(cohort, week)) return 0;
  const before = week === 0 ? cohort.doorsAtOpening : (cohort.doors[week - 1] ?? 0);
  const now = cohort.doors[week] ?? 0;
  if (now === 0) return stock;
  return Math.floor((stock * (before - now)) / before);
}

/** Puts the week's arrivals on the shelf. Returns the units that arrived at closed doors instead. */
export function arrive(cells: CellStates, index: number, units: number, open: boolean): number {
  cells.transit[index] = (cells.transit[index] ?? 0) - units;
  if (!open) return units;
  cells.stock[index] = (cells.stock[index] ?? 0) + units;
  return 0;
}

/** Whether the guarantee of a cell is settled this week: at its review, or with its last door. */
export function isReviewed(cell: Cell, cohort: Cohort, account: CompiledAccount, week: number): boolean {
  if (account.sale !== 'guaranteed') return false;
  return week === cell.openWeek + account.reviewWeeks || isLastClosing(cohort, week);
}

/** Whether doors of a cohort close this week. */
function isClosing({ doors, closingWeeks }: Cohort, week: number): boolean {
  return week === 0 ? closingWeeks[0] === 0 : (doors[week] ?? 0) < (doors[week - 1] ?? 0);
}

/** Whether the last doors of a cohort close this week. */
export function isLastClosing(cohort: Cohort, week: number): boolean {
  return cohort.doors[week] === 0 && isClosing(cohort, week);
}

/** Of paid units shipped under guarantee, those held until the review; fractions are carried. */
export function holdUnits(
  at: { cells: CellStates; index: number; cell: Cell; terms: CompiledAccount; week: number },
  paid: number,
): number {
  const { cells, index, cell, terms, week } = at;
  if (week + cell.transitWeeks >= cell.openWeek + terms.reviewWeeks) return 0;
  plus(cells.heldCarry, index, paid * terms.expectedReturnRate);
  const held = Math.min(paid, Math.floor((cells.heldCarry[index] ?? 0) / 1_000_000));
  plus(cells.heldCarry, index, -held * 1_000_000);
  plus(cells.heldUnits, index, held);
  return held;
}

/** The review: of the units held, those that still stand on the shelf leave it. */
export function takeHeld(cells: CellStates, index: number): number {
  const back = Math.min(cells.heldUnits[index] ?? 0, cells.stock[index] ?? 0);
  plus(cells.stock, index, -back);
  cells.heldUnits[index] = 0;
  return back;
}

/** Pay-on-scan: whole units gone off the shelf unscanned; fractions, and what the shelf lacks, are carried. */
export function takeShrink(cells: CellStates, index: number, sold: number, rateMillionths: number): number {
  if (rateMillionths === 0) return 0;
  plus(cells.shrinkCarry, index, sold * rateMillionths);
  const units = Math.min(cells.stock[index] ?? 0, Math.floor((cells.shrinkCarry[index] ?? 0) / 1_000_000));
  plus(cells.shrinkCarry, index, -units * 1_000_000);
  plus(cells.stock, index, -units);
  return units;
}

// The next two run once a cell and week, tens of thousands of times a plan: plain arguments, for speed.

/** Units the cohort orders at the end of a week to reach a target; 0 when none or when its doors will be gone. */
export function reorder(
  hot: HotCells,
  cells: CellStates,
  index: number,
  week: number,
  target: number,
): number {
  const gap = target - (cells.stock[index] ?? 0) - (cells.transit[index] ?? 0) - (cells.open[index] ?? 0);
  const multiple = hot.multiple[index] ?? 1;
  if (gap < multiple) return 0;
  const place = (hot.doorsFrom[index] ?? 0) + week;
  // Ordered now, shipped next week, there transit weeks later: nothing is ordered for closed doors.
  if (hot.doors[place + 1 + (hot.transitWeeks[index] ?? 0)] === 0) return 0;
  return unitsOrdered(gap, hot.doors[place] ?? 0, multiple);
}

/** Full cases (layers, pallets) a door at a time for what is missing in so many doors; 0 when none is open. */
export function unitsOrdered(gap: number, doors: number, multiple: number): number {
  const beyondRounding = gap - ((doors - 1) * (multiple - 1)) / 2;
  if (beyondRounding < multiple || doors === 0) return 0;
  return Math.floor(beyondRounding / multiple) * multiple;
}

/** The opening fill is ordered so that it arrives in the opening week, when it does open. */
export function fillOrder(compiled: Compiled, cell: Cell): number {
  const cohort = compiled.cohorts[cell.cohort] as Cohort;
  return (cohort.doors[cell.openWeek] ?? 0) > 0 ? cell.fillUnits : 0;
}
