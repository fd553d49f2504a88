// What the weekly pass carries from week to week: stock where it stands, open orders, what falls due. Made by
// newState(), changed only by the step files (stores, supply, ship, settle, standing), read by pass.ts at each close.

import { type Books, openBooks, type Recorder } from './books.ts';
import { landingWeeks } from './buying.ts';
import { type CellStates, cellPlaces, newCells } from './cell-states.ts';
import type { Compiled, LoanTerms } from './compiled.ts';
import { type ConductState, newConduct } from './conduct.ts';
import type { ListingAt } from './invoice.ts';
import { type ItemState, itemPlaces, newItem } from './item-state.ts';
import { openingBalances } from './opening.ts';
import { newQueue, type OrderQueue } from './queue.ts';
import type { CutSeries } from './series.ts';
import { BALANCE_NAMES } from './types.ts';

export interface Claim {
  amount: number;
  fromWeek: number;
}

export interface AccountState {
  dueGross: Float64Array;
  dueDeductions: Float64Array;
  dueDiscount: Float64Array;
  dueBad: Float64Array;
  dueAdvance: Float64Array;
  claims: Claim[];
  receivable: number;
  quietWeeks: number;
  invoiced: number;
  remitted: number;
  /** Deductions that weren't owed, by the week they come back in; null where none are. */
  dueRecovered: Float64Array | null;
  /** Units its credit limit held back this week. */
  heldBack: number;
}

/** Of the week at hand, by listing. */
export interface ListingWeek {
  shippedPaid: number;
  shippedFree: number;
  shippedHeld: number;
  sold: number;
  credited: number;
}

export interface State {
  compiled: Compiled;
  books: Books;
  cells: CellStates;
  items: ItemState[];
  /** Orders of stores with their depots, by depot. */
  depotQueues: OrderQueue[];
  accounts: AccountState[];
  /** Null in most plans: no account has a limit, a charge for short deliveries, or drops to pay. */
  conduct: ConductState | null;
  listings: ListingWeek[];
  /** Each listing with what it belongs to, made when first needed. */
  listingsAt: ListingAt[];
  baseDue: Float64Array;
  basePayDue: Float64Array;
  /** Accrued and not yet due: broker, interest, royalty and VAT by quarter. */
  brokerOwed: number;
  interestOwed: number;
  royaltyOwed: Map<number, number>;
  vatOwed: Map<number, number>;
  loans: { terms: LoanTerms; left: number; startMonth: number }[];
  advanceLeft: number;
  /** Share of an invoice drawn as an advance, by week (millionths), and its yearly rate. */
  advanceRates: Float64Array;
  advanceYearlyRate: number;
  /** By listing, of the week at hand: invoiced under guarantee and held against returns. */
  guaranteeAmount: Float64Array;
  /** By account, of the week at hand. */
  accountUnits: { sold: Float64Array; lost: Float64Array };
}

/** Places of memory that newState() cuts its series from. */
export function statePlaces(compiled: Compiled): number {
  const series = compiled.accounts.length * ACCOUNT_SERIES + OTHER_SERIES;
  const items = compiled.items.reduce((sum, item) => sum + itemPlaces(item, compiled.weeks), 0);
  const hours = compiled.hours.length * landingWeeks(compiled.weeks);
  return series * compiled.weeks + items + hours + cellPlaces(compiled);
}

export function newState(compiled: Compiled, recorder: Recorder | null, series: CutSeries): State {
  const { weeks } = compiled;
  const accounts = compiled.accounts.length;
  const hours = compiled.hours.map((seconds) => hoursLeft(seconds, series(landingWeeks(weeks))));
  const state: State = {
    compiled,
    books: openBooks(recorder),
    cells: newCells(compiled, series),
    items: compiled.items.map((_, i) => newItem(compiled, i, { hours, series })),
    depotQueues: compiled.depots.map(newQueue),
    accounts: compiled.accounts.map(({ disputed }) => newAccount(() => series(weeks), disputed !== null)),
    conduct: newConduct(compiled),
    listings: compiled.listings.map(() => ({
      shippedPaid: 0,
      shippedFree: 0,
      shippedHeld: 0,
      sold: 0,
      credited: 0,
    })),
    listingsAt: [],
    baseDue: series(weeks),
    basePayDue: series(weeks),
    brokerOwed: 0,
    interestOwed: 0,
    royaltyOwed: new Map(),
    vatOwed: new Map(),
    loans: [],
    advanceLeft: 0,
    advanceRates: series(weeks),
    advanceYearlyRate: 0,
    guaranteeAmount: new Float64Array(compiled.listings.length),
    accountUnits: {
      sold: new Float64Array(accounts),
      lost: new Float64Array(accounts),
    },
  };
  openBalances(state);
  return state;
}

/** Seconds of each week still free: past the horizon those of its last week. */
function hoursLeft(seconds: Float64Array, left: Float64Array): Float64Array {
  left.fill(seconds[seconds.length - 1] ?? 0);
  left.set(seconds);
  return left;
}

/** Weekly series of the whole state and of each account. */
const OTHER_SERIES = 3;
const ACCOUNT_SERIES = 6;

function newAccount(series: () => Float64Array, isDisputed: boolean): AccountState {
  return {
    dueGross: series(),
    dueDeductions: series(),
    dueDiscount: series(),
    dueBad: series(),
    dueAdvance: series(),
    claims: [],
    receivable: 0,
    quietWeeks: 0,
    invoiced: 0,
    remitted: 0,
    dueRecovered: isDisputed ? series() : null,
    heldBack: 0,
  };
}

/** Assets and claims of the opening position; the difference is retained. */
function openBalances(state: State): void {
  const { business, cells, depots, accounts } = state.compiled;
  const opening = openingBalances(business);
  BALANCE_NAMES.forEach((name, place) => {
    state.books.balances[place] = opening[name];
  });
  // Shelf stock sold by scan is still ours: it counts among the units the opening stock amount is for.
  for (const place of [...cells, ...depots]) {
    const item = state.items[place.item];
    if (!item) continue;
    item.known += place.openingStock;
    if (accounts[place.account]?.sale === 'scan') item.held += place.openingStock;
  }
}

/** Add to a dated sum; past the last week it is out of sight. */
export function addDue(due: Float64Array, week: number, amount: number): void {
  if (week < due.length) due[week] = (due[week] ?? 0) + amount;
}

/** Add to what is owed (or, negative, owed to us) in VAT for the quarter of a week. */
export function owe(state: State, week: number, amount: number): void {
  if (amount === 0) return;
  const quarter = state.compiled.quarters[week] ?? 0;
  state.vatOwed.set(quarter, (state.vatOwed.get(quarter) ?? 0) + amount);
}
