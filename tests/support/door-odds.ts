/**
 * Doors that come on time or not at all, as the model's fates. Worked figure: two accounts of 100 and 50 doors at 0.5 each come
 * to 0, 50, 100 or 150 doors, a quarter each.
 */
import { type DoorOdds, sharedOdds } from '../../src/domain/promise/door-odds.ts';

export interface DoorChance {
  doors: number;
  /** 0 to 1. */
  chance: number;
}

/** `shared`: the correlation of any two accounts' scores, 0 to 1. */
export function sharedDoorOdds(accounts: readonly DoorChance[], shared: number): DoorOdds {
  return sharedOdds(
    accounts.map(({ doors, chance }) => ({ chance, slips: [1], ifLate: [doors], without: 0 })),
    shared,
  );
}

/** Each its own. */
export function doorOdds(accounts: readonly DoorChance[]): DoorOdds {
  return sharedDoorOdds(accounts, 0);
}
