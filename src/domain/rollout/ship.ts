// Step 6: orders leave in the order they were placed (fills first, then priority), each as far as whole cases reach.
// What can't leave is backlog, or cancelled where the account's rule says so; fills never are. Worked figure: 100 units
// ours, case 12, orders of 60 and 60: 60 leave for the first, 36 for the second, 4 stay.
import { timesPrice } from '../money/integer.ts';
import { arrivalsFrom, arrivalsLater, plus } from './cell-states.ts';
import type { Cell, CompiledAccount } from './compiled.ts';
import { type ConductState, unitsWithinTerms } from './conduct.ts';
import type { ItemState } from './item-state.ts';
import { shipLots, shippableLots } from './lots.ts';
import type { ListingWeek, State } from './state.ts';
import { holdUnits } from './stores.ts';

export function shipItem(state: State, i: number, week: number): void {
  const item = state.items[i] as ItemState;
  const { queue, lots } = item;
  const { accounts, hot } = state.compiled;
  // The same object for all orders: one each, and a large plan's pass makes 400 kB of them.
  const at: OrderAt = { index: 0, fill: false, week, arrivals: arrivalsFrom(state.cells, week) };
  const { conduct } = state;
  const { count } = queue;
  let kept = 0;
  let backlog = 0;
  for (let place = 0; place < count; place++) {
    const index = queue.cell[place] ?? 0;
    const ordered = queue.units[place] ?? 0;
    const fill = queue.fill[place] === 1;
    // Orders are whole cases (layers, pallets): what we have enough of leaves whole.
    const there = lots === null ? item.ours : shippableLots(lots, week, hot.transitWeeks[index] ?? 0);
    const could = ordered <= there ? ordered : wholeOf(there, hot.multiple[index] ?? 1);
    const whole = conduct ? withinTerms(state, conduct, { index, fill, week, open: ordered, could }) : could;
    at.index = index;
    at.fill = fill;
    if (whole > 0) shipOrder(state, item, at, whole);
    const left = ordered - whole;
    if (left <= 0) continue;
    backlog += left;
    if (!fill && accounts[hot.account[index] ?? -1]?.cancels) {
      plus(state.cells.open, index, -left);
      continue;
    }
    queue.cell[kept] = index;
    queue.units[kept] = left;
    queue.fill[kept] = fill ? 1 : 0;
    kept++;
  }
  queue.count = kept;
  queue.late = kept;
  item.backlog = backlog;
}

function wholeOf(units: number, multiple: number): number {
  return Math.floor(units / multiple) * multiple;
}

/** Whole cases that the account's credit limit leaves, noted for what short deliveries and drops cost. */
function withinTerms(
  state: State,
  conduct: ConductState,
  order: { index: number; fill: boolean; week: number; open: number; could: number },
): number {
  const { index, fill, week, open, could } = order;
  const { hot, accounts, cells } = state.compiled;
  const mayBeFree = fill || index >= hot.count;
  const isFree = mayBeFree && accounts[hot.account[index] ?? 0]?.billBack === null;
  return unitsWithinTerms(state, conduct, {
    listing: hot.listing[index] ?? 0,
    cohort: cells[index]?.cohort ?? -1,
    caseUnits: hot.multiple[index] ?? 1,
    open,
    could,
    free: isFree ? (state.cells.freeLeft[index] ?? 0) : 0,
    week,
  });
}

interface OrderAt {
  index: number;
  fill: boolean;
  week: number;
  /** Where this week's arrivals begin. */
  arrivals: number;
}

/** Whole cases of one order leave; free units of a fill, or of fills that a depot orders for, go first. */
function shipOrder(state: State, item: ItemState, at: OrderAt, units: number): void {
  const { index, fill } = at;
  const { cells, compiled } = state;
  const { hot } = compiled;
  const listing = state.listings[hot.listing[index] ?? 0] as ListingWeek;
  item.ours -= units;
  if (item.lots) shipLots(item.lots, units, { week: at.week, transitWeeks: hot.transitWeeks[index] ?? 0 });
  item.shipped += units;
  plus(cells.open, index, -units);
  plus(cells.transit, index, units);
  plus(cells.arriving, arrivalsLater(cells, at.arrivals, hot.transitWeeks[index] ?? 0) + index, units);
  let free = 0;
  if (fill) item.fillShipped += units;
  if (fill || index >= hot.count) {
    free = Math.min(cells.freeLeft[index] ?? 0, units);
    plus(cells.freeLeft, index, -free);
  }
  listing.shippedFree += free;
  listing.shippedPaid += units - free;
  const terms = compiled.accounts[hot.account[index] ?? 0] as CompiledAccount;
  if (terms.sale === 'guaranteed') holdGuaranteed(state, at, terms, units - free);
}

/** Under guaranteed sale a share of the units may come back: they are held, not sold, until the review. */
function holdGuaranteed(state: State, at: OrderAt, terms: CompiledAccount, paid: number): void {
  const { index, week } = at;
  const { cells, compiled } = state;
  const cell = compiled.cells[index] as Cell;
  const held = holdUnits({ cells, index, cell, terms, week }, paid);
  if (held === 0) return;
  const price = compiled.listings[cell.listing]?.invoicePrice[week] ?? 0;
  const amount = timesPrice(held, price, compiled.perMinor);
  plus(cells.heldAmount, index, amount);
  (state.listings[cell.listing] as ListingWeek).shippedHeld += held;
  plus(state.guaranteeAmount, cell.listing, amount);
}
