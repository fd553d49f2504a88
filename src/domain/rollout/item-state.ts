// Our own stock of one item as the pass carries it: what is here, what it stands at in the books, what will land.
// Worked figure: an order of 2,400 under way with 1,200.00 paid lands 2,400 and releases the deposit.
import { timesPrice } from '../money/integer.ts';
import type { Compiled } from './compiled.ts';
import { newQueue, type OrderQueue } from './queue.ts';
import type { CutSeries } from './series.ts';

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
  /** At the last close. */
  inStores: number;
  inTransit: number;
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

/** Places of memory that newItem() cuts its series from. */
export function itemPlaces(weeks: number): number {
  return landingWeeks(weeks) + 3 * weeks;
}

/** Orders are placed as long as the plan runs, and land where capacity is left, up to as long again after it. */
function landingWeeks(weeks: number): number {
  return 2 * weeks + 120;
}

export function newItem(compiled: Compiled, index: number, series: CutSeries): ItemState {
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
    landUnits: series(landingWeeks(weeks)),
    landGoods: series(weeks),
    landFreight: series(weeks),
    landDeposit: series(weeks),
    unplaced: 0,
    known: item.openingUnits,
    inStores: 0,
    inTransit: 0,
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
