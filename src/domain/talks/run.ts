// The model as the talks ask it: one account's deal without the weekly pass, or the whole plan with it. A plan that
// can't be computed comes back as its problems. Store stock only matters to the retailer's side, so the deal goes without.
// Worked figure: ten doors at 6 a week and 1.60 a unit come to 4,992 in the first year.
import { dealFor } from '../deals/index.ts';
import type { DealResult } from '../deals/types.ts';
import { evaluate } from '../evaluate.ts';
import { ladderFor } from '../ladder/ladder.ts';
import type { LadderResult } from '../ladder/types.ts';
import { minorDigitsOf } from '../money/currency.ts';
import type { Account, Plan } from '../plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from '../problems.ts';
import type { Results } from '../results.ts';
import type { Say } from '../verdicts/say.ts';

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
  if (!account) return trouble(accountUnknown(accountId));
  const minorDigits = minorDigitsOf(plan.currency);
  if (minorDigits === null) {
    const expected = 'a currency code of ISO 4217, like "USD"';
    return trouble({ code: 'currency-unknown', path: 'currency', got: plan.currency, expected });
  }
  const ladders: LadderResult[] = [];
  const problems: Problem[] = [];
  for (const listing of account.listings) {
    const item = plan.items.find(({ id }) => id === listing.itemId);
    if (!item) throw new Error(`account ${account.id} lists an item that is not in the plan`);
    const ladder = ladderFor({ plan, account, listing, item });
    if (ladder.ok) ladders.push(ladder.value);
    else problems.push(...ladder.problems);
  }
  if (problems.length > 0) return { ok: false, problems };
  const storeStockMeans = account.listings.map(() => null);
  const deal = dealFor({ plan, account, ladders, storeStockMeans, minorDigits });
  return fine({ plan, account, ladders, deal, minorDigits });
}

export function accountUnknown(accountId: string): Problem {
  return {
    code: 'reference-unknown',
    path: 'accounts',
    got: accountId === '' ? 'an empty text' : accountId.slice(0, 80),
    expected: 'the id of an account of this plan',
  };
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
};

/** The plan with another state of one account. */
export function withAccount(plan: Plan, account: Account): Plan {
  return { ...plan, accounts: plan.accounts.map((each) => (each.id === account.id ? account : each)) };
}
