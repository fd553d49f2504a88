// Figures inside sentences on the command line: grouped by comma, a point before decimals, dates as ISO 8601; the same on
// every machine. Worked figure: 3,141,601 minor units of a currency with 2 digits are "31,416"; week 26 is
// "week 26 (2026-08-31)".
import { isoDateOf } from '../domain/calendar.ts';
import type { SayFor } from '../domain/evaluate.ts';
import { type Decimal, dec } from '../domain/money/decimal.ts';
import { exact, moneyOfMinor, unitPrice, unitPriceExact, whole } from '../domain/money/format.ts';
import { plainLook } from '../domain/money/look.ts';

export const sayFor: SayFor = ({ currency, minorDigits, startDay }) => {
  const look = plainLook({ currency, minorDigits });
  return {
    money: (minorUnits) => moneyOfMinor(look, minorUnits),
    price: (amount) =>
      isHidden(amount, minorDigits) ? unitPriceExact(look, amount) : unitPrice(look, amount),
    percent: (share) => `${exact(look, dec(String(share)).times(100).toDecimalPlaces(1))} %`,
    number: (value) => exact(look, dec(String(value)).toDecimalPlaces(2)),
    count: (value) => whole(look, value),
    week: (index) => `week ${index} (${isoDateOf(startDay + 7 * index)})`,
    date: (isoDate) => isoDate,
  };
};

/** A price that the currency's own decimals would show as nothing, or nearly. */
function isHidden(amount: Decimal, minorDigits: number): boolean {
  return !amount.isZero() && amount.abs().lt(dec(10).pow(1 - minorDigits));
}
