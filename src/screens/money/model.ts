// What the Money view is drawn from: every offer on the plan, and where the better of two changes, made anew with each edit
// and in its frame. What needs the whole model run again (growth, other futures) follows from the worker.
// Worked example: three offers are three results in the plan's order, and turning points for three pairs.
import { useMemo } from 'preact/hooks';
import { rangeFor } from '../../app/range.ts';
import type { Running } from '../../app/session.ts';
import {
  type Implied,
  type Money,
  moneyOf,
  type Needs,
  type OfferResult,
  turningOf,
} from '../../domain/offers/index.ts';
import type { Turned } from '../../domain/offers/turning.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { RivalOffer } from '../../domain/plan/offer-terms.ts';
import type { Results } from '../../domain/results.ts';
import { type Shown, useSession } from '../shared/session-context.ts';
import { useFollowing } from '../shared/use-following.ts';

export interface MoneyModel {
  plan: Plan;
  results: Results;
  money: Money;
  turned: Turned;
}

/** One offer with what it comes to. */
export interface ShownOffer {
  offer: RivalOffer;
  result: OfferResult;
  implied: readonly Implied[];
}

/** `needs`: of a range, where one was drawn for these results. */
export function moneyModel(plan: Plan, results: Results, needs: Needs | null): MoneyModel {
  const money = moneyOf(plan, results, needs);
  return { plan, results, money, turned: turningOf(plan, money) };
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

export type OfferFutures = NonNullable<Awaited<Running<'offerFutures'>['answer']>>;

/** Growth and other futures, when the worker is through; `older`: they are of an earlier state of the plan. */
export function useOfferFutures(plan: Plan): { answer: OfferFutures | null; older: boolean } {
  const job = useMemo(() => ({ kind: 'offerFutures' as const, plan }), [plan]);
  const followed = useFollowing(job);
  return { answer: followed?.answer ?? null, older: followed !== null && followed.job !== job };
}
