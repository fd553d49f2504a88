// A listing's cells joined into rows: what they want, are filled with and are ordered up to, added up by week; and the
// terms their money follows. Doors already open are a row of their own, since no draw takes or delays them; goods on
// guarantee are held and settled by each cohort's own review.
// Worked figure: three cohorts of 20 doors at 6 units a week, all mature, want 360 in a week of season 1.
import type { Compiled, CompiledAccount, CompiledListing } from '../../rollout/compiled.ts';
import { wantsOf } from '../../rollout/wants.ts';
import { type Calendar, meanAhead } from './calendar.ts';
import type { Coarse } from './coarse.ts';
import { writeTerms } from './coarse-terms.ts';
import {
  AHEAD,
  CALENDAR,
  CALENDAR_AHEAD,
  CASE_UNITS,
  CLAIMED,
  DEMAND,
  DEPOT_AHEAD,
  FILL,
  FILL_FREE,
  FILL_TARGET,
  FIXED,
  HELD_SHARE,
  OPENING_SHELF,
  REVIEW,
  SLACK,
  SLIPS,
  STAYS,
  SUMS,
  TERMS,
  WITHHELD,
} from './places.ts';

export interface Row {
  listing: number;
  running: boolean;
  cells: readonly number[];
}

export interface PlacedRow extends Row {
  place: number;
  calendar: Calendar;
  /** Weeks of demand a depot keeps beside what its stores have; 0 without one. */
  depotWeeks: number;
}

/** None, one or two: doors that run, doors to come. */
export function rowsOf({ hot, cells }: Compiled, listing: number): Row[] {
  const first = hot.firstOfListing[listing] ?? 0;
  const count = (hot.firstOfListing[listing + 1] ?? 0) - first;
  const all = Array.from({ length: count }, (_, place) => first + place);
  return [true, false]
    .map((running) => ({
      listing,
      running,
      cells: all.filter((index) => (cells[index]?.openWeek ?? 0) < 0 === running),
    }))
    .filter((row) => row.cells.length > 0);
}

export function writeRow(coarse: Coarse, compiled: Compiled, row: PlacedRow): void {
  writeTerms(coarse, compiled, row);
  const { weeks, rows, fixed } = coarse;
  const lookAhead = compiled.demand[row.cells[0] ?? 0]?.aheadWeeks ?? 0;
  for (let w = 0; w < weeks; w++) {
    const at = (w * rows + row.place) * FIXED;
    fixed[at + CALENDAR] = row.calendar.factor[w] ?? 1;
    fixed[at + CALENDAR_AHEAD] = meanAhead(row.calendar, w, lookAhead);
  }
  for (const index of row.cells) {
    writeCellFill(coarse, compiled, row, index);
    writeCellWants(coarse, compiled, row, index);
  }
  writeReviews(coarse, compiled, row);
  writeStays(coarse, compiled, row);
}

function writeCellFill(coarse: Coarse, compiled: Compiled, row: PlacedRow, index: number): void {
  const { weeks, pad, rows, slipping, terms } = coarse;
  const cell = compiled.cells[index] as Compiled['cells'][number];
  const listing = compiled.listings[row.listing] as CompiledListing;
  const own = row.place * TERMS;
  terms[own + CASE_UNITS] = cell.multiple;
  const transit = cell.transitWeeks + (listing.depot?.transitWeeks ?? 0);
  coarse.transit[row.place] = transit;
  coarse.longestTransit = Math.max(coarse.longestTransit, transit);
  raise(terms, own + OPENING_SHELF, cell.openingStock);
  const ships = Math.max(0, cell.openWeek - transit);
  if (cell.openWeek < 0 || ships >= weeks) return;
  const at = ((pad + ships) * rows + row.place) * SLIPS;
  raise(slipping, at + FILL, cell.fillUnits);
  const { billBack, sale } = compiled.accounts[listing.account] as CompiledAccount;
  if (billBack === null || sale === 'scan') {
    raise(slipping, at + FILL_FREE, cell.freeUnits);
    return;
  }
  // Billed back: invoiced like the rest of the fill, and claimed at what the first hand sells it for.
  const week = ships + billBack.lagWeeks;
  const claimed = ((pad + week) * coarse.accounts + listing.account) * SUMS + CLAIMED;
  if (week < weeks)
    raise(coarse.sums, claimed, (cell.freeUnits * listing.firstHandSells) / compiled.perMinor);
}

function writeCellWants(coarse: Coarse, compiled: Compiled, row: PlacedRow, index: number): void {
  const { weeks, pad, rows, slipping } = coarse;
  const { hot } = compiled;
  const wants = wantsOf(compiled);
  const cell = compiled.cells[index] as Compiled['cells'][number];
  const made = compiled.demand[index] as Compiled['demand'][number];
  const first = hot.firstOfListing[row.listing] ?? 0;
  const step = (hot.firstOfListing[row.listing + 1] ?? 0) - first;
  const from = first * wants.weeks + index - first;
  const { factor } = row.calendar;
  for (let w = 0; w < weeks; w++) {
    const open = made.cohort.doors[w] ?? 0;
    if (open === 0) continue;
    const at = ((pad + w) * rows + row.place) * SLIPS;
    const age = w - cell.openWeek;
    const isRamping = age < made.rampWeeks;
    const ramp = isRamping ? made.startRate + (1 - made.startRate) * (age / made.rampWeeks) : 1;
    const now = factor[w] ?? 1;
    const units = now > 0 ? (wants.units[from + w * step] ?? 0) / now : open * made.rate * ramp;
    raise(slipping, at + DEMAND, units);
    if (isRamping) {
      const missing = ramp > 0 ? units * (1 / ramp - 1) : open * made.rate;
      raise(slipping, at + WITHHELD, missing);
    }
    raise(slipping, at + FILL_TARGET, open * made.fillPerDoorUnits);
    raise(slipping, at + SLACK, (Math.max(0, open - 1) * (cell.multiple - 1)) / 2);
    const reach = (weeksAhead: number): number => {
      let sum = 0;
      for (let j = 1; j <= weeksAhead; j++)
        sum += wants.units[from + Math.min(wants.weeks - 1, w + j) * step] ?? 0;
      const mean = meanAhead(row.calendar, w, weeksAhead);
      return mean > 0 ? sum / mean : 0;
    };
    raise(slipping, at + AHEAD, reach(made.aheadWeeks));
    if (row.depotWeeks > 0) raise(slipping, at + DEPOT_AHEAD, reach(row.depotWeeks));
  }
}

/** Of the doors stocked by a week, the share whose review is to come; and in weeks of reviews, the share settled of that. */
function writeReviews(coarse: Coarse, compiled: Compiled, row: PlacedRow): void {
  const { weeks, pad, rows, slipping } = coarse;
  const account = compiled.accounts[compiled.listings[row.listing]?.account ?? 0] as CompiledAccount;
  if (account.sale !== 'guaranteed') return;
  const cohorts = row.cells.map((index) => {
    const { openWeek, transitWeeks } = compiled.cells[index] as Compiled['cells'][number];
    const settles = openWeek + account.reviewWeeks;
    return { doors: doorsAtOpening(compiled, index), ships: openWeek - transitWeeks, transitWeeks, settles };
  });
  type Stocked = (typeof cohorts)[number];
  const doorsOf = (is: (cohort: Stocked) => boolean) =>
    cohorts.filter(is).reduce((sum, { doors }) => sum + doors, 0);
  for (let w = 0; w < weeks; w++) {
    const at = ((pad + w) * rows + row.place) * SLIPS;
    const stocked = doorsOf(({ ships }) => ships <= w);
    const open = doorsOf(({ ships, settles, transitWeeks }) => ships <= w && w + transitWeeks < settles);
    slipping[at + HELD_SHARE] = stocked === 0 ? 0 : ((open / stocked) * account.expectedReturnRate) / 1e6;
    const now = doorsOf(({ settles }) => settles === w);
    const left = doorsOf(({ ships, settles }) => ships <= w && settles >= w);
    slipping[at + REVIEW] = left === 0 ? 0 : now / left;
  }
}

function doorsAtOpening({ cells, cohorts }: Compiled, index: number): number {
  return cohorts[cells[index]?.cohort ?? 0]?.doorsAtOpening ?? 0;
}

function raise(series: Float64Array, at: number, by: number): void {
  series[at] = (series[at] ?? 0) + by;
}

/** Where doors close, the share of the doors before that is left. */
function writeStays(coarse: Coarse, { cells, demand }: Compiled, row: PlacedRow): void {
  const { weeks, pad, rows, slipping } = coarse;
  for (let w = 1; w < weeks; w++) {
    let before = 0;
    let after = 0;
    for (const index of row.cells) {
      if (w <= (cells[index]?.openWeek ?? 0)) continue;
      before += demand[index]?.cohort.doors[w - 1] ?? 0;
      after += demand[index]?.cohort.doors[w] ?? 0;
    }
    if (after < before) slipping[((pad + w) * rows + row.place) * SLIPS + STAYS] = after / before;
  }
}
