// The documents of a week, one an account and item: the invoice (at shipment, or at the scan), what is accrued against
// it, what it costs us, and when it will be paid. Worked figure: 480 units at 2.60 are 1,248.00; spoils of 2 % accrue
// 24.96; with 30 days and 10 late it is collected 6 weeks on, less its 24.96.
import { mulDiv, timesPrice, timesRate } from '../money/integer.ts';
import { E, post } from './books.ts';
import type { CompiledAccount, CompiledListing } from './compiled.ts';
import { takeWrongly } from './disputed.ts';
import type { ItemState } from './item-state.ts';
import { type AccountState, addDue, type ListingWeek, owe, type State } from './state.ts';
import { relieve } from './supply.ts';

/** One listed item in one week, with what it belongs to. */
export interface ListingAt {
  state: State;
  listing: number;
  week: number;
  terms: CompiledListing;
  now: ListingWeek;
  account: CompiledAccount;
  sales: AccountState;
  item: ItemState;
}

/** The same object for one listing in every week of a pass: moved on, not made anew. */
export function listingAt(state: State, listing: number, week: number): ListingAt {
  const at = state.listingsAt[listing] ?? newListingAt(state, listing);
  state.listingsAt[listing] = at;
  at.week = week;
  return at;
}

function newListingAt(state: State, listing: number): ListingAt {
  const terms = state.compiled.listings[listing] as CompiledListing;
  return {
    state,
    listing,
    week: 0,
    terms,
    now: state.listings[listing] as ListingWeek,
    account: state.compiled.accounts[terms.account] as CompiledAccount,
    sales: state.accounts[terms.account] as AccountState,
    item: state.items[terms.item] as ItemState,
  };
}

/** After shipping: freight, picking, cost of what left, and the invoice where shipment is the sale. */
function postShipment(at: ListingAt): void {
  const { state, terms, now, account } = at;
  const { perMinor } = state.compiled;
  const units = now.shippedPaid + now.shippedFree;
  post(state.books, E.freightOut, timesPrice(units, terms.freightOut, perMinor), terms.account, terms.item);
  post(state.books, E.pickAndPack, timesPrice(units, terms.pickAndPack, perMinor), terms.account, terms.item);
  if (account.sale === 'scan') return;
  const billed = account.billBack ? units : now.shippedPaid;
  postCost(at, units);
  invoice(at, billed);
  if (account.billBack) {
    addClaim(at, timesPrice(now.shippedFree, terms.firstHandSells, perMinor), account.billBack.lagWeeks);
  } else if (now.shippedFree > 0) {
    freeGoodsCharges(at, now.shippedFree);
  }
  perUnitCharges(at, 'unitShipped', billed);
  const held = state.guaranteeAmount[at.listing] ?? 0;
  post(state.books, E.guaranteeHeld, held, terms.account, terms.item);
  state.guaranteeAmount[at.listing] = 0;
}

/** Cost of what left for good; what is held under guarantee stays in the stock balance. */
function postCost({ state, terms, now, account, item }: ListingAt, units: number): void {
  const leaving = units - now.shippedHeld;
  const cost = relieve(item, leaving);
  const free = account.billBack || leaving === 0 ? 0 : mulDiv(cost, now.shippedFree, leaving);
  post(state.books, E.costOfSales, cost - free, terms.account, terms.item);
  post(state.books, E.freeGoods, free, terms.account, terms.item);
}

/** After sales: the invoice and cost of pay-on-scan goods, and claims on units scanned. */
function postScans(at: ListingAt): void {
  const { state, terms, now, account, item } = at;
  if (account.sale === 'scan') {
    post(state.books, E.costOfSales, relieve(item, now.sold), terms.account, terms.item);
    invoice(at, now.sold);
    perUnitCharges(at, 'unitShipped', now.sold);
  }
  perUnitCharges(at, 'unitSold', now.sold);
}

/** One invoice: receivable, deductions and discount accrued, dates set, broker and royalty accrued. */
function invoice(at: ListingAt, units: number): void {
  const { state, terms, sales, week } = at;
  const net = timesPrice(units, terms.invoicePrice[week] ?? 0, state.compiled.perMinor);
  if (units === 0) return;
  const { vat } = state.compiled.business;
  const tax = vat ? timesRate(net, vat.sales) : 0;
  post(state.books, E.invoiced, net, terms.account, terms.item);
  post(state.books, E.vatOnSale, tax, terms.account, terms.item);
  owe(state, week, tax);
  sales.invoiced += net;
  sales.receivable += net + tax;
  schedule(at, net, net + tax);
  shares(at, { net, units, freeGoods: false });
}

/** What broker and royalty are taken on; negative for a credit note. */
interface ShareBase {
  net: number;
  units: number;
  freeGoods: boolean;
}

/** Broker and royalty on an invoice, on free goods where agreed, or back on a credit: each a document of its own. */
function shares(at: ListingAt, base: ShareBase): void {
  const { state, terms } = at;
  for (const charge of terms.monthly) {
    const amount = shareOf(at, charge, base);
    post(state.books, E.brokerAccrued, amount, terms.account, terms.item);
    state.brokerOwed += amount;
  }
  for (const charge of terms.quarterly) {
    const amount = shareOf(at, charge, base);
    const quarter = state.compiled.quarters[at.week] ?? 0;
    post(state.books, E.royaltyAccrued, amount, terms.account, terms.item);
    state.royaltyOwed.set(quarter, (state.royaltyOwed.get(quarter) ?? 0) + amount);
  }
}

function shareOf(at: ListingAt, charge: CompiledListing['monthly'][number], base: ShareBase): number {
  if (base.freeGoods && !charge.onFreeGoods) return 0;
  const { perMinor } = at.state.compiled;
  const ofInvoice = timesRate(base.net, charge.rateMillionths);
  return ofInvoice + timesPrice(base.units, charge.priceTenThousandths, perMinor);
}

/** Broker and royalty on free goods, where the contract says so: at what they would have been invoiced at. */
function freeGoodsCharges(at: ListingAt, units: number): void {
  const net = timesPrice(units, at.terms.invoicePrice[at.week] ?? 0, at.state.compiled.perMinor);
  shares(at, { net, units, freeGoods: true });
}

/** Less return credits: broker and royalty go down with them. */
export function reverseShares(at: ListingAt, credit: { amount: number; units: number }): void {
  shares(at, { net: -credit.amount, units: -credit.units, freeGoods: false });
}

/** Splits the invoice into the part paid early (with its discount) and the rest, each on its week. */
function schedule(at: ListingAt, net: number, gross: number): void {
  const { state, terms, account, week } = at;
  const early = account.discount;
  const earlyGross = early ? timesRate(gross, early.takenShare) : 0;
  let all = 0;
  let own = 0;
  for (const rate of terms.deductions) {
    const amount = timesRate(net, rate);
    post(state.books, E.deductionAccrued, amount, terms.account, terms.item);
    all += amount;
    if (early && earlyGross > 0) own += timesRate(amount, early.takenShare);
  }
  if (account.disputed) {
    const { amount, early: ofEarly } = takeWrongly(
      at,
      account.disputed,
      net,
      early && earlyGross > 0 ? early : null,
    );
    all += amount;
    own += ofEarly;
  }
  if (early && earlyGross > 0) {
    const discount = timesRate(earlyGross, early.rate);
    post(state.books, E.discountAccrued, discount, terms.account, terms.item);
    addDue(at.sales.dueDiscount, week + early.collectWeeks, discount);
    addTranche(at, { week: week + early.collectWeeks, gross: earlyGross, deductions: own });
  }
  addTranche(at, { week: week + account.collectWeeks, gross: gross - earlyGross, deductions: all - own });
}

/** One part of an invoice on its due week; an advance on it is drawn now and paid back then. */
function addTranche(at: ListingAt, part: { week: number; gross: number; deductions: number }): void {
  const { state, terms, account, sales } = at;
  if (part.gross === 0) return;
  addDue(sales.dueGross, part.week, part.gross);
  addDue(sales.dueDeductions, part.week, part.deductions);
  if (account.badDebtRate > 0) addDue(sales.dueBad, part.week, timesRate(part.gross, account.badDebtRate));
  const rate = state.advanceRates[at.week] ?? 0;
  if (rate === 0) return;
  const advance = timesRate(part.gross, rate);
  post(state.books, E.advanceIn, advance, terms.account, terms.item);
  state.advanceLeft += advance;
  addDue(sales.dueAdvance, part.week, advance);
}

/** Scan-backs and bill-backs of the week: accrued when earned, claimed later. */
function perUnitCharges(at: ListingAt, per: 'unitSold' | 'unitShipped', units: number): void {
  for (const charge of at.terms.claims) {
    if (charge.per !== per || at.week < charge.fromWeek || at.week >= charge.untilWeek) continue;
    addClaim(at, timesPrice(units, charge.priceTenThousandths, at.state.compiled.perMinor), charge.lagWeeks);
  }
}

function addClaim(at: ListingAt, amount: number, lagWeeks: number): void {
  if (amount === 0) return;
  post(at.state.books, E.claimAccrued, amount, at.terms.account, at.terms.item);
  at.sales.claims.push({ amount, fromWeek: at.week + lagWeeks });
}

/** Documents of all listings after shipping, in file order. */
export function postShipments(state: State, week: number): void {
  for (let listing = 0; listing < state.listings.length; listing++) {
    const now = state.listings[listing] as ListingWeek;
    if (now.shippedPaid + now.shippedFree > 0) postShipment(listingAt(state, listing, week));
  }
}

/** Documents of all listings after sales, in file order. */
export function postAllScans(state: State, week: number): void {
  for (let listing = 0; listing < state.listings.length; listing++) {
    const terms = state.compiled.listings[listing] as CompiledListing;
    if ((state.listings[listing] as ListingWeek).sold === 0) continue;
    const byScan = state.compiled.accounts[terms.account]?.sale === 'scan';
    if (byScan || terms.claims.length > 0) postScans(listingAt(state, listing, week));
  }
}
