// Pick and pack: what it costs to take an order off our shelves and make it ready to leave, free goods too.
// Worked figure: 1.00 a case of 12 units is 0.0833 a unit.
import type { AllowanceKind, Means, TermsOf } from './contract.ts';
import { each, eachTenThousandths } from './terms.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({
    kind: z.literal('pickAndPack'),
    id: f.id(),
    amount: f.unitAmount(),
    per: z.enum(['unit', 'case'], { error: '"unit" or "case"' }),
  });

export const pickAndPack = {
  kind: 'pickAndPack',
  label: 'Pick and pack',
  meaning: 'What it costs to take an order off our shelves and make it ready, paid when it leaves.',
  stage: 'sellingCost',
  owner: 'between',
  terms,
  blank: (id) => ({ kind: 'pickAndPack', id, amount: '0', per: 'case' }),
  fields: [
    { key: 'amount', label: 'Picking and packing', unit: 'perCase' },
    {
      key: 'per',
      label: 'For each',
      unit: 'choice',
      choices: [
        { value: 'unit', label: 'unit' },
        { value: 'case', label: 'case' },
      ],
    },
  ],
  uncertain: ['amount'],
  take: each,
  charge: (stored, bases) => ({
    settles: 'shipment',
    flow: 'pickAndPack',
    priceTenThousandths: eachTenThousandths(stored, bases),
  }),
  examples: [
    {
      terms: { kind: 'pickAndPack', id: 'a', amount: '1', per: 'case' },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.0833',
      arithmetic: '1.00 a case of 12 units is 0.08333..., kept as 0.0833',
    },
  ],
} satisfies AllowanceKind<TermsOf<typeof terms>>;
