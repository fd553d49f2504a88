// The factors by week that demand is made of, and what a door is filled with. None of it depends on what we can ship, so
// it is worked out once per plan. Worked figure: two facings of 5 deep and 3 behind are 13 units, 24 in cases of 12.
import { isoWeekOf } from '../calendar.ts';
import type { Account, Item, Listing } from '../plan/index.ts';

/** Share of the mature rate of sale at an age in weeks: straight from the start rate to 1 at `weeks`. */
export function rampAt(age: number, startRate: number, weeks: number): number {
  if (weeks === 0) return 1;
  return startRate + (1 - startRate) * Math.min(1, age / weeks);
}

/** Season factors by week of the plan; null when there are none. */
export function seasonByWeek(item: Item, startDay: number, weeks: number): Float64Array | null {
  if (!item.seasonFactors) return null;
  const factors = item.seasonFactors.map(Number);
  const out = new Float64Array(weeks);
  for (let w = 0; w < weeks; w++) out[w] = factors[Math.min(52, isoWeekOf(startDay + 7 * w)) - 1] ?? 1;
  return out;
}

type Promotion = Account['promotions'][number];

/** Whether an item is on a promotion: on its list, or on any that has none. */
export function isOn({ itemIds }: Promotion, itemId: string): boolean {
  return itemIds === null || itemIds.includes(itemId);
}

/**
 * Promotion factors of one listed item by week: 1 + lift inside, the dip after (floor 0), and in the weeks of promotions
 * it is not on what they take from it; null when there are none.
 */
export function promotionByWeek(account: Account, itemId: string, weeks: number): Float64Array | null {
  if (account.promotions.length === 0) return null;
  const out = new Float64Array(weeks).fill(1);
  for (const promo of account.promotions) {
    const end = Math.min(promo.fromWeek + promo.weeks, weeks);
    if (!isOn(promo, itemId)) {
      times(out, sisterFactor(account, promo), promo.fromWeek, end);
      continue;
    }
    const lift = Number(promo.liftRate);
    times(out, 1 + lift, promo.fromWeek, end);
    if (promo.dipWeeks === 0) continue;
    // The borrowed part of the extra units comes off the weeks after, in equal parts.
    const less = Math.max(0, 1 - (Number(promo.dipShare) * lift * promo.weeks) / promo.dipWeeks);
    const after = promo.fromWeek + promo.weeks;
    times(out, less, after, Math.min(after + promo.dipWeeks, weeks));
  }
  return out;
}

function times(out: Float64Array, factor: number, from: number, until: number): void {
  for (let w = from; w < until; w++) out[w] = (out[w] ?? 1) * factor;
}

/**
 * What a promotion leaves of the sales of items beside it: its extra units, so far as they come from them, spread over
 * them by rate of sale. Floor 0; 1 when there is nothing beside it to take from.
 */
export function sisterFactor({ listings }: Pick<Account, 'listings'>, promo: Promotion): number {
  let onIt = 0;
  let beside = 0;
  for (const { itemId, unitsPerStoreWeek } of listings) {
    if (isOn(promo, itemId)) onIt += Number(unitsPerStoreWeek);
    else beside += Number(unitsPerStoreWeek);
  }
  if (beside === 0) return 1;
  return Math.max(0, 1 - (Number(promo.sisterShare) * Number(promo.liftRate) * onIt) / beside);
}

/** Lift of a display at an age in weeks, in a straight line to its end; 0 once it is gone. */
export function displayLiftAt(display: Account['display'], age: number): number {
  if (display === null || age >= display.weeks) return 0;
  const lift = Number(display.liftRate);
  if (display.liftEndRate === null || display.weeks === 1) return lift;
  return lift + ((Number(display.liftEndRate) - lift) * age) / (display.weeks - 1);
}

/** Units that orders come in multiples of: a case, a layer of cases on a pallet, or a pallet. */
export function multipleOf(
  orderIn: Account['ordering']['orderIn'],
  { caseUnits, palletCases, pack }: Item,
): number {
  if (orderIn === 'pallet') return caseUnits * palletCases;
  // Without a pack there is no layer: rules/ordering.ts refuses such a plan.
  return orderIn === 'layer' && pack ? caseUnits * pack.layerCases : caseUnits;
}

/** Units one door's opening fill needs, in full multiples of what its account orders in. */
export function fillPerDoor(account: Account, listing: Listing, item: Item): number {
  const multiple = multipleOf(account.ordering.orderIn, item);
  const shelf = listing.facings * listing.depthUnits + listing.backStockUnits;
  return multiple * Math.ceil(shelf / multiple);
}

/** Of those, units that are free. */
export function freePerDoor(account: Account, listing: Listing, item: Item): number {
  return Math.min(listing.freeCasesPerDoor * item.caseUnits, fillPerDoor(account, listing, item));
}

/** Weeks of demand that an order looks ahead: until the next one is there, and the cover. */
export function aheadWeeks({ ordering, terms }: Account, coverWeeks: number): number {
  return (ordering.daily ? 0 : ordering.everyWeeks) + terms.transitWeeks + coverWeeks;
}

/** Whether stores (and a depot) order at the end of a week. */
export function isOrderWeek(week: number, firstWeek: number, everyWeeks: number): boolean {
  return week >= firstWeek && (week - firstWeek) % everyWeeks === 0;
}
