// Which offer leaves the founder most how often, over many draws of a range. An offer under which cash runs out can't win
// against one under which it lasts; where it runs out under all of them nobody wins, nor where the best two come out equal
// to the minor unit. Futures are put in order by their net sales over the plan: royalties, shares of sales and the sale of
// the business all hang on those, and they are the same whatever is offered.
// Worked figure: of draws that sell 10, 20 ... 100, P10 is the one of 10, P50 that of 50, P90 that of 90.

import { chanceLimits, placeOf, valuesAt } from '../promise/range/quantiles.ts';
import type {
  ByShare,
  Cover,
  DrawnOffers,
  FounderIn,
  FutureOutcome,
  Futures,
  OfferOdds,
  OfferResult,
} from './types.ts';

/**
 * Draws that offers are compared on. Each costs about what computing the plan once does, so all of them take a worker about
 * a second on the largest example (twelve chains, 104 weeks); an even chance is then known to 7 points either way.
 */
export const OFFER_DRAWS = 200;

const SHARES = [
  ['p10', 0.1],
  ['p50', 0.5],
  ['p90', 0.9],
] as const;

/** The best offer of one future, in minor units of what the founder keeps. */
export function bestOf(founder: readonly FounderIn[]): Pick<FutureOutcome, 'best' | 'bestLasts'> {
  const lasting = founder.filter(({ lowestCash }) => lowestCash >= 0);
  const [best, next] = [...(lasting.length > 0 ? lasting : founder)].sort((a, b) => b.amount - a.amount);
  const alone = best !== undefined && best.amount !== next?.amount;
  return { best: alone ? best.offerId : null, bestLasts: lasting.length > 0 };
}

/** Draws that couldn't be computed are counted beside, and in nothing else; without any other there are no odds. */
export function futuresOf(drawn: readonly DrawnOffers[]): Futures {
  const counted = drawn.flatMap(({ draw, found }) =>
    found === null ? [] : [{ draw, ...found, ...bestOf(found.founder) }],
  );
  const draws = counted.length;
  const lasting = counted.filter(({ bestLasts }) => bestLasts);
  const ids = counted[0]?.founder.map(({ offerId }) => offerId) ?? [];
  const offers = ids.map((offerId, at): OfferOdds => {
    const wins = lasting.filter(({ best }) => best === offerId).length;
    const amounts = Float64Array.from(counted, ({ founder }) => founder[at]?.amount ?? 0);
    const places = SHARES.map(([, share]) => placeOf(share, draws));
    const [p10 = 0, p50 = 0, p90 = 0] = valuesAt(amounts, places);
    return {
      offerId,
      wins,
      share: wins / draws,
      limits: chanceLimits(wins, draws),
      lasts: counted.filter(({ founder }) => (founder[at]?.lowestCash ?? 0) >= 0).length,
      lowest: notBelow(counted.map(({ founder }) => founder[at]?.lowestCash ?? 0)),
      kept: { p10, p50, p90 },
    };
  });
  const bare = notBelow(counted.map(({ lowestCash }) => lowestCash));
  const inOrder = [...counted].sort((a, b) => a.netSales - b.netSales || a.draw - b.draw);
  return {
    draws,
    uncomputed: drawn.length - draws,
    noneLasts: ids.length === 0 ? 0 : draws - lasting.length,
    ties: lasting.filter(({ best }) => best === null).length,
    offers,
    need: { p50: needOf(bare.p50), p80: needOf(bare.p80), p95: needOf(bare.p95) },
    outcomes: SHARES.flatMap(([name, share]) => {
      const at = inOrder[placeOf(share, draws)];
      return at === undefined ? [] : [{ name, ...at }];
    }),
  };
}

/** The cash that 50, 80, 95 of 100 draws don't fall below; 0 without draws. */
function notBelow(lowest: readonly number[]): ByShare {
  const depths = Float64Array.from(lowest, (low) => -low);
  const places = [0.5, 0.8, 0.95].map((share) => placeOf(share, lowest.length));
  const [p50 = 0, p80 = 0, p95 = 0] = lowest.length === 0 ? [] : valuesAt(depths, places);
  return { p50: 0 - p50, p80: 0 - p80, p95: 0 - p95 };
}

function needOf(lowest: number): number {
  return Math.max(0, -lowest);
}

/** What an offer covers in draws: cash lasts in 80 of 100 or more where it covers P80. Empty where none were run. */
export function coversIn({ draws, offers, need }: Futures, { id }: Pick<OfferResult, 'id'>): Cover[] {
  const odds = offers.find(({ offerId }) => offerId === id);
  if (draws === 0 || odds === undefined) return [];
  return (['p50', 'p80', 'p95'] as const).map((name) => {
    const left = odds.lowest[name];
    return { name, need: need[name], left, covers: left >= 0 };
  });
}
