// Spoils allowance: a standing share of invoices that the chain keeps for unsaleables, instead of claims piece by piece.
// Worked figure: 2 % of an invoice price of 2.60 is 0.052 a unit.
import type { AllowanceKind, Means, TermsOf } from './contract.ts';
import { offRemittance, share } from './terms.ts';

const terms = ({ z, f }: Means) =>
  z.strictObject({ kind: z.literal('spoils'), id: f.id(), rate: f.shareBelowOne() });

export const spoils = {
  kind: 'spoils',
  label: 'Spoils allowance',
  meaning: 'A standing share of invoices for goods that break or pass their date in the store.',
  stage: 'deduction',
  owner: 'theirs',
  terms,
  blank: (id) => ({ kind: 'spoils', id, rate: '0' }),
  fields: [{ key: 'rate', label: 'Share of invoices', unit: 'share' }],
  uncertain: ['rate'],
  take: ({ rate }, { invoice }) => share({ rate, base: invoice, of: 'invoice' }),
  charge: ({ rate }) => offRemittance(rate),
  examples: [
    {
      terms: { kind: 'spoils', id: 'a', rate: '0.02' },
      bases: { list: '3', running: '2.6', invoice: '2.6', landed: '1', returnsRate: '0', caseUnits: 12 },
      expected: '0.052',
      arithmetic: '2 % of invoice 2.60 is 0.052',
    },
  ],
} satisfies AllowanceKind<TermsOf<typeof terms>>;
