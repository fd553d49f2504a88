// Our own stock: goods landing (step 3), samples and write-offs, and the week's purchase order (step 5).
// Worked figure: planned shipments of the next 10 weeks 4,800, backlog 0, ours 1,200, on order 2,400: need 1,200; with a
// minimum of 2,000 and batches of 600 the order is 2,400, landing from lead-time weeks on within what capacity is left.
import { mulDiv, timesPrice, timesRate } from '../money/integer.ts';
import { E, post } from './books.ts';
import { addLanding, type ItemState } from './item-state.ts';
import { addDue, type State } from './state.ts';

function parts(state: State, i: number) {
  const item = state.items[i];
  const terms = state.compiled.items[i];
  if (!item || !terms) throw new Error(`no item ${i}`);
  return { item, terms };
}

/** Step 3: instalments landing this week come into stock, are owed for, their freight and duty paid. */
export function receiveGoods(state: State, i: number, week: number): void {
  const { item, terms } = parts(state, i);
  const units = item.landUnits[week] ?? 0;
  if (units === 0) return;
  const goods = item.landGoods[week] ?? 0;
  const freight = item.landFreight[week] ?? 0;
  const deposit = Math.min(goods, item.landDeposit[week] ?? 0);
  // With no lead time step 5 lands more this week: only that is left to receive then.
  item.landUnits[week] = 0;
  item.landGoods[week] = 0;
  item.landFreight[week] = 0;
  item.landDeposit[week] = 0;
  item.onOrder -= units;
  item.ours += units;
  item.held += units;
  item.made += units;
  item.stockAmount += goods + freight;
  const { books } = state;
  post(books, E.receiptDeposit, deposit, -1, i);
  post(books, E.receiptPayable, goods - deposit, -1, i);
  post(books, E.receiptFreight, freight, -1, i);
  const vat = state.compiled.business.vat;
  const vatGoods = vat ? timesRate(goods, vat.purchases) : 0;
  const vatFreight = vat ? timesRate(freight, vat.purchases) : 0;
  post(books, E.vatOnPayable, vatGoods, -1, i);
  post(books, E.vatOnFreight, vatFreight, -1, i);
  owe(state, week, -(vatGoods + vatFreight));
  addDue(state.payableDue, week + terms.supplierWeeks, goods - deposit + vatGoods);
}

/** Add to what is owed (or, negative, owed to us) in VAT for the quarter of a week. */
export function owe(state: State, week: number, amount: number): void {
  if (amount === 0) return;
  const quarter = state.compiled.quarters[week] ?? 0;
  state.vatOwed.set(quarter, (state.vatOwed.get(quarter) ?? 0) + amount);
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
    item.ours -= units;
    item.gone += units;
    post(state.books, E.writtenOff, relieve(item, units), -1, i);
  }
}

/** Step 5: order what the plan will need and is neither in stock nor on its way. */
export function orderGoods(state: State, i: number, week: number, shippable: Float64Array): void {
  const { item, terms } = parts(state, i);
  if (week < terms.ordersFrom) return;
  let need = item.backlog - item.ours - item.onOrder;
  const last = week + terms.leadWeeks + terms.coverWeeks;
  for (let w = week; w <= last; w++) need += shippable[w] ?? 0;
  if (need <= 0) return;
  const wanted = Math.max(need, terms.minimumOrderUnits);
  const units = Math.ceil(wanted / terms.batchUnits) * terms.batchUnits;
  const left = placeInstalments(state, i, week, units);
  item.ordered = units - left;
  item.unplaced += left;
}

/** Instalments from the lead time on, each within the capacity a week has left. Returns units no week could take. */
function placeInstalments(state: State, i: number, week: number, units: number): number {
  const { item, terms } = parts(state, i);
  const { weeks } = state.compiled;
  let left = units;
  for (let w = week + terms.leadWeeks; left > 0 && w < item.landUnits.length; w++) {
    const lid = terms.capacity[Math.min(w, weeks - 1)] ?? 0;
    const taken = (item.landUnits[w] ?? 0) + (w === week ? item.made : 0);
    const instalment = Math.min(left, Math.max(0, lid - taken));
    if (instalment <= 0) continue;
    const goods = timesPrice(instalment, terms.landedGoods, state.compiled.perMinor);
    const freight = timesPrice(instalment, terms.landedFreight, state.compiled.perMinor);
    const deposit = timesRate(goods, terms.depositRate);
    post(state.books, E.depositPaid, deposit, -1, i);
    addLanding(item, { week: w, units: instalment, goods, freight, deposit });
    left -= instalment;
  }
  if (terms.leadWeeks === 0) receiveGoods(state, i, week);
  return left;
}
