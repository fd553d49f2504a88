// The funding a plan already counts on, as flows of the weekly pass: money in, fee, interest, principal. Rival offers
// side by side are a later room; what is here is what the cash plan needs. One kind, one strict object.
// Worked figure: 60,000 at 9 % a year owes 103.56 for a week (60,000 x 0.09 x 7 / 365).
import * as z from 'zod/mini';
import * as f from '../plan/fields.ts';

export const equity = z.strictObject({
  kind: z.literal('equity'),
  id: f.id(),
  label: f.name(),
  week: f.weekIndex(),
  amount: f.sumAmount(),
});

/** Principal is paid in equal monthly parts after the interest-only months; interest monthly. */
export const loan = z.strictObject({
  kind: z.literal('loan'),
  id: f.id(),
  label: f.name(),
  week: f.weekIndex(),
  amount: f.sumAmount(),
  feeAmount: f.sumAmount(),
  yearlyRate: f.factor(),
  interestOnlyMonths: f.whole({ least: 0, most: 240, unit: 'months' }),
  principalMonths: f.whole({ least: 1, most: 360, unit: 'months' }),
});

/** Cash now for part of each invoice, with recourse; paid back when that invoice is collected. */
export const receivablesAdvance = z.strictObject({
  kind: z.literal('receivablesAdvance'),
  id: f.id(),
  label: f.name(),
  fromWeek: f.weekIndex(),
  advanceRate: f.share(),
  yearlyRate: f.factor(),
});

export const offer = z.discriminatedUnion('kind', [equity, loan, receivablesAdvance], {
  error: 'funding of kind "equity", "loan" or "receivablesAdvance"',
});
export type Funding = z.output<typeof offer>;
