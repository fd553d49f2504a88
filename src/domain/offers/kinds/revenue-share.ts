// A share of sales, or of what customers have paid, until a multiple of the money is back; then it is over.
// Worked figure: 500,000 at a cap of 1.6 x, for 5 % of 100,000 a month, is paid back in 160 months.
import { tranchesIn } from '../arrivals.ts';
import type { Means, OfferKind, TermsOf } from '../contract.ts';
import { PAID_FIELD, royaltyOutcome } from '../royalty.ts';

const terms = ({ z, f, tranches }: Means) =>
  z.strictObject({
    kind: z.literal('revenueShare'),
    id: f.id(),
    tranches: tranches(),
    of: z.enum(['netSales', 'collections'], { error: '"netSales" or "collections"' }),
    rate: f.share(),
    capMultiple: f.factor(),
    paid: z.enum(['weekly', 'monthly', 'quarterly'], { error: '"weekly", "monthly" or "quarterly"' }),
  });
type Terms = TermsOf<typeof terms>;

export const revenueShare = {
  kind: 'revenueShare',
  label: 'Revenue share',
  meaning: 'A share of sales, or of what customers pay, until a multiple of the money is back; then it ends.',
  terms,
  blank: (id) => ({
    kind: 'revenueShare',
    id,
    tranches: [],
    of: 'netSales',
    rate: '0',
    capMultiple: '1',
    paid: 'monthly',
  }),
  fields: [
    { key: 'tranches', label: 'Money', unit: 'tranches' },
    {
      key: 'of',
      label: 'Share of',
      unit: 'choice',
      choices: [
        { value: 'netSales', label: 'Net sales' },
        { value: 'collections', label: 'What customers paid' },
      ],
    },
    { key: 'rate', label: 'Share', unit: 'share' },
    { key: 'capMultiple', label: 'Until so many times the money', unit: 'times' },
    PAID_FIELD,
  ],
  movable: [
    { key: 'capMultiple', label: 'Cap', unit: 'times', least: 0, most: 100, decimals: 2 },
    { key: 'rate', label: 'Share', unit: 'share', least: 0, most: 1, decimals: 4 },
  ],
  outcome: (stored, basis) =>
    royaltyOutcome({
      basis,
      came: tranchesIn(stored.tranches, basis),
      base: stored.of === 'netSales' ? basis.netSales : basis.collected,
      rate: Number(stored.rate),
      laterRate: 0,
      what: 'share',
      rules: {
        untilMultiple: stored.capMultiple,
        capMultiple: stored.capMultiple,
        untilWeek: null,
        minimumAmountPerQuarter: '0',
        paid: stored.paid,
      },
    }),
} satisfies OfferKind<Terms>;
