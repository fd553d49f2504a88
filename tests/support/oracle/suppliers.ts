/**
 * Who an item is bought from, what each can still land in a week, and what a unit of an order costs.
 * Worked figure: 2 shifts of 40 hours are 288,000 seconds; 500 an hour, 96 of 100 good: 480; 1,000 units landing use
 * ceil(1000 x 3600 / 480) = 7,500 of them, the rest makes floor(280500 x 480 / 3600) = 37,400.
 */
import type { Item } from '../../../src/domain/plan/index.ts';
import { millionths, nearest, scaled, total } from './numbers.ts';
import type { Instalment, World } from './world.ts';

/** The first supplier is 0, further ones 1, 2 and so on; rush orders come from none of them. */
export const RUSH = -1;

export interface Terms {
  leadWeeks: number;
  minimumOrderUnits: number;
  batchUnits: number;
  depositRate: string;
  supplierDays: number;
}

export function suppliersOf({ supply }: Item): Terms[] {
  return [supply, ...supply.sources];
}

/** Units on the batch grid, no fewer than the minimum. */
export function raised(units: number, { minimumOrderUnits, batchUnits }: Terms): number {
  return Math.ceil(Math.max(units, minimumOrderUnits) / batchUnits) * batchUnits;
}

/** The last week that anything can land in. */
export function lastLanding({ facts }: World): number {
  return 2 * facts.plan.horizonWeeks + 119;
}

function landingOf(world: World, itemAt: number, supplierAt: number, week: number): Instalment[] {
  return world.instalments.filter(
    (each) => each.itemAt === itemAt && each.supplierAt === supplierAt && each.week === week,
  );
}

/** Units that a supplier can still land in a week; endless without a lid. */
export function roomIn(world: World, itemAt: number, supplierAt: number, week: number): number {
  const item = world.facts.plan.items[itemAt];
  if (!item) return 0;
  const landing = total(landingOf(world, itemAt, supplierAt, week).map(({ units }) => units));
  const lid =
    supplierAt === 0 ? lidOf(world, item, week) : item.supply.sources[supplierAt - 1]?.capacityUnitsPerWeek;
  const byLid = lid === null || lid === undefined ? Number.POSITIVE_INFINITY : Math.max(0, lid - landing);
  return supplierAt === 0 ? Math.min(byLid, byHours(world, item, week)) : byLid;
}

/** After the horizon the last week's. */
function weekOfPlan({ facts }: World, week: number): number {
  return Math.min(week, facts.plan.horizonWeeks - 1);
}

function lidOf(world: World, { supply }: Item, week: number): number | null {
  let lid = supply.capacityUnitsPerWeek;
  for (const step of supply.capacitySteps)
    if (step.fromWeek <= weekOfPlan(world, week)) lid = step.unitsPerWeek;
  return lid;
}

function goodUnitsAnHour({ supply }: Item): number {
  if (supply.line === null) return 0;
  const { unitsPerHour, yieldRate } = supply.line;
  return Number((BigInt(unitsPerHour) * millionths(yieldRate)) / 1_000_000n);
}

function byHours(world: World, item: Item, week: number): number {
  const { line } = item.supply;
  if (line === null) return Number.POSITIVE_INFINITY;
  const { items } = world.facts.plan;
  const sharers = items.filter(
    (each) =>
      each.supply.line?.lineId === line.lineId &&
      (line.hoursShare === null ? each.supply.line.hoursShare === null : each === item),
  );
  let left =
    line.hoursShare === null ? commonSeconds(world, line.lineId, week) : ownSeconds(world, item, week);
  for (const each of sharers) {
    for (const { units } of landingOf(world, items.indexOf(each), 0, week))
      left -= Math.ceil((units * 3600) / goodUnitsAnHour(each));
  }
  return Math.floor((Math.max(0, left) * goodUnitsAnHour(item)) / 3600);
}

function secondsOf(world: World, lineId: string, week: number): number {
  const line = world.facts.plan.business.lines.find(({ id }) => id === lineId);
  if (!line) throw new Error(`no line ${lineId}`);
  let { shifts } = line;
  for (const step of line.steps) if (step.fromWeek <= weekOfPlan(world, week)) shifts = step.shifts;
  return line.hoursPerShift * shifts * 3600;
}

function ownSeconds(world: World, { supply }: Item, week: number): number {
  const { line } = supply;
  if (line === null || line.hoursShare === null) return 0;
  const seconds = BigInt(secondsOf(world, line.lineId, week));
  return Number((seconds * millionths(line.hoursShare)) / 1_000_000n);
}

function commonSeconds(world: World, lineId: string, week: number): number {
  const own = world.facts.plan.items
    .filter(({ supply }) => supply.line?.lineId === lineId)
    .map((item) => ownSeconds(world, item, week));
  return secondsOf(world, lineId, week) - total(own);
}

/** Units of a wanted order that a supplier can land within its lead time and the item's cover, in whole batches. */
export function canTake(world: World, itemAt: number, supplierAt: number, wanted: number): number {
  const item = world.facts.plan.items[itemAt];
  const terms = item && suppliersOf(item)[supplierAt];
  if (!item || !terms) return 0;
  const first = world.week + terms.leadWeeks;
  let room = 0;
  for (let week = first; week <= Math.min(first + item.supply.coverWeeks, lastLanding(world)); week++)
    room += roomIn(world, itemAt, supplierAt, week);
  const units = Math.floor(Math.min(wanted, room) / terms.batchUnits) * terms.batchUnits;
  return units < terms.minimumOrderUnits ? 0 : units;
}

export interface UnitPrices {
  goods: bigint;
  freight: bigint;
}

/** Goods and freight of a unit in an order of this week: `asked` units of it, null for a rush order. */
export function pricesOf(world: World, itemAt: number, supplierAt: number, asked: number | null): UnitPrices {
  const { plan, landed } = world.facts;
  const supply = plan.items[itemAt]?.supply;
  const prices = landed[itemAt];
  if (!supply || !prices) throw new Error(`no item ${itemAt}`);
  const source = supply.sources[supplierAt - 1];
  if (source)
    return { goods: scaled(source.goodsAmountPerUnit, 4), freight: scaled(source.freightAmountPerUnit, 4) };
  const reached = supply.priceBreaks.filter(({ fromUnits }) => asked !== null && fromUnits <= asked);
  const best = reached.sort((a, b) => b.fromUnits - a.fromUnits)[0];
  const factor = best ? millionths(best.goodsFactor) : 1_000_000n;
  const currency = supply.purchaseCurrency;
  const isShocked = currency !== null && world.week >= currency.shockFromWeek;
  const shock = 1_000_000n + (isShocked ? millionths(currency.shockRate) : 0n);
  return {
    goods: nearest(BigInt(prices.goods) * factor * shock, 1_000_000_000_000n),
    freight: BigInt(prices.freight),
  };
}
