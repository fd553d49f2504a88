// Doors by week, what shoppers want of them, and what their shelves are ordered up to. None of it depends on what we
// can ship, so it is worked out once per plan. Worked figure: 10 doors, 6 units a store and week, second week of a
// ramp from one half over 8 weeks: round(10 x 6 x 0.5625 x 10^6) = 33,750,000 millionths, 33.75 units.
import { isoWeekOf } from '../calendar.ts';
import type { Account, Item, Listing, Plan } from '../plan/index.ts';
import type { Cohort, HotCells } from './compiled.ts';

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

/** Cohorts of an account in file order: doors already open first, then each wave week by week. */
export function cohortsOf(args: { account: Account; accountIndex: number; reach: number }): Cohort[] {
  const { account, accountIndex, reach } = args;
  const keep = 1 - Number(account.attritionYearlyRate);
  const cut = account.cutWeek ?? Number.POSITIVE_INFINITY;
  // Powers are dear: one table an account.
  const known = reach + LONGEST_TRANSIT;
  const kept = Float64Array.from({ length: known }, (_, k) => (keep === 1 ? 1 : keep ** (k / 52)));
  const cohorts: Cohort[] = [];
  const add = (openWeek: number, doorsAtOpening: number, wasOpen: boolean) => {
    const doors = new Int32Array(known);
    // Attrition of doors already open is counted from the plan's first week.
    const from = Math.max(0, openWeek);
    for (let w = from; w < known && w < cut; w++) {
      doors[w] = Math.round(doorsAtOpening * (kept[w - from] ?? 0));
    }
    const closes = new Uint8Array(reach);
    for (let w = from + 1; w < reach; w++) closes[w] = (doors[w] ?? 0) < (doors[w - 1] ?? 0) ? 1 : 0;
    if (wasOpen && cut === 0) closes[0] = 1;
    cohorts.push({ account: accountIndex, openWeek, doorsAtOpening, doors, closes });
  };
  for (const group of account.runningDoors) add(-group.ageWeeks, group.doors, true);
  for (const wave of account.waves) {
    let left = wave.doors;
    // Doors past the reach of the pass change nothing in it: they are left out, however many.
    for (let w = wave.openWeek; left > 0 && w < reach + leadOfOpening(account); w++) {
      const opening = Math.min(left, wave.doorsPerWeek);
      add(w, opening, false);
      left -= opening;
    }
  }
  return cohorts;
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

export interface DemandArgs {
  account: Account;
  listing: Listing;
  cohort: Cohort;
  fillPerDoorUnits: number;
  season: Float64Array | null;
  promotion: Float64Array | null;
  reach: number;
  /** Where this cell's weeks are written, at [week x cells + cell]. */
  hot: HotCells;
  cell: number;
}

/**
 * Demand in millionths of a unit, and the order-up-to level in units, by week.
 * Demand: round(D V ramp season promotion display 10^6), doubles multiplied in this order.
 * Target: the larger of D x fill and the demand of the next 1 + transit + cover weeks at today's doors.
 */
export function fillDemandAndTarget(args: DemandArgs): void {
  const { cohort, reach, account, listing, hot, cell } = args;
  const ahead = 1 + account.terms.transitWeeks + listing.coverWeeks;
  const first = Math.max(0, cohort.openWeek);
  const millionths = demandOf(args);
  let doorsKept = -1;
  let windowSum = 0;
  for (let w = first; w < reach; w++) {
    const doors = cohort.doors[w] ?? 0;
    if (doors === 0) continue;
    const now = millionths(doors, w);
    const place = w * hot.count + cell;
    hot.doors[place] = doors;
    hot.demand[place] = now;
    if (doors === doorsKept) {
      windowSum += millionths(doors, w + ahead) - now;
    } else {
      windowSum = 0;
      for (let j = 1; j <= ahead; j++) windowSum += millionths(doors, w + j);
      doorsKept = doors;
    }
    hot.target[place] = Math.max(
      doors * args.fillPerDoorUnits,
      Math.floor((windowSum + 500_000) / 1_000_000),
    );
  }
  for (let w = Math.max(first, reach); w < cohort.doors.length; w++) {
    hot.doors[w * hot.count + cell] = cohort.doors[w] ?? 0;
  }
}

/** Millionths demanded of so many doors in a week. */
function demandOf(args: DemandArgs): (doors: number, week: number) => number {
  const { account, cohort, season, promotion } = args;
  const rate = Number(args.listing.unitsPerStoreWeek);
  const startRate = Number(account.ramp.startRate);
  const rampWeeks = account.ramp.weeks;
  const displayFactor = account.display ? 1 + Number(account.display.liftRate) : 1;
  const displayWeeks = account.display ? account.display.weeks : 0;
  return (doors, week) => {
    const age = week - cohort.openWeek;
    const ramp = rampAt(age, startRate, rampWeeks);
    const seasonNow = season ? (season[week] ?? 1) : 1;
    const promotionNow = promotion ? (promotion[week] ?? 1) : 1;
    const display = age < displayWeeks ? displayFactor : 1;
    return Math.round(doors * rate * ramp * seasonNow * promotionNow * display * 1_000_000);
  };
}
