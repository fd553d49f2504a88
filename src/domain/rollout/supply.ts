// Our own stock: goods landing (step 3), samples and write-offs, and the week's purchase order (step 5).
// Worked figure: planned shipments of the next 10 weeks 4,800, backlog 0, ours 1,200, on order 2,400: need 1,200; with a
// minimum of 2,000 and batches of 600 the order is 2,400, landing from lead-time weeks on within what capacity is left.
import { mulDiv, timesPrice, timesRate } from '../money/integer.ts';
import { E, post } from './books.ts';
import { type Buying, goodsPrice, leftIn, type Supplier, sharedOut, takePlace } from './buying.ts';
import type { SupplierTerms } from './compiled-supply.ts';
import type { ItemState } from './item-state.ts';
import { addLanding, type Landings } from './landings.ts';
import { dropOldLots, takeOldest } from './lots.ts';
import { receive } from './receipt.ts';
import type { State } from './state.ts';

function parts(state: State, i: number) {
  const item = state.items[i];
  const terms = state.compiled.items[i];
  if (!item || !terms) throw new Error(`no item ${i}`);
  return { item, terms };
}

/** Step 3: what landed too long ago is written off; instalments landing this week come into stock. */
export function receiveGoods(state: State, i: number, week: number): void {
  const { item } = parts(state, i);
  if (item.lots) writeOff(state, i, dropOldLots(item.lots, week));
  const { suppliers, rush } = item.buying;
  for (const { landings, terms } of suppliers) receive(state, i, landings, terms.supplierWeeks);
  if (rush) receive(state, i, rush, firstOf(item).terms.supplierWeeks);
}

function firstOf({ buying }: ItemState): Supplier {
  return buying.suppliers[0] as Supplier;
}

/** What so many held units carry in the stock balance, by moving average; all of them carry all of it. */
export function relieve(item: ItemState, units: number): number {
  if (units === 0) return 0;
  const amount = units >= item.held ? item.stockAmount : mulDiv(item.stockAmount, units, item.held);
  item.held -= units;
  item.stockAmount -= amount;
  return amount;
}

/** Samples and write-offs planned for the week, as far as stock reaches. */
export function removeUnits(state: State, i: number, week: number): void {
  const { item, terms } = parts(state, i);
  for (const removal of terms.removals) {
    if (removal.week !== week) continue;
    const units = Math.min(removal.units, item.ours);
    if (item.lots) takeOldest(item.lots, units);
    writeOff(state, i, units);
  }
}

/** Units with us that are ours no longer. */
function writeOff(state: State, i: number, units: number): void {
  if (units === 0) return;
  const { item } = parts(state, i);
  item.ours -= units;
  item.gone += units;
  post(state.books, E.writtenOff, relieve(item, units), -1, i);
}

/** Step 5: order what the plan will need and is neither in stock nor on its way; first of all what can't wait. */
export function orderGoods(state: State, i: number, week: number, shippable: Float64Array): void {
  const { item, terms } = parts(state, i);
  if (week < terms.ordersFrom) return;
  const { buying } = item;
  if (buying.terms.rush) orderRush(state, i, week, shippable);
  let need = item.backlog - item.ours - item.onOrder;
  const last = week + firstOf(item).terms.leadWeeks + terms.coverWeeks;
  for (let w = week; w <= last; w++) need += shippable[w] ?? 0;
  if (need <= 0) return;
  const asked = sharedOut(buying, need, week, terms.coverWeeks);
  for (let s = 0; s < asked.length; s++) {
    const units = asked[s] ?? 0;
    if (units > 0) placeInstalments(state, i, week, { supplier: s, units });
  }
}

/** Instalments from the lead time on, each within what a week has left; units no week could take are unplaced. */
function placeInstalments(
  state: State,
  i: number,
  week: number,
  order: { supplier: number; units: number },
): void {
  const { item } = parts(state, i);
  const { buying } = item;
  const { terms, landings } = buying.suppliers[order.supplier] as Supplier;
  const goods = order.supplier === 0 ? goodsPrice(buying.terms, order.units, week) : terms.goods;
  let left = order.units;
  for (let w = week + terms.leadWeeks; left > 0 && w < landings.units.length; w++) {
    const units = Math.min(left, leftIn(buying, order.supplier, w));
    if (units <= 0) continue;
    takePlace(buying, order.supplier, w, units);
    placeInstalment(state, i, { landings, week: w, units, goods, terms, supplier: order.supplier });
    left -= units;
  }
  item.ordered += order.units - left;
  item.unplaced += left;
  if (terms.leadWeeks === 0) receive(state, i, landings, terms.supplierWeeks);
}

interface Instalment {
  landings: Landings;
  week: number;
  units: number;
  /** Unit price of the goods; the rest is the supplier's. */
  goods: number;
  terms: SupplierTerms;
  /** Its place among the item's suppliers, or RUSH. */
  supplier: number;
}

const RUSH = -1;

/** One instalment: its documents, and its deposit paid now. */
function placeInstalment(
  state: State,
  i: number,
  { landings, week, units, goods: price, terms, supplier }: Instalment,
): void {
  const { perMinor } = state.compiled;
  const goods = timesPrice(units, price, perMinor);
  const freight = timesPrice(units, terms.freight, perMinor);
  const deposit = timesRate(goods, terms.depositRate);
  post(state.books, E.depositPaid, deposit, -1, i);
  addLanding(landings, { week, units, goods, freight, deposit });
  const { recorder, week: now } = state.books;
  recorder?.placed?.({ week: now, lands: week, item: i, supplier, units, goods, freight, deposit });
  parts(state, i).item.onOrder += units;
}

/** Whole cases of what is short within the rush's own lead time, landing then, beside every lid. */
function orderRush(state: State, i: number, week: number, shippable: Float64Array): void {
  const { item, terms } = parts(state, i);
  const { buying } = item;
  const { rush } = buying;
  const { rush: asked } = buying.terms;
  if (!rush || !asked) return;
  const lands = week + asked.leadWeeks;
  let missing = item.backlog - item.ours;
  for (let w = week; w <= lands; w++) missing += (shippable[w] ?? 0) - landingIn(buying, w);
  if (missing <= 0) return;
  const units = Math.min(Math.ceil(missing / terms.caseUnits) * terms.caseUnits, asked.mostUnits);
  const first = firstOf(item).terms;
  const goods = goodsPrice(buying.terms, 0, week);
  placeInstalment(state, i, { landings: rush, week: lands, units, goods, terms: first, supplier: RUSH });
  if (rush.extra && lands < rush.extra.length) {
    const extra = timesPrice(units, asked.extra, state.compiled.perMinor);
    rush.extra[lands] = (rush.extra[lands] ?? 0) + extra;
  }
  item.rushed += units;
  item.ordered += units;
  if (asked.leadWeeks === 0) receive(state, i, rush, first.supplierWeeks);
}

/** All that is on its way to land in a week, from whomever. */
function landingIn({ suppliers, rush }: Buying, week: number): number {
  let units = rush?.units[week] ?? 0;
  for (const { landings } of suppliers) units += landings.units[week] ?? 0;
  return units;
}
