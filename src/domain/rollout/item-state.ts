// Our own stock of one item as the pass carries it: what is here, what it stands at in the books, what will land.
// Worked figure: an order of 2,400 under way with 1,200.00 paid lands 2,400 and releases the deposit.
import { timesPrice } from '../money/integer.ts';
import { type Buying, buyingPlaces, newBuying, type Supplier, takePlace } from './buying.ts';
import type { Compiled, CompiledItem } from './compiled.ts';
import { addLanding } from './landings.ts';
import { type Lots, newLots } from './lots.ts';
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
  buying: Buying;
  /** Null for what keeps as long as it has to. */
  lots: Lots | null;
  unplaced: number;
  /** Owed to suppliers, by the week it is due. */
  payableDue: Float64Array;
  /** Units that must be somewhere: opening + made − sold − gone. */
  known: number;
  /** At the last close. */
  inStores: number;
  inTransit: number;
  atDepot: number;
  /** Of the week at hand, in the order of UNIT_NAMES. */
  made: number;
  ordered: number;
  rushed: number;
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
export function itemPlaces({ buying, shelfLife }: CompiledItem, weeks: number): number {
  return buyingPlaces(buying, weeks) + weeks + (shelfLife ? weeks : 0);
}

/** What newItem() is made with: seconds left of all hours, and memory to cut from. */
export interface ItemArgs {
  hours: readonly Float64Array[];
  series: CutSeries;
}

export function newItem(compiled: Compiled, index: number, { hours, series }: ItemArgs): ItemState {
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
    buying: newBuying(item.buying, { hours, weeks, series }),
    lots: item.shelfLife && newLots(item.shelfLife, series(weeks), item.openingUnits),
    unplaced: 0,
    payableDue: series(weeks),
    known: item.openingUnits,
    inStores: 0,
    inTransit: 0,
    atDepot: 0,
    made: 0,
    ordered: 0,
    rushed: 0,
    shipped: 0,
    fillShipped: 0,
    received: 0,
    demand: 0,
    sold: 0,
    lost: 0,
    returned: 0,
    gone: 0,
  };
  for (const { week, units, deposit } of item.onOrder) {
    const { terms, landings } = state.buying.suppliers[0] as Supplier;
    const goods = timesPrice(units, terms.goods, compiled.perMinor);
    const freight = timesPrice(units, terms.freight, compiled.perMinor);
    addLanding(landings, { week, units, goods, freight, deposit });
    takePlace(state.buying, 0, week, units);
    state.onOrder += units;
  }
  return state;
}
