// The pass without limits: every order ships the week after it is placed. It gives U, the units of each item shippable
// in each week, which purchase orders are planned on, and the shelf stock the retailer's side is judged by.
// Worked figure: a fill of 480 ordered at the end of week 5 is 480 units shippable in week 6.

import { arrivalsFrom, type CellStates, cellPlaces, newCells, plus } from './cell-states.ts';
import { isOrderWeek } from './cells.ts';
import type { Cell, Cohort, Compiled, CompiledAccount, CompiledListing } from './compiled.ts';
import { runDepot } from './depot-free.ts';
import { takeReturns } from './returns.ts';
import { withSeries } from './series.ts';
import {
  arrive,
  type CellWeek,
  closingUnits,
  fillOrder,
  holdUnits,
  isReviewed,
  reorder,
  takeHeld,
  takeShrink,
  unitsOrdered,
} from './stores.ts';
import { type Wants, wantsOf } from './wants.ts';

export interface FreeRun {
  /** [item][week], to the compiled reach. */
  shippable: Float64Array[];
  /** By listing: shelf stock summed over its cells at the 52 week-ends from its first opening, and the door-weeks. */
  shelf: { stock: number; doorWeeks: number }[];
}

export function freeRun(compiled: Compiled): FreeRun {
  return withSeries(cellPlaces(compiled), (cut) => runCells(compiled, newCells(compiled, cut)));
}

function runCells(compiled: Compiled, cells: CellStates): FreeRun {
  const { hot, reach } = compiled;
  const run: FreeRun = {
    shippable: compiled.items.map(() => new Float64Array(reach + 1)),
    shelf: compiled.listings.map(() => ({ stock: 0, doorWeeks: 0 })),
  };
  const firstWeeks = compiled.accounts.map((account) =>
    Math.max(0, Math.min(...account.cohorts.map((c) => compiled.cohorts[c]?.openWeek ?? 0))),
  );
  const at = cellRun(compiled, cells);
  for (let index = 0; index < hot.count; index++) {
    moveTo(at, index);
    if (at.listing.depot) continue;
    const firstWeek = firstWeeks[at.cell.account] ?? 0;
    if (isPlain(at)) runPlainCell(at, run, firstWeek);
    else runCell(at, run, firstWeek);
  }
  for (const depot of compiled.depots) {
    runDepot({
      compiled,
      cells,
      wants: at.wants,
      depot,
      shippable: run.shippable[depot.item] as Float64Array,
      shelf: run.shelf[depot.listing] as FreeRun['shelf'][number],
      firstWeek: firstWeeks[depot.account] ?? 0,
    });
  }
  return run;
}

/** One cell's run, with what it belongs to; the same object for all, moved on. */
interface CellRun extends CellWeek {
  cells: CellStates;
  wants: Wants;
  /** Where its wants begin, and how far apart its weeks are. */
  wantsFrom: number;
  wantsStep: number;
  cell: Cell;
  cohort: Cohort;
  account: CompiledAccount;
  listing: CompiledListing;
  /** Weeks in which doors close or a guarantee is reviewed happen in few cells. */
  hasClosings: boolean;
  /** A plain cell's shipments until they arrive. */
  onTheWay: Float64Array;
}

function cellRun(compiled: Compiled, cells: CellStates): CellRun {
  const at = {
    compiled,
    cells,
    wants: wantsOf(compiled),
    onTheWay: new Float64Array(compiled.hot.longestTransit + 1),
    index: 0,
    week: 0,
  } as CellRun;
  if (compiled.cells.length > 0) moveTo(at, 0);
  return at;
}

function moveTo(at: CellRun, index: number): void {
  const { compiled } = at;
  at.index = index;
  at.week = 0;
  at.cell = compiled.cells[index] as Cell;
  at.cohort = compiled.cohorts[at.cell.cohort] as Cohort;
  at.account = compiled.accounts[at.cell.account] as CompiledAccount;
  const { firstOfListing } = compiled.hot;
  const first = firstOfListing[at.cell.listing] ?? 0;
  at.wantsStep = (firstOfListing[at.cell.listing + 1] ?? 0) - first;
  at.wantsFrom = first * compiled.reach + index - first;
  at.listing = compiled.listings[at.cell.listing] as CompiledListing;
  at.hasClosings = at.account.sale === 'guaranteed' || at.cohort.closingWeeks.length > 0;
}

/** Sold at shipment, nothing comes back: most cells are, and their weeks need no more than three numbers. */
function isPlain({ account, listing }: CellRun): boolean {
  return account.sale === 'shipment' && listing.returns === null;
}

/** The weeks of runWeek() for a plain cell, its numbers at hand. */
function runPlainCell(at: CellRun, run: FreeRun, firstWeek: number): void {
  const { compiled, cell, cohort, onTheWay } = at;
  const { units, target } = at.wants;
  const { wantsFrom, wantsStep } = at;
  const { doors } = cohort;
  const { reach } = compiled;
  const { multiple, transitWeeks } = cell;
  const { firstOrderWeek, orderEveryWeeks } = at.account;
  const shippable = run.shippable[cell.item] as Float64Array;
  const shelf = run.shelf[cell.listing] as FreeRun['shelf'][number];
  const begin = cell.openWeek - transitWeeks - 1;
  const round = transitWeeks + 1;
  let stock = cell.openingStock;
  let transit = 0;
  let open = begin >= -1 && begin < reach ? fillOrder(compiled, cell) : 0;
  let shelved = 0;
  let doorWeeks = 0;
  let slot = 0;
  let before = 0;
  onTheWay.fill(0, 0, round);
  for (let week = Math.max(0, begin + 1); week < reach; week++) {
    const now = doors[week] ?? 0;
    if (now < before || week === 0) stock -= closingUnits(cohort, stock, week);
    before = now;
    // What ships now is there after the transit: the round's last place, or this very one without transit.
    shippable[week] = (shippable[week] ?? 0) + open;
    transit += open;
    onTheWay[slot === 0 ? transitWeeks : slot - 1] = open;
    const arrived = onTheWay[slot] ?? 0;
    transit -= arrived;
    if (now > 0) stock += arrived;
    slot = slot + 1 === round ? 0 : slot + 1;
    const place = wantsFrom + week * wantsStep;
    stock -= Math.min(units[place] ?? 0, stock);
    const gap = (target[place] ?? 0) - stock - transit;
    const reaches = gap >= multiple && (doors[week + 1 + transitWeeks] ?? 0) > 0;
    const orders = reaches && isOrderWeek(week, firstOrderWeek, orderEveryWeeks);
    open = orders ? unitsOrdered(gap, now, multiple) : 0;
    if (week < firstWeek || week >= firstWeek + 52) continue;
    shelved += stock;
    doorWeeks += now;
  }
  shelf.stock += shelved;
  shelf.doorWeeks += doorWeeks;
}

function runCell(at: CellRun, run: FreeRun, firstWeek: number): void {
  const { compiled, cells, index, cell, cohort } = at;
  const { reach } = compiled;
  const begin = cell.openWeek - cell.transitWeeks - 1;
  if (begin >= -1 && begin < reach) plus(cells.open, index, fillOrder(compiled, cell));
  const shippable = run.shippable[cell.item] as Float64Array;
  const shelf = run.shelf[cell.listing] as FreeRun['shelf'][number];
  for (let week = Math.max(0, begin + 1); week < reach; week++) {
    at.week = week;
    runWeek(at, shippable);
    if (week < firstWeek || week >= firstWeek + 52) continue;
    shelf.stock += cells.stock[index] ?? 0;
    shelf.doorWeeks += cohort.doors[week] ?? 0;
  }
}

/** One cell's week: doors close, all that was ordered ships, arrives in its time, is bought, is ordered again. */
function runWeek(at: CellRun, shippable: Float64Array): void {
  const { compiled, cells, wants, index, week, account } = at;
  const { count } = cells;
  if (at.hasClosings) closeDoors(at);
  const shipped = cells.open[index] ?? 0;
  if (shipped > 0) {
    shippable[week] = (shippable[week] ?? 0) + shipped;
    cells.open[index] = 0;
    plus(cells.transit, index, shipped);
    plus(cells.arriving, arrivalsFrom(cells, week + at.cell.transitWeeks) + index, shipped);
    const free = Math.min(cells.freeLeft[index] ?? 0, shipped); // a fill is the first to leave
    plus(cells.freeLeft, index, -free);
    if (account.sale === 'guaranteed')
      holdUnits({ cells, index, cell: at.cell, terms: account, week }, shipped - free);
  }
  const units = cells.arriving[arrivalsFrom(cells, week) + index] ?? 0;
  if (units > 0) arrive(cells, index, units, (at.cohort.doors[week] ?? 0) > 0);
  if (at.listing.returns) takeReturns(at, at.listing.returns);
  const stock = cells.stock[index] ?? 0;
  const place = at.wantsFrom + week * at.wantsStep;
  const sold = Math.min(wants.units[place] ?? 0, stock);
  cells.stock[index] = stock - sold;
  if (account.shrinkRate > 0) takeShrink(cells, index, sold, account.shrinkRate);
  cells.open[index] = isOrderWeek(week, account.firstOrderWeek, account.orderEveryWeeks)
    ? reorder(compiled.hot, cells, index, week, wants.target[place] ?? 0)
    : 0;
  const past = week - cells.returnLag;
  if (past >= 0) cells.arriving[(past % cells.arrivingWeeks) * count + index] = 0;
}

function closeDoors({ cells, index, week, cell, cohort, account }: CellRun): void {
  if (isReviewed(cell, cohort, account, week)) takeHeld(cells, index);
  const closing = closingUnits(cohort, cells.stock[index] ?? 0, week);
  if (closing > 0) plus(cells.stock, index, -closing);
}
