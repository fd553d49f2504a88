/**
 * How often an amount that is stated per item, door, chain or item and door falls due in the week: with each cohort that
 * opens, or once with the account's first opening.
 * Worked figure: 250.00 per item and door, two items, a cohort of 10 doors: 20 times.
 */
import { opens } from './facts.ts';
import type { World } from './world.ts';

export type Per = 'item' | 'door' | 'chain' | 'itemDoor';

export function feesOpening(world: World, accountAt: number, per: Per): number {
  const { plan, cohorts } = world.facts;
  const items = plan.accounts[accountAt]?.listings.length ?? 0;
  const ofAccount = cohorts.filter((cohort) => cohort.accountAt === accountAt);
  const opening = ofAccount.filter((cohort) => opens(cohort) && cohort.openWeek === world.week);
  if (opening.length === 0) return 0;
  const doors = opening.reduce((sum, { doorsAtOpening }) => sum + doorsAtOpening, 0);
  if (per === 'door') return doors;
  if (per === 'itemDoor') return doors * items;
  const isFirst = ofAccount.every(
    (cohort) => !cohort.isRunning && (!opens(cohort) || cohort.openWeek >= world.week),
  );
  if (!isFirst) return 0;
  return per === 'item' ? items : 1;
}
