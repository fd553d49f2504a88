/**
 * Doors: which open when, in how many of them it is on the shelf, and how many are left in a week, after attrition and
 * planned closings.
 * Worked figure: a wave of 25 doors, 10 a week, a fifth of them without it on the shelf: 10, 10 and 5 doors list it, 8, 8
 * and 4 sell it.
 */
import type { Account } from '../../../src/domain/plan/index.ts';
import type { Cohort } from './facts.ts';
import { millionths, nearest } from './numbers.ts';

/** In file order: running doors, then waves as listed, then by week. */
export function cohortsOf(account: Account, accountAt: number): Cohort[] {
  const cohorts = [
    ...account.runningDoors.map(({ ageWeeks, doors, unitsPerDoor }) =>
      cohort(account, accountAt, { openWeek: 0 - ageWeeks, authorised: doors, selling: doors, unitsPerDoor }),
    ),
    ...account.waves.flatMap((wave) => openings(account, accountAt, wave)),
  ];
  const cuts = account.cuts.map((cut, at) => ({ ...cut, at }));
  cuts.sort((a, b) => a.week - b.week || a.at - b.at);
  for (const { week, doors } of cuts) close(cohorts, week, doors);
  return cohorts;
}

function openings(account: Account, accountAt: number, wave: Account['waves'][number]): Cohort[] {
  const found: Cohort[] = [];
  let opened = 0;
  for (let openWeek = wave.openWeek; opened < wave.doors; openWeek++) {
    const authorised = Math.min(wave.doors - opened, wave.doorsPerWeek);
    const selling = sold(account, opened + authorised) - sold(account, opened);
    found.push(cohort(account, accountAt, { openWeek, authorised, selling, unitsPerDoor: null }));
    opened += authorised;
  }
  return found;
}

/** Of so many doors of a wave, those that have it on the shelf. */
function sold({ voidRate }: Account, authorised: number): number {
  return Number(nearest(BigInt(authorised) * (1_000_000n - millionths(voidRate)), 1_000_000n));
}

function cohort(
  account: Account,
  accountAt: number,
  doors: { openWeek: number; authorised: number; selling: number; unitsPerDoor: number | null },
): Cohort {
  const { openWeek, authorised, selling, unitsPerDoor } = doors;
  const isRunning = unitsPerDoor !== null;
  return {
    accountAt,
    account,
    openWeek,
    doorsAtOpening: selling,
    authorisedAtOpening: authorised,
    bases: [{ week: isRunning ? 0 : openWeek, authorised, selling }],
    isRunning,
    unitsPerDoor: unitsPerDoor ?? 0,
  };
}

/** So many doors close in a week, of the youngest cohorts that opened before it. */
function close(cohorts: readonly Cohort[], week: number, doors: number): void {
  let left = doors;
  const youngest = cohorts
    .map((each, at) => ({ each, at }))
    .filter(({ each }) => each.openWeek < week)
    .sort((a, b) => b.each.openWeek - a.each.openWeek || b.at - a.at);
  for (const { each } of youngest) {
    const listed = authorisedIn(each, week);
    const closed = Math.min(left, listed);
    if (closed === 0) continue;
    const selling = Number(nearest(BigInt(doorsIn(each, week)) * BigInt(listed - closed), BigInt(listed)));
    each.bases.push({ week, authorised: listed - closed, selling });
    left -= closed;
  }
}

/** Doors of a cohort that sell in a week; week -1 is the moment before the plan. */
export function doorsIn(cohort: Cohort, week: number): number {
  return leftIn(cohort, week, 'selling');
}

/** Doors of a cohort that list it in a week. */
export function authorisedIn(cohort: Cohort, week: number): number {
  return leftIn(cohort, week, 'authorised');
}

function leftIn(
  { account, openWeek, isRunning, bases }: Cohort,
  week: number,
  which: 'selling' | 'authorised',
) {
  if (isRunning && week < 0) return bases[0]?.[which] ?? 0;
  if (account.cutWeek !== null && week >= account.cutWeek) return 0;
  if (!isRunning && week < openWeek) return 0;
  const base = bases.filter((each) => each.week <= week).at(-1);
  if (!base) return 0;
  return Math.round(base[which] * (1 - Number(account.attritionYearlyRate)) ** ((week - base.week) / 52));
}
