// How many doors of a deal are open, and how much they sell, week by week from its first opening. Doors are real
// numbers here (attrition takes fractions of a door; the weekly pass takes whole ones) and so are units, because a deal
// is judged before supply and shelves bind. A deal counts the doors it opens. An account that opens none is counted on
// the doors it has, with nothing put down. Worked figure: 60 doors, none lost, sell 60 x 6 x 52 = 18,720 units at 6.
import { dayNumber } from '../calendar.ts';
import type { Account, Listing, Plan } from '../plan/index.ts';
import { displayLiftAt, promotionByWeek, rampAt, seasonByWeek } from '../rollout/cells.ts';
import { type Opening, openingsOf, type Restart, restartsByCuts } from '../rollout/cohorts.ts';

/** The first year of a deal, counted from its first opening. */
export const YEAR_WEEKS = 52;

export interface StoreWeeks {
  /** Doors opened, in all: those that list it. */
  doors: number;
  /** Doors that cost something to open: all of them, or none of an account that only runs on. */
  newDoors: number;
  /** Week of the plan in which the first of them opens (0 for doors already open; 0 when there are none). */
  firstWeek: number;
  /** Of these, doors where it gets onto the shelf and is filled. */
  filledDoors: number;
  /** Week from the first opening -> doors opening in it, and those of them that are filled. */
  openings: Float64Array;
  fillings: Float64Array;
  /** Weeks from the first opening, long enough for the term, the first year and every opening and display week. */
  weeks: number;
  /** Doors that sell in a week. */
  open: Float64Array;
  /** Doors of which the display still stands. */
  withDisplay: Float64Array;
  /** Open doors, each counted by its ramp and display lift: x V x season x promotion = units. */
  mature: Float64Array;
}

export function storeWeeks(account: Account): StoreWeeks {
  const cut = account.cutWeek ?? Number.POSITIVE_INFINITY;
  const opensAny = account.waves.length > 0;
  const all = openingsOf(account, Number.POSITIVE_INFINITY);
  const cohorts = all.filter(({ openWeek, wasOpen }) => (opensAny ? !wasOpen && openWeek < cut : wasOpen));
  const firstWeek = cohorts.reduce((least, { openWeek }) => Math.min(least, Math.max(0, openWeek)), Infinity);
  const from = Number.isFinite(firstWeek) ? firstWeek : 0;
  const lastOpening = cohorts.reduce((most, { openWeek }) => Math.max(most, openWeek - from), 0);
  const displayWeeks = account.display?.weeks ?? 0;
  const weeks = Math.max(account.deal.termWeeks, YEAR_WEEKS, lastOpening + 1 + displayWeeks);
  const doors = cohorts.reduce((sum, { authorised }) => sum + authorised, 0);
  const found: StoreWeeks = {
    doors,
    newDoors: opensAny ? doors : 0,
    filledDoors: opensAny ? cohorts.reduce((sum, each) => sum + each.doors, 0) : 0,
    firstWeek: from,
    openings: new Float64Array(weeks),
    fillings: new Float64Array(weeks),
    weeks,
    open: new Float64Array(weeks),
    withDisplay: new Float64Array(weeks),
    mature: new Float64Array(weeks),
  };
  const factors = ageFactors(account);
  const restarts = account.cuts.length === 0 ? null : restartsByCuts(account, all);
  for (const cohort of cohorts) {
    addCohort(found, { cohort, restarts: restarts?.[all.indexOf(cohort)] ?? NONE, end: cut - from, factors });
  }
  return found;
}

const NONE: readonly Restart[] = [];

interface CohortArgs {
  cohort: Opening;
  /** What planned closings leave of it. */
  restarts: readonly Restart[];
  /** Week from the first opening in which the account is cut. */
  end: number;
  factors: AgeFactors;
}

/** Attrition runs from the opening, or from the plan's first week for doors already open, as in the weekly pass. */
function addCohort(found: StoreWeeks, { cohort, restarts, end, factors }: CohortArgs): void {
  const opensAt = cohort.openWeek - found.firstWeek;
  const from = Math.max(0, opensAt);
  const { open, withDisplay, mature, openings, fillings } = found;
  if (!cohort.wasOpen) {
    openings[from] = (openings[from] ?? 0) + cohort.authorised;
    fillings[from] = (fillings[from] ?? 0) + cohort.doors;
  }
  let { doors, authorised } = cohort;
  const { byAge, displayWeeks, keptPerWeek } = factors;
  const until = Math.min(found.weeks, end);
  const grown = Math.min(until, opensAt + byAge.length);
  let week = from;
  for (let r = 0; r <= restarts.length; r++) {
    const restart = restarts[r];
    const closing = Math.min(until, restart ? restart.week - found.firstWeek : until);
    const shown = Math.min(closing, opensAt + displayWeeks);
    for (let w = week; w < shown; w++) {
      withDisplay[w] = (withDisplay[w] ?? 0) + authorised;
      authorised *= keptPerWeek;
    }
    for (; week < closing; week++) {
      open[week] = (open[week] ?? 0) + doors;
      mature[week] = (mature[week] ?? 0) + (week < grown ? doors * (byAge[week - opensAt] ?? 1) : doors);
      doors *= keptPerWeek;
    }
    doors *= restart?.share ?? 1;
    authorised *= restart?.share ?? 1;
  }
}

interface AgeFactors {
  keptPerWeek: number;
  displayWeeks: number;
  /** Ramp x display lift by age in weeks; 1 from its end on. */
  byAge: Float64Array;
}

function ageFactors({ attritionYearlyRate, ramp, display }: Account): AgeFactors {
  const displayWeeks = display?.weeks ?? 0;
  const startRate = Number(ramp.startRate);
  const byAge = new Float64Array(Math.max(ramp.weeks, displayWeeks));
  for (let age = 0; age < byAge.length; age++) {
    byAge[age] = rampAt(age, startRate, ramp.weeks) * (1 + displayLiftAt(display, age));
  }
  return { keptPerWeek: (1 - Number(attritionYearlyRate)) ** (1 / YEAR_WEEKS), displayWeeks, byAge };
}

/** Units of one listing that shoppers want, by week from the first opening. */
export function unitsByWeek(args: {
  plan: Plan;
  account: Account;
  listing: Listing;
  stores: StoreWeeks;
}): Float64Array {
  const { plan, account, listing, stores } = args;
  const item = plan.items.find(({ id }) => id === listing.itemId);
  const until = stores.firstWeek + stores.weeks;
  const season = item ? seasonByWeek(item, dayNumber(plan.startDate), until) : null;
  const promotion = promotionByWeek(account, listing.itemId, until);
  const rate = Number(listing.unitsPerStoreWeek);
  const { mature, firstWeek } = stores;
  const units = new Float64Array(stores.weeks);
  for (let week = 0; week < units.length; week++) units[week] = rate * (mature[week] ?? 0);
  for (const factors of [season, promotion]) {
    if (!factors) continue;
    for (let week = 0; week < units.length; week++)
      units[week] = (units[week] ?? 0) * (factors[firstWeek + week] ?? 1);
  }
  return units;
}
