/**
 * Random plans that are valid by the schema and by every rule, small enough to run by the dozen. Each feature of the
 * weekly pass is on in a good part of them. Used by the oracle's comparison and by the laws of the roll-out.
 * Worked figure: two items, three accounts, 41 weeks from 2025-07-19, in JPY.
 */
import fc from 'fast-check';
import type { Account, Item, Plan } from '../../src/domain/plan/index.ts';
import { arbitraryAccount } from './arbitrary-account.ts';
import { arbitraryBusiness } from './arbitrary-business.ts';
import { arbitraryOffers, arbitraryOwnership } from './arbitrary-offers.ts';
import { decimal, listOf, maybe, whole } from './arbitrary-parts.ts';
import { withArbitraryEvidence } from './arbitrary-promise.ts';
import { withArbitraryReadiness } from './arbitrary-readiness.ts';
import { arbitraryPack, withPossibleLayers } from './arbitrary-stores.ts';
import { arbitrarySupply, withPossibleLife } from './arbitrary-supply.ts';
import { aPlan } from './builders.ts';

/** Printed and fixed: the same plans on every machine. */
export const PLAN_SEED = 20260302;
export const PLAN_RUNS = 60;

/** One of the plans; `PLAN_SEED` and `PLAN_RUNS` say which ones a test sees. */
export function arbitraryPlan(): fc.Arbitrary<Plan> {
  return whole(6, 64).chain((horizonWeeks) =>
    fc.array(arbitraryItem(horizonWeeks), { minLength: 1, maxLength: 2 }).chain((found) => {
      const items = found.map((item, at) => ({ ...item, id: `item${at + 1}` }));
      const ids = items.map(({ id }) => id);
      return fc
        .record({
          accounts: fc.array(arbitraryAccount(horizonWeeks, ids), { maxLength: 3 }).map(named),
          business: arbitraryBusiness(horizonWeeks),
          offers: arbitraryOffers(horizonWeeks),
          ownership: arbitraryOwnership(horizonWeeks),
          currency: fc.constantFrom('USD', 'EUR', 'JPY', 'BHD', 'CLF'),
          startDate: whole(0, 1500).map(dateAfter),
          shelfTax: fc.record({
            rate: decimal(0, 250, 3),
            shown: fc.constantFrom('inPrice' as const, 'atTill' as const),
          }),
        })
        .map((rest) => aPlan({ ...rest, horizonWeeks, items }))
        .map((plan) => ({
          ...plan,
          items: items.map((item) => withPossibleLife(item, plan.accounts)),
          accounts: plan.accounts.map((account) => withPossibleLayers(account, items)),
        }))
        .chain(withArbitraryEvidence)
        .chain(withArbitraryReadiness);
    }),
  );
}

function named(accounts: Account[]): Account[] {
  return accounts.map((account, at) => ({ ...account, id: `account${at + 1}` }));
}

function dateAfter(days: number): string {
  return new Date(Date.UTC(2024, 0, 1 + days)).toISOString().slice(0, 10);
}

function arbitraryItem(horizonWeeks: number): fc.Arbitrary<Item> {
  return fc
    .record({
      goods: decimal(3000, 24_000, 4),
      freight: decimal(0, 9000, 4),
      supply: arbitrarySupply(horizonWeeks),
    })
    .chain(({ goods, freight, supply }) =>
      fc.record({
        id: fc.constant('item'),
        name: fc.constant('An item'),
        caseUnits: fc.constantFrom(1, 4, 6, 12),
        palletCases: fc.constantFrom(2, 5, 40),
        pack: maybe(arbitraryPack()),
        numbers: fc.constant(null),
        shipmentUnits: fc.constant(3000),
        costLines: fc.constant([
          {
            id: 'goods',
            label: 'Goods',
            family: 'goods' as const,
            rule: { by: 'unit' as const, amount: goods },
          },
          {
            id: 'freight',
            label: 'Freight',
            family: 'freight' as const,
            rule: { by: 'unit' as const, amount: freight },
          },
        ]),
        lossRate: decimal(0, 40, 3),
        supply: fc.constant(supply),
        opening: arbitraryOpening(horizonWeeks),
        seasonFactors: maybe(fc.array(decimal(0, 25, 1), { minLength: 52, maxLength: 52 })),
        removals: listOf(
          fc.record({
            week: whole(0, horizonWeeks - 1),
            units: whole(1, 200),
            reason: fc.constantFrom('samples' as const, 'writeOff' as const),
          }),
          2,
          'removal',
        ),
      }),
    );
}

/** A deposit is a part of what the goods cost: here at least 0.30 a unit, before loss. */
function withinGoods({ units, depositPaidAmount }: { units: number; depositPaidAmount: string }): string {
  const most = Math.floor(units * 30) / 100;
  return Number(depositPaidAmount) <= most ? depositPaidAmount : String(Math.floor(most));
}

function arbitraryOpening(horizonWeeks: number): fc.Arbitrary<Item['opening']> {
  const onOrder = listOf(
    fc
      .record({
        landsWeek: whole(0, horizonWeeks - 1),
        units: whole(1, 1500),
        depositPaidAmount: decimal(0, 9000, 2),
      })
      .map((order) => ({ ...order, depositPaidAmount: withinGoods(order) })),
    2,
    'order',
  );
  return fc
    .record({ units: fc.constantFrom(0, 7, 600, 4000), stockAmount: decimal(0, 800_000, 2), onOrder })
    .map((opening) => (opening.units === 0 ? { ...opening, stockAmount: '0' } : opening));
}
