// How many doors will be open in a week, from how far each account is agreed: what is open now, and what its waves open if
// they come, so many weeks late or not at all. Doors are those that sell: voids, attrition and planned closings as planned.
// Worked figure: 40 doors open, 100 more by then at a chance of 0.6: 40 or 140, expected 100.
import { dayNumber } from '../calendar.ts';
import type { Account, Plan } from '../plan/index.ts';
import { doorsIn, openingsOf, restartsByCuts } from '../rollout/cohorts.ts';
import { type DoorOdds, expectedDoors, type Fate, meanOf, sharedOdds } from './door-odds.ts';
import { chanceOf, slipShares } from './rungs.ts';

export interface AccountDoors extends Fate {
  accountId: string;
  /** Open if every wave comes on time. */
  planned: number;
  /** Mean of what may be open; those of all accounts add up to the mean of the plan. */
  expected: number;
  /** All of it that the distribution depends on, as text. */
  key: string;
}

export interface DoorsThen {
  /** Weeks of the plan, from 0. */
  week: number;
  accounts: readonly AccountDoors[];
  odds: DoorOdds;
  expected: number;
  /** Open if everything comes on time. */
  planned: number;
}

/** The week of a plan that a date lies in; below 0 before its first day. */
export function weekOfDate(plan: Pick<Plan, 'startDate'>, isoDate: string): number {
  return Math.floor((dayNumber(isoDate) - dayNumber(plan.startDate)) / 7);
}

/** Whether anybody has said how far an account is agreed, or doors are open already. */
export function hasDoorEvidence({ accounts }: Plan): boolean {
  return accounts.some(({ standing, runningDoors }) => standing !== null || runningDoors.length > 0);
}

/** Doors of all accounts in a week from 0, which may lie past the plan's last. */
export function doorsThen(plan: Plan, week: number): DoorsThen {
  const shared = Number(plan.promise.spreads.sharedRate);
  const accounts = plan.accounts.map((account) => accountDoors(account, week, shared));
  const odds = oddsOf(accounts, shared);
  return {
    week,
    accounts,
    odds,
    expected: expectedDoors(odds),
    planned: accounts.reduce((sum, { planned }) => sum + planned, 0),
  };
}

const known = new WeakMap<Account, AccountDoors & { week: number; shared: number }>();

/** Doors of one account in a week from 0. Most edits leave most accounts as they are: the last week asked for is kept. */
function accountDoors(account: Account, week: number, shared: number): AccountDoors {
  const before = known.get(account);
  if (before?.week === week && before.shared === shared) return before;
  const chance = chanceOf(account);
  const slips = slipShares(account);
  const without = doorsOpen({ ...account, waves: [] }, week);
  const ifLate = slips.map((_, slip) => doorsOpen(later(account, slip), week));
  const fate = { chance, slips, ifLate, without };
  const doors = {
    accountId: account.id,
    week,
    shared,
    ...fate,
    planned: ifLate[0] ?? 0,
    expected: meanOf(fate, shared),
    key: JSON.stringify([chance, slips, ifLate, without]),
  };
  known.set(account, doors);
  return doors;
}

/** The account with every wave so many weeks later; planned closings stay where they are. */
export function later(account: Account, weeks: number): Account {
  if (weeks === 0) return account;
  return { ...account, waves: account.waves.map((wave) => ({ ...wave, openWeek: wave.openWeek + weeks })) };
}

/** Doors of an account that sell in a week, as the weekly pass counts them. */
export function doorsOpen(account: Account, week: number): number {
  if (week >= (account.cutWeek ?? Number.POSITIVE_INFINITY)) return 0;
  const openings = openingsOf(account, week + 1);
  const cuts = account.cuts.filter((cut) => cut.week <= week);
  const restarts = cuts.length === 0 ? [] : restartsByCuts({ ...account, cuts }, openings);
  const keep = 1 - Number(account.attritionYearlyRate);
  return openings.reduce((sum, opening, o) => sum + doorsIn(opening, restarts[o] ?? [], keep, week).doors, 0);
}

let last: { key: string; odds: DoorOdds } | null = null;

/** Other edits than of doors and standings need no new distribution: that of the last doors asked for is kept. */
function oddsOf(accounts: readonly AccountDoors[], shared: number): DoorOdds {
  const key = [shared, ...accounts.map((account) => account.key)].join();
  if (last?.key !== key) last = { key, odds: sharedOdds(accounts, shared) };
  return last.odds;
}
