// Counters that are not a price, each valued by the model at the deal on the table: a test in some doors first, weeks on
// the shelf that are guaranteed, slotting against reorders, capped spoils, proof for deductions, a window for one chain.
// Worked figure: slotting of 2,500 spread over the first year's 3,120 units is 0.8013 a unit, and no loss before it sells.
import type { Plan } from '../plan/index.ts';
import { fine, type Outcome, type Problem } from '../problems.ts';
import { reordersOffer, windowAskedOffer, windowGivenOffer } from './beside-cash.ts';
import { proofOffer, spoilsCapOffer } from './beside-deductions.ts';
import { guaranteeOffer, testOffer } from './beside-doors.ts';
import type { BesideArgs, BesideGuesses, BesideOffer } from './beside-types.ts';
import { oneDeal, wholePlan } from './run.ts';

export { BESIDE_GUESSES, type BesideGuesses, type BesideOffer } from './beside-types.ts';
export { droppedAtReview, type ReviewLoss } from './review.ts';

/**
 * All of them, in the order above; one that can't be valued says why. Runs the weekly pass up to three times.
 * Problems: an unknown account, or a plan that can't be computed, as it stands or with a counter in it.
 */
export function besideOffers(args: {
  /** With what is on the table in it. */
  plan: Plan;
  accountId: string;
  reviewWeeks: number;
  guesses: BesideGuesses;
}): Outcome<readonly BesideOffer[]> {
  const now = oneDeal(args.plan, args.accountId);
  if (!now.ok) return now;
  const whole = wholePlan(args.plan);
  if (!whole.ok) return whole;
  const at: BesideArgs = { now: now.value, reviewWeeks: args.reviewWeeks, guesses: args.guesses };
  return inOne([
    testOffer(at),
    fine(guaranteeOffer(at)),
    reordersOffer(at, whole.value),
    spoilsCapOffer(at),
    fine(proofOffer(at)),
    windowGivenOffer(at, whole.value),
    fine(windowAskedOffer(at)),
  ]);
}

function inOne(outcomes: readonly Outcome<BesideOffer>[]): Outcome<readonly BesideOffer[]> {
  const problems: Problem[] = outcomes.flatMap((each) => (each.ok ? [] : each.problems));
  return problems.length > 0
    ? { ok: false, problems }
    : fine(outcomes.flatMap((each) => (each.ok ? [each.value] : [])));
}
