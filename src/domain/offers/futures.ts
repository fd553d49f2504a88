// In which future which offer leaves the founder most. A future is a plan's basis: the plan with its rates of sale scaled, or
// one draw of a range. An offer under which cash runs out can't win against one under which it lasts.
// Worked figure: of three futures, equity wins the bad one and the royalty the other two.

import { landedOf } from '../ladder/landed.ts';
import { dec } from '../money/decimal.ts';
import type { Item, Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { compile } from '../rollout/compile.ts';
import { isTooLarge } from '../rollout/exact.ts';
import { freeRun } from '../rollout/free.ts';
import { runPass } from '../rollout/pass.ts';
import { type Basis, basisFrom } from './basis.ts';
import { exitPrice, founderAt, runOffer } from './run.ts';
import type { FutureOutcome, Futures } from './types.ts';

export interface Future {
  name: string;
  basis: Basis;
}

/** Rates of sale of a bad, the planned and a good future where no range has been drawn: judgement, no source. */
export const PLAIN_FUTURES = [
  { name: 'p10', factor: 0.7 },
  { name: 'p50', factor: 1 },
  { name: 'p90', factor: 1.3 },
] as const;

/** Which offer wins in each future, and how many each wins. */
export function winsIn(plan: Plan, futures: readonly Future[]): Futures {
  const outcomes = futures.map(({ name, basis }): FutureOutcome => {
    const price = exitPrice(plan.ownership, basis);
    const founder = plan.offers.map((offer) => {
      const run = runOffer(basis, offer, plan.ownership);
      return { offerId: offer.id, amount: Math.round(founderAt(run, price)), lowestCash: run.lowestCash };
    });
    const lasting = founder.filter(({ lowestCash }) => lowestCash >= 0);
    const [best, next] = [...(lasting.length > 0 ? lasting : founder)].sort((a, b) => b.amount - a.amount);
    const alone = best !== undefined && best.amount !== next?.amount;
    return { name, founder, best: alone ? best.offerId : null, bestLasts: lasting.length > 0 };
  });
  const wins = plan.offers.map(({ id }) => ({
    offerId: id,
    wins: outcomes.filter(({ best }) => best === id).length,
  }));
  return { outcomes, wins };
}

/** The plan with every rate of sale times a factor, goods bought for it, run without new funding; null: too large. */
export function scaledBasis(plan: Plan, results: Results, factor: number): Basis | null {
  const accounts = plan.accounts.map((account) => ({
    ...account,
    listings: account.listings.map((listing) => ({
      ...listing,
      unitsPerStoreWeek: scaledRate(listing.unitsPerStoreWeek, factor),
    })),
  }));
  const scaled = { ...plan, accounts, business: { ...plan.business, funding: [] } };
  const landed = plan.items.map((item: Item) => {
    const outcome = landedOf(item);
    if (!outcome.ok) throw new Error(`${item.id} has no landed cost, yet the plan was computed`);
    return outcome.value;
  });
  try {
    const compiled = compile({
      plan: scaled,
      ladders: results.ladders,
      landed,
      minorDigits: results.minorDigits,
    });
    const free = freeRun(compiled);
    return basisFrom(plan, compiled, runPass({ compiled, shippable: free.shippable, recorder: null }));
  } catch (error) {
    if (!isTooLarge(error)) throw error;
    return null;
  }
}

function scaledRate(rate: string, factor: number): string {
  const scaled = dec(rate).times(factor).toDecimalPlaces(6);
  return scaled.lt('0.000001') ? '0.000001' : scaled.gt(1000) ? '1000' : scaled.toFixed();
}
