// The balance sheet of a plan's first morning: what was typed of it, and what is left over as retained.
// Worked figure: cash 60,000.00 and stock 2,000.00, owed 5,000.00, paid in 60,000.00: retained −3,000.00.
import type { CompiledBusiness } from './compiled.ts';
import type { BalanceName } from './types.ts';

/** Every balance before week 0, in minor units, each in its natural sign; the books balance by what is retained. */
export function openingBalances({
  openingCash,
  opening,
}: Pick<CompiledBusiness, 'openingCash' | 'opening'>): Record<BalanceName, number> {
  const { receivables, stock, deposits, equipment, payables, accrued, loans, paidInAmount } = opening;
  const assets = openingCash + receivables + stock + deposits + equipment;
  return {
    cash: openingCash,
    receivables,
    stock,
    deposits,
    equipment,
    payables,
    accrued,
    loans,
    paidIn: paidInAmount,
    retained: assets - payables - accrued - loans - paidInAmount,
  };
}
