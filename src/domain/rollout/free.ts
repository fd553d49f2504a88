// The pass without limits: every order ships the week after it is placed. It gives U, the units of each item shippable
// in each week, which purchase orders are planned on, and the shelf stock the retailer's side is judged by.
// Worked figure: a fill of 480 ordered at the end of week 5 is 480 units shippable in week 6.
import type { Cell, Cohort, Compiled } from './compiled.ts';
import { takeReturns } from './returns.ts';
import { newCells, plus } from './state.ts';
import { arrive, type CellWeek, closingUnits, demandOfWeek, fillOrder, reorder } from './stores.ts';

export interface FreeRun {
  /** [item][week], to the compiled reach. */
  shippable: Float64Array[];
  /** By listing: shelf stock summed over its cells at the 52 week-ends from its first opening, and the door-weeks. */
  shelf: { stock: number; doorWeeks: number }[];
}

export function freeRun(compiled: Compiled): FreeRun {
  const { hot, reach } = compiled;
  const run: FreeRun = {
    shippable: compiled.items.map(() => new Float64Array(reach + 1)),
    shelf: compiled.listings.map(() => ({ stock: 0, doorWeeks: 0 })),
  };
  const firstWeeks = compiled.accounts.map((account) =>
    Math.max(0, Math.min(...account.cohorts.map((c) => compiled.cohorts[c]?.openWeek ?? 0))),
  );
  const cells = newCells(compiled, reach);
  const begins = Int32Array.from(compiled.cells, (cell) => cell.openWeek - cell.transitWeeks - 1);
  const at: CellWeek = { compiled, cells, index: 0, week: 0 };
  for (let week = -1; week < reach; week++) {
    at.week = week;
    for (let index = 0; index < hot.count; index++) {
      const begin = begins[index] ?? 0;
      if (week < begin) continue;
      at.index = index;
      if (week >= 0) runWeek(at, run, week - (firstWeeks[hot.account[index] ?? 0] ?? 0));
      if (week === begin) plus(cells.open, index, fillOrder(compiled, compiled.cells[index] as Cell));
      if (week >= 0 && week > begin) plus(cells.open, index, reorder(at));
    }
  }
  return run;
}

/** One cell's week up to the end of sales; `sinceFirst` counts weeks from the account's first opening. */
function runWeek(at: CellWeek, run: FreeRun, sinceFirst: number): void {
  const { compiled, cells, index, week } = at;
  const { hot } = compiled;
  const place = week * hot.count + index;
  const doors = hot.doors[place] ?? 0;
  const cohort = compiled.cohorts[compiled.cells[index]?.cohort ?? 0] as Cohort;
  if (cohort.closes[week] === 1) plus(cells.stock, index, -closingUnits(cohort, cells.stock[index] ?? 0, week));
  shipOpen(at, run.shippable[hot.item[index] ?? 0] as Float64Array);
  const units = cells.arriving[place] ?? 0;
  if (units > 0) arrive(at, doors > 0, units);
  const returns = compiled.listings[hot.listing[index] ?? 0]?.returns;
  if (returns) takeReturns(at, returns);
  plus(cells.stock, index, -Math.min(demandOfWeek(at), cells.stock[index] ?? 0));
  if (sinceFirst < 0 || sinceFirst >= 52) return;
  const shelf = run.shelf[hot.listing[index] ?? 0] as FreeRun['shelf'][number];
  shelf.stock += cells.stock[index] ?? 0;
  shelf.doorWeeks += doors;
}

/** Ship all that is open; with no transit it arrives in the same week. */
function shipOpen(at: CellWeek, shippable: Float64Array): void {
  const { cells, index, week, compiled } = at;
  const units = cells.open[index] ?? 0;
  if (units === 0) return;
  plus(shippable, week, units);
  cells.open[index] = 0;
  plus(cells.transit, index, units);
  plus(cells.arriving, (week + (compiled.hot.transitWeeks[index] ?? 0)) * cells.count + index, units);
}
