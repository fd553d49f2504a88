// Chargebacks: what the chain takes off for late, short or wrongly labelled deliveries, as a share of invoices.
// Worked figure: 1 % of an invoice price of 2.60 is 0.026 a unit.
import type { AllowanceKind, Means, TermsOf } from './contract.ts';
import { offRemittance, share } from './terms.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({ kind: z.literal('chargebacks'), id: f.id(), rate: f.shareBelowOne() });

export const chargebacks = {
  kind: 'chargebacks',
  label: 'Chargebacks',
  meaning: 'A share of invoices taken for late, short or badly labelled deliveries.',
  stage: 'deduction',
  owner: 'theirs',
  terms,
  blank: (id) => ({ kind: 'chargebacks', id, rate: '0' }),
  fields: [{ key: 'rate', label: 'Share of invoices', unit: 'share' }],
  uncertain: ['rate'],
  take: ({ rate }, { invoice }) => share({ rate, base: invoice, of: 'invoice' }),
  charge: ({ rate }) => offRemittance(rate),
  examples: [
    {
      terms: { kind: 'chargebacks', id: 'a', rate: '0.01' },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.026',
      arithmetic: '1 % of invoice 2.60 is 0.026',
    },
  ],
} satisfies AllowanceKind<TermsOf<typeof terms>>;
