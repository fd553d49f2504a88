// All of a claim that takes many runs of the model, and is done in the worker: what would have to be true, how the chance
// hangs on each account, what hangs on one customer, multiples of what runs today.
// Worked figure: 170 doors claimed where 8 are open today: 21.25 times as many.
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { type HavingToBe, haveToBeTrue } from './have-to-be-true.ts';
import { type LeaningOn, leaningOn } from './leaning-on.ts';
import { type ChanceOfAccount, chanceByAccount, type PlacedClaim, placeClaim } from './place-claim.ts';
import './sales-odds.ts';

export interface ClaimWork {
  /** Null where the claim can't be placed, or the plan at evidence can't be computed. */
  having: HavingToBe | null;
  byAccount: readonly ChanceOfAccount[];
  timesToday: number | null;
  /** Null for a plan without accounts. */
  leaning: LeaningOn | null;
}

/** `results` are those of the plan. */
export function claimWork(plan: Plan, results: Results): ClaimWork {
  const { placed } = placeClaim(plan, results.pass);
  return {
    having: placed && haveToBeTrue(plan, results, placed),
    byAccount: placed === null ? [] : chanceByAccount(plan, placed),
    timesToday: placed && timesToday(plan, placed),
    leaning: leaningOn(plan, results),
  };
}

/**
 * Doors over those open today; units and revenue a week, on average from the plan's first day to the date, over those of a
 * week today. Null where what runs today was not said, or is nothing.
 */
export function timesToday({ promise: { runRate } }: Plan, { claim, sales }: PlacedClaim): number | null {
  if (runRate === null) return null;
  const amount = Number(claim.amount);
  const today = { doors: runRate.doors, units: runRate.unitsPerWeek, revenue: runRate.revenueAmountPerWeek }[
    claim.of
  ];
  const now = Number(today ?? 0);
  if (!(now > 0)) return null;
  if (sales === null) return amount / now;
  return sales.weeks === 0 ? null : amount / sales.weeks / now;
}
