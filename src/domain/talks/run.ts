// The model as the talks ask it: one account's deal without the weekly pass, or the whole plan with it. A plan that
// can't be computed comes back as its problems. Store stock only matters to the retailer's side, so the deal goes without.
// Worked figure: ten doors at 6 a week and 1.60 a unit come to 4,992 in the first year.
import { dealFor } from '../deals/index.ts';
import type { DealResult } from '../deals/types.ts';
import { evaluate } from '../evaluate.ts';
import type { LadderResult } from '../ladder/types.ts';
import { minorDigitsOf } from '../money/currency.ts';
import type { Account, Plan } from '../plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from '../problems.ts';
import type { Results } from '../results.ts';
import type { Say } from '../verdicts/say.ts';
import { ladderOf, unknownAccount } from './prices.ts';

export interface OneDeal {
  plan: Plan;
  account: Account;
  /** In listing order. */
  ladders: readonly LadderResult[];
  deal: DealResult;
  minorDigits: number;
}

/** One account's deal, no pass run. Problems: an unknown account, a currency or a ladder that can't be computed. */
export function oneDeal(plan: Plan, accountId: string): Outcome<OneDeal> {
  const account = plan.accounts.find(({ id }) => id === accountId);
  if (!account) return trouble(unknownAccount(accountId));
  const minorDigits = minorDigitsOf(plan.currency);
  if (minorDigits === null) {
    const expected = 'a currency code of ISO 4217, like "USD"';
    return trouble({ code: 'currency-unknown', path: 'currency', got: plan.currency, expected });
  }
  const ladders: LadderResult[] = [];
  const problems: Problem[] = [];
  for (const listing of account.listings) {
    const ladder = ladderOf({ plan, account, minorDigits }, listing);
    if (ladder.ok) ladders.push(ladder.value);
    else problems.push(...ladder.problems);
  }
  if (problems.length > 0) return { ok: false, problems };
  const storeStockMeans = account.listings.map(() => null);
  const deal = dealFor({ plan, account, ladders, storeStockMeans, minorDigits });
  return fine({ plan, account, ladders, deal, minorDigits });
}

/** The whole plan with its weekly pass; its verdicts carry no sentences, nobody reads them here. */
export function wholePlan(plan: Plan): Outcome<Results> {
  return evaluate(plan, () => UNSAID);
}

const unsaid = () => '';
const UNSAID: Say = {
  money: unsaid,
  price: unsaid,
  percent: unsaid,
  number: unsaid,
  count: unsaid,
  week: unsaid,
  date: unsaid,
};
