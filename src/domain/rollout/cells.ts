// Doors by week, and the factors by week that demand is made of. None of it depends on what we can ship, so it is
// worked out once per plan. Worked figure: 100 doors that lose 6 % a year are round(100 x 0.94 ^ (26 / 52)) = 97 after
// half a year.
import { isoWeekOf } from '../calendar.ts';
import type { Account, Item, Listing, Plan } from '../plan/index.ts';
import type { Cohort } from './compiled.ts';

/** What leaves at the end of a week is there at most this long after: doors are known so far past the reach. */
export const LONGEST_TRANSIT = 27;

/** How long before its doors open a cohort can matter: its fill leaves, or its display is paid for. */
function leadOfOpening({ display }: Account): number {
  return Math.max(LONGEST_TRANSIT, display === null ? 0 : display.buildWeeks);
}

/** Share of the mature rate of sale at an age in weeks: straight from the start rate to 1 at `weeks`. */
export function rampAt(age: number, startRate: number, weeks: number): number {
  if (weeks === 0) return 1;
  return startRate + (1 - startRate) * Math.min(1, age / weeks);
}

/** Doors that open together, before their weeks are worked out. */
interface Opening {
  openWeek: number;
  doors: number;
  wasOpen: boolean;
}

/** Openings of an account in file order: doors already open first, then each wave week by week. */
function openingsOf(account: Account, reach: number): Opening[] {
  const openings: Opening[] = account.runningDoors.map((group) => ({
    openWeek: -group.ageWeeks,
    doors: group.doors,
    wasOpen: true,
  }));
  for (const wave of account.waves) {
    let left = wave.doors;
    // Doors past the reach of the pass change nothing in it: they are left out, however many.
    for (let w = wave.openWeek; left > 0 && w < reach + leadOfOpening(account); w++) {
      const doors = Math.min(left, wave.doorsPerWeek);
      openings.push({ openWeek: w, doors, wasOpen: false });
      left -= doors;
    }
  }
  return openings;
}

/** All cohorts of a plan, an account after the other; their weeks stand in one array. */
export interface Cohorts {
  /** By account, in file order. */
  byAccount: Cohort[][];
  doors: Int32Array;
  /** Weeks known of each cohort: the reach and the longest transit. */
  known: number;
}

export function cohortsOf(accounts: readonly Account[], reach: number): Cohorts {
  const known = reach + LONGEST_TRANSIT;
  const openings = accounts.map((account) => openingsOf(account, reach));
  const count = openings.reduce((total, own) => total + own.length, 0);
  const doors = new Int32Array(count * known);
  let from = 0;
  const kept = new Map<string, Float64Array | null>();
  const byAccount = accounts.map((account, a) => {
    const rate = account.attritionYearlyRate;
    if (!kept.has(rate)) kept.set(rate, keptShares(rate, known));
    const shares = kept.get(rate) ?? null;
    return (openings[a] ?? []).map((opening) => {
      const own = new Int32Array(doors.buffer, from * Int32Array.BYTES_PER_ELEMENT, known);
      from += known;
      return cohortOf({ account, index: a, opening, kept: shares, own, reach });
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
  /** Where its doors by week are written. */
  own: Int32Array;
  reach: number;
}

function cohortOf({ account, index, opening, kept, own, reach }: CohortArgs): Cohort {
  const { openWeek, doors, wasOpen } = opening;
  // Attrition of doors already open is counted from the plan's first week.
  const from = Math.max(0, openWeek);
  const until = Math.min(own.length, account.cutWeek ?? own.length);
  if (!kept) own.fill(doors, from, Math.max(from, until));
  else for (let w = from; w < until; w++) own[w] = Math.round(doors * (kept[w - from] ?? 0));
  const closingWeeks: number[] = wasOpen && account.cutWeek === 0 ? [0] : [];
  for (let w = from + 1; w < reach; w++) if ((own[w] ?? 0) < (own[w - 1] ?? 0)) closingWeeks.push(w);
  return { account: index, openWeek, doorsAtOpening: doors, doors: own, closingWeeks };
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

/** Season factors by week of the plan; null when there are none. */
export function seasonByWeek(item: Item, startDay: number, weeks: number): Float64Array | null {
  if (!item.seasonFactors) return null;
  const factors = item.seasonFactors.map(Number);
  const out = new Float64Array(weeks);
  for (let w = 0; w < weeks; w++) out[w] = factors[Math.min(52, isoWeekOf(startDay + 7 * w)) - 1] ?? 1;
  return out;
}

/** Promotion factors by week: 1 + lift inside, the dip after (floor 0); null when there are none. */
export function promotionByWeek(account: Account, weeks: number): Float64Array | null {
  if (account.promotions.length === 0) return null;
  const out = new Float64Array(weeks).fill(1);
  for (const promo of account.promotions) {
    const lift = Number(promo.liftRate);
    const end = promo.fromWeek + promo.weeks;
    for (let w = promo.fromWeek; w < Math.min(end, weeks); w++) out[w] = (out[w] ?? 1) * (1 + lift);
    if (promo.dipWeeks === 0) continue;
    // The borrowed part of the extra units comes off the weeks after, in equal parts.
    const less = Math.max(0, 1 - (Number(promo.dipShare) * lift * promo.weeks) / promo.dipWeeks);
    for (let w = end; w < Math.min(end + promo.dipWeeks, weeks); w++) out[w] = (out[w] ?? 1) * less;
  }
  return out;
}

/** Units one door's opening fill needs, in full cases. */
export function fillPerDoor(listing: Listing, caseUnits: number): number {
  const shelf = listing.facings * listing.depthUnits + listing.backStockUnits;
  return caseUnits * Math.ceil(shelf / caseUnits);
}
