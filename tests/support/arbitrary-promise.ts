/**
 * Random evidence of a plan: scans with gaps and flags, reorders, a run rate, priors, a claim; standings of accounts.
 * Worked figure: seven weeks of a store that opened in the first, the third not seen, the last two on display.
 */
import fc from 'fast-check';
import type { Evidence, Plan, Scan, Standing } from '../../src/domain/plan/index.ts';
import { RUNGS } from '../../src/domain/plan/promise.ts';
import { decimal, listOf, maybe, whole } from './arbitrary-parts.ts';

const DAY = 86_400_000;
const date = () =>
  whole(0, 2000).map((day) => new Date(Date.UTC(2023, 0, 2) + day * DAY).toISOString().slice(0, 10));
const note = fc.constantFrom('', 'Said over the phone');

/** The plan as it was drawn, with evidence and standings on top. */
export function withArbitraryEvidence(plan: Plan): fc.Arbitrary<Plan> {
  const ids = (list: readonly { id: string }[]) => list.map(({ id }) => id);
  return fc
    .record({
      promise: arbitraryPromise(ids(plan.items), ids(plan.accounts)),
      standings: fc.tuple(...plan.accounts.map(() => maybe(arbitraryStanding()))),
    })
    .map(({ promise, standings }) => ({
      ...plan,
      promise,
      accounts: plan.accounts.map((account, at) => ({ ...account, standing: standings[at] ?? null })),
    }));
}

function arbitraryPromise(itemIds: readonly string[], accountIds: readonly string[]): fc.Arbitrary<Evidence> {
  const itemId = fc.constantFrom(...itemIds);
  const accountId = fc.constantFrom(null, ...accountIds);
  return fc.record({
    scans: listOf(arbitraryScan(itemId, accountId), 4, 'scan').map((scans) =>
      scans.map((scan, at) => ({ ...scan, store: `${scan.store} ${at + 1}` })),
    ),
    openingWeeks: whole(0, 6),
    reorders: listOf(fc.record({ itemId, accountId, date: date(), units: whole(1, 900) }), 2, 'reorder'),
    runRate: maybe(
      fc.record({
        asOf: date(),
        doors: maybe(whole(0, 300)),
        unitsPerWeek: maybe(decimal(0, 90_000, 1)),
        revenueAmountPerWeek: maybe(decimal(0, 9_000_000, 2)),
      }),
    ),
    priors: fc.subarray([...itemIds]).chain((ids) =>
      fc.tuple(
        ...ids.map((id) =>
          fc.record({
            itemId: fc.constant(id),
            unitsPerStoreWeek: decimal(1, 9000, 3),
            spread: decimal(1, 15, 1),
            source: note,
          }),
        ),
      ),
    ),
    claim: maybe(
      fc.record({
        of: fc.constantFrom('doors' as const, 'units' as const, 'revenue' as const),
        amount: decimal(0, 900, 0),
        byDate: date(),
        who: note,
      }),
    ),
    spreads: fc.record({
      rateOfSaleRate: maybe(decimal(0, 8, 1)),
      doors: fc.constantFrom('asStanding' as const, 'asPlanned' as const),
      rampRate: decimal(0, 8, 1),
      latenessDays: whole(0, 30),
      goodsRate: decimal(0, 30, 2),
      deductionsRate: decimal(0, 5, 2),
      voidRate: decimal(0, 10, 2),
      sharedRate: decimal(0, 10, 1),
    }),
  });
}

function arbitraryScan(
  itemId: fc.Arbitrary<string>,
  accountId: fc.Arbitrary<string | null>,
): fc.Arbitrary<Omit<Scan, 'id'>> {
  return fc.array(fc.option(whole(0, 40), { freq: 6 }), { minLength: 1, maxLength: 12 }).chain((units) => {
    const weeks = fc.subarray(units.map((_, week) => week));
    return fc.record({
      itemId,
      accountId,
      store: fc.constantFrom('Hill Street', 'Mill Lane'),
      firstDate: date(),
      opened: fc.boolean(),
      units: fc.constant(units),
      displayWeeks: weeks,
      priceWeeks: weeks,
    });
  });
}

function arbitraryStanding(): fc.Arbitrary<Standing> {
  return fc.record({
    rung: fc.constantFrom(...RUNGS),
    chance: maybe(decimal(0, 100, 2)),
    slipLikelyWeeks: whole(0, 6),
    slipMostWeeks: whole(6, 20),
    papers: listOf(fc.record({ date: date(), who: note, what: fc.constant('A letter') }), 2, 'paper'),
  });
}
