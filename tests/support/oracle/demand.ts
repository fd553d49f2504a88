/**
 * What a cell's shoppers want in a week, and what its store orders up to. Doubles, multiplied in the order given.
 * Worked figure: 10 doors at 6 a week, half of the ramp reached: 30,000,000 millionths of a unit.
 */
import { isoWeek } from './dates.ts';
import { doorsIn, type Facts, type Place } from './facts.ts';
import { nearest } from './numbers.ts';

/** m(w), in millionths of a unit, with so many doors. */
export function wanted(facts: Facts, { line, cohort }: Place, week: number, doors: number): number {
  const { account, listing, item } = line;
  const age = week - cohort.openWeek;
  const rate = Number(listing.unitsPerStoreWeek);
  return Math.round(
    doors *
      rate *
      rampAt(account.ramp, age) *
      seasonAt(item.seasonFactors, isoWeek(facts.plan.startDate, week)) *
      promotionAt(account.promotions, week) *
      displayAt(account.display, age) *
      1_000_000,
  );
}

function rampAt({ startRate, weeks }: { startRate: string; weeks: number }, age: number): number {
  if (weeks === 0) return 1;
  const start = Number(startRate);
  return start + (1 - start) * Math.min(1, age / weeks);
}

function seasonAt(factors: readonly string[] | null, week: number): number {
  if (factors === null) return 1;
  return Number(factors[(week === 53 ? 52 : week) - 1]);
}

function promotionAt(promotions: Place['line']['account']['promotions'], week: number): number {
  let factor = 1;
  for (const { fromWeek, weeks, liftRate, dipShare, dipWeeks } of promotions) {
    const end = fromWeek + weeks;
    const lift = Number(liftRate);
    if (week >= fromWeek && week < end) factor *= 1 + lift;
    if (week >= end && week < end + dipWeeks) {
      factor *= Math.max(0, 1 - (Number(dipShare) * lift * weeks) / dipWeeks);
    }
  }
  return factor;
}

function displayAt(display: Place['line']['account']['display'], age: number): number {
  if (display === null || age < 0 || age >= display.weeks) return 1;
  return 1 + Number(display.liftRate);
}

/** The fill of one door, in full cases. */
export function fillOfDoor({ line }: Place): number {
  const { facings, depthUnits, backStockUnits } = line.listing;
  const c = line.item.caseUnits;
  return c * Math.ceil((facings * depthUnits + backStockUnits) / c);
}

/** The level a cell orders up to at the end of a week. */
export function target(facts: Facts, place: Place, week: number): number {
  const doors = doorsIn(place.cohort, week);
  const last = week + 1 + place.line.account.terms.transitWeeks + place.line.listing.coverWeeks;
  let ahead = 0n;
  for (let t = week + 1; t <= last; t++) ahead += BigInt(wanted(facts, place, t, doors));
  return Math.max(doors * fillOfDoor(place), Number(nearest(ahead, 1_000_000n)));
}

/** Units a store orders at the end of a week, in full cases ordered door by door. */
export function reorderUnits(facts: Facts, place: Place, week: number, alreadyThereOrComing: number): number {
  const { cohort, line } = place;
  const doors = doorsIn(cohort, week);
  if (doors === 0 || week < cohort.openWeek) return 0;
  if (doorsIn(cohort, week + 1 + line.account.terms.transitWeeks) === 0) return 0;
  const c = line.item.caseUnits;
  const gap = target(facts, place, week) - alreadyThereOrComing;
  const cases = Math.floor((2 * gap - (doors - 1) * (c - 1)) / (2 * c));
  return cases > 0 ? cases * c : 0;
}
