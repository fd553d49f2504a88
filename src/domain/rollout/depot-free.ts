// A listing served from a depot in the pass without limits: its cells share the depot's stock, so that they go through
// the weeks together. What the depot orders ships in full the week after; what it lacks its stores wait for.
// Worked figure: a depot that orders 240 at the end of week 5 makes 240 units shippable in week 6.
import { arrivalsFrom, arrivalsLater, type CellStates, plus } from './cell-states.ts';
import { isOrderWeek } from './cells.ts';
import type { Cell, Cohort, Compiled, CompiledAccount, CompiledDepot, CompiledListing } from './compiled.ts';
import { arriveAtDepot, orderOfDepot, shipFromDepot } from './depot.ts';
import { addOrder, dropOrdersOf, newQueue, type OrderQueue } from './queue.ts';
import { takeReturns } from './returns.ts';
import {
  arrive,
  type CellWeek,
  closingUnits,
  fillOrder,
  isLastClosing,
  reorder,
  takeShrink,
} from './stores.ts';
import type { Wants } from './wants.ts';

interface DepotRun extends CellWeek {
  depot: CompiledDepot;
  listing: CompiledListing;
  account: CompiledAccount;
  wants: Wants;
  queue: OrderQueue;
  /** Its cells: from the first up to, not including, the last. */
  first: number;
  until: number;
}

export interface DepotRunArgs {
  compiled: Compiled;
  cells: CellStates;
  wants: Wants;
  depot: CompiledDepot;
  /** Written: units shippable by week, and the shelf stock of the 52 weeks from the first opening. */
  shippable: Float64Array;
  shelf: { stock: number; doorWeeks: number };
  firstWeek: number;
}

export function runDepot(args: DepotRunArgs): void {
  const { compiled, cells, wants, depot, shippable, shelf, firstWeek } = args;
  const { firstOfListing } = compiled.hot;
  const run: DepotRun = {
    compiled,
    cells,
    wants,
    depot,
    listing: compiled.listings[depot.listing] as CompiledListing,
    account: compiled.accounts[depot.account] as CompiledAccount,
    queue: newQueue(),
    first: firstOfListing[depot.listing] ?? 0,
    until: firstOfListing[depot.listing + 1] ?? 0,
    index: 0,
    week: -1,
  };
  placeOrders(run);
  for (let week = 0; week < compiled.reach; week++) {
    run.week = week;
    closeDoors(run);
    receive(run, false);
    shippable[week] = (shippable[week] ?? 0) + shipToDepot(run);
    receive(run, true);
    sell(run);
    placeOrders(run);
    forget(run);
    if (week < firstWeek || week >= firstWeek + 52) continue;
    for (let index = run.first; index < run.until; index++) {
      shelf.stock += cells.stock[index] ?? 0;
      shelf.doorWeeks += cohortOf(run, index).doors[week] ?? 0;
    }
  }
}

function cohortOf({ compiled }: DepotRun, index: number): Cohort {
  return compiled.cohorts[compiled.cells[index]?.cohort ?? 0] as Cohort;
}

function closeDoors(run: DepotRun): void {
  const { cells, depot, week } = run;
  for (let index = run.first; index < run.until; index++) {
    const cohort = cohortOf(run, index);
    if (cohort.closingWeeks.length === 0) continue;
    plus(cells.stock, index, -closingUnits(cohort, cells.stock[index] ?? 0, week));
    if (!isLastClosing(cohort, week)) continue;
    dropOrdersOf(run.queue, index);
    cells.open[index] = 0;
  }
  if (week !== depot.endWeek) return;
  cells.stock[depot.place] = 0;
  cells.open[depot.place] = 0;
}

/** Deliveries: to the depot, then (after shipping) out of it, then to the shelves; those without transit after shipping. */
function receive(run: DepotRun, sameWeek: boolean): void {
  const { compiled, cells, depot, queue, week } = run;
  const { hot } = compiled;
  if ((depot.transitWeeks === 0) === sameWeek) arriveAtDepot(cells, depot, week);
  if (sameWeek) shipFromDepot(hot, cells, depot, { queue, week });
  if ((hot.transitWeeks[run.first] === 0) !== sameWeek) return;
  const from = arrivalsFrom(cells, week);
  for (let index = run.first; index < run.until; index++) {
    const units = cells.arriving[from + index] ?? 0;
    if (units > 0) arrive(cells, index, units, (cohortOf(run, index).doors[week] ?? 0) > 0);
  }
}

/** All that the depot has ordered leaves for it. */
function shipToDepot({ cells, depot, week }: DepotRun): number {
  const { place } = depot;
  const units = cells.open[place] ?? 0;
  cells.open[place] = 0;
  plus(cells.transit, place, units);
  plus(cells.arriving, arrivalsLater(cells, arrivalsFrom(cells, week), depot.transitWeeks) + place, units);
  return units;
}

/** Ordinary returns, then sales and shrink. */
function sell(run: DepotRun): void {
  const { cells, wants, week, listing, account, first, until } = run;
  const row = first * wants.weeks + week * (until - first) - first;
  for (let index = first; index < until; index++) {
    run.index = index;
    if (listing.returns) takeReturns(run, listing.returns);
    const stock = cells.stock[index] ?? 0;
    const sold = Math.min(wants.units[row + index] ?? 0, stock);
    cells.stock[index] = stock - sold;
    if (account.shrinkRate > 0) takeShrink(cells, index, sold, account.shrinkRate);
  }
}

/** Fills and reorders with the depot, then the depot's own order. */
function placeOrders(run: DepotRun): void {
  const { compiled, cells, wants, week, account, depot, queue, first, until } = run;
  for (let index = first; index < until; index++) {
    const cell = compiled.cells[index] as Cell;
    if (cell.openWeek - cell.transitWeeks - 1 !== week) continue;
    const units = fillOrder(compiled, cell);
    if (units === 0) continue;
    plus(cells.open, index, units);
    addOrder(queue, index, units, 1);
  }
  if (week < 0 || !isOrderWeek(week, account.firstOrderWeek, account.orderEveryWeeks)) return;
  const row = first * wants.weeks + week * (until - first) - first;
  for (let index = first; index < until; index++) {
    if (week < (compiled.hot.openWeek[index] ?? 0)) continue;
    const units = reorder(compiled.hot, cells, index, week, wants.target[row + index] ?? 0);
    if (units === 0) continue;
    plus(cells.open, index, units);
    addOrder(queue, index, units, 0);
  }
  plus(cells.open, depot.place, orderOfDepot(compiled, cells, depot, week));
}

/** Arrivals that no return looks back at any more give their place to weeks to come. */
function forget({ cells, depot, week, first, until }: DepotRun): void {
  const past = week - cells.returnLag;
  if (past < 0) return;
  const from = arrivalsFrom(cells, past);
  cells.arriving.fill(0, from + first, from + until);
  cells.arriving[from + depot.place] = 0;
}
