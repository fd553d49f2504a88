// What the weekly pass carries from week to week: stock where it stands, open orders, what falls due. Made by
// newState(), changed only by the step files (stores, supply, ship, settle, standing), read by pass.ts at each close.

import { timesPrice } from '../money/integer.ts';
import { type Books, openBooks, type Recorder } from './books.ts';
import type { Compiled, LoanTerms } from './compiled.ts';
import { BALANCE_NAMES } from './types.ts';

/** Stock and open orders of every cell, an array a quantity: the inner loops run over these. */
export interface CellStates {
  stock: Float64Array;
  transit: Float64Array;
  /** Units ordered and not shipped. */
  open: Float64Array;
  /** Free units of the fill still to ship. */
  freeLeft: Float64Array;
  /** Fractions waiting for the next unit, in millionths. */
  demandCarry: Float64Array;
  returnCarry: Float64Array;
  resaleCarry: Float64Array;
  shrinkCarry: Float64Array;
  /** Guaranteed sale: units that may come back, the sum held for them, the carry of the rate. */
  heldUnits: Float64Array;
  heldAmount: Float64Array;
  heldCarry: Float64Array;
  /** Arrivals at [week x cells + cell]. */
  arriving: Float64Array;
  count: number;
}

/** Open orders of one item in shipping order; the three lists run in step. */
export interface OrderQueue {
  count: number;
  /** The first so many were left by the last shipping: they are the backlog. */
  late: number;
  cell: Int32Array;
  units: Float64Array;
  /** 1 for an opening fill. */
  fill: Uint8Array;
}

const FIRST_QUEUE = 256;

function newQueue(): OrderQueue {
  return {
    count: 0,
    late: 0,
    cell: new Int32Array(FIRST_QUEUE),
    units: new Float64Array(FIRST_QUEUE),
    fill: new Uint8Array(FIRST_QUEUE),
  };
}

/** Room for twice as many orders. */
export function growQueue(queue: OrderQueue): void {
  const { cell, units, fill } = queue;
  queue.cell = new Int32Array(cell.length * 2);
  queue.cell.set(cell);
  queue.units = new Float64Array(units.length * 2);
  queue.units.set(units);
  queue.fill = new Uint8Array(fill.length * 2);
  queue.fill.set(fill);
}

export interface ItemState {
  ours: number;
  /** Units in the stock balance: ours, and what stands unsold elsewhere but is still ours. */
  held: number;
  stockAmount: number;
  onOrder: number;
  queue: OrderQueue;
  /** Unshipped after the last shipping, plus cancelled then. */
  backlog: number;
  landUnits: Float64Array;
  landGoods: Float64Array;
  landFreight: Float64Array;
  landDeposit: Float64Array;
  unplaced: number;
  /** Units that must be somewhere: opening + made − sold − gone. */
  known: number;
  /** Of the week at hand, in the order of UNIT_NAMES. */
  made: number;
  ordered: number;
  shipped: number;
  fillShipped: number;
  received: number;
  demand: number;
  sold: number;
  lost: number;
  returned: number;
  gone: number;
}

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
  accounts: AccountState[];
  listings: ListingWeek[];
  payableDue: Float64Array;
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

/** The longest any dated sum can lie ahead: terms and lateness are at most 365 days each. */
const DUE_AHEAD = 120;

export function newState(compiled: Compiled, recorder: Recorder | null): State {
  const { weeks } = compiled;
  const state: State = {
    compiled,
    books: openBooks(recorder),
    cells: newCells(compiled, weeks),
    items: compiled.items.map((_, i) => newItem(compiled, i)),
    accounts: compiled.accounts.map(() => newAccount(weeks + DUE_AHEAD)),
    listings: compiled.listings.map(() => ({
      shippedPaid: 0,
      shippedFree: 0,
      shippedHeld: 0,
      sold: 0,
      credited: 0,
    })),
    payableDue: new Float64Array(weeks + DUE_AHEAD),
    baseDue: new Float64Array(weeks + DUE_AHEAD),
    basePayDue: new Float64Array(weeks + DUE_AHEAD),
    brokerOwed: 0,
    interestOwed: 0,
    royaltyOwed: new Map(),
    vatOwed: new Map(),
    loans: [],
    advanceLeft: 0,
    advanceRates: new Float64Array(weeks),
    advanceYearlyRate: 0,
    guaranteeAmount: new Float64Array(compiled.listings.length),
    accountUnits: {
      sold: new Float64Array(compiled.accounts.length),
      lost: new Float64Array(compiled.accounts.length),
    },
  };
  openBalances(state);
  return state;
}

/** All cells before the first week; `weeks` is how long this run goes on. */
export function newCells(compiled: Compiled, weeks: number): CellStates {
  const count = compiled.cells.length;
  const span = weeks + 1 + Math.max(0, ...compiled.cells.map((cell) => cell.transitWeeks));
  return {
    stock: Float64Array.from(compiled.cells, (cell) => cell.openingStock),
    transit: new Float64Array(count),
    open: new Float64Array(count),
    freeLeft: Float64Array.from(compiled.cells, (cell) => cell.freeUnits),
    demandCarry: new Float64Array(count),
    returnCarry: new Float64Array(count),
    resaleCarry: new Float64Array(count),
    shrinkCarry: new Float64Array(count),
    heldUnits: new Float64Array(count),
    heldAmount: new Float64Array(count),
    heldCarry: new Float64Array(count),
    arriving: new Float64Array(count * span),
    count,
  };
}

/** Add to an array's place. */
export function plus(series: Float64Array, place: number, amount: number): void {
  series[place] = (series[place] ?? 0) + amount;
}

function newItem(compiled: Compiled, index: number): ItemState {
  const item = compiled.items[index];
  if (!item) throw new Error(`no item ${index}`);
  const { weeks } = compiled;
  const state: ItemState = {
    ours: item.openingUnits,
    held: item.openingUnits,
    stockAmount: item.openingStock,
    onOrder: 0,
    queue: newQueue(),
    backlog: 0,
    landUnits: new Float64Array(2 * weeks + 120),
    landGoods: new Float64Array(weeks),
    landFreight: new Float64Array(weeks),
    landDeposit: new Float64Array(weeks),
    unplaced: 0,
    known: item.openingUnits,
    made: 0,
    ordered: 0,
    shipped: 0,
    fillShipped: 0,
    received: 0,
    demand: 0,
    sold: 0,
    lost: 0,
    returned: 0,
    gone: 0,
  };
  for (const order of item.onOrder) {
    addLanding(state, {
      week: order.week,
      units: order.units,
      goods: timesPrice(order.units, item.landedGoods, compiled.perMinor),
      freight: timesPrice(order.units, item.landedFreight, compiled.perMinor),
      deposit: order.deposit,
    });
  }
  return state;
}

export interface Landing {
  week: number;
  units: number;
  goods: number;
  freight: number;
  deposit: number;
}

/** An instalment that will land; past the horizon only its units matter. */
export function addLanding(item: ItemState, landing: Landing): void {
  const { week } = landing;
  item.onOrder += landing.units;
  item.landUnits[week] = (item.landUnits[week] ?? 0) + landing.units;
  if (week >= item.landGoods.length) return;
  item.landGoods[week] = (item.landGoods[week] ?? 0) + landing.goods;
  item.landFreight[week] = (item.landFreight[week] ?? 0) + landing.freight;
  item.landDeposit[week] = (item.landDeposit[week] ?? 0) + landing.deposit;
}

function newAccount(weeks: number): AccountState {
  return {
    dueGross: new Float64Array(weeks),
    dueDeductions: new Float64Array(weeks),
    dueDiscount: new Float64Array(weeks),
    dueBad: new Float64Array(weeks),
    dueAdvance: new Float64Array(weeks),
    claims: [],
    receivable: 0,
    quietWeeks: 0,
    invoiced: 0,
    remitted: 0,
  };
}

/** Assets and claims of the opening position; the difference is retained. */
function openBalances(state: State): void {
  const { business, cells, accounts } = state.compiled;
  const { balances } = state.books;
  const set = (name: (typeof BALANCE_NAMES)[number], amount: number) => {
    balances[BALANCE_NAMES.indexOf(name)] = amount;
  };
  const { opening } = business;
  set('cash', business.openingCash);
  set('receivables', opening.receivables);
  set('stock', opening.stock);
  set('deposits', opening.deposits);
  set('equipment', opening.equipment);
  set('payables', opening.payables);
  set('accrued', opening.accrued);
  set('loans', opening.loans);
  set('paidIn', opening.paidInAmount);
  // Shelf stock sold by scan is still ours: it counts among the units the opening stock amount is for.
  for (const cell of cells) {
    const item = state.items[cell.item];
    if (!item) continue;
    item.known += cell.openingStock;
    if (accounts[cell.account]?.sale === 'scan') item.held += cell.openingStock;
  }
  const assets =
    business.openingCash + opening.receivables + opening.stock + opening.deposits + opening.equipment;
  set('retained', assets - opening.payables - opening.accrued - opening.loans - opening.paidInAmount);
}

/** Add to a dated sum, beyond the array it is out of sight. */
export function addDue(due: Float64Array, week: number, amount: number): void {
  if (week < due.length) due[week] = (due[week] ?? 0) + amount;
}
