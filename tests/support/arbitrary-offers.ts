/**
 * Random rival offers and ownership of a plan (see arbitrary-plan.ts): a part of any kind, money in tranches that some
 * plans reach and some don't. Worked figure: 12,345.67 "once 40 doors are open", for a royalty of 0.35 a unit.
 */
import fc from 'fast-check';
import type { When } from '../../src/domain/offers/contract.ts';
import type { OfferPart } from '../../src/domain/offers/list.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { decimal, listOf, maybe, whole } from './arbitrary-parts.ts';

const money = (most: number) => decimal(0, most * 100, 2);
const rate = (most = 1000) => decimal(0, most, 3);
const times = () => decimal(0, 40, 1);
const paid = fc.constantFrom('weekly' as const, 'monthly' as const, 'quarterly' as const);
const of = <K extends OfferPart['kind']>(kind: K) => ({ kind: fc.constant(kind), id: fc.constant('part') });

export function arbitraryOffers(horizonWeeks: number): fc.Arbitrary<Plan['offers']> {
  const parts = listOf(arbitraryPart(horizonWeeks), 2, 'part');
  const fields = {
    name: fc.constant('An offer'),
    from: fc.constant(''),
    parts,
    log: fc.constant<Plan['offers'][number]['log']>([]),
  };
  return listOf(fc.record(fields), 2, 'rival');
}

export function arbitraryOwnership(horizonWeeks: number): fc.Arbitrary<Plan['ownership']> {
  const round = fc.record({
    label: fc.constant('A round'),
    week: whole(0, horizonWeeks + 20),
    amount: money(300_000),
    preMoneyAmount: decimal(1, 90_000_000, 2),
    poolRate: rate(200),
  });
  return fc.record({
    founderRate: rate(900),
    poolRate: rate(100),
    rounds: listOf(round, 2, 'round'),
    exit: fc.oneof(
      fc.record({ by: fc.constantFrom('revenue' as const, 'profit' as const), multiple: times() }),
      fc.record({ by: fc.constant('price' as const), amount: money(3_000_000) }),
    ),
    royaltyYears: times(),
    wantedYearlyRate: rate(),
    leastFounderRate: maybe(rate()),
    mostPaidAmount: maybe(money(90_000)),
  });
}

export function arbitraryPart(horizonWeeks: number): fc.Arbitrary<OfferPart> {
  const accountId = fc.constant(null);
  const starts: fc.Arbitrary<When> = fc.oneof(
    fc.record({ by: fc.constant('week' as const), week: whole(0, horizonWeeks + 5) }),
    fc.record({ by: fc.constant('doors' as const), doors: whole(1, 90), accountId }),
    fc.record({ by: fc.constant('order' as const), accountId }),
  );
  const tranches = listOf(fc.record({ amount: money(60_000), when: starts }), 2, 'tranche');
  const rules = {
    untilMultiple: maybe(times()),
    capMultiple: maybe(times()),
    untilWeek: maybe(whole(0, horizonWeeks + 60)),
    minimumAmountPerQuarter: fc.oneof(fc.constant('0'), money(900)),
    paid,
  };
  const months = whole(1, 30);
  const limitAmount = maybe(money(20_000));
  return fc.oneof(
    fc.record({
      ...of('equity'),
      tranches,
      partRate: rate(900),
      preference: fc.constantFrom('none' as const, 'nonParticipating' as const, 'participating' as const),
      preferenceMultiple: times(),
      poolRate: rate(90),
      proRata: fc.boolean(),
    }),
    fc.record({
      ...of('convertibleNote'),
      tranches,
      yearlyRate: rate(300),
      capAmount: maybe(decimal(100, 90_000_000, 2)),
      capBase: fc.constantFrom('preMoney' as const, 'postMoney' as const),
      discountRate: rate(400),
      maturityMonths: months,
      atMaturity: fc.constantFrom('repaid' as const, 'waits' as const),
    }),
    fc.record({
      ...of('cappedAgreement'),
      tranches,
      capAmount: maybe(decimal(100, 90_000_000, 2)),
      discountRate: rate(400),
    }),
    fc.record({
      ...of('unitRoyalty'),
      tranches,
      unit: fc.constantFrom('sold' as const, 'shipped' as const),
      amountPerUnit: decimal(0, 9000, 4),
      laterAmountPerUnit: decimal(0, 4000, 4),
      ...rules,
    }),
    fc.record({ ...of('salesRoyalty'), tranches, rate: rate(200), laterRate: rate(100), ...rules }),
    fc.record({
      ...of('termLoan'),
      tranches,
      feeRate: rate(50),
      feeAmount: money(900),
      yearlyRate: rate(250),
      interestOnlyMonths: whole(0, 6),
      principalMonths: months,
      repaid: fc.constantFrom('equalParts' as const, 'equalPayments' as const),
      balloonRate: rate(),
    }),
    fc.record({
      ...of('revenueShare'),
      tranches,
      of: fc.constantFrom('netSales' as const, 'collections' as const),
      rate: rate(200),
      capMultiple: times(),
      paid,
    }),
    fc.record({
      ...of('receivablesAdvance'),
      starts,
      advanceRate: rate(),
      feeRatePer30Days: rate(60),
      recourse: fc.boolean(),
      limitAmount,
    }),
    fc.record({
      ...of('orderFinance'),
      starts,
      financedRate: rate(),
      feeRatePer30Days: rate(60),
      repaidDays: whole(7, 200),
      limitAmount,
    }),
    fc.record({
      ...of('equipmentLease'),
      tranches,
      depositAmount: money(900),
      monthlyAmount: money(2000),
      months,
      residualAmount: money(5000),
    }),
  );
}
