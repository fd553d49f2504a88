// Decimal texts as a plan keeps them, read fast: the same few texts are read for every account and item, so each is
// parsed once; and straight to the whole numbers of the weekly pass where no decimal is needed in between.
// Worked figure: kept('0.05') is the decimal 0.05; keptMillionths('0.05') is 50,000; keptTenThousandths('3.4') is 34,000.
import { type Decimal, dec } from './decimal.ts';

const parsed = new Map<string, Decimal>();

/** Texts remembered at most: above it all are forgotten, so that typing for a day does not grow memory. */
const REMEMBERED_MOST = 4096;

/** The decimal of a canonical text. Throws on anything else, which is a bug. */
export function kept(text: string): Decimal {
  const known = parsed.get(text);
  if (known) return known;
  if (parsed.size >= REMEMBERED_MOST) parsed.clear();
  const fresh = dec(text);
  parsed.set(text, fresh);
  return fresh;
}

/** A rate (at most 6 decimals, up to 100) in millionths. */
export function keptMillionths(text: string): number {
  return wholeOf(Number(text) * 1_000_000, text);
}

/** An amount (at most 4 decimals, up to 100,000,000,000) in 1/10,000. */
export function keptTenThousandths(text: string): number {
  return wholeOf(Number(text) * 10_000, text);
}

/** Doubles hold these products to well under half a step, so the nearest whole number is the exact one. */
function wholeOf(scaled: number, text: string): number {
  const whole = Math.round(scaled);
  if (!Number.isSafeInteger(whole)) throw new Error(`${text} is no number of the plan`);
  return whole;
}
