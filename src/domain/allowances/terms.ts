// What the kinds of allowance have in common: how a take and its reason are made, and the charges that several share.
// Every kind file builds on these; they know no kind. Worked figure: share({ rate: '0.02', base: 2.60, of: 'invoice' })
// is 0.0520 with the reason "2 % of invoice 2.60".
import { type Decimal, ONE } from '../money/decimal.ts';
import { gridOf, onGrid } from '../money/grid.ts';
import { mulDiv, timesRate } from '../money/integer.ts';
import { kept, keptMillionths, keptTenThousandths } from '../money/kept.ts';
import { percentText, priceText } from '../money/plain.ts';
import type { Charge, UnitBases, UnitTake } from './contract.ts';

/** A share of a named base on the 0.0001 grid, rounded to 4 decimals. */
export function share({ rate, base, of }: { rate: string; base: Decimal; of: string }): UnitTake {
  return {
    amount: onGrid(timesRate(gridOf(base), keptMillionths(rate))),
    reason: `${percentText(rate)} of ${of} ${priceText(base)}`,
  };
}

/** So much a unit, or so much a case divided by the units in it, rounded to 4 decimals. */
export function each(terms: PerUnitOrCase, bases: UnitBases): UnitTake {
  const price = priceText(kept(terms.amount));
  return {
    amount: onGrid(eachTenThousandths(terms, bases)),
    reason: terms.per === 'unit' ? `${price} a unit` : `${price} a case of ${bases.caseUnits} units`,
  };
}

interface PerUnitOrCase {
  amount: string;
  per: 'unit' | 'case';
}

/** The same for the weekly pass, in 1/10,000. */
export function eachTenThousandths({ amount, per }: PerUnitOrCase, { caseUnits }: UnitBases): number {
  return per === 'unit' ? keptTenThousandths(amount) : mulDiv(keptTenThousandths(amount), 1, caseUnits);
}

/** Broker and royalty are owed on invoices less return credits. */
export function lessReturns(base: Decimal, { returnsRate }: UnitBases): Decimal {
  return returnsRate.isZero() ? base : base.times(ONE.minus(returnsRate));
}

export function invoiceWords({ returnsRate }: UnitBases): string {
  return returnsRate.isZero() ? 'invoice' : 'invoice less returns';
}

/** A share of each invoice that the chain takes off its remittance. */
export function offRemittance(rate: string): Charge {
  return { settles: 'remittance', rateMillionths: keptMillionths(rate) };
}

/** So much a unit in the weeks of a deal, claimed afterwards. */
export function claim(
  terms: { amountPerUnit: string; fromWeek: number; weeks: number; lagWeeks: number },
  per: 'unitSold' | 'unitShipped',
): Charge {
  return {
    settles: 'claim',
    per,
    priceTenThousandths: keptTenThousandths(terms.amountPerUnit),
    fromWeek: terms.fromWeek,
    untilWeek: terms.fromWeek + terms.weeks,
    lagWeeks: terms.lagWeeks,
  };
}
