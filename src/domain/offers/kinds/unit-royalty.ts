// A royalty for each unit: rate A until k times the money is paid back, then rate B, for ever, to a cap or to a week.
// Worked figure: 60,000 at 1.00 a unit until 1.5 x is paid, then 0.25: at 100,000 units sold 90,000 + 10,000 x 0.25 = 92,500.
import { tranchesIn } from '../arrivals.ts';
import type { Means, OfferKind, TermsOf } from '../contract.ts';
import { ROYALTY_FIELDS, ROYALTY_MOVABLE, royaltyOutcome, royaltyRules, UNTIL_FIELD } from '../royalty.ts';

const terms = (means: Means) => {
  const { z, f, tranches } = means;
  return z.strictObject({
    kind: z.literal('unitRoyalty'),
    id: f.id(),
    tranches: tranches(),
    unit: z.enum(['sold', 'shipped'], { error: '"sold" or "shipped"' }),
    amountPerUnit: f.unitAmount(),
    laterAmountPerUnit: f.unitAmount(),
    ...royaltyRules(means),
  });
};
type Terms = TermsOf<typeof terms>;

export const unitRoyalty = {
  kind: 'unitRoyalty',
  label: 'Royalty a unit',
  meaning:
    'So much for each unit until a multiple of the money is back, then so much less, to a cap or a date.',
  terms,
  blank: (id) => ({
    kind: 'unitRoyalty',
    id,
    tranches: [],
    unit: 'sold',
    amountPerUnit: '0',
    laterAmountPerUnit: '0',
    // Nobody said that it stops: 1 would make what was heard look free.
    untilMultiple: null,
    capMultiple: null,
    untilWeek: null,
    minimumAmountPerQuarter: '0',
    paid: 'quarterly',
  }),
  fields: [
    { key: 'tranches', label: 'Money', unit: 'tranches' },
    {
      key: 'unit',
      label: 'Counted on units',
      unit: 'choice',
      choices: [
        { value: 'sold', label: 'Sold to shoppers' },
        { value: 'shipped', label: 'Shipped by us' },
      ],
    },
    { key: 'amountPerUnit', label: 'For each unit', unit: 'perUnit' },
    UNTIL_FIELD,
    { key: 'laterAmountPerUnit', label: 'For each unit after that', unit: 'perUnit' },
    ...ROYALTY_FIELDS,
  ],
  movable: [
    { key: 'amountPerUnit', label: 'For each unit', unit: 'perUnit', least: 0, most: 1000, decimals: 4 },
    {
      key: 'laterAmountPerUnit',
      label: 'For each unit after that',
      unit: 'perUnit',
      least: 0,
      most: 1000,
      decimals: 4,
    },
    ...ROYALTY_MOVABLE,
  ],
  outcome: (stored, basis) => {
    const perUnit = 10 ** basis.minorDigits;
    return royaltyOutcome({
      basis,
      came: tranchesIn(stored.tranches, basis),
      base: stored.unit === 'sold' ? basis.unitsSold : basis.unitsShipped,
      rate: Number(stored.amountPerUnit) * perUnit,
      laterRate: Number(stored.laterAmountPerUnit) * perUnit,
      what: 'royalty',
      rules: stored,
    });
  },
} satisfies OfferKind<Terms>;
