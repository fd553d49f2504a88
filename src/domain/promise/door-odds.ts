// How many doors there will be: each account opens its doors, or doesn't, with a chance of its own. The distribution is
// exact (convolution, one account after the other). Accounts that share one fate are no wider taken alone, so a common
// shock is mixed in: the chances are moved up and down together, and the distributions averaged.
// Worked figure: two accounts of 100 and 50 doors at 0.5 each: 0, 50, 100 or 150 doors, a quarter each.

export interface DoorChance {
  doors: number;
  /** 0 to 1. */
  chance: number;
}

/** shares[n] is the chance of exactly n doors. */
export type DoorOdds = Float64Array;

/** Exact, for accounts whose fates are independent. */
export function doorOdds(accounts: readonly DoorChance[]): DoorOdds {
  const total = accounts.reduce((sum, { doors }) => sum + doors, 0);
  const odds = new Float64Array(total + 1);
  odds[0] = 1;
  let reached = 0;
  for (const { doors, chance } of accounts) {
    // From the top down, so that what this account adds is not added to again.
    for (let n = reached; n >= 0; n--) {
      const before = odds[n] ?? 0;
      odds[n + doors] = (odds[n + doors] ?? 0) + before * chance;
      odds[n] = (odds[n] ?? 0) - before * chance;
    }
    if (doors === 0) continue;
    reached += doors;
  }
  return odds;
}

/** How far apart the levels of a shock are laid, in standard deviations, and how many. */
const LEVELS = 41;
const REACH = 4;

/**
 * With a common shock: a standard normal level moves every chance's log odds by `shock` (0: independent). The mean
 * chance of each account moves a little with it, as it does in any such mixture.
 */
export function sharedDoorOdds(accounts: readonly DoorChance[], shock: number): DoorOdds {
  if (shock === 0) return doorOdds(accounts);
  const total = accounts.reduce((sum, { doors }) => sum + doors, 0);
  const mixed = new Float64Array(total + 1);
  let weights = 0;
  for (let place = 0; place < LEVELS; place++) {
    const level = REACH * ((2 * place) / (LEVELS - 1) - 1);
    const weight = Math.exp(-(level ** 2) / 2);
    weights += weight;
    const odds = doorOdds(
      accounts.map(({ doors, chance }) => ({ doors, chance: moved(chance, shock * level) })),
    );
    odds.forEach((share, n) => {
      mixed[n] = (mixed[n] ?? 0) + share * weight;
    });
  }
  return mixed.map((share) => share / weights);
}

/** A chance whose log odds are moved; 0 and 1 stay as they are. */
export function moved(chance: number, by: number): number {
  if (chance <= 0 || chance >= 1) return chance;
  return 1 / (1 + ((1 - chance) / chance) * Math.exp(-by));
}

export function expectedDoors(odds: DoorOdds): number {
  return odds.reduce((sum, share, n) => sum + n * share, 0);
}

/** Chance of at least so many. */
export function chanceOfAtLeast(odds: DoorOdds, doors: number): number {
  let sum = 0;
  for (let n = Math.max(0, doors); n < odds.length; n++) sum += odds[n] ?? 0;
  return Math.min(1, sum);
}

/** The fewest doors that the given share of futures does not pass. */
export function doorsAt(odds: DoorOdds, share: number): number {
  let below = 0;
  for (let n = 0; n < odds.length; n++) {
    below += odds[n] ?? 0;
    if (below >= share - 1e-12) return n;
  }
  return odds.length - 1;
}
