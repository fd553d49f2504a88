// The claim placed, as the view shows it: the ruler's figures and the sentences under it, from what the model says.
// Worked example: 170 doors claimed, 0 to 180 in 8 of 10 futures, half of them at least 159: "The claim lies above 55 % of
// futures."
// Claims of units and revenue are worked out by a part that the first screen does without.
import '../../domain/promise/sales-odds.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { chanceWords } from '../../domain/promise/chance-words.ts';
import { type NotPlaced, type PlacedClaim, placeClaim } from '../../domain/promise/place-claim.ts';
import type { Results } from '../../domain/results.ts';
import { amountWords } from '../../domain/verdicts/promise.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import type { RulerFigures } from './ruler.tsx';

export type Placed =
  | { why: NotPlaced; claim: PlacedClaim | null }
  | { why: null; claim: PlacedClaim; ruler: RulerFigures; sentences: string[] };

export function placedOf(plan: Plan, results: Results, say: ScreenSay): Placed {
  const placing = placeClaim(plan, results.pass);
  if (placing.placed === null) return { why: placing.why, claim: null };
  const { placed } = placing;
  return {
    why: null,
    claim: placed,
    ruler: rulerOf(plan, placed),
    sentences: sentencesOf(plan, placed, say),
  };
}

function rulerOf(plan: Plan, { claim, at, planned, expected, chance }: PlacedClaim): RulerFigures {
  return {
    of: claim.of,
    low80: at(0.1),
    high80: at(0.9),
    low95: at(0.025),
    high95: at(0.975),
    middle: at(0.5),
    expected,
    chance,
    claimed: Number(claim.amount),
    planned,
    today: claim.of === 'doors' ? (plan.promise.runRate?.doors ?? null) : null,
  };
}

/** Less than this is a matter of rounding. */
const SURELY = 1e-9;

function sentencesOf(plan: Plan, placed: PlacedClaim, say: ScreenSay): string[] {
  const { claim, percentile, planned } = placed;
  const { promiseFailsBelowRate: fails, promiseTightBelowRate: tight } = plan.thresholds;
  const lines = [1 - Number(fails), 1 - Number(tight)];
  const above = chanceWords(percentile, say.percent, lines).replace('over', 'more than');
  const amount = Number(claim.amount);
  const text = (value: number) => amountWords(plan, claim.of, value, say);
  const sentences = [
    percentile > 1 - SURELY
      ? 'No future that the evidence supports reaches the claim.'
      : percentile < SURELY
        ? 'Every future that the evidence supports reaches the claim.'
        : `The claim lies above ${above} of futures.`,
  ];
  if (planned < amount)
    sentences.push(`Even with everything on time the plan itself comes to ${text(planned)} by then.`);
  return sentences;
}

/** How many times of what runs today a claim asks for; null where that was not said. */
export function timesTodayText(plan: Plan, times: number | null, say: ScreenSay): string | null {
  const { claim, runRate } = plan.promise;
  if (times === null || claim === null || runRate === null) return null;
  const text = say.number(times >= 10 ? Math.round(times) : Math.round(times * 10) / 10);
  const today = `of ${say.date(runRate.asOf)}`;
  if (claim.of === 'doors') return `It is ${text} times the doors ${today}.`;
  return `On average it is ${text} times the ${claim.of === 'units' ? 'units' : 'revenue'} a week ${today}.`;
}
