// Somebody else pays a part of our suppliers' bills for us, and is paid back with a fee for every 30 days so many days later.
// Worked figure: 70 % of a bill of 10,000 for 90 days at 3 % per 30 days is 7,000 now; 7,000 and 630 after 13 weeks.

import { advanceOutcome, FEE_FIELD, FEE_MOVABLE, LIMIT_FIELD } from '../advances.ts';
import type { Means, OfferKind, TermsOf } from '../contract.ts';

const terms = ({ z, f, when }: Means) =>
  z.strictObject({
    kind: z.literal('orderFinance'),
    id: f.id(),
    starts: when(),
    financedRate: f.share(),
    feeRatePer30Days: f.share(),
    repaidDays: f.whole({ least: 7, most: 365, unit: 'days' }),
    limitAmount: z.nullable(f.sumAmount()),
  });
type Terms = TermsOf<typeof terms>;

export const orderFinance = {
  kind: 'orderFinance',
  label: 'Purchase-order finance',
  meaning:
    'A funder pays a part of our suppliers’ bills, and is paid back with a fee when the goods are sold on.',
  terms,
  blank: (id) => ({
    kind: 'orderFinance',
    id,
    starts: { by: 'week', week: 0 },
    financedRate: '0',
    feeRatePer30Days: '0',
    repaidDays: 90,
    limitAmount: null,
  }),
  fields: [
    { key: 'financedRate', label: 'Part of suppliers’ bills', unit: 'share' },
    FEE_FIELD,
    { key: 'repaidDays', label: 'Paid back after', unit: 'days' },
    LIMIT_FIELD,
    { key: 'starts', label: 'Begins', unit: 'when' },
  ],
  movable: [
    FEE_MOVABLE,
    { key: 'financedRate', label: 'Part of suppliers’ bills', unit: 'share', least: 0, most: 1, decimals: 4 },
  ],
  outcome: (stored, basis) =>
    advanceOutcome({
      basis,
      starts: stored.starts,
      limit: stored.limitAmount,
      feeRatePer30Days: Number(stored.feeRatePer30Days),
      early: true,
      draws: [
        {
          amounts: basis.supplierBills,
          rate: Number(stored.financedRate),
          weeks: Math.ceil(stored.repaidDays / 7),
          forgiven: 0,
        },
      ],
    }),
} satisfies OfferKind<Terms>;
