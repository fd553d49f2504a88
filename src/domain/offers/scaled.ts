// A plan that sells more or less than planned: every rate of sale times a factor, goods bought for it, the whole model run
// again without new funding. What growth is looked at on. Worked figure: 3.2 a store week times 1.25 is 4.

import { landedParts } from '../ladder/landed.ts';
import { dec } from '../money/decimal.ts';
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { compile } from '../rollout/compile.ts';
import { isTooLarge } from '../rollout/exact.ts';
import { freeRun } from '../rollout/free.ts';
import { runPass } from '../rollout/pass.ts';
import { type Basis, basisFrom } from './basis.ts';

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
  const landed = landedParts(plan.items);
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

/** Above 0, as the compiled plan wants it; more than a person may type is computed all the same. */
function scaledRate(rate: string, factor: number): string {
  const scaled = dec(rate).times(factor).toDecimalPlaces(6);
  return scaled.lt('0.000001') ? '0.000001' : scaled.toFixed();
}
