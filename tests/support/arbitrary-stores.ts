/**
 * Random ways of an account's stores (see arbitrary-account.ts): doors without it on the shelf, planned closings, how often
 * and in what they order, and what each account's and plan's own rules leave of them.
 * Worked figure: every second week from week 1 on, by the layer; 12 doors close in week 20.
 */
import fc from 'fast-check';
import type { Account, Item } from '../../src/domain/plan/index.ts';
import { PLAIN_CONDUCT } from '../../src/domain/plan/plainly.ts';
import { decimal, listOf, maybe, whole } from './arbitrary-parts.ts';

/** In half of all accounts nothing of it. */
export function arbitraryStoreWays(horizonWeeks: number) {
  const cut = fc.record({ week: whole(0, horizonWeeks - 1), doors: whole(1, 50) });
  const ordering = fc.record({
    everyWeeks: whole(1, 5),
    firstWeek: whole(0, Math.min(6, horizonWeeks - 1)),
    daily: fc.boolean(),
    orderIn: fc.constantFrom('case' as const, 'case' as const, 'layer' as const, 'pallet' as const),
  });
  return {
    cuts: listOf(cut, 2, 'cut'),
    exitMarkdownRate: fc.constantFrom('0', '0.3', '0.335', '1'),
    voidRate: fc.oneof(fc.constant('0'), decimal(0, 990, 3)),
    ordering: maybe(ordering).map((drawn): Account['ordering'] => {
      if (drawn === null) return PLAIN_CONDUCT.ordering;
      return drawn.daily ? { ...drawn, everyWeeks: 1 } : drawn;
    }),
  };
}

/** A depot; none where goods are sold with a guarantee, or no wave could open behind it inside the horizon. */
export function arbitraryDepot(): fc.Arbitrary<NonNullable<Account['depot']>> {
  return fc.record({
    keptBy: fc.constantFrom('chain' as const, 'distributor' as const),
    transitWeeks: fc.constantFrom(0, 1, 2),
    fillWeeks: whole(0, 4),
    openingWeeks: whole(0, 5),
    coverWeeks: whole(0, 5),
    minimumOrderUnits: fc.constantFrom(0, 0, 100, 1000),
    orderIn: fc.constantFrom('case' as const, 'case' as const, 'layer' as const, 'pallet' as const),
  });
}

/** Waves wait until goods can be there through the depot; where that is too late there is no depot. */
export function withPossibleDepot(account: Account, horizonWeeks: number): Account {
  const { depot, ordering, terms, waves, sale } = account;
  if (depot === null) return account;
  const least = ordering.firstWeek + 1 + depot.transitWeeks + terms.transitWeeks;
  if (sale.by === 'guaranteed' || least >= horizonWeeks) return { ...account, depot: null };
  return {
    ...account,
    waves: waves.map((wave) => ({ ...wave, openWeek: Math.max(wave.openWeek, least) })),
  };
}

/** Closings that can be: inside the plan, before all doors close, of doors that are open by then. */
export function withPossibleCuts(account: Account): Account {
  const { cutWeek } = account;
  let closed = 0;
  const cuts = [...account.cuts]
    .sort((a, b) => a.week - b.week)
    .filter(({ week }) => cutWeek === null || week < cutWeek)
    .flatMap((cut) => {
      const doors = Math.min(cut.doors, openedBefore(account, cut.week) - closed);
      closed += Math.max(0, doors);
      return doors > 0 ? [{ ...cut, doors }] : [];
    });
  return { ...account, cuts };
}

function openedBefore({ runningDoors, waves }: Account, week: number): number {
  let opened = 0;
  for (const { doors, ageWeeks } of runningDoors) if (0 - ageWeeks < week) opened += doors;
  for (const { openWeek, doors, doorsPerWeek } of waves) {
    for (let w = openWeek, left = doors; w < week && left > 0; w++, left -= doorsPerWeek)
      opened += Math.min(left, doorsPerWeek);
  }
  return opened;
}

/** Layers only where every listed item has been measured. */
export function withPossibleLayers(account: Account, items: readonly Item[]): Account {
  const isMeasured = account.listings.every(({ itemId }) =>
    items.some(({ id, pack }) => id === itemId && pack !== null),
  );
  if (isMeasured) return account;
  const inCases = <T extends { orderIn: Account['ordering']['orderIn'] }>(terms: T): T =>
    terms.orderIn === 'layer' ? { ...terms, orderIn: 'case' } : terms;
  return {
    ...account,
    ordering: inCases(account.ordering),
    depot: account.depot && inCases(account.depot),
  };
}

/** A pack of which only the layer matters to the weekly pass. */
export function arbitraryPack(): fc.Arbitrary<NonNullable<Item['pack']>> {
  return whole(1, 3).map((layerCases) => ({
    innerUnits: 1,
    caseLengthMm: 400,
    caseWidthMm: 300,
    caseHeightMm: 200,
    caseGrams: 5000,
    layerCases,
    pallet: '1200x800' as const,
    palletMostHeightMm: 1500,
    palletMostKg: 800,
    stacks: false,
  }));
}
