// How much hangs on one customer, and on one way to the shelf: shares of revenue, units and doors, and the plan run again
// without the largest from a week on. Nobody knows beforehand: goods are bought on the plan's forecast until it happens.
// Worked figure: chains of 30, 30, 20 and 20 % of revenue have an index of 2,600, which is high.
import { droppedFrom, REVIEW_WEEKS, trialOf } from '../lender/trials.ts';
import type { Trial } from '../lender/types.ts';
import type { Account, Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { weekOfDate } from './doors.ts';
import { type Leaning, leaningOf } from './leaning.ts';

export const LEANING_BY = ['revenue', 'units', 'doors'] as const;
export type LeaningBy = (typeof LEANING_BY)[number];

export interface LeaningGroup {
  /** What the shares are of, in their order: an account each, or all accounts of one way to the shelf. */
  names: readonly string[];
  accountIds: readonly (readonly string[])[];
  by: Record<LeaningBy, Leaning>;
  /** Without the one with the largest revenue; null where there is none, or the plan can't be computed without it. */
  without: WithoutLargest | null;
}

export interface WithoutLargest {
  name: string;
  accountIds: readonly string[];
  /** The first week without its doors: half a year after its first opening, or after the plan's start. */
  week: number;
  plan: Trial;
  there: Trial;
}

export interface LeaningOn {
  accounts: LeaningGroup;
  /** By the first hand between us and the shelf; direct where there is none. */
  routes: LeaningGroup;
}

/** Revenue and units are those of the whole plan, doors those of the claim's week, or the last. Null without accounts. */
export function leaningOn(plan: Plan, results: Results): LeaningOn | null {
  if (plan.accounts.length === 0) return null;
  const each = plan.accounts.map((account) => ({ name: account.name, accounts: [account] }));
  const routes = new Map<string, Account[]>();
  for (const account of plan.accounts) {
    const name = routeOf(account);
    routes.set(name, [...(routes.get(name) ?? []), account]);
  }
  const ways = [...routes].map(([name, accounts]) => ({ name, accounts }));
  return { accounts: groupOf(plan, results, each), routes: groupOf(plan, results, ways) };
}

export const DIRECT = 'Direct';

function routeOf({ hands }: Account): string {
  return hands.length > 1 ? (hands[0]?.name ?? DIRECT) : DIRECT;
}

interface Part {
  name: string;
  accounts: readonly Account[];
}

function groupOf(plan: Plan, results: Results, parts: readonly Part[]): LeaningGroup {
  const { claim } = plan.promise;
  const last = results.pass.weeks - 1;
  const week = claim === null ? last : Math.max(0, Math.min(last, weekOfDate(plan, claim.byDate)));
  const amounts = (by: LeaningBy) =>
    parts.map(({ accounts }) =>
      accounts.reduce(
        (sum, { id }) =>
          sum +
          amountOf(
            results,
            plan.accounts.findIndex((a) => a.id === id),
            by,
            week,
          ),
        0,
      ),
    );
  const by = {
    revenue: leaningOf(amounts('revenue')),
    units: leaningOf(amounts('units')),
    doors: leaningOf(amounts('doors')),
  };
  const largest = by.revenue.largest === null ? undefined : parts[by.revenue.largest];
  return {
    names: parts.map(({ name }) => name),
    accountIds: parts.map(({ accounts }) => accounts.map(({ id }) => id)),
    by,
    without: largest === undefined ? null : withoutPart(plan, results, largest),
  };
}

function amountOf({ pass }: Results, a: number, by: LeaningBy, week: number): number {
  const account = pass.accounts[a];
  if (!account) return 0;
  if (by === 'doors') return account.doors[week] ?? 0;
  return (by === 'revenue' ? account.invoiced : account.sold).reduce((sum, each) => sum + each, 0);
}

function withoutPart(plan: Plan, results: Results, { name, accounts }: Part): WithoutLargest | null {
  const openings = accounts.flatMap(({ waves, runningDoors }) =>
    runningDoors.length > 0 ? [0] : waves.map(({ openWeek }) => openWeek),
  );
  const week = Math.min(...openings) + REVIEW_WEEKS;
  const ids = accounts.map(({ id }) => id);
  if (!(week < plan.horizonWeeks)) return null;
  const there = droppedFrom(plan, results, { accountIds: ids, week });
  return there && { name, accountIds: ids, week, plan: trialOf(results.reading), there };
}
