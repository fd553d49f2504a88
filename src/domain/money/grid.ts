// Prices on the 0.0001 grid as whole numbers and back, and rates between two of them. The ladder reckons whole numbers
// where it can, since dividing decimals is what takes its time; the results are the same to the last digit.
// Worked figure: gridOf(dec('1.8962')) is 18,962; onGrid(18962) is 1.8962; rateOf({ part: 16633, whole: 41583 }) is 0.399995.
import { type Decimal, dec, numberOf } from './decimal.ts';
import { mulDiv } from './integer.ts';

const TEN_THOUSANDTH: Decimal = dec('0.0001');
const MILLIONTH: Decimal = dec('0.000001');

/** A price on the grid in whole 1/10,000. The price must be on the grid. */
export function gridOf(price: Decimal): number {
  return Math.round(numberOf(price) * 10_000);
}

/** The price of so many 1/10,000. */
export function onGrid(tenThousandths: number): Decimal {
  return TEN_THOUSANDTH.times(tenThousandths);
}

/** part / whole to 6 decimals, halves away from zero; both in 1/10,000, whole above zero. */
export function rateOf({ part, whole }: { part: number; whole: number }): Decimal {
  return MILLIONTH.times(mulDiv(part, 1_000_000, whole));
}
