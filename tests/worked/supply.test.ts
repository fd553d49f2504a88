/**
 * The supply side of the weekly pass by hand: a shared line, further suppliers, price breaks and a shock, rush orders,
 * goods that keep only so long. Gross requirements are opening fills, shipped in the week they open; the sums stand
 * beside each test.
 */
import { describe, expect, test } from 'vitest';
import type { Account, Business, Item } from '../../src/domain/plan/index.ts';
import type { PassResult } from '../../src/domain/rollout/types.ts';
import { aBusiness, aListing, anAccount, anItem, aPlan, aWave } from '../support/builders.ts';
import { ladderOf } from '../support/ladders.ts';
import { kernelOf, pricedPlan } from '../support/oracle/compare.ts';

type Supply = Item['supply'];
type Line = Business['lines'][number];

/** Made in three weeks, the next weeks' cover not asked for, by the unit. */
function itemOf(supply: Partial<Supply>, changes: Partial<Item> = {}): Item {
  const plain: Supply = { ...anItem().supply, leadWeeks: 3, coverWeeks: 0 };
  return anItem({ caseUnits: 1, supply: { ...plain, ...supply }, ...changes });
}

/** One door of each item in a week, next door to us, whose shoppers buy next to nothing: only fills are shipped. */
function doorIn(week: number, fills: Record<string, number>, changes: Partial<Account> = {}): Account {
  return anAccount({
    id: `week-${week}`,
    listings: Object.entries(fills).map(([itemId, depthUnits]) =>
      aListing({ itemId, unitsPerStoreWeek: '0.000001', facings: 1, depthUnits, coverWeeks: 0 }),
    ),
    waves: [aWave({ openWeek: week, doors: 1, doorsPerWeek: 1 })],
    terms: { ...anAccount().terms, transitWeeks: 0 },
    ...changes,
  });
}

function passOf(items: Item[], accounts: Account[], business: Partial<Business> = {}): PassResult {
  return kernelOf(pricedPlan(aPlan({ items, accounts, business: aBusiness(business) }))).pass;
}

/** The weeks of a series that hold something. */
const busy = (series: Float64Array | undefined) =>
  Object.fromEntries(Array.from(series ?? [], (value, week) => [week, value]).filter(([, value]) => value));

describe('a line', () => {
  const line = (changes: Partial<Line> = {}): Line => ({
    id: 'kettle',
    name: 'Kettle',
    hoursPerShift: 10,
    shifts: 1,
    steps: [],
    ...changes,
  });
  const on = (unitsPerHour: number, yieldRate = '1', hoursShare: string | null = null): Partial<Supply> => ({
    line: { lineId: 'kettle', unitsPerHour, yieldRate, hoursShare },
  });

  // 95 % of 13 an hour are 12 good ones, whole: 10 hours make 120. Of 300 for week 8, ordered in week 5, the week takes 120.
  test('makes its good units an hour; what a week has no hours for lands in the next', () => {
    const pass = passOf([itemOf(on(13, '0.95'))], [doorIn(8, { tea: 300 })], { lines: [line()] });
    expect(busy(pass.units[0]?.ordered)).toEqual({ 5: 300 });
    expect(busy(pass.units[0]?.made)).toEqual({ 8: 120, 9: 120, 10: 60 });
    expect(busy(pass.units[0]?.shipped)).toEqual({ 8: 120, 9: 120, 10: 60 });
  });

  // From week 9 two shifts make 240: 120, then the rest. 900.00 is paid two weeks before and wears off by 100.00 a week.
  test('takes a second shift from a week on, paid its lead time ahead and written down', () => {
    const steps = [{ id: 'two', fromWeek: 9, shifts: 2, capitalAmount: '900', leadWeeks: 2, lifeWeeks: 9 }];
    const pass = passOf([itemOf(on(12))], [doorIn(8, { tea: 300 })], { lines: [line({ steps })] });
    expect(busy(pass.units[0]?.made)).toEqual({ 8: 120, 9: 180 });
    expect(busy(pass.flows.capital)).toEqual({ 7: -90_000 });
    expect(busy(pass.profit.depreciation)).toEqual(
      Object.fromEntries(Array.from({ length: 9 }, (_, w) => [7 + w, -10_000])),
    );
  });

  const both = (hoursShare: string | null): Item[] => [
    itemOf(on(12)),
    itemOf(on(7, '1', hoursShare), { id: 'cocoa', name: 'Cocoa' }),
  ];
  const two = [doorIn(8, { tea: 72, cocoa: 60 })];

  // Tea stands first: 72 take 6 of the 10 hours. 4 hours make 28 cocoa; 32 wait for week 9.
  test('leaves the items after the first what it leaves', () => {
    const { units } = passOf(both(null), two, { lines: [line()] });
    expect(busy(units[0]?.made)).toEqual({ 8: 72 });
    expect(busy(units[1]?.made)).toEqual({ 8: 28, 9: 32 });
  });

  // Half the hours are cocoa's: 35 in each week. Tea's half makes 60.
  test('keeps a fixed share for its item', () => {
    const { units } = passOf(both('0.5'), two, { lines: [line()] });
    expect(busy(units[0]?.made)).toEqual({ 8: 60, 9: 12 });
    expect(busy(units[1]?.made)).toEqual({ 8: 35, 9: 25 });
  });

  // 120 a week by its hours, 50 by its own lid from week 9 on.
  test('has the item’s own lid as a second one', () => {
    const steps = [
      { id: 'lid', fromWeek: 9, unitsPerWeek: 50, capitalAmount: '0', leadWeeks: 0, lifeWeeks: 1 },
    ];
    const tea = itemOf({ ...on(12), capacityUnitsPerWeek: 1000, capacitySteps: steps });
    const pass = passOf([tea], [doorIn(8, { tea: 200 })], { lines: [line()] });
    expect(busy(pass.units[0]?.made)).toEqual({ 8: 120, 9: 50, 10: 30 });
  });
});

describe('further suppliers', () => {
  const second: Supply['sources'][number] = {
    id: 'near',
    name: 'Near mill',
    leadWeeks: 1,
    minimumOrderUnits: 200,
    batchUnits: 100,
    capacityUnitsPerWeek: 150,
    goodsAmountPerUnit: '1.1',
    freightAmountPerUnit: '0.05',
    depositRate: '0.5',
    supplierDays: 14,
  };
  // Lead 3 and cover 2: ordered in week 3 for week 8. 700 in batches of 60 are 720. Weeks 6 to 8 of the first take
  // 300, five batches; 420 are left, 500 in the second's batches, of which its weeks 4 to 6 take 450: four batches.
  // 20 go back to the first: 320, in batches 360, the last 60 of them in week 9.
  const first = itemOf({
    coverWeeks: 2,
    minimumOrderUnits: 60,
    batchUnits: 60,
    capacityUnitsPerWeek: 100,
    depositRate: '0.3',
    sources: [second],
  });
  const pass = passOf([first], [doorIn(8, { tea: 700 })]);

  test('take what the first has no room for in its weeks of cover, in their own batches', () => {
    expect(busy(pass.units[0]?.ordered)).toEqual({ 3: 760 });
    expect(busy(pass.units[0]?.made)).toEqual({ 4: 150, 5: 150, 6: 200, 7: 100, 8: 100, 9: 60 });
  });

  // First: goods 1.00, 30 % ahead: 108.00 of 360.00. Second: 1.10, half ahead: 82.50 + 82.50 + 55.00.
  test('are paid at their own price, deposit and days', () => {
    expect(busy(pass.flows.supplierDeposits)).toEqual({ 3: -(10_800 + 22_000) });
    expect(busy(pass.flows.inboundFreightAndDuty)).toEqual({ 4: -750, 5: -750, 6: -500 });
    expect(busy(pass.flows.supplierPayments)).toEqual({
      6: -(7000 + 8250),
      7: -(7000 + 8250),
      8: -(7000 + 5500),
      9: -4200,
    });
  });

  // The second has room for one batch only, and less than its least order is none: all 720 stay with the first.
  test('below their least order take nothing', () => {
    const small = { ...second, capacityUnitsPerWeek: 60 };
    const { units } = passOf([itemOf({ ...first.supply, sources: [small] })], [doorIn(8, { tea: 700 })]);
    expect(busy(units[0]?.ordered)).toEqual({ 3: 720 });
    expect(busy(units[0]?.made)).toEqual({
      6: 100,
      7: 100,
      8: 100,
      9: 100,
      10: 100,
      11: 100,
      12: 100,
      13: 20,
    });
  });
});

describe('the price of an order', () => {
  const goods = [
    { id: 'g', label: 'Goods', family: 'goods' as const, rule: { by: 'unit' as const, amount: '1.2345' } },
  ];
  const priceBreaks = [
    { id: 'some', fromUnits: 500, goodsFactor: '0.9' },
    { id: 'many', fromUnits: 700, goodsFactor: '0.8' },
  ];
  const paidFor = (units: number, supply: Partial<Supply> = {}) => {
    const tea = itemOf({ priceBreaks, ...supply }, { costLines: goods });
    return busy(passOf([tea], [doorIn(8, { tea: units })]).flows.supplierPayments);
  };

  test('goes by the highest break it reaches: 1.2345 x 0.8 = 0.9876; 1.2345 x 0.9 = 1.11105, 1.1111', () => {
    expect(paidFor(700)).toEqual({ 8: -69_132 });
    expect(paidFor(699)).toEqual({ 8: -77_666 }); // 776.6589
    expect(paidFor(499)).toEqual({ 8: -61_602 }); // 616.0155
  });

  // The order goes out in week 5. 1.2345 in dollars at 1 for 1: 1.2345 x 0.8 x 1.1 = 1.08636, rounded once: 1.0864.
  test('is shocked where it is placed at the shock or after, rounded once', () => {
    const shocked = (shockFromWeek: number): Partial<Supply> => ({
      purchaseCurrency: { code: 'EUR', rate: '1', rateDate: '2026-03-02', shockRate: '0.1', shockFromWeek },
    });
    expect(paidFor(700, shocked(5))).toEqual({ 8: -76_048 });
    expect(paidFor(700, shocked(6))).toEqual({ 8: -69_132 });
  });

  // 2.00 at 1.085 is 2.17; duty takes its share of that, 0.1085, and freight is typed at home: 2.17 + 0.1085 + 0.3 = 2.5785.
  test('of goods typed abroad is turned into the plan’s currency once', () => {
    const item = itemOf(
      {
        purchaseCurrency: {
          code: 'EUR',
          rate: '1.085',
          rateDate: '2026-03-02',
          shockRate: '0',
          shockFromWeek: 0,
        },
      },
      {
        id: 'tea',
        costLines: [
          { id: 'g', label: 'Goods', family: 'goods', rule: { by: 'unit', amount: '2' } },
          { id: 'd', label: 'Duty', family: 'duty', rule: { by: 'share', rate: '0.05', of: ['g'] } },
          { id: 'f', label: 'Freight', family: 'freight', rule: { by: 'unit', amount: '0.3' } },
        ],
      },
    );
    const { landed } = ladderOf(aPlan({ items: [item] }));
    expect(landed.unit.toFixed()).toBe('2.5785');
    expect(landed.goods.toFixed()).toBe('2.17');
    expect(landed.lines.map(({ reason }) => reason)).toEqual([
      'EUR 2.00 a unit, at 1.085',
      '5 % of Goods 2.17',
      '0.30 a unit',
    ]);
  });
});

describe('a rush order', () => {
  // 126 for week 2, lead 3: the ordinary order of week 0 lands in week 3. In week 1 all 126 are missing for week 2; at
  // most 50, in cases of 6, are 48. They ship at once; the rest waits a week. In week 2 nothing is missing: 126 land.
  const item = itemOf(
    { expedite: { leadWeeks: 1, extraAmountPerUnit: '0.25', mostUnitsPerWeek: 50 } },
    { caseUnits: 6 },
  );
  const pass = passOf([item], [doorIn(2, { tea: 126 })]);
  const [units] = pass.units;

  test('lands what would be missing within its own lead time, in full cases, and no more than may be rushed', () => {
    expect(busy(units?.rushed)).toEqual({ 1: 48 });
    expect(busy(units?.ordered)).toEqual({ 0: 126, 1: 48 });
    expect(busy(units?.made)).toEqual({ 2: 48, 3: 126 });
    expect(busy(units?.shipped)).toEqual({ 2: 48, 3: 78 });
  });

  // 48 x 0.25 = 12.00 in cash as it lands; 48.00 for the goods. Stock carries both: 60.00, all of it sold in week 2.
  test('costs its extra in cash at receipt, and in the cost of what is sold', () => {
    expect(busy(pass.flows.rushFreight)).toEqual({ 2: -1200 });
    expect(busy(pass.flows.supplierPayments)).toEqual({ 2: -4800, 3: -12_600 });
    expect(busy(pass.profit.costOfSales)).toEqual({ 2: -6000, 3: -7800 });
  });

  test('takes no place under the lid of ordinary orders', () => {
    const lidded = itemOf({ ...item.supply, capacityUnitsPerWeek: 126 }, { caseUnits: 6 });
    // Rushed in week 2 for week 3, beside the 126 that fill that week.
    const both = passOf([lidded], [doorIn(2, { tea: 126 }), doorIn(3, { tea: 126 })]);
    expect(busy(both.units[0]?.rushed)).toEqual({ 1: 48, 2: 48 });
    expect(both.units[0]?.made[3]).toBe(126 + 48);
  });
});

describe('goods that keep only so long', () => {
  // 5 weeks of life, 3 to be left at the shelf, a week away: the opening lot leaves until week 1 (0 + 5 - 2 = 3). The
  // fill that leaves in week 2 finds none of the 40 left fit; in week 3 (0 + 5 - 3 < 3) they are written off at their
  // 1.00; 24 are ordered then, and leave as they land two weeks on.
  const fresh = itemOf(
    { leadWeeks: 2, shelfLife: { weeks: 5, leastWeeksAtReceipt: 3 } },
    { opening: { units: 100, stockAmount: '100', onOrder: [] } },
  );
  const away = { terms: { ...anAccount().terms, transitWeeks: 1 } };

  test('leave only while they reach the shelf fresh enough, and are written off when they can’t any more', () => {
    const pass = passOf([fresh], [doorIn(2, { tea: 60 }, away), doorIn(3, { tea: 24 }, away)]);
    const [units] = pass.units;
    expect(busy(units?.shipped)).toEqual({ 1: 60, 5: 24 });
    expect(busy(units?.gone)).toEqual({ 3: 40 });
    expect(busy(pass.profit.other)).toEqual({ 3: -4000 });
    expect(busy(units?.ordered)).toEqual({ 3: 24 });
    expect([units?.backlog[2], units?.backlog[4], units?.backlog[5]]).toEqual([24, 24, 0]);
  });

  // 30 of week 0 and 30 that land in week 1; 20 leave in week 1 and 20 samples in week 2, both the oldest first: 20 of the
  // second lot are left, too old in week 1 + 5 - 3 + 1 = 4.
  test('go oldest first, to stores and as samples', () => {
    const item = itemOf(fresh.supply, {
      opening: {
        units: 30,
        stockAmount: '30',
        onOrder: [{ id: 'second', landsWeek: 1, units: 30, depositPaidAmount: '0' }],
      },
      removals: [{ id: 'samples', week: 2, units: 20, reason: 'samples' }],
    });
    const { units } = passOf([item], [doorIn(2, { tea: 20 }, away)]);
    expect(busy(units[0]?.gone)).toEqual({ 2: 20, 4: 20 });
  });

  // The door closes in week 9 with its 24 on the shelf; credited at 2.60, and nothing comes back into stock.
  test('are not sold again when they come back', () => {
    const closing = doorIn(3, { tea: 24 }, { ...away, closedStock: 'ours', cutWeek: 9 });
    const kept = passOf([itemOf({ ...fresh.supply, shelfLife: null })], [closing]);
    const gone = passOf([itemOf(fresh.supply)], [closing]);
    expect([kept.units[0]?.ours[9], gone.units[0]?.ours[9]]).toEqual([24, 0]);
    expect([kept.units[0]?.gone[9], gone.units[0]?.gone[9]]).toEqual([0, 24]);
    expect(gone.profit.tradeMoney[9]).toBe(-6240);
  });

  // 4 % back of 2.60, 0.30 of freight: 0.04 x 2.90 = 0.116; were half of it sold again, 0.04 x (2.90 - 0.50) = 0.096.
  test('bring nothing back in the ladder either', () => {
    const returns: Account['allowances'][number] = {
      kind: 'expectedReturns',
      id: 'back',
      rate: '0.04',
      resaleableShare: '0.5',
      freightBackPerUnit: '0.3',
      lagWeeks: 8,
    };
    const takenOn = (item: Item) =>
      ladderOf(aPlan({ items: [item], accounts: [anAccount({ allowances: [returns] })] }))
        .steps.find(({ id }) => id === 'back')
        ?.amount.toFixed();
    expect(takenOn(itemOf({ ...fresh.supply, shelfLife: null }))).toBe('0.096');
    expect(takenOn(itemOf(fresh.supply))).toBe('0.116');
  });
});
