// Warehouse or data fee: a share of invoices for handling our goods, or for the sales data the chain shares.
// Worked figure: 1.5 % of an invoice price of 2.60 is 0.039 a unit.
import type { AllowanceKind, Means, TermsOf } from './contract.ts';
import { offRemittance, share } from './terms.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({ kind: z.literal('dataFee'), id: f.id(), rate: f.shareBelowOne() });

export const dataFee = {
  kind: 'dataFee',
  label: 'Warehouse or data fee',
  meaning: 'A share of invoices for warehousing our goods or for sharing sales data.',
  stage: 'deduction',
  owner: 'theirs',
  terms,
  blank: (id) => ({ kind: 'dataFee', id, rate: '0' }),
  fields: [{ key: 'rate', label: 'Share of invoices', unit: 'share' }],
  uncertain: [],
  take: ({ rate }, { invoice }) => share({ rate, base: invoice, of: 'invoice' }),
  charge: ({ rate }) => offRemittance(rate),
  examples: [
    {
      terms: { kind: 'dataFee', id: 'a', rate: '0.015' },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.039',
      arithmetic: '1.5 % of invoice 2.60 is 0.039',
    },
  ],
} satisfies AllowanceKind<TermsOf<typeof terms>>;
