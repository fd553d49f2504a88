// What shoppers want of every cell and what its shelves are ordered up to, by week. It depends on nothing we ship, so it
// is worked out once for all runs of a plan, in memory that is used again: fresh memory for 288 cells over 113 weeks
// takes longer to touch than its sums take. Worked figure: 10 doors, 6 units a store and week, second week of a ramp
// from one half over 8 weeks: round(10 x 6 x 0.5625 x 10^6) = 33,750,000 millionths; 33 units, 0.75 carried.
import { rampAt } from './cells.ts';
import type { CellDemand, Compiled } from './compiled.ts';

/**
 * The cells of a listing share a block: a row a week, a place a cell, so that both a cell followed through its weeks and
 * all cells of a week lie close together. A cell's place in week w is `first x weeks + (cell - first) + w x cells of the
 * listing`, where `first` is the listing's first cell.
 */
export interface Wants {
  weeks: number;
  /** Whole units wanted; fractions are carried to the next week. At most 100,000,000 (limits.ts). */
  units: Int32Array;
  /** Units ordered up to. */
  target: Float64Array;
}

/** An order looks ahead at most 13 weeks to the next one + 26 of transit + 52 of cover, and less (plan/rules/ordering.ts). */
export const LONGEST_AHEAD = 91;

let wants: Wants = { weeks: 0, units: new Int32Array(0), target: new Float64Array(0) };
let row = new Float64Array(0);
let writtenFor: readonly CellDemand[] | null = null;

/** The wants of a plan, to be read until the next call with another plan: written anew only then. */
export function wantsOf({ demand, hot, reach }: Compiled): Wants {
  if (writtenFor === demand && wants.weeks === reach) return wants;
  writtenFor = null;
  const places = demand.length * reach;
  const fits = wants.units.length >= places;
  wants = {
    weeks: reach,
    units: fits ? wants.units : new Int32Array(places),
    target: fits ? wants.target : new Float64Array(places),
  };
  if (row.length < reach + LONGEST_AHEAD) row = new Float64Array(reach + LONGEST_AHEAD);
  for (let l = 0; l + 1 < hot.firstOfListing.length; l++) {
    const first = hot.firstOfListing[l] ?? 0;
    const until = hot.firstOfListing[l + 1] ?? 0;
    for (let cell = first; cell < until; cell++) {
      writeCell(demand[cell] as CellDemand, first * reach + cell - first, until - first);
    }
  }
  writtenFor = demand;
  return wants;
}

/**
 * One cell's weeks, from `place` on, `step` places apart. Target: the larger of D x fill and the demand of the weeks it
 * looks ahead at today's doors, the window moved on week by week while the doors stay the same.
 */
function writeCell(cell: CellDemand, place: number, step: number): void {
  const { units, target, weeks } = wants;
  const { doors: doorsByWeek } = cell.cohort;
  const { aheadWeeks, fillPerDoorUnits } = cell;
  // From here on, ramp and display over and nothing by the calendar, every week wants the same.
  const steadyFrom =
    cell.season || cell.promotion
      ? Number.POSITIVE_INFINITY
      : cell.cohort.openWeek + Math.max(cell.rampWeeks, cell.displayWeeks);
  let doors = -1;
  let ahead = 0;
  let carry = 0;
  for (let w = 0; w < weeks; w++) {
    const at = place + w * step;
    const now = doorsByWeek[w] ?? 0;
    if (now === 0) {
      units[at] = 0;
      target[at] = 0;
      continue;
    }
    if (now === doors) {
      const last = w + aheadWeeks;
      if (last > steadyFrom) row[last] = row[last - 1] ?? 0;
      else millionthsOf(cell, doors, last, last + 1, row);
      ahead += (row[w + aheadWeeks] ?? 0) - (row[w] ?? 0);
    } else {
      doors = now;
      millionthsOf(cell, doors, w, w + aheadWeeks + 1, row);
      ahead = 0;
      for (let j = 1; j <= aheadWeeks; j++) ahead += row[w + j] ?? 0;
    }
    const millionths = (row[w] ?? 0) + carry;
    const whole = Math.floor(millionths / 1_000_000);
    carry = millionths - whole * 1_000_000;
    units[at] = whole;
    target[at] = Math.max(doors * fillPerDoorUnits, Math.floor((ahead + 500_000) / 1_000_000));
  }
}

// Runs once a cell and week at least: plain arguments, for speed.

/**
 * Demand of so many doors in weeks [from, until), in millionths of a unit, into a row: round(D V ramp season promotion
 * display 10^6), doubles multiplied in this order.
 */
export function millionthsOf(
  cell: CellDemand,
  doors: number,
  from: number,
  until: number,
  into: Float64Array,
): void {
  const { season, promotion, rampWeeks, displayWeeks, displayByAge } = cell;
  for (let week = from; week < until; week++) {
    const age = week - cell.cohort.openWeek;
    const ramp = rampAt(age, cell.startRate, rampWeeks);
    const seasonNow = season ? (season[week] ?? 1) : 1;
    const promotionNow = promotion ? (promotion[week] ?? 1) : 1;
    const lifted = displayByAge === null ? cell.displayFactor : (displayByAge[age] ?? 1);
    const display = age < displayWeeks ? lifted : 1;
    into[week] = Math.round(doors * cell.rate * ramp * seasonNow * promotionNow * display * 1_000_000);
  }
}
