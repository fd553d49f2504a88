// THE KERNEL: one forward pass over the weeks, integers only, the same for the plan and for every draw of a range.
// PASS.md says in words, completely, what each step does. Money is minor units; books balance or the pass throws.
// Worked figure: a week that opens with 100,000, takes in 5,000 of equity, pays 30,000 and is paid 20,000 closes at
// 95,000 and was as low as 75,000: money goes out before it comes in.
import { CASH, closeBooks, openWeek, type Recorder } from './books.ts';
import { arrivalsFrom, forgetArrivals, plus } from './cell-states.ts';
import type { Compiled, CompiledListing } from './compiled.ts';
import { postConduct } from './conduct.ts';
import { closeDepots, depotReceipts, shipFromDepots } from './depot-week.ts';
import { assertBalance, assertExact } from './exact.ts';
import { postAllScans, postShipments } from './invoice.ts';
import type { ItemState } from './item-state.ts';
import { type CellAt, cellAt, closeDoors, loseAtClosedDoors, moveTo, returnUnits, shrink } from './leave.ts';
import { placeOrders } from './order.ts';
import { newRecord, recordWeek } from './record.ts';
import { withSeries } from './series.ts';
import { settleAccount } from './settle.ts';
import { shipItem } from './ship.ts';
import {
  accrueInterest,
  baseSalesStep,
  claimSlotting,
  fundingStep,
  payStanding,
  prepareFunding,
} from './standing.ts';
import { type ListingWeek, newState, type State, statePlaces } from './state.ts';
import { arrive } from './stores.ts';
import { orderGoods, receiveGoods, removeUnits } from './supply.ts';
import type { PassResult } from './types.ts';
import { type Wants, wantsOf } from './wants.ts';

export interface PassArgs {
  compiled: Compiled;
  /** U of the plan, by item and week (free.ts): stock is bought on the plan, also when a draw sells otherwise. */
  shippable: readonly Float64Array[];
  recorder: Recorder | null;
  /** From this week on stock is bought on another forecast: what nobody could know before it. Only in a what-if. */
  turn?: { week: number; shippable: readonly Float64Array[] };
}

export function runPass(args: PassArgs): PassResult {
  const { compiled, recorder } = args;
  return withSeries(statePlaces(compiled), (cut) => runWeeks(args, newState(compiled, recorder, cut)));
}

function runWeeks({ compiled, shippable, turn }: PassArgs, state: State): PassResult {
  const record = newRecord(state);
  prepareFunding(state);
  const at = cellAt(state);
  const wants = wantsOf(compiled);
  placeOrders(at, wants, -1);
  for (let week = 0; week < compiled.weeks; week++) {
    const opening = state.books.balances[CASH] ?? 0;
    startWeek(state, week);
    const owed = { broker: state.brokerOwed, interest: state.interestOwed };
    const moneyIn = fundingStep(state, week);
    state.interestOwed += accrueInterest(state);
    storesBefore(at, week);
    suppliesAndShipping(at, week, turn && week >= turn.week ? turn.shippable : shippable);
    sales(at, wants, week);
    placeOrders(at, wants, week);
    claimSlotting(state, week);
    for (let a = 0; a < compiled.accounts.length; a++) settleAccount(state, a, week);
    baseSalesStep(state, week);
    payStanding(state, week, owed);
    assertExact(state.books.posted);
    closeBooks(state.books);
    assertExact(state.books.balances);
    assertExact(state.books.flows);
    assertExact(state.books.profit);
    recordWeek({ state, record, week, opening, moneyIn });
    forgetArrivals(state.cells, week);
    assertBalance(state.books, week);
  }
  record.result.unplacedUnits = state.items.map((item) => item.unplaced);
  return record.result;
}

function startWeek(state: State, week: number): void {
  openWeek(state.books, week);
  for (const item of state.items) {
    item.made = 0;
    item.ordered = 0;
    item.rushed = 0;
    item.shipped = 0;
    item.fillShipped = 0;
    item.received = 0;
    item.demand = 0;
    item.sold = 0;
    item.lost = 0;
    item.returned = 0;
    item.gone = 0;
  }
  for (const listing of state.listings) {
    listing.shippedPaid = 0;
    listing.shippedFree = 0;
    listing.shippedHeld = 0;
    listing.sold = 0;
  }
  for (const account of state.accounts) {
    account.invoiced = 0;
    account.remitted = 0;
    account.heldBack = 0;
  }
}

/** Steps 2 to 4: doors close, our goods land, deliveries reach the shelves. */
function storesBefore(at: CellAt, week: number): void {
  const { state, compiled } = at;
  for (const index of compiled.closings[week] ?? []) {
    moveTo(at, index, week);
    closeDoors(at);
  }
  closeDepots(at, week);
  for (let i = 0; i < state.items.length; i++) {
    receiveGoods(state, i, week);
    removeUnits(state, i, week);
  }
  depotReceipts(at, week, false);
  storeReceipts(at, week, false);
}

/** Deliveries that arrive this week: those without transit arrive right after shipping. */
function storeReceipts(at: CellAt, week: number, sameWeek: boolean): void {
  const { compiled, state, cells } = at;
  const { doors, doorsFrom, firstOfListing, transitWeeks, someWithoutTransit } = compiled.hot;
  if (sameWeek && !someWithoutTransit) return;
  const from = arrivalsFrom(cells, week);
  for (let l = 0; l < state.listings.length; l++) {
    const first = firstOfListing[l] ?? 0;
    const until = firstOfListing[l + 1] ?? 0;
    if (first === until || (transitWeeks[first] === 0) !== sameWeek) continue;
    let received = 0;
    for (let index = first; index < until; index++) {
      const units = cells.arriving[from + index] ?? 0;
      if (units === 0) continue;
      const closed = arrive(cells, index, units, (doors[(doorsFrom[index] ?? 0) + week] ?? 0) > 0);
      received += units - closed;
      if (closed === 0) continue;
      moveTo(at, index, week);
      loseAtClosedDoors(at, closed);
    }
    (state.items[compiled.listings[l]?.item ?? -1] as ItemState).received += received;
  }
}

/** Steps 5 and 6: purchase orders, shipping, its documents, and ordinary returns. */
function suppliesAndShipping(at: CellAt, week: number, shippable: readonly Float64Array[]): void {
  const { state, compiled } = at;
  for (let i = 0; i < state.items.length; i++) {
    orderGoods(state, i, week, shippable[i] ?? new Float64Array(0));
    shipItem(state, i, week);
  }
  depotReceipts(at, week, true);
  shipFromDepots(at, week);
  storeReceipts(at, week, true);
  postShipments(state, week);
  if (state.conduct) postConduct(state, state.conduct, week);
  const { firstOfListing } = compiled.hot;
  for (let l = 0; l < state.listings.length; l++) {
    if (!compiled.listings[l]?.returns) continue;
    for (let index = firstOfListing[l] ?? 0; index < (firstOfListing[l + 1] ?? 0); index++) {
      moveTo(at, index, week);
      returnUnits(at);
    }
  }
}

/** Step 7: shoppers buy what is there; goods on scan are invoiced now. */
function sales(at: CellAt, wants: Wants, week: number): void {
  const { state, compiled } = at;
  for (let l = 0; l < state.listings.length; l++) {
    const listing = state.listings[l] as ListingWeek;
    const { demand, sold } = salesOf(at, wants, week, l);
    if (demand === 0) continue;
    const terms = compiled.listings[l] as CompiledListing;
    const item = state.items[terms.item] as ItemState;
    listing.sold = sold;
    item.demand += demand;
    item.sold += sold;
    item.lost += demand - sold;
    plus(state.accountUnits.sold, terms.account, sold);
    plus(state.accountUnits.lost, terms.account, demand - sold);
  }
  postAllScans(state, week);
}

/** Units wanted and sold of one listing; on scan, shrink follows each cell's sales. */
function salesOf(at: CellAt, wants: Wants, week: number, l: number): { demand: number; sold: number } {
  const { compiled, cells } = at;
  const { firstOfListing, openWeek } = compiled.hot;
  const { stock } = cells;
  const { units, weeks } = wants;
  const byScan = compiled.accounts[compiled.listings[l]?.account ?? -1]?.sale === 'scan';
  const first = firstOfListing[l] ?? 0;
  const until = firstOfListing[l + 1] ?? 0;
  const row = first * weeks + week * (until - first) - first;
  let demand = 0;
  let sold = 0;
  for (let index = first; index < until; index++) {
    if (week < (openWeek[index] ?? 0)) continue;
    const wanted = units[row + index] ?? 0;
    const isShrinkDue = byScan && (cells.shrinkCarry[index] ?? 0) >= 1_000_000;
    if (wanted === 0 && !isShrinkDue) continue;
    const there = stock[index] ?? 0;
    const bought = Math.min(wanted, there);
    stock[index] = there - bought;
    demand += wanted;
    sold += bought;
    if (!byScan) continue;
    moveTo(at, index, week);
    shrink(at, bought);
  }
  return { demand, sold };
}
