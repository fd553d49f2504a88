// Rounding a decimal to what can be paid, or onto the 0.0001 grid that unit prices stand on.
// Worked figure: roundToMinor(dec('31062.5').div(100), 2) is 310.63: halves go away from zero.
import { Decimal, dec } from './decimal.ts';

/** One step of the grid unit prices stand on. */
export const GRID: Decimal = dec('0.0001');

/** An amount as a document states it: to the currency's minor unit, halves away from zero. */
export function roundToMinor(amount: Decimal, minorDigits: number): Decimal {
  return amount.toDecimalPlaces(minorDigits, Decimal.ROUND_HALF_UP);
}

/** The least unit price on the grid that is not below `amount`. */
export function upToGrid(amount: Decimal): Decimal {
  return settled(amount).toDecimalPlaces(4, Decimal.ROUND_CEIL);
}

/** The greatest unit price on the grid that is not above `amount`. */
export function downToGrid(amount: Decimal): Decimal {
  return settled(amount).toDecimalPlaces(4, Decimal.ROUND_FLOOR);
}

/** Quotients end after 40 digits: without what is beyond 25 decimals a price on the grid stays where it is. */
function settled(amount: Decimal): Decimal {
  return amount.toDecimalPlaces(25);
}
