// Co-op (advertising) accrual: a share of invoices that builds up for the chain to spend on advertising the line.
// Worked figure: 3 % of an invoice price of 2.60 is 0.078 a unit.
import type { AllowanceKind, Means, TermsOf } from './contract.ts';
import { offRemittance, share } from './terms.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({ kind: z.literal('coop'), id: f.id(), rate: f.shareBelowOne() });

export const coop = {
  kind: 'coop',
  label: 'Co-op advertising accrual',
  meaning: 'A share of invoices set aside for the chain’s advertising, and taken off what it pays.',
  stage: 'deduction',
  owner: 'theirs',
  terms,
  blank: (id) => ({ kind: 'coop', id, rate: '0' }),
  fields: [{ key: 'rate', label: 'Share of invoices', unit: 'share' }],
  uncertain: [],
  take: ({ rate }, { invoice }) => share({ rate, base: invoice, of: 'invoice' }),
  charge: ({ rate }) => offRemittance(rate),
  examples: [
    {
      terms: { kind: 'coop', id: 'a', rate: '0.03' },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.078',
      arithmetic: '3 % of invoice 2.60 is 0.078',
    },
  ],
} satisfies AllowanceKind<TermsOf<typeof terms>>;
