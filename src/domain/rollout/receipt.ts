// A receipt: what lands this week from one supplier comes into stock, is owed for, its freight and duty paid, its tax booked.
// Worked figure: 2,400 at 1.20 and 0.30 with 864.00 paid ahead: stock 3,600.00, owed 2,016.00, cash 720.00.
import { timesRate } from '../money/integer.ts';
import { E, post } from './books.ts';
import type { ItemState } from './item-state.ts';
import type { Landings } from './landings.ts';
import { addLot } from './lots.ts';
import { addDue, owe, type State } from './state.ts';

/** One receipt: instalments of one supplier landing this week; its balance is due `supplierWeeks` on. */
export function receive(state: State, i: number, landings: Landings, supplierWeeks: number): void {
  const { books } = state;
  const { week } = books;
  const units = landings.units[week] ?? 0;
  if (units === 0) return;
  const item = state.items[i] as ItemState;
  const goods = landings.goods[week] ?? 0;
  const freight = landings.freight[week] ?? 0;
  const extra = landings.extra?.[week] ?? 0;
  const deposit = Math.min(goods, landings.deposit[week] ?? 0);
  // With no lead time step 5 lands more this week: only that is left to receive then.
  landings.units[week] = 0;
  landings.goods[week] = 0;
  landings.freight[week] = 0;
  landings.deposit[week] = 0;
  if (landings.extra) landings.extra[week] = 0;
  item.onOrder -= units;
  item.ours += units;
  item.held += units;
  item.made += units;
  item.stockAmount += goods + freight + extra;
  if (item.lots) addLot(item.lots, week, units);
  post(books, E.receiptDeposit, deposit, -1, i);
  post(books, E.receiptPayable, goods - deposit, -1, i);
  post(books, E.receiptFreight, freight, -1, i);
  post(books, E.receiptRush, extra, -1, i);
  const vat = state.compiled.business.vat;
  const vatGoods = vat ? timesRate(goods, vat.purchases) : 0;
  const vatFreight = vat ? timesRate(freight, vat.purchases) + timesRate(extra, vat.purchases) : 0;
  post(books, E.vatOnPayable, vatGoods, -1, i);
  post(books, E.vatOnFreight, vatFreight, -1, i);
  owe(state, week, -(vatGoods + vatFreight));
  addDue(item.payableDue, week + supplierWeeks, goods - deposit + vatGoods);
}
