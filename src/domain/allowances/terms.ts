// What the kinds of allowance have in common: how a take and its reason are made, and the charges that several share.
// Every kind file builds on these; they know no kind. Worked figure: share({ rate: '0.02', base: 2.60, of: 'invoice' })
// is 0.0520 with the reason "2 % of invoice 2.60".
import { type Decimal, dec, ONE, round4, toMillionths, toTenThousandths } from '../money/decimal.ts';
import { percentText, priceText } from '../money/plain.ts';
import type { Charge, UnitBases, UnitTake } from './contract.ts';

/** A share of a named base, rounded to 4 decimals. */
export function share({ rate, base, of }: { rate: string; base: Decimal; of: string }): UnitTake {
  return {
    amount: round4(base.times(dec(rate))),
    reason: `${percentText(rate)} of ${of} ${priceText(base)}`,
  };
}

/** So much a unit, or so much a case divided by the units in it, rounded to 4 decimals. */
export function each(terms: { amount: string; per: 'unit' | 'case' }, bases: UnitBases): UnitTake {
  const amount = dec(terms.amount);
  if (terms.per === 'unit') return { amount: round4(amount), reason: `${priceText(amount)} a unit` };
  return {
    amount: round4(amount.div(bases.caseUnits)),
    reason: `${priceText(amount)} a case of ${bases.caseUnits} units`,
  };
}

/** Broker and royalty are owed on invoices less return credits. */
export function lessReturns(base: Decimal, bases: UnitBases): Decimal {
  return bases.returnsRate.isZero() ? base : base.times(ONE.minus(bases.returnsRate));
}

export function invoiceWords({ returnsRate }: UnitBases): string {
  return returnsRate.isZero() ? 'invoice' : 'invoice less returns';
}

/** A share of each invoice that the chain takes off its remittance. */
export function offRemittance(rate: string): Charge {
  return { settles: 'remittance', rateMillionths: toMillionths(dec(rate)) };
}

/** So much a unit in the weeks of a deal, claimed afterwards. */
export function claim(
  terms: { amountPerUnit: string; fromWeek: number; weeks: number; lagWeeks: number },
  per: 'unitSold' | 'unitShipped',
): Charge {
  return {
    settles: 'claim',
    per,
    priceTenThousandths: tenThousandths(dec(terms.amountPerUnit)),
    fromWeek: terms.fromWeek,
    untilWeek: terms.fromWeek + terms.weeks,
    lagWeeks: terms.lagWeeks,
  };
}

/** A price on the 0.0001 grid, for the weekly pass. */
export function tenThousandths(amount: Decimal): number {
  return toTenThousandths(round4(amount));
}
