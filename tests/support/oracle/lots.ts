/**
 * Goods that keep only so long, by the week they landed in: which of them may still leave for a place so far away, and
 * which are too old for any. Items without a shelf life have no lots.
 * Worked figure: landed in week 3, keeps 8 weeks, 2 must be left: week 9 is the last on a shelf, week 8 the last to leave
 * for one a week away; in week 10 what is left of it is written off.
 */
import { total } from './numbers.ts';
import { count, relieve, type World } from './world.ts';

export interface Lot {
  landed: number;
  units: number;
}

/** Null: every unit may leave, whenever it landed. */
export function fitToLeave(world: World, itemAt: number, weeksAway: number): number | null {
  const lots = world.lots[itemAt] ?? null;
  if (lots === null) return null;
  const fit = lots.filter(({ landed }) => isFit(world, itemAt, landed, world.week + weeksAway));
  return total(fit.map(({ units }) => units));
}

function isFit(world: World, itemAt: number, landed: number, receivedIn: number): boolean {
  const life = world.facts.plan.items[itemAt]?.supply.shelfLife ?? null;
  return life === null || landed + life.weeks - receivedIn >= life.leastWeeksAtReceipt;
}

export function addLot(world: World, itemAt: number, units: number): void {
  if (units > 0) world.lots[itemAt]?.push({ landed: world.week, units });
}

/** The oldest go first: of those fit for a place so far away, or of all. */
export function takeOldest(world: World, itemAt: number, units: number, weeksAway: number | null): void {
  const lots = world.lots[itemAt] ?? null;
  if (lots === null) return;
  let left = units;
  for (const lot of [...lots].sort((a, b) => a.landed - b.landed)) {
    if (weeksAway !== null && !isFit(world, itemAt, lot.landed, world.week + weeksAway)) continue;
    const taken = Math.min(left, lot.units);
    lot.units -= taken;
    left -= taken;
  }
  if (left > 0)
    throw new Error(`week ${world.week}: ${left} units more than the lots of item ${itemAt} hold`);
  world.lots[itemAt] = lots.filter((lot) => lot.units > 0);
}

/** Step 3, before receipts: what is too old even for a shelf next door. */
export function writeOffOldLots(world: World): void {
  world.lots.forEach((lots, itemAt) => {
    if (lots === null) return;
    const old = lots.filter(({ landed }) => !isFit(world, itemAt, landed, world.week));
    const units = total(old.map((lot) => lot.units));
    world.lots[itemAt] = lots.filter((lot) => !old.includes(lot));
    world.ours[itemAt] = (world.ours[itemAt] ?? 0) - units;
    count(world, itemAt, 'gone', units);
    relieve(world, itemAt, units);
  });
}
