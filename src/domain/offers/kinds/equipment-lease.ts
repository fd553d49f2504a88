// A lessor pays for equipment; we pay the same sum each month in advance, a deposit at the start, and a last sum to own it.
// Worked figure: 30,000 of equipment for 36 payments of 950 and 3,000 at the end costs 37,200 in all.
import { tranchesIn } from '../arrivals.ts';
import type { Means, OfferKind, TermsOf } from '../contract.ts';
import { leaseOutcome } from '../loan.ts';

const terms = ({ z, f, tranches }: Means) =>
  z.strictObject({
    kind: z.literal('equipmentLease'),
    id: f.id(),
    tranches: tranches(),
    depositAmount: f.sumAmount(),
    monthlyAmount: f.sumAmount(),
    months: f.whole({ least: 1, most: 240, unit: 'months' }),
    residualAmount: f.sumAmount(),
  });
type Terms = TermsOf<typeof terms>;

export const equipmentLease = {
  kind: 'equipmentLease',
  label: 'Equipment lease',
  meaning: 'A lessor pays for equipment; we pay by the month, and a last sum to own it.',
  terms,
  blank: (id) => ({
    kind: 'equipmentLease',
    id,
    tranches: [],
    depositAmount: '0',
    monthlyAmount: '0',
    months: 36,
    residualAmount: '0',
  }),
  fields: [
    { key: 'tranches', label: 'Equipment paid for', unit: 'tranches' },
    { key: 'depositAmount', label: 'Deposit at the start', unit: 'sum' },
    { key: 'monthlyAmount', label: 'Each month, in advance', unit: 'sum' },
    { key: 'months', label: 'Months', unit: 'months' },
    { key: 'residualAmount', label: 'Last sum, to own it', unit: 'sum' },
  ],
  movable: [
    { key: 'monthlyAmount', label: 'Each month', unit: 'sum', least: 0, most: 1e8, decimals: 2 },
    { key: 'residualAmount', label: 'Last sum', unit: 'sum', least: 0, most: 1e8, decimals: 2 },
  ],
  outcome: (stored, basis) => leaseOutcome(stored, tranchesIn(stored.tranches, basis), basis),
} satisfies OfferKind<Terms>;
