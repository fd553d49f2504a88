// The pass without limits: every order ships the week after it is placed. It gives U, the units of each item shippable
// in each week, which purchase orders are planned on, and the shelf stock the retailer's side is judged by.
// Worked figure: a fill of 480 ordered at the end of week 5 is 480 units shippable in week 6.

import { newCells, plus } from './cell-states.ts';
import type { Cell, Cohort, Compiled, CompiledAccount } from './compiled.ts';
import { takeReturns } from './returns.ts';
import {
  arrive,
  type CellWeek,
  closingUnits,
  demandOfWeek,
  fillOrder,
  holdUnits,
  isReviewed,
  reorder,
  takeHeld,
  takeShrink,
} from './stores.ts';

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
  const cells = newCells(compiled, reach);
  const at: CellWeek = { compiled, cells, index: 0, week: 0 };
  const firstWeeks = compiled.accounts.map((account) =>
    Math.max(0, Math.min(...account.cohorts.map((c) => compiled.cohorts[c]?.openWeek ?? 0))),
  );
  for (let index = 0; index < hot.count; index++) {
    const cell = compiled.cells[index] as Cell;
    const begin = cell.openWeek - cell.transitWeeks - 1;
    at.index = index;
    if (begin >= -1 && begin < reach) plus(cells.open, index, fillOrder(compiled, cell));
    const first = firstWeeks[cell.account] ?? 0;
    const shelf = run.shelf[cell.listing] as FreeRun['shelf'][number];
    for (let week = Math.max(0, begin + 1); week < reach; week++) {
      at.week = week;
      runWeek(at, run.shippable[cell.item] as Float64Array);
      if (week < first || week >= first + 52) continue;
      shelf.stock += cells.stock[index] ?? 0;
      shelf.doorWeeks += hot.doors[week * hot.count + index] ?? 0;
    }
  }
  return run;
}

/** One cell's week: doors close, all that was ordered ships, arrives in its time, is bought, is ordered again. */
function runWeek(at: CellWeek, shippable: Float64Array): void {
  const { compiled, cells, index, week } = at;
  const { hot } = compiled;
  const place = week * hot.count + index;
  const cell = compiled.cells[index] as Cell;
  const cohort = compiled.cohorts[cell.cohort] as Cohort;
  const account = compiled.accounts[cell.account] as CompiledAccount;
  if (isReviewed(cell, cohort, account, week)) takeHeld(cells, index);
  if (cohort.closes[week] === 1)
    plus(cells.stock, index, -closingUnits(cohort, cells.stock[index] ?? 0, week));
  const shipped = cells.open[index] ?? 0;
  if (shipped > 0) {
    shippable[week] = (shippable[week] ?? 0) + shipped;
    cells.open[index] = 0;
    plus(cells.transit, index, shipped);
    plus(cells.arriving, (week + (hot.transitWeeks[index] ?? 0)) * cells.count + index, shipped);
    const free = Math.min(cells.freeLeft[index] ?? 0, shipped); // a fill is the first to leave
    plus(cells.freeLeft, index, -free);
    if (account.sale === 'guaranteed')
      holdUnits({ cells, index, cell, terms: account, week }, shipped - free);
  }
  const units = cells.arriving[place] ?? 0;
  if (units > 0) arrive(cells, index, units, (hot.doors[place] ?? 0) > 0);
  const returns = compiled.listings[hot.listing[index] ?? 0]?.returns;
  if (returns) takeReturns(at, returns);
  const stock = cells.stock[index] ?? 0;
  const sold = Math.min(demandOfWeek(hot, cells, index, place), stock);
  cells.stock[index] = stock - sold;
  takeShrink(cells, index, sold, account.shrinkRate);
  cells.open[index] = reorder(hot, cells, index, place);
}
