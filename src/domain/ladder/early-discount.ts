// What an early-payment discount costs by the year, seen by whoever gives it up or gives it: d for paying (net - early)
// days sooner. Simple and compounded yearly rates differ a lot, so each is named for what it is.
// Worked figure: 2 % in 10 days, net 30: simple on 365 days 0.02 / 0.98 x 365 / 20 = 37.24 %; compounded 44.59 %.
import { type Decimal, dec, ONE, round6 } from '../money/decimal.ts';

export interface DiscountByYear {
  simple360: Decimal;
  simple365: Decimal;
  compounded365: Decimal;
}

/**
 * Yearly rates of a discount (0 to below 1) for paying in `earlyDays` instead of `netDays`, to 6 decimals; null when it
 * brings no payment forward.
 */
export function discountByYear(terms: {
  rate: Decimal;
  earlyDays: number;
  netDays: number;
}): DiscountByYear | null {
  const days = terms.netDays - terms.earlyDays;
  if (days <= 0) return null;
  const perPeriod = terms.rate.div(ONE.minus(terms.rate));
  return {
    simple360: round6(perPeriod.times(360).div(days)),
    simple365: round6(perPeriod.times(365).div(days)),
    compounded365: round6(ONE.plus(perPeriod).pow(dec(365).div(days)).minus(ONE)),
  };
}
