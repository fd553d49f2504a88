// What the Money view is drawn from: every offer on the plan, made anew with each edit and in its frame. What needs the
// whole model run again (growth, other futures) follows from the worker.
// Worked example: three offers are three results in the plan's order.
import { useEffect, useMemo } from 'preact/hooks';
import { type OfferDrawsView, offerDrawsFor } from '../../app/offer-draws.ts';
import {
  type Cover,
  coversIn,
  type Futures,
  type Implied,
  type Money,
  moneyOf,
  type OfferOdds,
  type OfferResult,
} from '../../domain/offers/index.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { RivalOffer } from '../../domain/plan/offer-terms.ts';
import type { Results } from '../../domain/results.ts';
import { type Shown, useSession } from '../shared/session-context.ts';
import { useFollowing } from '../shared/use-following.ts';

export interface MoneyModel {
  plan: Plan;
  results: Results;
  money: Money;
  /** Of this very plan; null while they are drawn, and where they can't be. */
  futures: Futures | null;
  isWaiting: boolean;
}

/** One offer with what it comes to. */
export interface ShownOffer {
  offer: RivalOffer;
  result: OfferResult;
  implied: readonly Implied[];
  /** In other futures. */
  drawn: { covers: readonly Cover[]; odds: OfferOdds; draws: number } | null;
  /** They are still to come. */
  isWaiting: boolean;
}

export function useMoney({ plan, results }: Shown): MoneyModel {
  const { found, older, trouble } = useOfferDraws();
  const money = useMemo(() => moneyOf(plan, results), [plan, results]);
  const futures = older ? null : (found?.futures ?? null);
  const isWaiting = futures === null && trouble === '';
  return useMemo(
    () => ({ plan, results, money, futures, isWaiting }),
    [plan, results, money, futures, isWaiting],
  );
}

export function shownOffers({ plan, money, futures, isWaiting }: MoneyModel): ShownOffer[] {
  return plan.offers.flatMap((offer, at): ShownOffer[] => {
    const result = money.offers[at];
    if (result === undefined) return [];
    const odds = futures?.offers.find(({ offerId }) => offerId === offer.id);
    const drawn =
      futures === null || odds === undefined
        ? null
        : { covers: coversIn(futures, offer), odds, draws: futures.draws };
    return [{ offer, result, implied: money.implied[at] ?? [], drawn, isWaiting }];
  });
}

/** Growth of a pair, or why there is none, when the worker is through; null before. `older`: of the plan before an edit. */
export function useOfferGrowth(plan: Plan, one: string, other: string) {
  const job = useMemo(
    () => ({ kind: 'offerGrowth' as const, plan, ids: [one, other] as const }),
    [plan, one, other],
  );
  const followed = useFollowing(job);
  const isPair = followed?.job.ids.every((id) => id === one || id === other) ?? false;
  return followed !== null && isPair ? { answer: followed.answer, older: followed.job.plan !== plan } : null;
}

/** Has rival offers drawn in other futures while the view is open. */
export function useDrawing(): void {
  const work = offerDrawsFor(useSession());
  useEffect(() => work.follow(), [work]);
}

export function useOfferDraws(): OfferDrawsView {
  return offerDrawsFor(useSession()).view.value;
}
