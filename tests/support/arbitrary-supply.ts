/**
 * Random ways of making and buying an item (see arbitrary-plan.ts): terms of the first supplier, further ones, a shared
 * line, price breaks, a shelf life, rush orders, a foreign currency. In half of all items nothing but the first's terms.
 * Worked figure: 40 an hour, 0.93 of them good, on a line of 2 shifts of 8 hours: 37 x 16 = 592 units a week.
 */
import fc from 'fast-check';
import type { Account, Business, Item } from '../../src/domain/plan/index.ts';
import { decimal, listOf, maybe, whole } from './arbitrary-parts.ts';

type Supply = Item['supply'];

export function arbitrarySupply(horizonWeeks: number): fc.Arbitrary<Supply> {
  return whole(0, 8).chain((leadWeeks) =>
    fc
      .record({
        leadWeeks: fc.constant(leadWeeks),
        coverWeeks: whole(0, 6),
        minimumOrderUnits: fc.constantFrom(0, 0, 500, 2400),
        batchUnits: fc.constantFrom(1, 12, 250),
        capacityUnitsPerWeek: maybe(whole(20, 1500)),
        capacitySteps: maybe(arbitraryStep(horizonWeeks)).map((step) =>
          step !== null && step.fromWeek >= step.leadWeeks ? [step] : [],
        ),
        depositRate: fc.constantFrom('0', '0.3', '0.335', '1'),
        supplierDays: fc.constantFrom(0, 6, 14, 30, 45),
        more: maybe(arbitraryMore(horizonWeeks, leadWeeks)),
      })
      .map(({ more, ...terms }) => ({ ...terms, ...(more ?? NONE) })),
  );
}

/** Goods keep long enough to reach every shelf (or depot) of the accounts that list them. */
export function withPossibleLife(item: Item, accounts: readonly Account[]): Item {
  const { shelfLife } = item.supply;
  if (shelfLife === null) return item;
  const listing = accounts.filter(({ listings }) => listings.some(({ itemId }) => itemId === item.id));
  const ways = listing.map(({ depot, terms }) => (depot ?? terms).transitWeeks);
  const least = shelfLife.leastWeeksAtReceipt + Math.max(0, ...ways);
  const weeks = Math.max(shelfLife.weeks, least);
  return { ...item, supply: { ...item.supply, shelfLife: { ...shelfLife, weeks } } };
}

type More = Pick<Supply, 'line' | 'sources' | 'priceBreaks' | 'shelfLife' | 'expedite' | 'purchaseCurrency'>;

const NONE: More = {
  line: null,
  sources: [],
  priceBreaks: [],
  shelfLife: null,
  expedite: null,
  purchaseCurrency: null,
};

function arbitraryMore(horizonWeeks: number, leadWeeks: number): fc.Arbitrary<More> {
  const breaks = fc
    .uniqueArray(whole(1, 40), { maxLength: 3 })
    .map((hundreds) =>
      [...hundreds]
        .sort((a, b) => a - b)
        .map((hundred, at) => ({ id: `break${at + 1}`, fromUnits: hundred * 100, at })),
    );
  return fc.record({
    line: fc.option(arbitraryPlace(), { freq: 4 }),
    sources: listOf(arbitrarySource(), 2, 'source'),
    priceBreaks: fc.tuple(breaks, decimal(0, 120, 3)).map(([places, less]) =>
      places.map(({ at, ...place }) => ({
        ...place,
        goodsFactor: (1 - Number(less) * (at + 1)).toFixed(3),
      })),
    ),
    shelfLife: maybe(
      fc.record({ weeks: whole(1, 16), leastWeeksAtReceipt: whole(0, 8) }).map((life) => ({
        ...life,
        leastWeeksAtReceipt: Math.min(life.leastWeeksAtReceipt, life.weeks - 1),
      })),
    ),
    expedite:
      leadWeeks === 0
        ? fc.constant(null)
        : maybe(
            fc.record({
              leadWeeks: whole(0, leadWeeks - 1),
              extraAmountPerUnit: decimal(0, 9000, 4),
              mostUnitsPerWeek: maybe(whole(12, 600)),
            }),
          ),
    purchaseCurrency: maybe(
      fc.record({
        code: fc.constant('SEK'),
        // Not below 1: what is paid of opening orders stays within their goods.
        rate: decimal(1000, 3000, 3),
        rateDate: fc.constant('2026-01-15'),
        shockRate: fc.constantFrom('0', '0.12', '-0.085', '0.333333'),
        shockFromWeek: whole(0, horizonWeeks - 1),
      }),
    ),
  });
}

function arbitraryPlace(): fc.Arbitrary<NonNullable<Supply['line']>> {
  return fc.record({
    lineId: fc.constant('line'),
    unitsPerHour: whole(5, 120),
    yieldRate: decimal(500, 1000, 3),
    // Two items may share a line: together no more than all of it.
    hoursShare: maybe(decimal(50, 500, 3)),
  });
}

function arbitrarySource(): fc.Arbitrary<Omit<Supply['sources'][number], 'id'>> {
  return fc.record({
    name: fc.constant('Another maker'),
    leadWeeks: whole(0, 8),
    minimumOrderUnits: fc.constantFrom(0, 100, 700),
    batchUnits: fc.constantFrom(1, 12, 50),
    capacityUnitsPerWeek: maybe(whole(20, 900)),
    goodsAmountPerUnit: decimal(3000, 24_000, 4),
    freightAmountPerUnit: decimal(0, 9000, 4),
    depositRate: fc.constantFrom('0', '0.3', '0.335', '1'),
    supplierDays: fc.constantFrom(0, 6, 14, 30, 45),
  });
}

function arbitraryStep(horizonWeeks: number): fc.Arbitrary<Supply['capacitySteps'][number]> {
  return fc.record({
    id: fc.constant('line'),
    fromWeek: whole(0, horizonWeeks - 1),
    unitsPerWeek: whole(20, 3000),
    capitalAmount: decimal(0, 2_000_000, 2),
    leadWeeks: whole(0, 12),
    lifeWeeks: whole(1, 160),
  });
}

/** The one line that items share, with a second shift at times. */
export function arbitraryLines(horizonWeeks: number): fc.Arbitrary<Business['lines']> {
  return fc
    .record({ hours: whole(1, 12), shifts: whole(1, 3), step: maybe(arbitraryStep(horizonWeeks)) })
    .map(({ hours, shifts, step }) => {
      const { fromWeek, capitalAmount, leadWeeks, lifeWeeks } = step ?? NO_STEP;
      const more = { id: 'more', fromWeek, shifts: shifts + 1, capitalAmount, leadWeeks, lifeWeeks };
      return [
        {
          id: 'line',
          name: 'A line',
          hoursPerShift: hours,
          shifts,
          steps: step === null || fromWeek < leadWeeks ? [] : [more],
        },
      ];
    });
}

const NO_STEP = { fromWeek: 0, capitalAmount: '0', leadWeeks: 0, lifeWeeks: 1 };
