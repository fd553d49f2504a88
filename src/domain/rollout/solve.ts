// Questions put to the whole model by running it again: the most doors the cash at hand carries, the least opening
// cash. Nothing is scaled or guessed: each answer is confirmed by a run, and the next step over it by another.
// Worked figure: lowest cash −12,300 on 36,000 of opening cash: 48,300 is the least; 48,299.99 falls one cent short.

import type { LadderResult, Landed } from '../ladder/types.ts';
import { sizeProblems } from '../limits.ts';
import { Decimal } from '../money/decimal.ts';
import type { Account, Plan } from '../plan/index.ts';
import { isTooLarge } from './exact.ts';
import { rollOut } from './index.ts';

export interface SolveArgs {
  plan: Plan;
  ladders: readonly LadderResult[];
  landed: readonly Landed[];
  minorDigits: number;
}

export interface LeastOpeningCash {
  /** Whole minor units; 0 when the plan needs none. */
  amount: number;
  /** Lowest cash at that amount, and at one minor unit less (null when the amount is 0). */
  lowestThere: number;
  lowestBelow: number | null;
  confirmed: boolean;
}

/** The least cash on the first day with which cash never falls below zero, the plan's funding counted in. */
export function leastOpeningCash(args: SolveArgs): LeastOpeningCash {
  const atZero = lowestWith(withCash(args, 0));
  const amount = Math.max(0, -atZero);
  const lowestThere = lowestWith(withCash(args, amount));
  const lowestBelow = amount === 0 ? null : lowestWith(withCash(args, amount - 1));
  const confirmed = lowestThere >= 0 && (lowestBelow === null || lowestBelow < 0);
  return { amount, lowestThere, lowestBelow, confirmed };
}

function withCash(args: SolveArgs, minorUnits: number): SolveArgs {
  const text = new Decimal(minorUnits).div(10 ** args.minorDigits).toFixed();
  const business = { ...args.plan.business, openingCashAmount: text };
  return { ...args, plan: { ...args.plan, business } };
}

function lowestWith(args: SolveArgs): number {
  return rollOut(args).reading.lowestCash;
}

export interface MostDoors {
  accountId: string;
  /** Doors the plan opens there, and the most that cash carries; null when even none of them can be carried. */
  planned: number;
  doors: number | null;
  /** Lowest cash with that many doors, and with one more (null at the end of the search). */
  lowestThere: number;
  lowestNext: number | null;
  /** True when the search ended, at ten times the plan or at what can be computed exactly, without cash running out. */
  atLeast: boolean;
  /** False when fewer doors were seen to fail where more hold: then `doors` is the end of the first stretch that holds. */
  steady: boolean;
}

/**
 * The most doors of one account that keep cash at or above zero, the rest of the plan as it is. Fewer doors drop the
 * last to open; more doors follow the last wave at its own pace.
 */
export function mostDoors(args: SolveArgs, accountId: string): MostDoors | null {
  const account = args.plan.accounts.find(({ id }) => id === accountId);
  if (!account || account.waves.length === 0) return null;
  const planned = account.waves.reduce((sum, wave) => sum + wave.doors, 0);
  const seen = new Map<number, number>();
  const lowest = (doors: number): number => {
    const known = seen.get(doors);
    if (known !== undefined) return known;
    const found = lowestWith(withDoors(args, account, doors));
    seen.set(doors, found);
    return found;
  };
  const base = { accountId, planned };
  if (lowest(0) < 0) {
    return { ...base, doors: null, lowestThere: lowest(0), lowestNext: null, atLeast: false, steady: true };
  }
  const { holds, fails } = bracket(lowest, planned, (doors) => isWithinSize(withDoors(args, account, doors)));
  const doors = fails === null ? holds : bisect(lowest, holds, fails);
  return {
    ...base,
    doors,
    lowestThere: lowest(doors),
    lowestNext: fails === null ? null : lowest(doors + 1),
    atLeast: fails === null,
    steady: [...seen].every(([count, low]) => (count <= doors ? low >= 0 : low < 0)),
  };
}

/** Whether a plan of this size can be computed exactly. */
function isWithinSize(args: SolveArgs): boolean {
  if (sizeProblems(args.plan).length > 0) return false;
  try {
    rollOut(args);
    return true;
  } catch (error) {
    if (isTooLarge(error)) return false;
    throw error;
  }
}

/** Steps of a sixteenth of the plan and up, so that a stretch that fails before a larger one that holds is seen. */
function bracket(
  lowest: (doors: number) => number,
  planned: number,
  fits: (doors: number) => boolean,
): { holds: number; fails: number | null } {
  const step = Math.max(1, Math.ceil(planned / 16));
  let holds = 0;
  for (let doors = step; doors <= planned * 10; doors += doors < planned ? step : planned) {
    // Past what can be computed exactly nothing is known: the search ends there.
    if (doors > planned && !fits(doors)) break;
    if (lowest(doors) < 0) return { holds, fails: doors };
    holds = doors;
  }
  return { holds, fails: null };
}

function bisect(lowest: (doors: number) => number, from: number, to: number): number {
  let holds = from;
  let fails = to;
  while (fails - holds > 1) {
    const middle = Math.floor((holds + fails) / 2);
    if (lowest(middle) < 0) fails = middle;
    else holds = middle;
  }
  return holds;
}

/** The plan with so many doors of one account: the first to open stay, what is missing joins the last wave. */
export function withDoors(args: SolveArgs, account: Account, doors: number): SolveArgs {
  let left = doors;
  const byWeek = account.waves.map((wave, index) => ({ wave, index }));
  byWeek.sort((x, y) => x.wave.openWeek - y.wave.openWeek || x.index - y.index);
  const kept = byWeek.map(({ wave }, place) => {
    const last = place === byWeek.length - 1;
    const count = last ? left : Math.min(left, wave.doors);
    left -= count;
    return { ...wave, doors: count };
  });
  const waves = kept.filter((wave) => wave.doors > 0);
  const accounts = args.plan.accounts.map((other) => (other.id === account.id ? { ...other, waves } : other));
  return { ...args, plan: { ...args.plan, accounts } };
}
