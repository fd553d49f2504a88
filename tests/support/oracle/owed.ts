/**
 * What is owed to brokers and licensors, accrued as it is earned and paid on its own date.
 * Worked figure: a broker earns 130.00 in week 3 (March) and 65.00 in week 6 (April): 130.00 is paid in week 5, the first
 * that starts in April.
 */
import { quarterOf } from './dates.ts';
import { addTo, post, type World } from './world.ts';

export function oweMonthly(world: World, amount: bigint): void {
  post(world, 'retained', 'accrued', amount);
  world.brokerOwed.now += amount;
}

export function oweQuarterly(world: World, amount: bigint): void {
  post(world, 'retained', 'accrued', amount);
  addTo(world.royaltyOwed, quarterOf(world.facts.plan.startDate, world.week), amount);
}
