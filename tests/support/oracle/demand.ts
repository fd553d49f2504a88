/**
 * What a cell's shoppers want in a week, and what its store orders up to. Doubles, multiplied in the order given.
 * Worked figure: 10 doors at 6 a week, half of the ramp reached: 30,000,000 millionths of a unit.
 */
import { isoWeek } from './dates.ts';
import { doorsIn, type Facts, isOnPromotion, type Place } from './facts.ts';
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
      promotionAt(line, week) *
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

function promotionAt(line: Place['line'], week: number): number {
  let factor = 1;
  for (const promotion of line.account.promotions) {
    const { fromWeek, weeks, liftRate, dipShare, dipWeeks } = promotion;
    const end = fromWeek + weeks;
    const lift = Number(liftRate);
    const isInside = week >= fromWeek && week < end;
    if (!isOnPromotion(line, promotion)) {
      if (isInside) factor *= besidePromotion(line, promotion, lift);
      continue;
    }
    if (isInside) factor *= 1 + lift;
    if (week >= end && week < end + dipWeeks) {
      factor *= Math.max(0, 1 - (Number(dipShare) * lift * weeks) / dipWeeks);
    }
  }
  return factor;
}

/** What a promotion leaves of the sales of what is listed beside it. */
function besidePromotion(line: Place['line'], promotion: Promotion, lift: number): number {
  let onIt = 0;
  let beside = 0;
  for (const listing of line.account.listings) {
    const rate = Number(listing.unitsPerStoreWeek);
    if (isOnPromotion({ ...line, listing }, promotion)) onIt += rate;
    else beside += rate;
  }
  if (beside === 0) return 1;
  return Math.max(0, 1 - (Number(promotion.sisterShare) * lift * onIt) / beside);
}

type Promotion = Place['line']['account']['promotions'][number];

function displayAt(display: Place['line']['account']['display'], age: number): number {
  if (display === null || age < 0 || age >= display.weeks) return 1;
  const lift = Number(display.liftRate);
  if (display.liftEndRate === null || display.weeks === 1) return 1 + lift;
  return 1 + (lift + ((Number(display.liftEndRate) - lift) * age) / (display.weeks - 1));
}

/** The multiple a store orders in, and is shipped: a case, a layer of cases, a pallet of them. */
export function multiple({ account, item }: Place['line'], orderIn = account.ordering.orderIn): number {
  if (orderIn === 'pallet') return item.caseUnits * item.palletCases;
  if (orderIn === 'case') return item.caseUnits;
  if (item.pack === null) throw new Error('a layer of nobody knows what');
  return item.caseUnits * item.pack.layerCases;
}

/** The fill of one door, in full multiples. */
export function fillOfDoor({ line }: Place): number {
  const { facings, depthUnits, backStockUnits } = line.listing;
  const q = multiple(line);
  return q * Math.ceil((facings * depthUnits + backStockUnits) / q);
}

/** Of it, units that are free. */
export function freeOfDoor(place: Place): number {
  const { listing, item } = place.line;
  return Math.min(fillOfDoor(place), listing.freeCasesPerDoor * item.caseUnits);
}

/** Whether stores (or the depot) order at the end of a week. */
export function isOrderWeek({ ordering }: Place['line']['account'], week: number): boolean {
  const since = week - ordering.firstWeek;
  return since >= 0 && since % ordering.everyWeeks === 0;
}

/** The level a cell orders up to at the end of a week. */
export function target(facts: Facts, place: Place, week: number): number {
  const doors = doorsIn(place.cohort, week);
  const { account, listing } = place.line;
  const { everyWeeks, daily } = account.ordering;
  const last = week + (daily ? 0 : everyWeeks) + account.terms.transitWeeks + listing.coverWeeks;
  let ahead = 0n;
  for (let t = week + 1; t <= last; t++) ahead += BigInt(wanted(facts, place, t, doors));
  return Math.max(doors * fillOfDoor(place), Number(nearest(ahead, 1_000_000n)));
}

/** Units a store orders at the end of a week, in full multiples ordered door by door. */
export function reorderUnits(facts: Facts, place: Place, week: number, alreadyThereOrComing: number): number {
  const { cohort, line } = place;
  const doors = doorsIn(cohort, week);
  if (doors === 0 || week < cohort.openWeek || !isOrderWeek(line.account, week)) return 0;
  if (doorsIn(cohort, week + 1 + line.account.terms.transitWeeks) === 0) return 0;
  const q = multiple(line);
  const gap = target(facts, place, week) - alreadyThereOrComing;
  const multiples = Math.floor((2 * gap - (doors - 1) * (q - 1)) / (2 * q));
  return multiples > 0 ? multiples * q : 0;
}
