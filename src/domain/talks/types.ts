// What talks with one account are reckoned in: terms by name, a target, counter-offers that keep it, and what one term
// is worth in another. Values are plain numbers in the plan's units (shares, amounts, days, weeks, cases, doors).
// Worked figure: asked for margin 0.42 instead of 0.40, slotting 97 instead of 250 leaves the first year where it was.
import type { Decimal } from '../money/decimal.ts';
import type { Plan, Table, TermValue } from '../plan/index.ts';

export type Objective = Table['objective'];

/** How a term's value is written: a share as a percentage, an amount as money, the rest as a count. */
export type TermUnit = 'share' | 'price' | 'sum' | 'days' | 'weeks' | 'cases' | 'doors';

/** One term of an account as it stands. */
export interface Term {
  /** As in --ask and in the plan: "margin", "slotting", "shelf:honey". */
  name: string;
  /** "Margin", "Slotting", "Shelf price, Honey": first word capital, no unit. */
  label: string;
  unit: TermUnit;
  value: number;
  least: number;
  most: number;
  /** Counter-offers are whole multiples of it. */
  grid: number;
  /** Which way is better for us, as a rule; the model decides in each case. */
  better: 'lower' | 'higher';
  /** What is assumed where the account says nothing of it ("4 weeks, 20 % off ...; guess"), or null. */
  assumed: string | null;
}

/** Terms and values, by name. */
export type Terms = Readonly<Record<string, number>>;

/** What a deal comes to under some terms: the closed-form figures, without the weekly pass. */
export interface DealFigures {
  /** First-year contribution less the money put down in that year. */
  firstYear: number;
  /** Of the deal over its term at the objective's yearly rate (10 % where the objective is another). */
  presentValue: number;
  /** Null: not within the term. */
  paybackWeeks: number | null;
  breakEvenRatio: Decimal | null;
  /** Of the first listing, units a store and week; null: none. */
  breakEvenRate: Decimal | null;
  moneyDownPerDoor: Decimal;
  contributionPerUnit: Decimal;
  /** What is made or lost when the chain takes us off at the first review, goods left on shelves counted (review.ts). */
  droppedAtReview: number;
  /** Weeks after the first opening that this is for: the review's, or fewer where the chain is left earlier anyway. */
  reviewedAfterWeeks: number;
}

/** Where an offer stands. */
export interface Standing {
  /** The objective's own value: money, or weeks; null: payback is not reached within the term. */
  value: number | null;
  target: number;
  walkAway: number;
  /** holds: at or past the target; tight: between walk-away and target; fails: beyond walk-away. */
  state: 'holds' | 'tight' | 'fails';
  /** Money a year (or weeks) to the target, positive is in our favour. */
  gap: number;
}

export interface Counter {
  kind: 'alone' | 'mix';
  /** Only the terms that move, at their new values, on their grids, within limits. */
  terms: Terms;
  target: number;
  reached: number | null;
  /**
   * reached − target in our favour (weeks: target − reached), to 4 decimals: how far rounding and steps overshoot; negative:
   * short by. Of a payback not reached: short by at least this.
   */
  miss: number;
  /** Whether it keeps the target. */
  holds: boolean;
}

export interface Counters {
  /** Those that keep the target, the least moved first; the mix last. */
  counters: readonly Counter[];
  /** When none keeps it: the one that comes closest. */
  closest: Counter | null;
  /** Terms that can't move the target at all ("paymentDays" under firstYear). */
  withoutEffect: readonly string[];
}

/** How much of `other` is worth one step of `term`, at the present deal. */
export interface WorthCell {
  term: string;
  other: string;
  /** Amount of `other` (in its units, not on a grid) that makes up for one `step` of `term`; null: no amount does,
   * or less than a plan can hold, or the least of it already changes much (an early discount where there was none). */
  amount: number | null;
  /** Values of `other` between which the proportion holds to a tenth; null where it holds to the term's ends. */
  holdsFrom: number | null;
  holdsTo: number | null;
}

export interface Worth {
  /** Terms with an effect, in the order asked for. */
  terms: readonly string[];
  /** One step by term: one margin point, 1 of slotting a door, 1 day ... */
  steps: Terms;
  /** Change of the objective by one step against us, positive (money, or weeks). */
  effects: Terms;
  cells: readonly WorthCell[];
}

export interface TalksArgs {
  plan: Plan;
  accountId: string;
  objective: Objective;
}

export type { TermValue };
