// THE KERNEL: one forward pass over the weeks, integers only, the same for the plan and for every draw of a range.
// PASS.md says in words, completely, what each step does. Money is minor units; books balance or the pass throws.
// Worked figure: a week that opens with 100,000, takes in 5,000 of equity, pays 30,000 and is paid 20,000 closes at
// 95,000 and was as low as 75,000: money goes out before it comes in.
import { CASH, FIRST_CLAIM_INDEX, type Recorder } from './books.ts';
import type { Compiled } from './compiled.ts';
import { postScans, postShipment } from './invoice.ts';
import { closeDoors, receiveAtStore, returnUnits, shrink } from './leave.ts';
import { newRecord, recordWeek } from './record.ts';
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
import { newState, type State } from './state.ts';
import { fillOrder, reorder, sell } from './stores.ts';
import { orderGoods, receiveGoods, removeUnits } from './supply.ts';
import type { PassResult } from './types.ts';

export interface PassArgs {
  compiled: Compiled;
  /** U of the plan, by item and week (free.ts): stock is bought on the plan, also when a draw sells otherwise. */
  shippable: readonly Float64Array[];
  recorder: Recorder | null;
}

/** Money past this can't be kept exact to the minor unit with room for sums. */
export const LARGEST_EXACT = 2 ** 52;

/** Thrown when amounts outgrow exact arithmetic; evaluate() turns it into a Problem. */
export const TOO_LARGE = 'amounts too large to keep exact';

export function runPass(args: PassArgs): PassResult {
  const { compiled, shippable, recorder } = args;
  const state = newState(compiled, recorder);
  const record = newRecord(state);
  prepareFunding(state);
  placeOrders(state, -1);
  for (let week = 0; week < compiled.weeks; week++) {
    const opening = state.books.balances[CASH] ?? 0;
    startWeek(state, week);
    const owed = { broker: state.brokerOwed, interest: state.interestOwed };
    const moneyIn = fundingStep(state, week);
    state.interestOwed += accrueInterest(state);
    storesBefore(state, week);
    suppliesAndShipping(state, week, shippable);
    sales(state, week);
    placeOrders(state, week);
    claimSlotting(state, week);
    for (let a = 0; a < compiled.accounts.length; a++) settleAccount(state, a, week);
    baseSalesStep(state, week);
    payStanding(state, week, owed);
    recordWeek({ state, record, week, opening, moneyIn });
    assertBalance(state, week);
  }
  record.unplacedUnits = state.items.map((item) => item.unplaced);
  return record;
}

function startWeek(state: State, week: number): void {
  const { books } = state;
  books.week = week;
  books.flows.fill(0);
  books.profit.fill(0);
  for (const item of state.items) {
    item.made = 0;
    item.ordered = 0;
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
  }
}

/** Steps 2 to 4: doors close, our goods land, deliveries reach the shelves. */
function storesBefore(state: State, week: number): void {
  const cells = state.compiled.cells.length;
  for (let index = 0; index < cells; index++) closeDoors({ state, index, week });
  for (let i = 0; i < state.items.length; i++) {
    receiveGoods(state, i, week);
    removeUnits(state, i, week);
  }
  for (let index = 0; index < cells; index++) {
    if (state.compiled.cells[index]?.transitWeeks !== 0) receiveAtStore({ state, index, week });
  }
}

/** Steps 5 and 6: purchase orders, shipping, its documents, and ordinary returns. */
function suppliesAndShipping(state: State, week: number, shippable: readonly Float64Array[]): void {
  const { compiled } = state;
  for (let i = 0; i < state.items.length; i++) {
    orderGoods(state, i, week, shippable[i] ?? new Float64Array(0));
    shipItem(state, i, week);
  }
  for (let index = 0; index < compiled.cells.length; index++) {
    if (compiled.cells[index]?.transitWeeks === 0) receiveAtStore({ state, index, week });
  }
  for (let listing = 0; listing < compiled.listings.length; listing++) postShipment({ state, listing, week });
  for (let index = 0; index < compiled.cells.length; index++) returnUnits({ state, index, week });
}

/** Step 7: shoppers buy what is there; goods on scan are invoiced now. */
function sales(state: State, week: number): void {
  const { compiled } = state;
  for (let index = 0; index < compiled.cells.length; index++) {
    const cell = compiled.cells[index];
    const own = state.cells[index];
    const item = cell && state.items[cell.item];
    const listing = cell && state.listings[cell.listing];
    if (!cell || !own || !item || !listing) throw new Error(`cell ${index} is not compiled`);
    const { demand, sold } = sell(cell, own, week);
    item.demand += demand;
    item.sold += sold;
    item.lost += demand - sold;
    listing.sold += sold;
    state.accountUnits.sold[cell.account] = (state.accountUnits.sold[cell.account] ?? 0) + sold;
    state.accountUnits.lost[cell.account] = (state.accountUnits.lost[cell.account] ?? 0) + demand - sold;
    shrink({ state, index, week }, sold);
  }
  for (let listing = 0; listing < compiled.listings.length; listing++) postScans({ state, listing, week });
}

/** Step 8: fills first, then reorders, each in shipping order, so that the queue is always sorted. */
function placeOrders(state: State, week: number): void {
  const { compiled } = state;
  compiled.items.forEach((terms, i) => {
    const queue = state.items[i]?.queue;
    for (const fill of [true, false]) {
      if (!fill && week < 0) continue;
      for (const index of terms.cellsByPriority) {
        const cell = compiled.cells[index];
        const own = state.cells[index];
        const cohort = cell && compiled.cohorts[cell.cohort];
        if (!cell || !own || !cohort || !queue) throw new Error(`cell ${index} is not compiled`);
        const units = fill ? fillOrder(cell, cohort, week) : reorder({ cell, cohort, state: own, week });
        if (units === 0) continue;
        own.open += units;
        queue.push({ cell: index, units, fill });
      }
    }
  });
}

function assertBalance(state: State, week: number): void {
  const { balances } = state.books;
  let difference = 0;
  for (let b = 0; b < balances.length; b++) {
    const amount = balances[b] ?? 0;
    difference += b < FIRST_CLAIM_INDEX ? amount : -amount;
    if (!(Math.abs(amount) < LARGEST_EXACT)) throw new RangeError(TOO_LARGE);
  }
  if (difference !== 0) throw new Error(`books differ by ${difference} in week ${week}`);
}
