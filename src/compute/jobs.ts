// The jobs themselves, without a worker around them, so that tests and the worker run the same code.
// Worked example: jobAnswer({ kind: 'leastOpeningCash', plan }) runs the pass four times and returns the amount.
import { answerSolves, liftsFrom } from '../domain/answers/index.ts';
import { isoDateOf } from '../domain/calendar.ts';
import { evaluate, type SayFor } from '../domain/evaluate.ts';
import { landedParts } from '../domain/ladder/landed.ts';
import { lenderTrials } from '../domain/lender/index.ts';
import { basesOfDraws, drawOffers, growthOf, moneyOf } from '../domain/offers/index.ts';
import type { DrawnOffers } from '../domain/offers/types.ts';
import type { Plan } from '../domain/plan/index.ts';
import { fine, type Outcome } from '../domain/problems.ts';
import { claimWork } from '../domain/promise/claim-work.ts';
import { chancesFor, readinessFor, slipCostsOf } from '../domain/readiness/index.ts';
import type { Results } from '../domain/results.ts';
import { leastOpeningCash, mostDoors, type SolveArgs } from '../domain/rollout/solve.ts';
import { BESIDE_GUESSES, besideOffers } from '../domain/talks/beside.ts';
import { countersFor, worthOf } from '../domain/talks/index.ts';
import { leansOn } from '../domain/verdicts/leans-on.ts';
import { plainSay } from '../domain/verdicts/say.ts';
import type { Answers, Job } from './protocol.ts';

/** Sentences made here are never shown; the page has its own words. */
const sayFor: SayFor = ({ minorDigits, startDay }) => plainSay({ minorDigits, startDay, dateOf: isoDateOf });

export function jobAnswer(job: Job): Outcome<Answers[keyof Answers]> {
  if (job.kind === 'counters') return countersFor(job.args);
  if (job.kind === 'worth') return worthOf(job.args);
  if (job.kind === 'beside') return besideOffers({ ...job, guesses: BESIDE_GUESSES });
  if (job.kind === 'readyChances') return fine(chancesFor(job.plan, job.today));
  const evaluated = evaluate(job.plan, sayFor);
  if (!evaluated.ok) return evaluated;
  const results = evaluated.value;
  if (job.kind === 'cashNeed') {
    return fine({ amount: results.reading.cashNeed, week: results.reading.cashNeedWeek });
  }
  if (job.kind === 'lenderTrials') return fine(lenderTrials(job.plan, results, job.week));
  if (job.kind === 'slipCosts') {
    return fine(slipCostsOf(job.plan, results, readinessFor(job.plan, job.today, job.extraDays)));
  }
  if (job.kind === 'lifts') return fine(liftsFrom(job.plan, results));
  if (job.kind === 'answerSolves') return fine(answerSolves(job.plan, results));
  if (job.kind === 'offerGrowth')
    return fine(growthOf(job.plan, results, moneyOf(job.plan, results), job.ids));
  if (job.kind === 'offerDraws') return fine(offerDraws(job.plan, results, job.from));
  if (job.kind === 'offerBases') return fine(basesOfDraws({ plan: job.plan, results }, job.draws));
  if (job.kind === 'claimWork') return fine(claimWork(job.plan, results));
  if (job.kind === 'leansOn') return fine(leansOn({ plan: job.plan, results, sayFor }));
  const args: SolveArgs = {
    plan: job.plan,
    ladders: results.ladders,
    landed: landedParts(job.plan.items),
    minorDigits: results.minorDigits,
  };
  return fine(job.kind === 'mostDoors' ? mostDoors(args, job.accountId) : leastOpeningCash(args));
}

/** Long enough that making the plan ready counts for little, short enough for whatever waits behind it. */
const SLICE_MS = 150;

function offerDraws(plan: Plan, results: Results, from: number): DrawnOffers[] {
  const until = performance.now() + SLICE_MS;
  return drawOffers({ plan, results }, from, () => performance.now() < until);
}
