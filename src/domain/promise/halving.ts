// How much more has to be seen until the 80 % range of the rate of sale is half as wide: more stores like those seen, or more
// weeks in the same stores. More weeks settle what a store sells, not how stores differ, so there may be no number of them.
// Worked figure: eight stores that differ by a third: some 24 more, and no number of weeks in the same eight.
import type { ItemEvidence } from './evidence.ts';
import { type RateOfSale, rateOfSale, type StoreCount } from './rate-of-sale.ts';

export interface Halving {
  /** Further stores, seen for as many weeks as those there are; null: not even `STORES_MOST` more. */
  stores: number | null;
  /** Further weeks that count, in every store there is; null: no number of weeks does it (up to `WEEKS_TIMES` times as many). */
  weeks: number | null;
}

const STORES_MOST = 2000;
const WEEKS_TIMES = 30;

/** Taken as if further stores sold like those seen: what they will sell moves the range, and is not known. */
export function halvingOf({ stores, prior, rate }: ItemEvidence): Halving {
  const half = widthOf(rate) / 2;
  const width = (seen: readonly StoreCount[]): number => {
    const found = rateOfSale(seen, prior, rate.weeksScatter);
    return found === null ? Number.POSITIVE_INFINITY : widthOf(found);
  };
  const weeksEach = rate.storeWeeks / rate.stores;
  return {
    stores: least({
      had: rate.stores,
      most: STORES_MOST,
      half,
      width: (count) => width(stores.map((each) => ({ ...each, times: 1 + count / rate.stores }))),
    }),
    weeks: least({
      had: weeksEach,
      most: Math.ceil(weeksEach * WEEKS_TIMES),
      half,
      width: (count) => {
        const times = 1 + count / weeksEach;
        return width(stores.map(({ units, weeks }) => ({ units: units * times, weeks: weeks * times })));
      },
    }),
  };
}

function widthOf({ ofMean }: RateOfSale): number {
  return ofMean.high80 - ofMean.low80;
}

/**
 * The least count from 1 to `most` at which the width is half, to a fiftieth of it; null where `most` doesn't do. A width
 * falls about with the root of what is seen: where that says to look next is never far off.
 */
function least({ had, most, half, width }: Search): number | null {
  if (width(most) > half) return null;
  let [low, high] = [0, most];
  let next = 3 * had;
  for (let turn = 1; high - low > Math.max(1, high / 50); turn++) {
    if (turn % 4 === 0) next = (low + high) / 2;
    const count = Math.min(high - 1, Math.max(low + 1, Math.round(next)));
    const found = width(count);
    if (found <= half) high = count;
    else low = count;
    next = (had + count) * (found / half) ** 2 - had;
  }
  return high;
}

interface Search {
  had: number;
  most: number;
  half: number;
  width: (count: number) => number;
}
