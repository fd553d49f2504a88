// What a kind of term must be: how it is read from an account and written into one, its ends and its grid, and which way
// is better for us. The list in kinds.ts is all that knows the kinds; margin and shelf prices stand apart (prices.ts),
// since they share one ladder. Worked figure: slotting reads 250 where the account asks 250 a door, and 0 where it asks none.
import type { Account, Plan } from '../plan/index.ts';
import type { TermUnit } from './types.ts';

/** Where a term stands. */
export interface At {
  plan: Plan;
  account: Account;
  /** Digits of the currency's minor unit. */
  minorDigits: number;
}

export interface TermKind {
  name: string;
  /** First word capital, no unit. */
  label: string;
  unit: TermUnit;
  /** One line for --help: what the value counts. */
  meaning: string;
  /** What one press of a step moves; null: by the size of the value (1, 2, 5 x 10^n nearest 4 %). */
  step: number | null;
  /** One of it, for what terms are worth in each other. */
  worthStep: number;
  better: 'lower' | 'higher';
  /** True where the model may say that more is better, or less: both ways are looked at. */
  bothWays: boolean;
  grid: (at: At) => number;
  least: number;
  most: (at: At) => number;
  /** Why `most` is where it is, as the end of a sentence; '' where it needs no reason. */
  mostBecause: string;
  /** How far in our favour a counter-offer may go, from a value. */
  farthest: (value: number, way: 1 | -1) => number;
  isOffered: (at: At) => boolean;
  read: (at: At) => number;
  /** The account with the term set to a value other than the present one. */
  write: (at: At, value: number) => Account;
  assumed: (at: At) => string | null;
}

/** A value as decimal text of at most so many decimals, without zeros at the end. */
export function textOf(value: number, decimals: number): string {
  const text = (value + 0).toFixed(decimals);
  const bare = decimals === 0 ? text : text.replace(/\.?0+$/, '');
  return bare === '-0' ? '0' : bare;
}

/** A money step that the currency has: at least its minor unit. */
export function moneyGrid(least: number, { minorDigits }: At): number {
  return Math.max(least, 10 ** -minorDigits);
}

/** Down to nothing, or up to twice what it is: past that no chain would talk. */
export function upToTwice(value: number, way: 1 | -1): number {
  return way > 0 ? value * 2 : 0;
}
