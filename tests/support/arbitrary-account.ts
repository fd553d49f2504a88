/**
 * Random accounts of a plan (see arbitrary-plan.ts): listings, doors, terms, allowances, deals.
 * Worked figure: a wave of 23 doors, 5 a week from week 9, an account that is cut in week 31, its stock credited.
 */
import fc from 'fast-check';
import type { Allowance } from '../../src/domain/allowances/index.ts';
import type { Account, Listing } from '../../src/domain/plan/index.ts';
import { arbitraryConduct } from './arbitrary-conduct.ts';
import { arbitraryDisplay, arbitraryPromotions } from './arbitrary-deals.ts';
import { decimal, listOf, maybe, whole, withoutSecond } from './arbitrary-parts.ts';
import {
  arbitraryDepot,
  arbitraryStoreWays,
  withPossibleCuts,
  withPossibleDepot,
} from './arbitrary-stores.ts';
import { aHand } from './builders.ts';

const per = fc.constantFrom('item' as const, 'door' as const, 'chain' as const, 'itemDoor' as const);
const weeksOrNone = fc.constantFrom(0, 0, 1, 2, 4, 8);

/** An account whose doors open inside the horizon; it lists one or more of the items. */
export function arbitraryAccount(horizonWeeks: number, itemIds: readonly string[]): fc.Arbitrary<Account> {
  return fc
    .tuple(arbitraryStores(horizonWeeks, itemIds), arbitraryConduct())
    .map(([stores, conduct]) => withPossibleDepot({ ...stores, ...conduct }, horizonWeeks))
    .map(withPossibleCut)
    .map(withPossibleCuts);
}

type Conduct = 'delivery' | 'service' | 'disputed' | 'creditLimitAmount';

function arbitraryStores(
  horizonWeeks: number,
  itemIds: readonly string[],
): fc.Arbitrary<Omit<Account, Conduct>> {
  return fc
    .record({
      transitWeeks: fc.constantFrom(0, 0, 1, 2, 3),
      listed: fc.subarray([...itemIds], { minLength: 1 }),
    })
    .chain(({ transitWeeks, listed }) =>
      fc.record({
        id: fc.constant('account'),
        name: fc.constant('An account'),
        priority: whole(1, 3),
        hands: fc
          .array(decimal(50, 450, 3), { minLength: 1, maxLength: 2 })
          .map((rates) =>
            rates.map((rate, at) => aHand({ id: `hand${at + 1}`, rule: { by: 'margin', rate } })),
          ),
        pricePoints: fc.constant(null),
        listings: fc.tuple(...listed.map(arbitraryListing)),
        ...arbitraryDoors(horizonWeeks, transitWeeks),
        attritionYearlyRate: fc.constantFrom('0', '0', '0.1', '0.6', '0.999'),
        closedStock: fc.constantFrom('kept' as const, 'credited' as const, 'ours' as const),
        ramp: fc.record({ startRate: decimal(0, 100, 2), weeks: weeksOrNone }),
        terms: arbitraryTerms(transitWeeks),
        sale: arbitrarySale(),
        allowances: arbitraryAllowances(horizonWeeks),
        slotting: maybe(
          fc.record({
            amount: decimal(0, 200_000, 2),
            per,
            settled: fc.constantFrom('atOpening' as const, 'offRemittances' as const),
          }),
        ),
        freeFill: fc.record({
          settled: fc.constantFrom('free' as const, 'billedBack' as const),
          lagWeeks: whole(0, 8),
        }),
        openingFees: listOf(
          fc.record({ label: fc.constant('Fee'), amount: decimal(0, 90_000, 3), per }),
          2,
          'fee',
        ),
        display: maybe(arbitraryDisplay()),
        promotions: arbitraryPromotions(horizonWeeks, listed),
        deal: fc.constant({ termWeeks: 52, hurdleAmount: '0' }),
        table: fc.constant(null),
        standing: fc.constant(null),
      }),
    );
}

/** A cut comes after the first opening, unless doors are open already. */
function withPossibleCut(account: Account): Account {
  const { cutWeek, waves, runningDoors } = account;
  if (cutWeek === null || waves.length === 0 || runningDoors.length > 0) return account;
  const first = Math.min(...waves.map(({ openWeek }) => openWeek));
  return { ...account, cutWeek: Math.max(cutWeek, first + 1) };
}

function arbitraryListing(itemId: string): fc.Arbitrary<Listing> {
  return fc.record({
    itemId: fc.constant(itemId),
    list: fc.oneof(
      decimal(20_000, 90_000, 4).map((amount) => ({ by: 'price' as const, amount })),
      decimal(150, 700, 3).map((rate) => ({ by: 'margin' as const, rate })),
    ),
    shelf: fc.constant({ by: 'solved' as const }),
    lockedRungs: fc.constant([]),
    unitsPerStoreWeek: decimal(1, 12_000, 3),
    facings: whole(1, 3),
    depthUnits: whole(1, 12),
    backStockUnits: fc.constantFrom(0, 0, 5),
    coverWeeks: whole(0, 4),
    freeCasesPerDoor: fc.constantFrom(0, 0, 1, 3),
    replaces: fc.constant(null),
  });
}

function arbitraryDoors(horizonWeeks: number, transitWeeks: number) {
  const waves = listOf(
    fc.record({
      openWeek: whole(transitWeeks, horizonWeeks - 1),
      doors: whole(1, 60),
      doorsPerWeek: whole(3, 60),
    }),
    2,
    'wave',
  );
  const running = fc.record({ doors: whole(1, 40), ageWeeks: whole(0, 30), unitsPerDoor: whole(0, 40) });
  return {
    waves,
    runningDoors: listOf(running, 1, 'running'),
    cutWeek: maybe(whole(0, horizonWeeks + 5)),
    ...arbitraryStoreWays(horizonWeeks),
    depot: maybe(arbitraryDepot()),
  };
}

function arbitraryTerms(transitWeeks: number): fc.Arbitrary<Account['terms']> {
  const paymentDays = fc.constantFrom(0, 7, 30, 60);
  return fc
    .record({
      paymentDays,
      latenessDays: fc.constantFrom(0, 5, 14),
      earlyDiscount: maybe(
        fc.record({
          rate: decimal(0, 40, 3),
          days: fc.constantFrom(0, 7, 10, 30),
          takenShare: decimal(0, 1000, 3),
        }),
      ),
      transitWeeks: fc.constant(transitWeeks),
      shortage: fc.constantFrom('backlog' as const, 'cancelled' as const),
      badDebtRate: fc.constantFrom('0', '0', '0.004', '0.05'),
    })
    .map((terms) => {
      const { earlyDiscount } = terms;
      if (earlyDiscount === null || earlyDiscount.days <= terms.paymentDays) return terms;
      return { ...terms, earlyDiscount: { ...earlyDiscount, days: terms.paymentDays } };
    });
}

function arbitrarySale(): fc.Arbitrary<Account['sale']> {
  return fc.oneof(
    fc.constant({ by: 'shipment' as const }),
    fc.record({
      by: fc.constant('guaranteed' as const),
      expectedReturnRate: decimal(0, 1000, 3),
      reviewWeeks: whole(1, 26),
      resaleableShare: decimal(0, 100, 2),
    }),
    fc.record({ by: fc.constant('scan' as const), shrinkRate: decimal(0, 90, 3) }),
  );
}

function arbitraryAllowances(horizonWeeks: number): fc.Arbitrary<Allowance[]> {
  const fromWeek = whole(0, horizonWeeks - 1);
  const rate = decimal(0, 80, 3);
  const amountPerUnit = decimal(0, 4000, 4);
  const id = fc.constant('x');
  const deal = { id, amountPerUnit, fromWeek, weeks: whole(0, 12), lagWeeks: whole(0, 8) };
  const carriage = {
    id,
    amount: decimal(0, 20_000, 4),
    per: fc.constantFrom('unit' as const, 'case' as const),
  };
  const is = <K extends string>(kind: K) => fc.constant(kind);
  const one: fc.Arbitrary<Allowance> = fc.oneof(
    fc.record({
      kind: is('offInvoice'),
      id,
      rate,
      on: fc.constantFrom('list' as const, 'running' as const),
      passedOn: fc.boolean(),
    }),
    fc.record({ kind: is('freightAllowance'), id, amountPerUnit: decimal(0, 800, 4), pickUp: fc.boolean() }),
    fc.record({ kind: is('spoils'), id, rate }),
    fc.record({ kind: is('coop'), id, rate }),
    fc.record({ kind: is('dataFee'), id, rate }),
    fc.record({ kind: is('chargebacks'), id, rate }),
    fc.record({
      kind: is('expectedReturns'),
      id,
      rate: decimal(0, 150, 3),
      resaleableShare: decimal(0, 100, 2),
      freightBackPerUnit: decimal(0, 3000, 4),
      lagWeeks: whole(0, 9),
    }),
    fc.record({ kind: is('scanBack'), ...deal }),
    fc.record({ kind: is('billBack'), ...deal }),
    fc.record({ kind: is('freightOut'), ...carriage }),
    fc.record({ kind: is('pickAndPack'), ...carriage }),
    fc.record({ kind: is('broker'), id, rate, onFreeGoods: fc.boolean() }),
    fc.record({
      kind: is('royalty'),
      id,
      amountPerUnit: decimal(0, 900, 4),
      rate,
      onFreeGoods: fc.boolean(),
    }),
  );
  return fc
    .array(one, { maxLength: 5 })
    .map((list) =>
      withoutSecond(list, 'expectedReturns').map((each, at) => ({ ...each, id: `allowance${at + 1}` })),
    );
}
