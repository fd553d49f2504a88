// The one door to decimal arithmetic: what is typed and shown is decimal, and this room alone imports decimal.js.
// The weekly pass does not use it (integers held in doubles, see integer.ts).
// Worked figure: dec('1.005').toFixed(2) is "1.01": halves go away from zero.
import { Decimal as Base } from 'decimal.js';

/** Decimal with 40 significant digits, halves rounded away from zero, never exponent notation below 1e40. */
export const Decimal = Base.clone({
  precision: 40,
  rounding: Base.ROUND_HALF_UP,
  toExpNeg: -40,
  toExpPos: 40,
});
export type Decimal = Base;

export const ZERO: Decimal = new Decimal(0);
export const ONE: Decimal = new Decimal(1);

/** Read a canonical decimal text (as kept in a plan) or a whole number; throws on anything else, which is a bug. */
export function dec(text: string | number): Decimal {
  return new Decimal(text);
}

/**
 * The double nearest to a decimal, what toNumber() gives: that one writes the digits as text and reads them again. Two
 * words of seven digits are a whole number a double holds exactly, and so are these powers of ten: one division rounds
 * once, to the same double.
 */
export function numberOf(value: Decimal): number {
  const { d: words, e: exponent, s: sign } = value;
  if (!words || words.length > 2) return value.toNumber();
  const whole = words.length === 1 ? (words[0] ?? 0) : (words[0] ?? 0) * 1e7 + (words[1] ?? 0);
  const power = POWERS[words.length - 1 - Math.floor(exponent / 7)];
  return power === undefined ? value.toNumber() : (sign * whole) / power;
}

/** 10,000,000 to the power of 0 to 3. */
const POWERS = [1, 1e7, 1e14, 1e21] as const;

/** A unit price as named on a document or a rung: 4 decimals, halves away from zero. */
export function round4(amount: Decimal): Decimal {
  return amount.toDecimalPlaces(4);
}

/** A rate as kept: 6 decimals, halves away from zero. */
export function round6(rate: Decimal): Decimal {
  return rate.toDecimalPlaces(6);
}

/** A whole number of 1/10,000 of the currency unit, for the weekly pass. Throws when not on that grid (a bug). */
export function toTenThousandths(amount: Decimal): number {
  const scaled = amount.times(10000);
  if (!scaled.isInteger()) throw new Error(`unit price ${amount.toFixed()} is not on the 0.0001 grid`);
  return numberOf(scaled);
}

/** A whole number of millionths, for the weekly pass. Throws when not on that grid (a bug). */
export function toMillionths(rate: Decimal): number {
  const scaled = rate.times(1000000);
  if (!scaled.isInteger()) throw new Error(`rate ${rate.toFixed()} is not on the 0.000001 grid`);
  return numberOf(scaled);
}

/** A sum of money as typed to whole minor units of the currency, rounded once, half away from zero. */
export function minorOf(text: string | Decimal, minorDigits: number): number {
  return numberOf(new Decimal(text).times(10 ** minorDigits).toDecimalPlaces(0));
}

/** A rate as typed to whole millionths. */
export function rateOf(text: string): number {
  return toMillionths(dec(text));
}
