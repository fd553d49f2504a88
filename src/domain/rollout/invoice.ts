// The documents of a week, one an account and item: the invoice (at shipment, or at the scan), what is accrued against
// it, what it costs us, and when it will be paid. Worked figure: 480 units at 2.60 are 1,248.00; spoils of 2 % accrue
// 24.96; with 30 days and 10 late it is collected 6 weeks on, less its 24.96.
import { mulDiv, timesPrice, timesRate } from '../money/integer.ts';
import { post } from './books.ts';
import type { CompiledAccount, CompiledListing } from './compiled.ts';
import { addDue, type State } from './state.ts';
import { owe, relieve } from './supply.ts';

export interface ListingAt {
  state: State;
  listing: number;
  week: number;
}

function partsOf(at: ListingAt) {
  const terms = at.state.compiled.listings[at.listing];
  const now = at.state.listings[at.listing];
  const account = terms && at.state.compiled.accounts[terms.account];
  const item = terms && at.state.items[terms.item];
  if (!terms || !now || !account || !item) throw new Error(`listing ${at.listing} is not compiled`);
  return { terms, now, account, item };
}

/** After shipping: freight, picking, cost of what left, and the invoice where shipment is the sale. */
export function postShipment(at: ListingAt): void {
  const { terms, now, account, item } = partsOf(at);
  const { state, week } = at;
  const { perMinor } = state.compiled;
  const units = now.shippedPaid + now.shippedFree;
  if (units === 0) return;
  post(state.books, 'freightOut', timesPrice(units, terms.freightOut, perMinor), terms.account, terms.item);
  post(state.books, 'pickAndPack', timesPrice(units, terms.pickAndPack, perMinor), terms.account, terms.item);
  if (account.sale === 'scan') return;
  const leaving = units - now.shippedHeld;
  const cost = relieve(item, leaving);
  const free = leaving === 0 ? 0 : mulDiv(cost, now.shippedFree, leaving);
  const freeIsBilled = account.billBack !== null;
  post(state.books, 'costOfSales', freeIsBilled ? cost : cost - free, terms.account, terms.item);
  if (!freeIsBilled) post(state.books, 'freeGoods', free, terms.account, terms.item);
  const billed = now.shippedPaid + (freeIsBilled ? now.shippedFree : 0);
  invoice(at, billed, week);
  if (freeIsBilled && account.billBack) {
    const claim = timesPrice(now.shippedFree, terms.firstHandSells, perMinor);
    addClaim(at, claim, account.billBack.lagWeeks);
  }
  perUnitCharges(at, 'unitShipped', billed);
  if (!freeIsBilled) freeGoodsCharges(at, now.shippedFree);
  const held = state.guaranteeAmount[at.listing] ?? 0;
  post(state.books, 'guaranteeHeld', held, terms.account, terms.item);
  state.guaranteeAmount[at.listing] = 0;
}

/** After sales: the invoice and cost of pay-on-scan goods, and claims on units scanned. */
export function postScans(at: ListingAt): void {
  const { terms, now, account, item } = partsOf(at);
  if (now.sold === 0) return;
  if (account.sale === 'scan') {
    post(at.state.books, 'costOfSales', relieve(item, now.sold), terms.account, terms.item);
    invoice(at, now.sold, at.week);
    perUnitCharges(at, 'unitShipped', now.sold);
  }
  perUnitCharges(at, 'unitSold', now.sold);
}

/** One invoice: receivable, deductions and discount accrued, dates set, broker and royalty accrued. */
function invoice(at: ListingAt, units: number, week: number): void {
  const { terms, account } = partsOf(at);
  const { state } = at;
  const { books } = state;
  const net = timesPrice(units, terms.invoicePrice[week] ?? 0, state.compiled.perMinor);
  if (net === 0) return;
  const sales = state.accounts[terms.account];
  if (!sales) throw new Error(`no account ${terms.account}`);
  post(books, 'invoiced', net, terms.account, terms.item);
  const vat = state.compiled.business.vat ? timesRate(net, state.compiled.business.vat.sales) : 0;
  post(books, 'vatOnSale', vat, terms.account, terms.item);
  owe(state, week, vat);
  sales.invoiced += net;
  sales.receivable += net + vat;
  schedule({ at, account, net, gross: net + vat });
  for (const charge of terms.monthly) accrueShare(at, charge, net, units, 'brokerAccrued');
  for (const charge of terms.quarterly) accrueShare(at, charge, net, units, 'royaltyAccrued');
}

type ShareCharge = CompiledListing['monthly'][number];

/** Broker or royalty on an invoice (or, negative, on a credit): a document of its own. */
function accrueShare(
  at: ListingAt,
  charge: ShareCharge,
  net: number,
  units: number,
  event: 'brokerAccrued' | 'royaltyAccrued',
): void {
  const { terms } = partsOf(at);
  const { state, week } = at;
  const share =
    timesRate(net, charge.rateMillionths) +
    timesPrice(units, charge.priceTenThousandths, state.compiled.perMinor);
  post(state.books, event, share, terms.account, terms.item);
  if (event === 'brokerAccrued') state.brokerOwed += share;
  else {
    const quarter = state.compiled.quarters[week] ?? 0;
    state.royaltyOwed.set(quarter, (state.royaltyOwed.get(quarter) ?? 0) + share);
  }
}

/** Broker and royalty on free goods, where the contract says so: at what they would have been invoiced at. */
function freeGoodsCharges(at: ListingAt, units: number): void {
  const { terms } = partsOf(at);
  const net = timesPrice(units, terms.invoicePrice[at.week] ?? 0, at.state.compiled.perMinor);
  for (const charge of terms.monthly) if (charge.onFreeGoods) accrueShare(at, charge, net, units, 'brokerAccrued');
  for (const charge of terms.quarterly) {
    if (charge.onFreeGoods) accrueShare(at, charge, net, units, 'royaltyAccrued');
  }
}

/** Less return credits: broker and royalty go down with them. */
export function reverseShares(at: ListingAt, credit: number, units: number): void {
  const { terms } = partsOf(at);
  for (const charge of terms.monthly) accrueShare(at, charge, -credit, -units, 'brokerAccrued');
  for (const charge of terms.quarterly) accrueShare(at, charge, -credit, -units, 'royaltyAccrued');
}

/** Splits the invoice into the part paid early (with its discount) and the rest, each on its week. */
function schedule(args: { at: ListingAt; account: CompiledAccount; net: number; gross: number }): void {
  const { at, account, net, gross } = args;
  const { terms } = partsOf(at);
  const { state, week } = at;
  const deductions = terms.deductions.map((rate) => timesRate(net, rate));
  for (const amount of deductions) post(state.books, 'deductionAccrued', amount, terms.account, terms.item);
  const early = account.discount;
  const earlyGross = early ? timesRate(gross, early.takenShare) : 0;
  if (early && earlyGross > 0) {
    const discount = timesRate(earlyGross, early.rate);
    post(state.books, 'discountAccrued', discount, terms.account, terms.item);
    const own = deductions.reduce((sum, amount) => sum + timesRate(amount, early.takenShare), 0);
    addTranche(at, { week: week + early.collectWeeks, gross: earlyGross, deductions: own, discount });
    const rest = deductions.reduce((sum, amount) => sum + amount - timesRate(amount, early.takenShare), 0);
    addTranche(at, { week: week + account.collectWeeks, gross: gross - earlyGross, deductions: rest, discount: 0 });
    return;
  }
  const all = deductions.reduce((sum, amount) => sum + amount, 0);
  addTranche(at, { week: week + account.collectWeeks, gross, deductions: all, discount: 0 });
}

/** One part of an invoice on its due week; an advance on it is drawn now and paid back then. */
function addTranche(
  at: ListingAt,
  part: { week: number; gross: number; deductions: number; discount: number },
): void {
  const { terms, account } = partsOf(at);
  const { state } = at;
  const sales = state.accounts[terms.account];
  if (!sales || part.gross === 0) return;
  addDue(sales.dueGross, part.week, part.gross);
  addDue(sales.dueDeductions, part.week, part.deductions);
  addDue(sales.dueDiscount, part.week, part.discount);
  addDue(sales.dueBad, part.week, timesRate(part.gross, account.badDebtRate));
  const rate = state.advanceRates[at.week] ?? 0;
  const advance = timesRate(part.gross, rate);
  post(state.books, 'advanceIn', advance, terms.account, terms.item);
  state.advanceLeft += advance;
  addDue(sales.dueAdvance, part.week, advance);
}

/** Scan-backs and bill-backs of the week: accrued when earned, claimed later. */
function perUnitCharges(at: ListingAt, per: 'unitSold' | 'unitShipped', units: number): void {
  const { terms } = partsOf(at);
  for (const charge of terms.claims) {
    if (charge.per !== per || at.week < charge.fromWeek || at.week >= charge.untilWeek) continue;
    addClaim(at, timesPrice(units, charge.priceTenThousandths, at.state.compiled.perMinor), charge.lagWeeks);
  }
}

export function addClaim(at: ListingAt, amount: number, lagWeeks: number): void {
  const { terms } = partsOf(at);
  if (amount === 0) return;
  post(at.state.books, 'claimAccrued', amount, terms.account, terms.item);
  at.state.accounts[terms.account]?.claims.push({ amount, fromWeek: at.week + lagWeeks });
}
