// What the weekly pass carries from week to week: stock where it stands, open orders, what falls due. Made by
// newState(), changed only by the step files (stores, supply, ship, settle, standing), read by pass.ts at each close.
import { type Books, openBooks, type Recorder } from './books.ts';
import type { Compiled, LoanTerms } from './compiled.ts';
import { timesPrice } from '../money/integer.ts';
import { BALANCE_NAMES } from './types.ts';

/** Stock and open orders of one cell. */
export interface CellState {
  stock: number;
  transit: number;
  /** Arrivals by week. */
  arriving: Float64Array;
  /** Units ordered and not shipped. */
  open: number;
  /** Free units of the fill still to ship. */
  freeLeft: number;
  demandCarry: number;
  /** Units of the fill that have shipped, and all that was delivered by week (for returns). */
  returnCarry: number;
  resaleCarry: number;
  shrinkCarry: number;
  /** Guaranteed sale: units that may come back, the sum held for them, the carry of the rate. */
  heldUnits: number;
  heldAmount: number;
  heldCarry: number;
}

export interface OpenOrder {
  cell: number;
  units: number;
  fill: boolean;
}

export interface ItemState {
  ours: number;
  /** Units in the stock balance: ours, and what stands unsold elsewhere but is still ours. */
  held: number;
  stockAmount: number;
  onOrder: number;
  queue: OpenOrder[];
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
  cells: CellState[];
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
    cells: compiled.cells.map((cell) => newCell(cell.openingStock, cell.freeUnits, weeks + cell.transitWeeks + 1)),
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

function newCell(stock: number, freeLeft: number, weeks: number): CellState {
  return {
    stock,
    transit: 0,
    arriving: new Float64Array(weeks),
    open: 0,
    freeLeft,
    demandCarry: 0,
    returnCarry: 0,
    resaleCarry: 0,
    shrinkCarry: 0,
    heldUnits: 0,
    heldAmount: 0,
    heldCarry: 0,
  };
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
    queue: [],
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
  const assets = business.openingCash + opening.receivables + opening.stock + opening.deposits + opening.equipment;
  set('retained', assets - opening.payables - opening.accrued - opening.loans - opening.paidInAmount);
}

/** Add to a dated sum, beyond the array it is out of sight. */
export function addDue(due: Float64Array, week: number, amount: number): void {
  if (week < due.length) due[week] = (due[week] ?? 0) + amount;
}
