/**
 * Random books, overheads, capital, funding and VAT of a plan (see arbitrary-plan.ts).
 * Worked figure: a loan of 12,345.67 in week 3, no interest-only months, paid off over 7.
 */
import fc from 'fast-check';
import type { Funding } from '../../src/domain/funding/index.ts';
import type { Business } from '../../src/domain/plan/index.ts';
import { decimal, listOf, maybe, whole, withoutSecond } from './arbitrary-parts.ts';
import { arbitraryLines } from './arbitrary-supply.ts';

const money = (most: number) => decimal(0, most * 100, 2);
const label = fc.constant('Something');
const yearlyRate = () => decimal(0, 250, 3);

export function arbitraryBusiness(horizonWeeks: number): fc.Arbitrary<Business> {
  const week = whole(0, horizonWeeks - 1);
  return fc.record({
    openingCashAmount: fc.option(decimal(0, 20_000_000, 2), { freq: 5 }),
    openingBooks: arbitraryBooks(horizonWeeks),
    baseSales: maybe(
      fc.record({
        revenueAmountPerWeek: money(9000),
        costRate: decimal(0, 1000, 3),
        collectDays: whole(0, 60),
        payDays: whole(0, 60),
      }),
    ),
    overheads: listOf(
      fc.record({
        label,
        amountPerWeek: decimal(0, 8_000_000, 4),
        fromWeek: week,
        untilWeek: maybe(whole(1, 40)),
      }),
      2,
      'overhead',
    ).map((overheads) =>
      overheads.map((each) => ({
        ...each,
        untilWeek: each.untilWeek === null ? null : each.fromWeek + each.untilWeek,
      })),
    ),
    capital: listOf(
      fc.record({ label, week, amount: money(20_000), lifeWeeks: whole(1, 160) }),
      2,
      'capital',
    ),
    lines: arbitraryLines(horizonWeeks),
    funding: fc
      .array(arbitraryOffer(horizonWeeks), { maxLength: 3 })
      .map((offers) =>
        withoutSecond(offers, 'receivablesAdvance').map((offer, at) => ({ ...offer, id: `offer${at + 1}` })),
      ),
    vat: maybe(fc.record({ salesRate: decimal(0, 270, 3), purchasesRate: decimal(0, 270, 3) })),
    lender: fc.record({ receivablesRate: decimal(0, 1000, 3), stockRate: decimal(0, 1000, 3) }),
  });
}

function arbitraryBooks(horizonWeeks: number): fc.Arbitrary<Business['openingBooks']> {
  const dated = (name: string) =>
    listOf(fc.record({ label, week: whole(0, horizonWeeks - 1), amount: money(9000) }), 2, name);
  const lifeWeeks = whole(1, 160);
  const principalMonths = whole(1, 30);
  return fc.record({
    receivables: dated('receivable'),
    payables: dated('payable'),
    accrued: dated('accrued'),
    equipment: listOf(fc.record({ label, amount: money(30_000), lifeWeeks }), 1, 'equipment'),
    loans: listOf(
      fc.record({
        label,
        amount: money(40_000),
        yearlyRate: yearlyRate(),
        interestOnlyMonths: whole(0, 4),
        principalMonths,
      }),
      1,
      'loan',
    ),
    paidInAmount: money(50_000),
  });
}

function arbitraryOffer(horizonWeeks: number): fc.Arbitrary<Funding> {
  const week = whole(0, horizonWeeks - 1);
  const id = fc.constant('offer');
  return fc.oneof(
    fc.record({ kind: fc.constant('equity' as const), id, label, week, amount: money(60_000) }),
    fc.record({
      kind: fc.constant('loan' as const),
      id,
      label,
      week,
      amount: money(60_000),
      feeAmount: money(900),
      yearlyRate: yearlyRate(),
      interestOnlyMonths: whole(0, 4),
      principalMonths: whole(1, 30),
    }),
    fc.record({
      kind: fc.constant('receivablesAdvance' as const),
      id,
      label,
      fromWeek: week,
      advanceRate: decimal(0, 1000, 3),
      yearlyRate: yearlyRate(),
    }),
  );
}
