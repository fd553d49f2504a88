// Stock that keeps only so long, by the week it landed in: what may still leave for a place so many weeks away, what is
// too old for any. The oldest that may leave leaves first.
// Worked figure: 12 weeks of life, 8 to be left at the shelf, 2 weeks away: a lot of week 3 leaves until week 5.
import type { ShelfLife } from './compiled-supply.ts';

export interface Lots {
  life: ShelfLife;
  /** Units by landing week; opening stock in week 0. */
  units: Float64Array;
  /** No lot before this week holds anything. */
  oldest: number;
}

export function newLots(life: ShelfLife, units: Float64Array, openingUnits: number): Lots {
  units[0] = openingUnits;
  return { life, units, oldest: 0 };
}

export function addLot(lots: Lots, week: number, units: number): void {
  lots.units[week] = (lots.units[week] ?? 0) + units;
}

/** The first landing week whose lots still have their least time left after so many weeks on the way. */
function firstFit({ life, oldest }: Lots, week: number, transitWeeks: number): number {
  return Math.max(oldest, week + transitWeeks + life.least - life.weeks);
}

/** Units that may leave in a week for a place so many weeks away. */
export function shippableLots(lots: Lots, week: number, transitWeeks: number): number {
  let units = 0;
  for (let t = firstFit(lots, week, transitWeeks); t <= week; t++) units += lots.units[t] ?? 0;
  return units;
}

/** So many of them leave, the oldest first. */
export function shipLots(lots: Lots, units: number, at: { week: number; transitWeeks: number }): void {
  takeFrom(lots, firstFit(lots, at.week, at.transitWeeks), units);
}

/** The oldest units of all, whatever is left of their time (samples, breakage). */
export function takeOldest(lots: Lots, units: number): void {
  takeFrom(lots, lots.oldest, units);
}

function takeFrom(lots: Lots, from: number, units: number): void {
  let left = units;
  for (let t = from; left > 0 && t < lots.units.length; t++) {
    const taken = Math.min(left, lots.units[t] ?? 0);
    lots.units[t] = (lots.units[t] ?? 0) - taken;
    left -= taken;
  }
  if (left > 0) throw new Error(`${left} units more taken than the lots hold`);
}

/** Units too old to reach even a shelf next door in time: they are lots no more. */
export function dropOldLots(lots: Lots, week: number): number {
  const keepFrom = week + lots.life.least - lots.life.weeks;
  let units = 0;
  for (let t = lots.oldest; t < keepFrom; t++) {
    units += lots.units[t] ?? 0;
    lots.units[t] = 0;
  }
  lots.oldest = Math.max(lots.oldest, keepFrom);
  return units;
}
