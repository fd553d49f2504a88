// The door to rival offers of money: every offer of a plan on the same future, side by side; where the better one changes; what
// would make one equal to another. Nothing here changes the plan's results: it counts on money only in `business.funding`.
// None of it is securities, tax or legal advice. Worked figure: three offers give three results, three pairs of turning points.
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { type Basis, basisOf } from './basis.ts';
import { impliedOf } from './implied.ts';
import { resultOf } from './result.ts';
import { type OfferRun, runOffer } from './run.ts';
import { scaledBasis } from './scaled.ts';
import { growthPoints, type Turned, turningPoints } from './turning.ts';
import type { Implied, OfferResult } from './types.ts';

export { type Basis, basisFrom, basisOf } from './basis.ts';
export { roundsPastEnd } from './company.ts';
export type { DatedFlow, FieldNote, FlowKind, Movable, Tranche, When } from './contract.ts';
export { type CounterArgs, counterFor } from './counter.ts';
export { basesOfDraws, drawOffers } from './drawn.ts';
export { coversIn, futuresOf, OFFER_DRAWS } from './futures.ts';
export { OFFER_KINDS, type OfferPart, offerKindOf } from './list.ts';
export { onDeals } from './on-deals.ts';
export { type OfferRun, runOffer } from './run.ts';
export type { Turned } from './turning.ts';
export type * from './types.ts';

export interface Money {
  basis: Basis;
  runs: OfferRun[];
  offers: OfferResult[];
  /** By offer, in order. */
  implied: Implied[][];
}

/** All offers of the plan, side by side. */
export function moneyOf(plan: Plan, results: Results): Money {
  const basis = basisOf(plan, results);
  const runs = plan.offers.map((offer) => runOffer(basis, offer, plan.ownership));
  return {
    basis,
    runs,
    offers: runs.map((run) => resultOf(plan, run, results.reading)),
    implied: runs.map((run) => impliedOf(plan, run)),
  };
}

/** Turning points on units and sale price, with the lines of their pictures; of all offers, or of those named. */
export function turningOf(plan: Plan, money: Money, ids: readonly string[] | null = null): Turned {
  return turningPoints(plan, runsOf(money, ids));
}

function runsOf({ runs }: Money, ids: readonly string[] | null): OfferRun[] {
  return ids === null ? runs : runs.filter(({ offer }) => ids.includes(offer.id));
}

/** Factors of the plan's rates of sale at which growth is looked at. */
export const GROWTH_FACTORS = [0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3] as const;

/** Turning points on growth: the whole model is run again at each factor and for each halving; for a worker. */
export function growthOf(
  plan: Plan,
  results: Results,
  money: Money,
  ids: readonly string[] | null = null,
): Turned {
  const basisAt = (factor: number) => (factor === 1 ? money.basis : scaledBasis(plan, results, factor));
  return growthPoints({ plan, runs: runsOf(money, ids), basisAt, factors: GROWTH_FACTORS });
}
