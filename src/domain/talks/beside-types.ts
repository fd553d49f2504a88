// A counter that is not a price, as the model values it, and the guesses such counters rest on.
// Worked figure: proof for deductions of 1,622.40 a year, a tenth of them without any, is worth 162.24 a year.
import type { OneDeal } from './run.ts';

/** What the value is a change of; positive is in our favour. `endCash`: cash at the end of the plan's weeks. */
export type BesideMeasure = 'firstYear' | 'atReview' | 'aYear' | 'cashNeed' | 'endCash';

export type BesideId =
  | 'test'
  | 'guarantee'
  | 'reorders'
  | 'spoilsCap'
  | 'proof'
  | 'windowGiven'
  | 'windowAsked';

export interface BesideLine {
  label: string;
  /** In the plan's currency; negative is what it costs us, or what is lost. */
  amount: number;
}

export interface BesideOffer {
  id: BesideId;
  /** "A test first": first word capital. */
  label: string;
  /** What would be said across the table, or why nothing can be valued, in a sentence. */
  what: string;
  /** In the plan's currency, positive in our favour; null where nothing is known to value it by. */
  value: number | null;
  measure: BesideMeasure;
  /** What the value is made of. */
  lines: readonly BesideLine[];
  /** What is guessed in it and why, or null. */
  assumed: string | null;
}

export interface BesideGuesses {
  /** Part of the doors a test opens first; at least one door. */
  testShare: number;
  /** Spoils without a cap, as a multiple of those planned. */
  spoilsTimes: number;
  /** Share of deductions that can't be proven. */
  unprovenShare: number;
  /** Weeks in which no other chain would open. */
  windowWeeks: number;
}

/** No source for any of them: a tenth of the doors, spoils at double, a tenth unproven, twelve weeks. */
export const BESIDE_GUESSES: BesideGuesses = {
  testShare: 0.1,
  spoilsTimes: 2,
  unprovenShare: 0.1,
  windowWeeks: 12,
};

export interface BesideArgs {
  /** The deal with what is on the table in it. */
  now: OneDeal;
  reviewWeeks: number;
  guesses: BesideGuesses;
}

/** An offer that can't be valued, with the sentence that says why. */
export function unvalued(offer: Pick<BesideOffer, 'id' | 'label' | 'what' | 'measure'>): BesideOffer {
  return { ...offer, value: null, lines: [], assumed: null };
}

/** A difference of money to the currency's minor unit, without minus zero. */
export function moneyOf(amount: number, { minorDigits }: Pick<OneDeal, 'minorDigits'>): number {
  return Number(amount.toFixed(minorDigits)) + 0;
}

export function inWeeks(count: number): string {
  return count === 1 ? '1 week' : `${count} weeks`;
}
