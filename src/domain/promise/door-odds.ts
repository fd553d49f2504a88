// How much there will be of what comes in lumps: an account opens its doors, or doesn't, or later. The distribution is
// exact (convolution, one account after the other). Accounts whose fates are independent make the range falsely narrow,
// so what they share is mixed in: a normal copula with one common factor, the same as in the draws of the range.
// Worked figure: two accounts of 100 and 50 doors at 0.5 each: 0, 50, 100 or 150 doors, a quarter each.
import { scoreBelow, shareBelowScore } from './score.ts';

/** What one account comes to, in whole units (doors, or parts of a sum). */
export interface Fate {
  /** Chance that it comes at all, 0 to 1. */
  chance: number;
  /** Shares of coming 0, 1, 2 ... weeks late where it comes, adding up to 1. */
  slips: readonly number[];
  /** What there is if it comes so many weeks late, at the same places; and if it doesn't. */
  ifLate: readonly number[];
  without: number;
}

/** shares[n] is the chance of exactly n. */
export type DoorOdds = Float64Array;

/** Correlations above this count as this: the levels could not be laid closely enough. */
const MOST_SHARED = 0.99;
const REACH = 5;

export interface Level {
  /** Of the common factor: 0 is usual, above it is a good year for all. */
  level: number;
  weight: number;
}

/**
 * Levels of the common factor with weights that add up to 1: a trapezoid over a normal density, close enough that a
 * chance between two levels is right to nine digits.
 */
function levelsOf(shared: number): Level[] {
  if (shared <= 0) return [{ level: 0, weight: 1 }];
  const used = Math.min(MOST_SHARED, shared);
  const step = Math.min(0.5, Math.sqrt((1 - used) / used) / 2);
  const side = Math.ceil(REACH / step);
  const levels = Array.from({ length: 2 * side + 1 }, (_, place) => {
    const level = (place - side) * step;
    return { level, weight: Math.exp(-(level * level) / 2) };
  });
  const sum = levels.reduce((total, { weight }) => total + weight, 0);
  return levels.map(({ level, weight }) => ({ level, weight: weight / sum }));
}

/** The share that lies below a score once the common factor is known. */
function shareAtLevel(score: number, shared: number, level: number): number {
  if (shared <= 0 || !Number.isFinite(score)) return shareBelowScore(score);
  const used = Math.min(MOST_SHARED, shared);
  return shareBelowScore((score + Math.sqrt(used) * level) / Math.sqrt(1 - used));
}

interface Scored {
  fate: Fate;
  most: number;
  /** Score of its chance, and of being at most so many weeks late. */
  comes: number;
  late: number[];
}

/**
 * The distribution of the sum over all accounts; amounts are whole and not below 0. `shared` is the correlation of the scores
 * of any two of them: 0, each its own, exact; to 1.
 */
export function sharedOdds(fates: readonly Fate[], shared: number): DoorOdds {
  const mixed = new Float64Array(mostOf(fates) + 1);
  // Where nothing is open all levels are alike.
  const used = fates.every(isSettled) ? 0 : shared;
  for (const { weight, odds } of oddsByLevel(fates, used)) {
    for (let n = 0; n < mixed.length; n++) mixed[n] = (mixed[n] as number) + weight * (odds[n] as number);
  }
  return mixed;
}

/** The same at each level of the common factor. `odds` is written over by the next. */
export function* oddsByLevel(fates: readonly Fate[], shared: number): Generator<Level & { odds: DoorOdds }> {
  const sure = fates.reduce((sum, fate) => sum + (isSettled(fate) ? mostOf([fate]) : 0), 0);
  // The small ones first: the array that each account is folded into stays short.
  const open = fates.filter((fate) => !isSettled(fate)).map(scored);
  open.sort((one, other) => one.most - other.most);
  let odds = new Float64Array(mostOf(fates) + 1);
  let next = new Float64Array(odds.length);
  for (const { level, weight } of levelsOf(shared)) {
    let reached = sure;
    odds.fill(0);
    odds[sure] = 1;
    for (const account of open) {
      next.fill(0);
      for (const [amount, share] of outcomesAt(account, shared, level))
        fold(odds, next, { reached, amount, share });
      reached += account.most;
      [odds, next] = [next, odds];
    }
    yield { level, weight, odds };
  }
}

/** The most that the accounts can come to: of settled ones what they come to. */
export function mostOf(fates: readonly Fate[]): number {
  return fates.reduce((sum, fate) => {
    const { chance, ifLate, without } = fate;
    if (chance <= 0) return sum + without;
    return sum + (isSettled(fate) ? (ifLate[0] ?? 0) : Math.max(without, ...ifLate));
  }, 0);
}

/** Comes to one amount, whether and whenever its waves come. */
export function isSettled({ chance, ifLate, without }: Fate): boolean {
  const [first = 0] = ifLate;
  if (chance <= 0) return true;
  return ifLate.every((amount) => amount === first) && (chance >= 1 || first === without);
}

function scored(fate: Fate): Scored {
  let below = 0;
  const late = fate.slips.map((share) => {
    below += share;
    return scoreBelow(below);
  });
  return { fate, most: Math.max(fate.without, ...fate.ifLate), comes: scoreBelow(fate.chance), late };
}

/** What it may come to at a level of the common factor, with the share of each; equal amounts in a row are one. */
function outcomesAt({ fate, comes, late }: Scored, shared: number, level: number): [number, number][] {
  const { ifLate, without, chance } = fate;
  const opens = chance >= 1 ? 1 : shareAtLevel(comes, shared, level);
  const outcomes: [number, number][] = opens < 1 ? [[without, 1 - opens]] : [];
  let before = 0;
  for (let slip = 0; slip < ifLate.length; slip++) {
    const isLast = slip === ifLate.length - 1;
    if (!isLast && ifLate[slip] === ifLate[slip + 1]) continue;
    const below = isLast ? 1 : shareAtLevel(late[slip] ?? 0, shared, level);
    outcomes.push([ifLate[slip] ?? 0, opens * (below - before)]);
    before = below;
  }
  return outcomes;
}

function fold(
  odds: Float64Array,
  into: Float64Array,
  { reached, amount, share }: { reached: number; amount: number; share: number },
): void {
  if (share <= 0) return;
  for (let n = 0; n <= reached; n++)
    into[n + amount] = (into[n + amount] as number) + share * (odds[n] as number);
}

/** The mean of one account alone, what accounts share counted in: in a good year it comes more likely, and earlier. */
export function meanOf(fate: Fate, shared: number): number {
  if (isSettled(fate)) return mostOf([fate]);
  const account = scored(fate);
  return levelsOf(shared).reduce(
    (sum, { level, weight }) =>
      outcomesAt(account, shared, level).reduce((all, [amount, share]) => all + weight * share * amount, sum),
    0,
  );
}

export function expectedDoors(odds: DoorOdds): number {
  return odds.reduce((sum, share, n) => sum + n * share, 0);
}

/** Chance of at least so many. */
export function chanceOfAtLeast(odds: DoorOdds, doors: number): number {
  let sum = 0;
  for (let n = Math.max(0, Math.ceil(doors)); n < odds.length; n++) sum += odds[n] ?? 0;
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
