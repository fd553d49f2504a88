// The business around the products: cash at hand, the opening books, rent and wages, what is bought, what funds it.
import * as z from 'zod/mini';
import { offer } from '../funding/index.ts';
import * as f from './fields.ts';
import { productionLine } from './supply.ts';

const dated = () =>
  z.strictObject({ id: f.id(), label: f.name(), week: f.weekIndex(), amount: f.sumAmount() });

export const openingBooks = z.strictObject({
  receivables: z.array(dated()),
  payables: z.array(dated()),
  /** Selling costs owed from before (claims, broker), paid in the week given. */
  accrued: z.array(dated()),
  equipment: z.array(
    z.strictObject({
      id: f.id(),
      label: f.name(),
      amount: f.sumAmount(),
      lifeWeeks: f.whole({ least: 1, most: 1040, unit: 'weeks' }),
    }),
  ),
  loans: z.array(
    z.strictObject({
      id: f.id(),
      label: f.name(),
      amount: f.sumAmount(),
      yearlyRate: f.factor(),
      interestOnlyMonths: f.whole({ least: 0, most: 240, unit: 'months' }),
      principalMonths: f.whole({ least: 1, most: 360, unit: 'months' }),
    }),
  ),
  paidInAmount: f.sumAmount(),
});

export const business = z.strictObject({
  /** Cash on the first day; null while not known: the need is then counted from zero and no cash verdict is given. */
  openingCashAmount: z.nullable(f.signedAmount()),
  openingBooks,
  /** Sales beside the plan that go on as they are, without stock of their own in this plan. */
  baseSales: z.nullable(
    z.strictObject({
      revenueAmountPerWeek: f.sumAmount(),
      costRate: f.share(),
      collectDays: f.whole({ least: 0, most: 365, unit: 'days' }),
      payDays: f.whole({ least: 0, most: 365, unit: 'days' }),
    }),
  ),
  overheads: z.array(
    z.strictObject({
      id: f.id(),
      label: f.name(),
      amountPerWeek: f.sumAmount(),
      fromWeek: f.weekIndex(),
      /** First week without it, or null when it goes on. */
      untilWeek: z.nullable(f.weekIndex()),
    }),
  ),
  capital: z.array(
    z.strictObject({
      id: f.id(),
      label: f.name(),
      week: f.weekIndex(),
      amount: f.sumAmount(),
      lifeWeeks: f.whole({ least: 1, most: 1040, unit: 'weeks' }),
    }),
  ),
  /** Lines that items share (an item's `supply.line` names one). */
  lines: z.array(productionLine).check(z.maxLength(20, { error: 'at most 20 lines' })),
  funding: z.array(offer),
  /** What a lender would advance on invoices not too old, and on finished goods at landed cost. */
  lender: z.strictObject({ receivablesRate: f.share(), stockRate: f.share() }),
  vat: z.nullable(z.strictObject({ salesRate: f.shareBelowOne(), purchasesRate: f.shareBelowOne() })),
});

/** Where the verdicts change their word; judgement, editable, shown beside each verdict. */
export const thresholds = z.strictObject({
  ladderFloorRate: f.shareBelowOne(),
  ladderTightPoints: f.shareBelowOne(),
  dealTightRatio: f.factor(),
  cashBufferWeeks: f.whole({ least: 0, most: 52, unit: 'weeks of outgoings' }),
  promiseFailsBelowRate: f.share(),
  promiseTightBelowRate: f.share(),
});
