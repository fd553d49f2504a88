/**
 * Statements by month against a published cash budget. The exercise's receipts and payments are dated sums of the opening
 * books, its loans are the plan's funding; each of its months begins in the first week of a calendar month.
 */
import { describe, expect, test } from 'vitest';
import { statementsOf } from '../../src/domain/statements/index.ts';
import { aBusiness, aLoan, anItem, aPlan } from '../support/builders.ts';
import { subjectOf } from '../support/explained.ts';

const MONTH_WEEKS = [0, 4, 8];
const RECEIPTS = ['16400', '20200', '33800'];
const PAYMENTS = ['20600', '29200', '32600'];
const INTEREST = '20';
const LEAST = 7_000_00;
const STEP = 1_000_00;

// Weeks from Monday 2 March 2026: March has weeks 0 to 4, April 5 to 8, May 9 to 12.
const weekOf = (month: number) => (MONTH_WEEKS[month] ?? 0) + Math.min(month, 1);
const dated = (amounts: readonly string[], kind: string) =>
  amounts.map((amount, month) => ({ id: `${kind}-${month}`, label: kind, week: weekOf(month), amount }));

function closings(funding: ReturnType<typeof aLoan>[]): number[] {
  const plan = aPlan({
    startDate: '2026-03-02',
    horizonWeeks: 13,
    items: [anItem()],
    accounts: [],
    business: aBusiness({
      openingCashAmount: '7400',
      openingBooks: {
        ...aBusiness().openingBooks,
        receivables: dated(RECEIPTS, 'receipts'),
        payables: dated(PAYMENTS, 'payments'),
        accrued: [{ id: 'interest', label: 'Interest', week: weekOf(2), amount: INTEREST }],
        paidInAmount: '0',
      },
      funding,
    }),
  });
  return statementsOf(subjectOf(plan).results, 'month').map(
    ({ amounts }) => amounts.cashDirect.closingCash ?? Number.NaN,
  );
}

describe(
  'managerial-accounting exercise, cash budget with a least balance of 7,000 and loans in steps of 1,000: opens with ' +
    '7,400; receipts 16,400, 20,200, 33,800; payments 20,600, 29,200, 32,600; interest 20 in the third month',
  () => {
    test('borrow 4,000, borrow 9,000, repay 1,000: what the closings without loans ask for', () => {
      const lent = closings([]).map((cash) => Math.ceil((LEAST - cash) / STEP) * STEP);
      const moved = lent.map((sum, month) => sum - (lent[month - 1] ?? 0));
      expect(moved).toEqual([4_000_00, 9_000_00, -1_000_00]);
    });

    test('with these loans it closes with 7,200, 7,200 and 7,380', () => {
      const free = { yearlyRate: '0', feeAmount: '0' };
      const stays = { ...free, interestOnlyMonths: 24, principalMonths: 1 };
      const loans = [
        aLoan({ ...stays, id: 'first', week: weekOf(0), amount: '3000' }),
        // lent in March, paid back in May
        aLoan({
          ...free,
          id: 'back',
          week: weekOf(0),
          amount: '1000',
          interestOnlyMonths: 1,
          principalMonths: 1,
        }),
        aLoan({ ...stays, id: 'second', week: weekOf(1), amount: '9000' }),
      ];
      expect(closings(loans)).toEqual([7_200_00, 7_200_00, 7_380_00]);
    });
  },
);
