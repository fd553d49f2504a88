// Freight allowance: so much a unit off the invoice because the buyer carries the freight; with pick-up its own truck
// fetches the goods at our dock and we pay no freight out at all.
// Worked figure: 0.12 a unit on a list price of 3.00 makes the invoice price 2.88.
import type { AllowanceKind, Means, TermsOf } from './contract.ts';
import { each } from './terms.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({
    kind: z.literal('freightAllowance'),
    id: f.id(),
    amountPerUnit: f.unitAmount(),
    pickUp: z.boolean({ error: 'true or false' }),
  });

export const freightAllowance = {
  kind: 'freightAllowance',
  label: 'Freight or pick-up allowance',
  meaning: 'So much a unit off the invoice because the buyer carries the freight.',
  stage: 'offInvoice',
  owner: 'theirs',
  terms,
  blank: (id) => ({ kind: 'freightAllowance', id, amountPerUnit: '0', pickUp: false }),
  fields: [
    { key: 'amountPerUnit', label: 'Off each unit', unit: 'perUnit' },
    { key: 'pickUp', label: 'The buyer picks up: no freight out', unit: 'switch' },
  ],
  uncertain: [],
  take: ({ amountPerUnit }, bases) => each({ amount: amountPerUnit, per: 'unit' }, bases),
  charge: ({ pickUp }) => ({ settles: 'onInvoice', passedOn: false, pickUp }),
  examples: [
    {
      terms: { kind: 'freightAllowance', id: 'a', amountPerUnit: '0.12', pickUp: true },
      bases: { list: '3', running: '3', invoice: '2.88', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.12',
      arithmetic: '0.12 a unit, whatever the price',
    },
  ],
} satisfies AllowanceKind<TermsOf<typeof terms>>;
