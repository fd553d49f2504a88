// Plan to results: ladders, then the weekly pass, then deals (they need the shelf stock of the pass), then verdicts.
// Pure, and the only way results are made: the app, the command line and the tests all call this.
import { dayNumber } from './calendar.ts';
import { dealFor } from './deals/index.ts';
import { ladderFor } from './ladder/ladder.ts';
import { landedOf } from './ladder/landed.ts';
import type { LadderResult, Landed } from './ladder/types.ts';
import { sizeProblems, sumsTooLarge } from './limits.ts';
import { minorDigitsOf } from './money/currency.ts';
import type { Item, Plan } from './plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from './problems.ts';
import type { Results } from './results.ts';
import { isTooLarge } from './rollout/exact.ts';
import { type Rollout, rollOut, shelfStockMeans } from './rollout/index.ts';
import { verdictsOf } from './verdicts/index.ts';
import type { Say } from './verdicts/say.ts';

export type SayFor = (args: { currency: string; minorDigits: number; startDay: number }) => Say;

/** All results of a plan that has passed its rules; problems where a rung, a currency or a size can't be computed. */
export function evaluate(plan: Plan, sayFor: SayFor): Outcome<Results> {
  const minorDigits = minorDigitsOf(plan.currency);
  if (minorDigits === null) {
    return trouble({
      code: 'currency-unknown',
      path: 'currency',
      got: plan.currency,
      expected: 'a currency code of ISO 4217, like "USD"',
    });
  }
  const parts = laddersOf(plan);
  if (!parts.ok) return parts;
  const sizes = sizeProblems(plan);
  if (sizes.length > 0) return trouble(...sizes);
  const rolled = rolledOut(plan, parts.value, minorDigits);
  if (!rolled.ok) return rolled;
  const { pass, reading, free, compiled } = rolled.value;
  const { ladders } = parts.value;
  const means = shelfStockMeans(free);
  let listing = 0;
  const deals = plan.accounts.map((account) => {
    const from = listing;
    listing += account.listings.length;
    return dealFor({
      plan,
      account,
      ladders: ladders.slice(from, listing),
      storeStockMeans: means.slice(from, listing),
      minorDigits,
    });
  });
  const say = sayFor({ currency: plan.currency, minorDigits, startDay: dayNumber(plan.startDate) });
  const verdicts = verdictsOf({ plan, ladders, deals, pass, reading, minorDigits, say });
  return fine({
    currency: plan.currency,
    minorDigits,
    ladders,
    deals,
    pass,
    reading,
    verdicts,
    compiled,
    free,
  });
}

interface Parts {
  ladders: LadderResult[];
  landed: Landed[];
}

function laddersOf(plan: Plan): Outcome<Parts> {
  const problems: Problem[] = [];
  const landed: Landed[] = [];
  for (const item of plan.items) {
    const outcome = landedOf(item);
    if (outcome.ok) landed.push(outcome.value);
    else problems.push(...outcome.problems);
  }
  if (problems.length > 0) return { ok: false, problems };
  const items = new Map(plan.items.map((item) => [item.id, item]));
  const ladders: LadderResult[] = [];
  for (const account of plan.accounts) {
    for (const listing of account.listings) {
      const outcome = ladderFor({ plan, account, listing, item: items.get(listing.itemId) as Item });
      if (outcome.ok) ladders.push(outcome.value);
      else problems.push(...outcome.problems);
    }
  }
  return problems.length > 0 ? { ok: false, problems } : fine({ ladders, landed });
}

function rolledOut(plan: Plan, parts: Parts, minorDigits: number): Outcome<Rollout> {
  const args = { plan, ...parts, minorDigits };
  try {
    return fine(rollOut(args));
  } catch (error) {
    if (!isTooLarge(error)) throw error;
    return trouble(sumsTooLarge(minorDigits));
  }
}
