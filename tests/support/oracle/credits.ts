/**
 * Credits for units that came back: a claim of the week at the invoice price, and less broker and royalty on it.
 * Worked figure: 24 units at 2.60 are a claim of 62.40; a broker at 5 % is owed 3.12 less.
 */
import { invoicePrice, type Line } from './facts.ts';
import { priced, share } from './numbers.ts';
import { oweMonthly, oweQuarterly } from './owed.ts';
import { claim, type World } from './world.ts';

/** `credited`: the money of a claim that is booked already, or null to claim at the invoice price. */
export function creditReturns(world: World, line: Line, units: number, credited: bigint | null): void {
  const { minorDigits } = world.facts;
  const amount = credited ?? priced(units, invoicePrice(line, world.week), minorDigits);
  if (credited === null) claim(world, line.accountAt, amount, 0);
  for (const { charge } of line.prices.charges) {
    if (charge.settles !== 'monthly' && charge.settles !== 'quarterly') continue;
    const rate = BigInt(charge.rateMillionths);
    const perUnit = BigInt(charge.priceTenThousandths);
    const less = share(amount, rate) + priced(units, perUnit, minorDigits);
    if (charge.settles === 'monthly') oweMonthly(world, -less);
    else oweQuarterly(world, -less);
  }
}
