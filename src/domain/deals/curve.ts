// The cumulated curve of a deal, and the two questions asked of it: when is the money back for good, and at what rate of
// sale would it just come back. Plain numbers, in the plan's currency.
// Worked figure: 100 down and 12.50 a week stand at 0 after 8 weeks: payback 8; over 52 weeks the curve ends at 550, and
// at 100 / 650 = 0.1538 of the planned rate it would have ended at 0.
import { Decimal, ZERO } from '../money/decimal.ts';

/** Doubles add up with a relative error far below this; a nearer miss is none. */
const NOISE = 1e-12;

export interface Curve {
  /** Contribution and fixed money by week from the first opening, not rounded. */
  contribution: Float64Array;
  fixed: Float64Array;
  weeks: number;
}

/** Week-end levels, not rounded; what differs from 0 by noise only is 0. */
export function levels(curve: Curve): Float64Array {
  const out = new Float64Array(curve.weeks);
  let level = 0;
  let moved = 0;
  for (let week = 0; week < curve.weeks; week++) {
    const came = curve.contribution[week] ?? 0;
    const went = curve.fixed[week] ?? 0;
    level += came - went;
    moved += Math.abs(came) + Math.abs(went);
    out[week] = Math.abs(level) <= moved * NOISE ? 0 : level;
  }
  return out;
}

/**
 * Weeks from the first opening to the last upward crossing of zero, on a straight line between week-ends; before the
 * first week-end the line starts at the money put down on the opening day. Null when the curve ends below zero, 0 when
 * it is never below.
 */
export function paybackWeeks(ends: Float64Array, putDownFirst: number): Decimal | null {
  if ((ends.at(-1) ?? 0) < 0) return null;
  for (let week = ends.length - 1; week >= 0; week--) {
    const before = week === 0 ? -putDownFirst : (ends[week - 1] ?? 0);
    if (before >= 0) continue;
    const rise = (ends[week] ?? 0) - before;
    return nearest(week - before / rise, 4);
  }
  return ZERO;
}

/**
 * The share of the planned rates at which contribution just equals the money to earn back. Contribution is the planned
 * rates times something, week by week, so one division finds it. Null when the units bring nothing.
 */
export function breakEvenShare(contribution: number, toEarnBack: number): number | null {
  return contribution <= 0 ? null : toEarnBack / contribution;
}

/** Rounded up to the 6 decimals a rate of sale has, so that the term pays at the rate shown. */
export function breakEvenRate(unitsPerStoreWeek: number, share: number): Decimal {
  return nearest(Math.ceil(unitsPerStoreWeek * share * 1e6 * (1 - NOISE)) / 1e6, 6);
}

/** Planned over break-even, rounded down to 6 decimals; null where nothing is to be earned back. */
export function breakEvenRatio(share: number): Decimal | null {
  return share === 0 ? null : nearest(Math.floor((1 / share) * 1e6 * (1 + NOISE)) / 1e6, 6);
}

/**
 * A double as the nearest decimal of so many places. Shown figures are made so once; nothing is computed from them.
 * Scaled up it is exact to far below a thousandth, so rounding it settles all but those next to a half: these go
 * through toFixed(), which takes a double for exactly what it is.
 */
export function nearest(value: number, decimals: number): Decimal {
  const scaled = value * 10 ** decimals;
  const whole = Math.round(scaled);
  const isClear = Math.abs(scaled) < 2 ** 40 && Math.abs(scaled - whole) < 0.499;
  return isClear ? (STEPS[decimals]?.times(whole + 0) ?? slowly(value, decimals)) : slowly(value, decimals);
}

function slowly(value: number, decimals: number): Decimal {
  return new Decimal((value + 0).toFixed(decimals));
}

/** 1, 0.1, 0.01 and so on to six decimals. */
const STEPS = ['1', '0.1', '0.01', '0.001', '0.0001', '0.00001', '0.000001'].map((step) => new Decimal(step));
