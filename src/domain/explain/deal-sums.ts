// The sums behind a deal's figures, item by item, which the deal itself keeps only as totals: units and money of the
// first year and of the term. Made of the deal room's own parts, so that they come to its totals but for rounding.
// Worked figure: 60 doors at 6 a week for 52 weeks are 18,720 units; at 0.63 they bring 11,793.60.
import { nearest } from '../deals/curve.ts';
import { type FixedMoney, fixedMoney } from '../deals/fixed-money.ts';
import { type StoreWeeks, storeWeeks, unitsByWeek, YEAR_WEEKS } from '../deals/store-weeks.ts';
import { dealTakes } from '../deals/unit-money.ts';
import type { Decimal } from '../money/decimal.ts';
import type { Account } from '../plan/index.ts';
import { type Place, placesOf } from './place.ts';
import type { Scene } from './write.ts';

export interface ItemSums {
  place: Place;
  /** By week from the first opening. */
  units: Float64Array;
  /** What deals take, by week from the first opening. */
  taken: Float64Array;
}

export interface DealSums {
  stores: StoreWeeks;
  fixed: FixedMoney;
  items: readonly ItemSums[];
}

export function dealSums(scene: Scene, account: Account): DealSums {
  const places = placesOf(scene, account);
  const stores = storeWeeks(account);
  const ladders = places.map(({ ladder }) => ladder);
  return {
    stores,
    fixed: fixedMoney({ plan: scene.plan, account, ladders, stores }),
    items: places.map((place) => itemSums(scene, place, stores)),
  };
}

function itemSums({ plan }: Scene, place: Place, stores: StoreWeeks): ItemSums {
  const { account, listing, ladder } = place;
  const units = unitsByWeek({ plan, account, listing, stores });
  const taken = new Float64Array(units.length);
  for (const { amount, fromWeek, untilWeek } of dealTakes(account, ladder)) {
    for (let week = Math.max(0, fromWeek - stores.firstWeek); week < untilWeek - stores.firstWeek; week++) {
      if (week < units.length) taken[week] = (taken[week] ?? 0) + (units[week] ?? 0) * amount;
    }
  }
  return { place, units, taken };
}

/** Sum of the weeks [from, until) to so many decimals. */
export function sumWeeks(series: Float64Array, until: number, decimals: number, from = 0): Decimal {
  let sum = 0;
  for (let week = from; week < until && week < series.length; week++) sum += series[week] ?? 0;
  return nearest(sum, decimals);
}

/** Contribution of one item over the first `weeks`, deals taken off; 4 decimals. */
export function contributedTo({ place, units, taken }: ItemSums, weeks: number): Decimal {
  const each = place.dealItem.contributionPerUnit.toNumber();
  let sum = 0;
  for (let week = 0; week < weeks && week < units.length; week++) {
    sum += (units[week] ?? 0) * each - (taken[week] ?? 0);
  }
  return nearest(sum, 4);
}

export { YEAR_WEEKS };
