// What the Money view is drawn from: every offer on the plan, made anew with each edit and in its frame. What needs the whole model run again (growth, other futures) follows from the worker.
// Worked example: three offers are three results in the plan's order.
import { useEffect, useMemo } from 'preact/hooks';
import { type OfferDrawsView, offerDrawsFor } from '../../app/offer-draws.ts';
import { rangeFor } from '../../app/range.ts';
import {
  type Implied,
  type Money,
  moneyOf,
  type Needs,
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
}

/** One offer with what it comes to. */
export interface ShownOffer {
  offer: RivalOffer;
  result: OfferResult;
  implied: readonly Implied[];
}

/** `needs`: of a range, where one was drawn for these results. */
export function moneyModel(plan: Plan, results: Results, needs: Needs | null): MoneyModel {
  return { plan, results, money: moneyOf(plan, results, needs) };
}

export function useMoney({ plan, results }: Shown): MoneyModel {
  const { range, older } = rangeFor(useSession()).view.value;
  const needs = range === null || older ? null : range.need;
  return useMemo(() => moneyModel(plan, results, needs), [plan, results, needs]);
}

export function shownOffers({ plan, money }: MoneyModel): ShownOffer[] {
  return plan.offers.flatMap((offer, at) => {
    const result = money.offers[at];
    return result === undefined ? [] : [{ offer, result, implied: money.implied[at] ?? [] }];
  });
}

/** Growth, or why there is none, when the worker is through; null before. It may be of an earlier state of the plan. */
export function useOfferGrowth(plan: Plan) {
  const job = useMemo(() => ({ kind: 'offerGrowth' as const, plan }), [plan]);
  return useFollowing(job)?.answer ?? null;
}

/** Has rival offers drawn in other futures while the view is open. */
export function useDrawing(): void {
  const work = offerDrawsFor(useSession());
  useEffect(() => work.follow(), [work]);
}

export function useOfferDraws(): OfferDrawsView {
  return offerDrawsFor(useSession()).view.value;
}
