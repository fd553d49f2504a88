// Rival offers on draws of the plan's range: some of its draws, each run by the weekly pass itself without new funding, every
// offer laid over it. What is bought goes by the plan's own forecast, as in all of the range (promise/range/RANGE.md).
// Worked figure: of 10,000 draws every fiftieth is run: 0, 50, 100 ... 9,950.

import type { Plan } from '../plan/index.ts';
import {
  DRAWS_USUAL,
  evenDraw,
  type RangeSetup,
  runDrawUnfunded,
  SEED_USUAL,
  setUpRange,
} from '../promise/range/index.ts';
import type { Results } from '../results.ts';
import { isTooLarge } from '../rollout/exact.ts';
import { type Basis, basisFrom, sumOf } from './basis.ts';
import { OFFER_DRAWS } from './futures.ts';
import { exitPrice, founderAt, runOffer } from './run.ts';
import type { DrawnOffers } from './types.ts';

export interface DrawArgs {
  plan: Plan;
  results: Results;
}

/** Places `from` to OFFER_DRAWS - 1, or as many of them, one at least, as `goesOn` lets through; the same in whatever slices. */
export function drawOffers(
  { plan, results }: DrawArgs,
  from = 0,
  goesOn: () => boolean = () => true,
): DrawnOffers[] {
  const setup = setUpRange({ plan, results, seed: SEED_USUAL });
  const drawn: DrawnOffers[] = [];
  for (let k = from; k < OFFER_DRAWS && (k === from || goesOn()); k++) {
    const draw = evenDraw(k, OFFER_DRAWS, DRAWS_USUAL);
    const basis = basisOfDraw(setup, draw);
    drawn.push({ draw, found: basis === null ? null : foundIn(plan, basis) });
  }
  return drawn;
}

/** What offers are computed on in draws of the range; null where amounts outgrow exact arithmetic. */
export function basesOfDraws({ plan, results }: DrawArgs, draws: readonly number[]): (Basis | null)[] {
  const setup = setUpRange({ plan, results, seed: SEED_USUAL });
  return draws.map((draw) => basisOfDraw(setup, draw));
}

function basisOfDraw(setup: RangeSetup, draw: number): Basis | null {
  try {
    const { compiled, pass } = runDrawUnfunded(setup, draw);
    return basisFrom(setup.args.plan, compiled, pass);
  } catch (error) {
    if (!isTooLarge(error)) throw error;
    return null;
  }
}

/** What a future sells, and what every offer of the plan leaves the founder in it. */
export function foundIn(plan: Plan, basis: Basis): NonNullable<DrawnOffers['found']> {
  const price = exitPrice(plan.ownership, basis);
  const founder = plan.offers.map((offer) => {
    const run = runOffer(basis, offer, plan.ownership);
    return { offerId: offer.id, amount: Math.round(founderAt(run, price)), lowestCash: run.lowestCash };
  });
  const lowestCash = basis.low.reduce((least, low) => Math.min(least, low), Number.POSITIVE_INFINITY);
  return { netSales: sumOf(basis.netSales), lowestCash, founder };
}
