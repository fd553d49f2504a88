// Cash for a part of each invoice on the day it is written, paid back with a fee for every 30 days when the invoice is
// collected. With recourse a customer's failure stays ours; without, the advance on it need not be paid back.
// Worked figure: 80 % of 10,000 for 60 days at 2 % per 30 days is 8,000 now; 8,000 and 320 two months later.

import { advanceOutcome, FEE_FIELD, FEE_MOVABLE, LIMIT_FIELD } from '../advances.ts';
import type { Means, OfferKind, TermsOf } from '../contract.ts';

const terms = ({ z, f, when }: Means) =>
  z.strictObject({
    kind: z.literal('receivablesAdvance'),
    id: f.id(),
    starts: when(),
    advanceRate: f.share(),
    feeRatePer30Days: f.share(),
    recourse: z.boolean({ error: 'true or false' }),
    limitAmount: z.nullable(f.sumAmount()),
  });
type Terms = TermsOf<typeof terms>;

export const receivablesAdvance = {
  kind: 'receivablesAdvance',
  label: 'Advance on invoices',
  meaning: 'Cash now for a part of each invoice, paid back with a fee when the customer pays.',
  terms,
  blank: (id) => ({
    kind: 'receivablesAdvance',
    id,
    starts: { by: 'week', week: 0 },
    advanceRate: '0',
    feeRatePer30Days: '0',
    recourse: true,
    limitAmount: null,
  }),
  fields: [
    { key: 'advanceRate', label: 'Part of each invoice', unit: 'share' },
    FEE_FIELD,
    { key: 'recourse', label: 'Paid back even where the customer fails', unit: 'switch' },
    LIMIT_FIELD,
    { key: 'starts', label: 'Begins', unit: 'when' },
  ],
  movable: [
    FEE_MOVABLE,
    { key: 'advanceRate', label: 'Part of each invoice', unit: 'share', least: 0, most: 1, decimals: 4 },
  ],
  outcome: (stored, basis) =>
    advanceOutcome({
      basis,
      starts: stored.starts,
      limit: stored.limitAmount,
      feeRatePer30Days: Number(stored.feeRatePer30Days),
      early: false,
      draws: basis.invoices.map(({ amounts, collectWeeks, badDebtRate }) => ({
        amounts,
        rate: Number(stored.advanceRate),
        weeks: collectWeeks,
        forgiven: stored.recourse ? 0 : badDebtRate,
      })),
    }),
} satisfies OfferKind<Terms>;
