// A loan over so many months: interest alone at first, then principal in equal parts or equal payments, a balloon at the
// end, a fee at the start. Equal parts follow the plan's own loans to the minor unit (PASS.md, Dates): interest by day on
// what is owed. Equal payments are the annuity of the trade: a month's interest is a twelfth of the yearly rate.
// Worked figure: 60,000 at 12 % over 12 equal payments is 5,330.93 a month.
import { tranchesIn } from '../arrivals.ts';
import type { Means, OfferKind, TermsOf } from '../contract.ts';
import { loanOutcome } from '../loan.ts';

const terms = ({ z, f, tranches }: Means) =>
  z.strictObject({
    kind: z.literal('termLoan'),
    id: f.id(),
    tranches: tranches(),
    feeRate: f.shareBelowOne(),
    feeAmount: f.sumAmount(),
    yearlyRate: f.factor(),
    interestOnlyMonths: f.whole({ least: 0, most: 240, unit: 'months' }),
    principalMonths: f.whole({ least: 1, most: 360, unit: 'months' }),
    repaid: z.enum(['equalParts', 'equalPayments'], { error: '"equalParts" or "equalPayments"' }),
    balloonRate: f.share(),
  });
type Terms = TermsOf<typeof terms>;

export const termLoan = {
  kind: 'termLoan',
  label: 'Term loan',
  meaning: 'A loan with interest, repaid over months, perhaps after months of interest alone.',
  terms,
  blank: (id) => ({
    kind: 'termLoan',
    id,
    tranches: [],
    feeRate: '0',
    feeAmount: '0',
    yearlyRate: '0',
    interestOnlyMonths: 0,
    principalMonths: 36,
    repaid: 'equalPayments',
    balloonRate: '0',
  }),
  fields: [
    { key: 'tranches', label: 'Money', unit: 'tranches' },
    { key: 'feeRate', label: 'Fee, of the money', unit: 'share' },
    { key: 'feeAmount', label: 'Fee beside it', unit: 'sum' },
    { key: 'yearlyRate', label: 'Interest a year', unit: 'share' },
    { key: 'interestOnlyMonths', label: 'Months of interest alone', unit: 'months' },
    { key: 'principalMonths', label: 'Months of repayment after those', unit: 'months' },
    {
      key: 'repaid',
      label: 'Repaid in',
      unit: 'choice',
      choices: [
        { value: 'equalPayments', label: 'Equal payments' },
        { value: 'equalParts', label: 'Equal parts, interest beside' },
      ],
    },
    { key: 'balloonRate', label: 'Left for the last month (balloon)', unit: 'share' },
  ],
  movable: [
    { key: 'yearlyRate', label: 'Interest a year', unit: 'share', least: 0, most: 2, decimals: 4 },
    { key: 'feeRate', label: 'Fee', unit: 'share', least: 0, most: 0.5, decimals: 4 },
  ],
  outcome: (stored, basis) => loanOutcome(stored, tranchesIn(stored.tranches, basis), basis),
} satisfies OfferKind<Terms>;
