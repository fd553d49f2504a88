// Freight out: what it costs to carry goods to the chain or its distributor, paid when they leave us; zero with pick-up.
// Worked figure: 1.80 a case of 12 units is 0.15 a unit.
import type { AllowanceKind, Means, TermsOf } from './contract.ts';
import { each, eachTenThousandths } from './terms.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({
    kind: z.literal('freightOut'),
    id: f.id(),
    amount: f.unitAmount(),
    per: z.enum(['unit', 'case'], { error: '"unit" or "case"' }),
  });

export const freightOut = {
  kind: 'freightOut',
  label: 'Freight out',
  meaning: 'What it costs to carry our goods to the chain, paid when they leave.',
  stage: 'sellingCost',
  owner: 'between',
  terms,
  blank: (id) => ({ kind: 'freightOut', id, amount: '0', per: 'case' }),
  fields: [
    { key: 'amount', label: 'Freight', unit: 'perCase' },
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
    flow: 'freightOut',
    priceTenThousandths: eachTenThousandths(stored, bases),
  }),
  examples: [
    {
      terms: { kind: 'freightOut', id: 'a', amount: '1.8', per: 'case' },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.15',
      arithmetic: '1.80 a case of 12 units is 0.15 a unit',
    },
  ],
} satisfies AllowanceKind<TermsOf<typeof terms>>;
