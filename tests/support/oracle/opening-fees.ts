/**
 * An amount that is stated per item, door, chain or item and door, as it falls due in the week: with each cohort that
 * opens, or once with the first opening of the account's waves. Multiplied first, then rounded: each is one document.
 * Worked figure: 250.00 per item and door, two items, a cohort of 10 doors: 20 times, 5,000.00.
 */
import { opens } from './facts.ts';
import { nearest, scaled, totalOf } from './numbers.ts';
import type { World } from './world.ts';

export type Per = 'item' | 'door' | 'chain' | 'itemDoor';

export function feesOpening(world: World, accountAt: number, fee: { amount: string; per: Per }): bigint {
  const { plan, cohorts, minorDigits } = world.facts;
  const items = plan.accounts[accountAt]?.listings.length ?? 0;
  const opening = cohorts.filter((cohort) => cohort.accountAt === accountAt && opens(cohort));
  const now = opening.filter(({ openWeek }) => openWeek === world.week);
  if (fee.per === 'door' || fee.per === 'itemDoor') {
    const each = fee.per === 'door' ? 1 : items;
    return totalOf(
      now.map(({ authorisedAtOpening }) => times(fee.amount, authorisedAtOpening * each, minorDigits)),
    );
  }
  const isFirst = now.length > 0 && opening.every(({ openWeek }) => openWeek >= world.week);
  return isFirst ? times(fee.amount, fee.per === 'item' ? items : 1, minorDigits) : 0n;
}

/** A typed amount so many times, rounded once. */
export function times(amount: string, count: number, minorDigits: number): bigint {
  return nearest(scaled(amount, 4) * BigInt(count), 10n ** BigInt(4 - minorDigits));
}
