// A royalty on net sales (invoiced less trade money): rate A until k times the money is paid back, then rate B.
// Worked figure: 50,000 for 4 % of net sales until 2 x is paid: over once net sales since then reach 2,500,000.
import { tranchesIn } from '../arrivals.ts';
import type { Means, OfferKind, TermsOf } from '../contract.ts';
import { ROYALTY_FIELDS, ROYALTY_MOVABLE, royaltyOutcome, royaltyRules, UNTIL_FIELD } from '../royalty.ts';

const terms = (means: Means) => {
  const { z, f, tranches } = means;
  return z.strictObject({
    kind: z.literal('salesRoyalty'),
    id: f.id(),
    tranches: tranches(),
    rate: f.share(),
    laterRate: f.share(),
    ...royaltyRules(means),
  });
};
type Terms = TermsOf<typeof terms>;

export const salesRoyalty = {
  kind: 'salesRoyalty',
  label: 'Royalty on sales',
  meaning:
    'A share of net sales until a multiple of the money is back, then a smaller one, to a cap or a date.',
  terms,
  blank: (id) => ({
    kind: 'salesRoyalty',
    id,
    tranches: [],
    rate: '0',
    laterRate: '0',
    // Nobody said that it stops: 1 would make what was heard look free.
    untilMultiple: null,
    capMultiple: null,
    untilWeek: null,
    minimumAmountPerQuarter: '0',
    paid: 'quarterly',
  }),
  fields: [
    { key: 'tranches', label: 'Money', unit: 'tranches' },
    { key: 'rate', label: 'Share of net sales', unit: 'share' },
    UNTIL_FIELD,
    { key: 'laterRate', label: 'Share of net sales after that', unit: 'share' },
    ...ROYALTY_FIELDS,
  ],
  movable: [
    { key: 'rate', label: 'Share of net sales', unit: 'share', least: 0, most: 1, decimals: 4 },
    {
      key: 'laterRate',
      label: 'Share of net sales after that',
      unit: 'share',
      least: 0,
      most: 1,
      decimals: 4,
    },
    ...ROYALTY_MOVABLE,
  ],
  outcome: (stored, basis) =>
    royaltyOutcome({
      basis,
      came: tranchesIn(stored.tranches, basis),
      base: basis.netSales,
      rate: Number(stored.rate),
      laterRate: Number(stored.laterRate),
      what: 'royalty',
      rules: stored,
    }),
} satisfies OfferKind<Terms>;
