// Doors by week: openings, the part of them where we really are on the shelf, attrition, planned closings. None of it
// depends on what we can ship, so it is worked out once per plan. Worked figure: 100 doors that lose 6 % a year are
// round(100 x 0.94 ^ (26 / 52)) = 97 after half a year; 20 a week with a tenth void sell in 18 each week.
import { rateOf } from '../money/decimal.ts';
import { timesRate } from '../money/integer.ts';
import type { Account, Plan } from '../plan/index.ts';
import type { Cohort } from './compiled.ts';

/** What leaves at the end of a week is there at most this long after: doors are known so far past the reach. */
export const LONGEST_TRANSIT = 27;

/** How long before its doors open a cohort can matter: its fill leaves, its display is paid for, a depot stocks up. */
function leadOfOpening({ display, depot, terms, ordering }: Account): number {
  const toDepot = depot === null ? 0 : depot.transitWeeks + terms.transitWeeks + ordering.everyWeeks + 1;
  return Math.max(LONGEST_TRANSIT, display === null ? 0 : display.buildWeeks, toDepot);
}

/** Doors that open together, before their weeks are worked out. */
export interface Opening {
  openWeek: number;
  /** Doors that sell. */
  doors: number;
  /** Doors that list it: of these, some may never have it on the shelf. */
  authorised: number;
  wasOpen: boolean;
}

/** Openings of an account in file order, those before week `until`: doors already open first, then each wave by week. */
export function openingsOf(account: Account, until: number): Opening[] {
  const openings: Opening[] = account.runningDoors.map((group) => ({
    openWeek: -group.ageWeeks,
    doors: group.doors,
    authorised: group.doors,
    wasOpen: true,
  }));
  const selling = sellingOf(account);
  for (const wave of account.waves) {
    let opened = 0;
    for (let w = wave.openWeek; opened < wave.doors && w < until; w++) {
      const authorised = Math.min(wave.doors - opened, wave.doorsPerWeek);
      // Rounded on the wave so far: one door a week with a tenth void is nine doors in ten weeks, not ten.
      const doors = selling(opened + authorised) - selling(opened);
      openings.push({ openWeek: w, doors, authorised, wasOpen: false });
      opened += authorised;
    }
  }
  return openings;
}

function sellingOf({ voidRate }: Account): (doors: number) => number {
  const sold = 1_000_000 - rateOf(voidRate);
  return sold === 1_000_000 ? (doors) => doors : (doors) => timesRate(doors, sold);
}

/** From a week on a cohort counts as so many doors anew, since a planned closing took some of them. */
export interface Restart {
  week: number;
  doors: number;
  authorised: number;
  /** Part of its doors that stayed. */
  share: number;
}

/** By opening, in order: what planned closings leave of it. They take the newest doors first, attrition counted. */
export function restartsByCuts(account: Account, openings: readonly Opening[]): Restart[][] {
  const restarts: Restart[][] = openings.map(() => []);
  const keep = 1 - Number(account.attritionYearlyRate);
  // The sort is stable: cuts of one week keep their file order.
  const cuts = [...account.cuts].sort((x, y) => x.week - y.week);
  const newestFirst = openings.map((_, o) => o).reverse();
  newestFirst.sort((x, y) => (openings[y]?.openWeek ?? 0) - (openings[x]?.openWeek ?? 0));
  for (const { week, doors } of cuts) {
    if (week >= (account.cutWeek ?? Number.POSITIVE_INFINITY)) break;
    let left = doors;
    for (const o of newestFirst) {
      if (left === 0) break;
      const opening = openings[o] as Opening;
      if (opening.openWeek >= week) continue;
      const now = doorsIn(opening, restarts[o] ?? [], keep, week);
      const closed = Math.min(left, now.authorised);
      if (closed === 0) continue;
      left -= closed;
      const authorised = now.authorised - closed;
      restarts[o]?.push({
        week,
        authorised,
        doors: Math.round((now.doors * authorised) / now.authorised),
        share: authorised / now.authorised,
      });
    }
  }
  return restarts;
}

/** Doors of an opening in a week not before it, after the restarts up to that week. */
export function doorsIn(opening: Opening, restarts: readonly Restart[], keep: number, week: number) {
  const from = restarts.at(-1) ?? { ...opening, week: Math.max(0, opening.openWeek) };
  const kept = keep ** ((week - from.week) / 52);
  return { doors: Math.round(from.doors * kept), authorised: Math.round(from.authorised * kept) };
}

/** All cohorts of a plan, an account after the other; their weeks stand in one array. */
export interface Cohorts {
  /** By account, in file order. */
  byAccount: Cohort[][];
  doors: Int32Array;
  /** Weeks known of each cohort: the reach and the longest way to a shelf. */
  known: number;
}

export function cohortsOf(accounts: readonly Account[], reach: number): Cohorts {
  const longestToDepot = Math.max(0, ...accounts.map(({ depot }) => depot?.transitWeeks ?? 0));
  const known = reach + LONGEST_TRANSIT + longestToDepot;
  // Doors past the reach of the pass change nothing in it: they are left out, however many.
  const openings = accounts.map((account) => openingsOf(account, reach + leadOfOpening(account)));
  const count = openings.reduce((total, own) => total + own.length, 0);
  const doors = new Int32Array(count * known);
  let from = 0;
  const kept = new Map<string, Float64Array | null>();
  const byAccount = accounts.map((account, a) => {
    const rate = account.attritionYearlyRate;
    if (!kept.has(rate)) kept.set(rate, keptShares(rate, known));
    const shares = kept.get(rate) ?? null;
    const own = openings[a] ?? [];
    const restarts = account.cuts.length === 0 ? null : restartsByCuts(account, own);
    return own.map((opening, o) => {
      const weeks = new Int32Array(doors.buffer, from * Int32Array.BYTES_PER_ELEMENT, known);
      from += known;
      return cohortOf({
        account,
        index: a,
        opening,
        kept: shares,
        restarts: restarts?.[o] ?? [],
        own: weeks,
        reach,
      });
    });
  });
  return { byAccount, doors, known };
}

/** Share of doors still open after so many weeks. Powers are dear: one table a rate; null when none ever close. */
function keptShares(attritionYearlyRate: string, weeks: number): Float64Array | null {
  const keep = 1 - Number(attritionYearlyRate);
  if (keep === 1) return null;
  const shares = new Float64Array(weeks);
  for (let k = 0; k < weeks; k++) shares[k] = keep ** (k / 52);
  return shares;
}

interface CohortArgs {
  account: Account;
  index: number;
  opening: Opening;
  kept: Float64Array | null;
  restarts: readonly Restart[];
  /** Where its doors by week are written. */
  own: Int32Array;
  reach: number;
}

function cohortOf(args: CohortArgs): Cohort {
  const { index, opening, own, reach } = args;
  const { openWeek, doors, authorised, wasOpen } = opening;
  // Attrition of doors already open is counted from the plan's first week.
  const from = Math.max(0, openWeek);
  writeDoors(args, own, 'doors');
  const all = authorised === doors ? own : new Int32Array(own.length);
  if (all !== own) writeDoors(args, all, 'authorised');
  const closingWeeks: number[] = wasOpen && (own[0] ?? 0) < doors ? [0] : [];
  for (let w = from + 1; w < reach; w++) if ((own[w] ?? 0) < (own[w - 1] ?? 0)) closingWeeks.push(w);
  return {
    account: index,
    openWeek,
    doorsAtOpening: doors,
    doors: own,
    authorisedAtOpening: authorised,
    authorised: all,
    closingWeeks,
  };
}

/** Doors by week, from the opening to the week the account is cut, anew from each planned closing on. */
function writeDoors(args: CohortArgs, out: Int32Array, which: 'doors' | 'authorised'): void {
  const { account, opening, kept, restarts } = args;
  const until = Math.min(out.length, account.cutWeek ?? out.length);
  let start = Math.max(0, opening.openWeek);
  let base = opening[which];
  for (let r = 0; r <= restarts.length; r++) {
    const restart = restarts[r];
    const end = Math.min(until, restart ? restart.week : until);
    if (!kept) out.fill(base, start, Math.max(start, end));
    else for (let w = start; w < end; w++) out[w] = Math.round(base * (kept[w - start] ?? 0));
    if (!restart) return;
    start = restart.week;
    base = restart[which];
  }
}

/** How many cells a plan would make: each wave opens one group of doors a week, times the items listed. */
export function countCells(plan: Plan): number {
  return plan.accounts.reduce((total, account) => {
    const longest = plan.horizonWeeks + LONGEST_LEAD_AND_COVER + leadOfOpening(account);
    const groups = account.waves.reduce(
      (sum, wave) =>
        sum + Math.min(Math.ceil(wave.doors / wave.doorsPerWeek), Math.max(0, longest - wave.openWeek)),
      account.runningDoors.length,
    );
    return total + groups * account.listings.length;
  }, 0);
}

const LONGEST_LEAD_AND_COVER = 157;
