/**
 * What the growth test runs inside a real browser, in one page and one run: whole recalculations of plans from small to
 * large, the same chains and terms in each. Medians, milliseconds.
 */
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { setAt } from '../../src/domain/plan/path.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { bigPlan } from '../support/big-plan.ts';

export interface Size {
  weeks: number;
  accounts: number;
  items: number;
  milliseconds: number;
}

export interface Growth {
  sizes: Size[];
  endCash: number[];
}

const WEEKS = [52, 78, 104, 156, 208];
const ACCOUNTS = [4, 8, 12];
const ITEMS = [1, 2, 3];

/** The big plan cut down: doors still open in the same weeks, so that every size is busy from week 6 on. */
function cutTo(weeks: number, accounts: number, items: number): Plan {
  const plan = bigPlan();
  const kept = plan.items.slice(0, items);
  const ids = new Set(kept.map(({ id }) => id));
  return {
    ...plan,
    horizonWeeks: weeks,
    items: kept,
    accounts: plan.accounts.slice(0, accounts).map((account) => ({
      ...account,
      listings: account.listings.filter(({ itemId }) => ids.has(itemId)),
    })),
  };
}

function recalculate(plan: Plan): number {
  const results = evaluate(plan, ({ minorDigits, startDay }) =>
    plainSay({ minorDigits, startDay, dateOf: isoDateOf }),
  );
  if (!results.ok) throw new Error(JSON.stringify(results.problems));
  return results.value.reading.endCash;
}

function median(times: number[]): number {
  const sorted = [...times].sort((x, y) => x - y);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

export function run(): Growth {
  const plans = WEEKS.flatMap((weeks) =>
    ACCOUNTS.flatMap((accounts) => ITEMS.map((items) => ({ weeks, accounts, items }))),
  ).map((size) => ({ ...size, plan: cutTo(size.weeks, size.accounts, size.items), times: [] as number[] }));
  const endCash = plans.map(({ plan }) => recalculate(plan));
  for (let warm = 0; warm < 20; warm++) recalculate(bigPlan());
  // Round after round, so that a slow spell of the machine falls on all sizes alike.
  for (let round = 0; round < 15; round++) {
    for (const each of plans) {
      const changed = setAt(each.plan, 'accounts/0/listings/0/unitsPerStoreWeek', String(4 + round / 10));
      const start = performance.now();
      recalculate(changed);
      each.times.push(performance.now() - start);
    }
  }
  const sizes = plans.map(({ weeks, accounts, items, times }) => ({
    weeks,
    accounts,
    items,
    milliseconds: median(times),
  }));
  return { sizes, endCash };
}

Object.assign(globalThis, { firstfillGrowthBench: run });
