// The plan with things going wrong, each a run of the whole weekly pass: a fifth less sold and everybody paying later, one
// account failing, one dropping us at its first review. Nobody knows beforehand: goods are bought on the plan's forecast
// until it happens (for the fifth less sold, throughout).
// Worked figure: Corner owes 42,000 in week 30 and fails: lowest cash 18,000 instead of 51,000.
import { atRate } from '../answers/closing.ts';
import { dec } from '../money/decimal.ts';
import type { Account, Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import type { Compiled } from '../rollout/compiled.ts';
import { type PassArgs, runPass } from '../rollout/pass.ts';
import { readPass } from '../rollout/reading.ts';
import type { RolloutReading } from '../rollout/types.ts';
import { droppedAtReview } from '../talks/review.ts';
import { wholePlan } from '../talks/run.ts';
import type { CustomerFailure, Downside, ReviewDrop, Trial } from './types.ts';

const FEWER_HUNDREDTHS = 80;
const LATER_DAYS = 15;
/** Our own receivables of before come whole weeks later, rounded up as all collections are. */
const LATER_WEEKS = 3;
const MOST_DAYS = 365;
/** Chains look at a new item after half a year; common practice, no source. */
export const REVIEW_WEEKS = 26;

export function trialOf(reading: RolloutReading): Trial {
  return {
    cashNeed: reading.cashNeed,
    cashNeedWeek: reading.cashNeedWeek,
    lowestCash: reading.lowestCash,
    lowestWeek: reading.lowestWeek,
    endCash: reading.endCash,
    unitsLost: reading.lostUnits,
  };
}

/** Sales a fifth lower everywhere, beside the plan too, and everybody paying 15 days later. */
export function downsideOf(plan: Plan, results: Results): Downside | null {
  const there = wholePlan(worsened(plan));
  if (!there.ok) return null;
  const run = { compiled: there.value.compiled, shippable: results.free.shippable, recorder: null };
  return { plan: trialOf(results.reading), there: ranTrial(plan, run) };
}

/** The plan itself with those sales and those days. */
export function worsened(plan: Plan): Plan {
  const fewer = atRate(plan, FEWER_HUNDREDTHS);
  const { baseSales, openingBooks } = plan.business;
  const receivables = openingBooks.receivables.map((each) => ({ ...each, week: each.week + LATER_WEEKS }));
  const later = (days: number) => Math.min(MOST_DAYS, days + LATER_DAYS);
  const base = baseSales && {
    ...baseSales,
    revenueAmountPerWeek: dec(baseSales.revenueAmountPerWeek)
      .times(FEWER_HUNDREDTHS)
      .div(100)
      .toDecimalPlaces(4)
      .toFixed(),
    collectDays: later(baseSales.collectDays),
  };
  return {
    ...fewer,
    accounts: fewer.accounts.map((account) => paidLater(account, later)),
    business: { ...plan.business, baseSales: base, openingBooks: { ...openingBooks, receivables } },
  };
}

function paidLater(account: Account, later: (days: number) => number): Account {
  const { terms } = account;
  const earlyDiscount = terms.earlyDiscount && {
    ...terms.earlyDiscount,
    days: later(terms.earlyDiscount.days),
  };
  return { ...account, terms: { ...terms, latenessDays: later(terms.latenessDays), earlyDiscount } };
}

/**
 * The account that owes most at a week's end fails after it; where nobody owes anything then, the one that owes most at
 * any week's end, then. Null where nobody ever does.
 */
export function failureOf(plan: Plan, results: Results, week: number): CustomerFailure | null {
  const { accounts } = results.pass;
  const owed = accounts.map(({ receivables }) => receivables[week] ?? 0);
  const most = Math.max(0, ...owed);
  if (most > 0) return failed(plan, results, { a: owed.indexOf(most), week });
  let worst = { a: -1, week: 0, amount: 0 };
  accounts.forEach(({ receivables }, a) => {
    receivables.forEach((amount, w) => {
      if (amount > worst.amount) worst = { a, week: w, amount };
    });
  });
  return failed(plan, results, worst);
}

function failed(plan: Plan, results: Results, at: { a: number; week: number }): CustomerFailure | null {
  const account = plan.accounts[at.a];
  return account ? failureAt(plan, results, { accountId: account.id, week: at.week }) : null;
}

/** What an account owes at the end of a week is never paid; its doors are gone from the next week on. */
export function failureAt(
  plan: Plan,
  results: Results,
  { accountId, week }: { accountId: string; week: number },
): CustomerFailure | null {
  const a = plan.accounts.findIndex(({ id }) => id === accountId);
  const cut = cutFrom(plan, [accountId], week + 1);
  if (cut === null || a < 0) return null;
  const accounts = cut.compiled.accounts.map((each, at) =>
    at === a ? { ...each, failsWeek: week + 1 } : each,
  );
  const compiled: Compiled = { ...cut.compiled, accounts };
  return {
    accountId,
    week,
    receivable: results.pass.accounts[a]?.receivables[week] ?? 0,
    plan: trialOf(results.reading),
    there: ranTrial(plan, { ...turningAt(results, cut, week + 1), compiled }),
  };
}

/** Each account dropping us half a year after its first opening, as far as that lies within the plan. */
export function dropsOf(plan: Plan, results: Results): ReviewDrop[] {
  return plan.accounts.flatMap((account) => {
    const { id: accountId, waves } = account;
    const first = Math.min(...waves.map(({ openWeek }) => openWeek));
    const week = first + REVIEW_WEEKS;
    if (!(week < Math.min(plan.horizonWeeks, account.cutWeek ?? plan.horizonWeeks))) return [];
    const loss = droppedAtReview(plan, accountId, REVIEW_WEEKS);
    const cut = cutFrom(plan, [accountId], week);
    if (!loss.ok || cut === null) return [];
    return [
      {
        accountId,
        reviewWeeks: loss.value.reviewWeeks,
        week,
        dealAmount: Math.round(loss.value.amount * 10 ** results.minorDigits),
        there: ranTrial(plan, turningAt(results, cut, week)),
      },
    ];
  });
}

/** Several accounts gone from a week on, bought for on the plan's forecast up to then; null where that can't be computed. */
export function droppedFrom(
  plan: Plan,
  results: Results,
  { accountIds, week }: { accountIds: readonly string[]; week: number },
): Trial | null {
  const cut = cutFrom(plan, accountIds, week);
  return cut && ranTrial(plan, turningAt(results, cut, week));
}

/** The plan with some accounts' doors gone from a week on. */
function cutFrom(plan: Plan, accountIds: readonly string[], week: number): Results | null {
  const accounts = plan.accounts.map((account) =>
    accountIds.includes(account.id)
      ? { ...account, cutWeek: Math.min(account.cutWeek ?? week, week) }
      : account,
  );
  const there = wholePlan({ ...plan, accounts });
  return there.ok ? there.value : null;
}

function turningAt(results: Results, there: Results, week: number): PassArgs {
  const turn = { week, shippable: there.free.shippable };
  return { compiled: there.compiled, shippable: results.free.shippable, recorder: null, turn };
}

function ranTrial(plan: Plan, run: PassArgs): Trial {
  const pass = runPass(run);
  const { business } = run.compiled;
  const bare = { ...run.compiled, business: { ...business, funding: [] } };
  const unfunded = business.funding.length === 0 ? pass : runPass({ ...run, compiled: bare });
  const { cashBufferWeeks: bufferWeeks } = plan.thresholds;
  return trialOf(readPass({ compiled: run.compiled, pass, unfunded, bufferWeeks }));
}
