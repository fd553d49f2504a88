/**
 * The store side of the weekly pass by hand: doors that never have it on the shelf, planned closings, a display that
 * wears off, a promotion that takes from a sister item, order rhythm and multiples. The sums stand beside each test.
 */
import { describe, expect, test } from 'vitest';
import type { Account, Item } from '../../src/domain/plan/index.ts';
import type { PassResult } from '../../src/domain/rollout/types.ts';
import { aListing, anAccount, anItem, aPlan, aPromotion, aWave } from '../support/builders.ts';
import { subjectOf } from '../support/explained.ts';
import { kernelOf, pricedPlan } from '../support/oracle/compare.ts';

/** Plenty in stock, so that only the store side decides. */
const stocked: Item['opening'] = { units: 100_000, stockAmount: '100000', onOrder: [] };
const tea = (changes: Partial<Item> = {}) => anItem({ opening: stocked, ...changes });

function passOf(account: Partial<Account>, items: Item[] = [tea()]): PassResult {
  return kernelOf(pricedPlan(aPlan({ accounts: [anAccount(account)], items }))).pass;
}

const weeks = (series: Float64Array | undefined, from: number, count: number) =>
  Array.from(series?.slice(from, from + count) ?? []);

const everyWeek: Account['ordering'] = { everyWeeks: 1, firstWeek: 0, daily: false, orderIn: 'case' };

describe('voids', () => {
  // A tenth of 10 doors, one a week: round(0.9 j) sell after j weeks, 1 2 3 4 5 5 6 7 8 9 (4.5 rounds away from zero).
  const onePerWeek = { waves: [aWave({ doorsPerWeek: 1 })], voidRate: '0.1' };

  test('are rounded on the wave so far, so that a tenth of ten doors is one', () => {
    expect(weeks(passOf(onePerWeek).accounts[0]?.doors, 4, 10)).toEqual([1, 2, 3, 4, 5, 5, 6, 7, 8, 9]);
  });

  test('are neither filled nor sell; slotting is paid for them all the same', () => {
    const slotting = { amount: '100', per: 'door', settled: 'atOpening' } as const;
    const pass = passOf({ ...onePerWeek, slotting });
    expect(pass.units[0]?.fillShipped.reduce((sum, units) => sum + units, 0)).toBe(9 * 12);
    expect(weeks(pass.flows.slotting, 4, 10)).toEqual(new Array(10).fill(-10_000));
    expect(weeks(pass.units[0]?.demand, 13, 2)).toEqual([54, 54]); // 9 doors x 6
  });

  test('count in the deal too: 54 of 60 doors sell 54 x 6 x 52 units, 60 are paid for', () => {
    const slotting = { amount: '100', per: 'door', settled: 'atOpening' } as const;
    const account = anAccount({ waves: [aWave({ doors: 60, doorsPerWeek: 60 })], voidRate: '0.1', slotting });
    const deal = subjectOf(aPlan({ accounts: [account], items: [tea()] })).results.deals[0];
    expect(deal?.items[0]?.firstYearUnits.toString()).toBe('16848');
    expect(deal?.fixedAmount.toString()).toBe('6000');
    expect(deal?.doors).toBe(60);
  });
});

describe('planned closings', () => {
  test('take the newest doors first, then the older', () => {
    const pass = passOf({
      runningDoors: [{ id: 'old', doors: 20, ageWeeks: 10, unitsPerDoor: 24 }],
      cuts: [{ id: 'fewer', week: 10, doors: 15 }],
    });
    expect(weeks(pass.accounts[0]?.doors, 9, 3)).toEqual([30, 15, 15]); // the wave's 10, and 5 of the 20
  });

  // 100 doors at 20 % a year: 100 x 0.8^(26/52) = 89.44, 89 left in week 30, 40 of them close; a year on 49 x 0.8 = 39.2.
  test('begin the attrition of a group anew', () => {
    const pass = kernelOf(
      pricedPlan(
        aPlan({
          horizonWeeks: 90,
          items: [tea()],
          accounts: [
            anAccount({
              waves: [aWave({ doors: 100, doorsPerWeek: 100 })],
              attritionYearlyRate: '0.2',
              cuts: [{ id: 'fewer', week: 30, doors: 40 }],
            }),
          ],
        }),
      ),
    ).pass;
    const doors = pass.accounts[0]?.doors;
    expect([doors?.[4], doors?.[30], doors?.[82]]).toEqual([100, 49, 39]);
  });

  // 10 doors with 24 each, 4 close in week 0: floor(240 x 4 / 10) = 96 stay with the chain, worth 249.60 at 2.60; a
  // quarter of that, 62.40, is claimed. Nothing is invoiced for 8 weeks but the reorder: it comes off its remittance.
  test('of what is kept in closed doors, the markdown is a claim', () => {
    const pass = passOf({
      waves: [],
      runningDoors: [{ id: 'old', doors: 10, ageWeeks: 10, unitsPerDoor: 24 }],
      cuts: [{ id: 'fewer', week: 0, doors: 4 }],
      exitMarkdownRate: '0.25',
    });
    expect(pass.units[0]?.gone[0]).toBe(96);
    expect(pass.balances.accrued[0]).toBe(6240);
    const first = pass.flows.remittances.findIndex((each) => each > 0);
    expect(pass.balances.accrued[first]).toBe(0);
    expect(pass.flows.remittances[first]).toBe((pass.accounts[0]?.invoiced[first - 5] ?? 0) - 6240);
  });
});

describe('demand', () => {
  // Lift 1 to 0 over 5 weeks: x 2, 1.75, 1.5, 1.25, 1 of 10 doors x 6.
  test('a display wears off in a straight line', () => {
    const display: Account['display'] = {
      buildAmountPerDoor: '0',
      freightAmountPerDoor: '0',
      buildWeeks: 0,
      feeAmountPerStoreWeek: '0',
      weeks: 5,
      liftRate: '1',
      liftEndRate: '0',
    };
    expect(weeks(passOf({ display }).units[0]?.demand, 4, 6)).toEqual([120, 105, 90, 75, 60, 60]);
  });

  // Tea 6 and mint 3 a store and week; tea sells half as much again, 30 units, of which 40 % come from mint: 30 − 12 = 18.
  test('a promotion takes part of its extra units from the item beside it, and its money touches that item not', () => {
    const account = {
      listings: [aListing(), aListing({ itemId: 'mint', unitsPerStoreWeek: '3' })],
      promotions: [aPromotion({ itemIds: ['tea'], sisterShare: '0.4' })],
    };
    const items = [tea(), tea({ id: 'mint', name: 'Mint' })];
    const pass = passOf(account, items);
    expect(weeks(pass.units[0]?.demand, 19, 4)).toEqual([60, 90, 90, 60]);
    expect(weeks(pass.units[1]?.demand, 19, 4)).toEqual([30, 18, 18, 30]);
    // 20 % of 4.3333 is 0.8667 a unit of tea scanned: 90 x 0.8667 = 78.00 in each of two weeks, none on mint.
    const before = pass.profit.tradeMoney[19] ?? 0;
    expect((pass.profit.tradeMoney[20] ?? 0) - before).toBe(-7800);
  });
});

describe('ordering', () => {
  // Every second week it looks 2 + 1 + 1 weeks ahead: up to 240. After week 4: 240 − 60 on the shelf = 180 short;
  // (180 − 9 x 11 / 2) / 12 = 10.9, ten cases. After week 6: on the shelf 60 + 120 − 120, the same again.
  test('every second week it orders for two', () => {
    const pass = passOf({ ordering: { ...everyWeek, everyWeeks: 2 } });
    expect(weeks(pass.units[0]?.shipped, 3, 6)).toEqual([120, 0, 120, 0, 120, 0]);
  });

  // By day it looks 0 + 1 + 1 ahead: up to 120, its fill. 60 short after week 4: (60 − 49.5) / 12 is no case
  // yet; 120 short after week 5: five cases.
  test('by day it looks a week less ahead', () => {
    const pass = passOf({ ordering: { ...everyWeek, daily: true } });
    expect(weeks(pass.units[0]?.shipped, 3, 4)).toEqual([120, 0, 0, 60]);
  });

  test('nothing but fills before the first order week', () => {
    const pass = passOf({ ordering: { ...everyWeek, firstWeek: 9 } });
    expect(pass.units[0]?.shipped.findIndex((units, week) => week > 3 && units > 0)).toBe(10);
  });

  // Five cases of 12 a layer: a door is filled with 60, not 12; in pallets of 50 cases with 600.
  test.each([
    ['layer', 600],
    ['pallet', 6000],
  ] as const)('in full %ss, the fill too', (orderIn, units) => {
    const pack: Item['pack'] = {
      innerUnits: 12,
      caseLengthMm: 400,
      caseWidthMm: 300,
      caseHeightMm: 200,
      caseGrams: 4000,
      layerCases: 5,
      pallet: '1200x800',
      palletMostHeightMm: 1800,
      palletMostKg: 800,
      stacks: false,
    };
    const pass = passOf({ ordering: { ...everyWeek, orderIn } }, [tea({ pack })]);
    expect(pass.units[0]?.fillShipped[3]).toBe(units);
    expect(pass.units[0]?.shipped.every((each) => each % (units / 10) === 0)).toBe(true);
  });
});

describe('the deal counts the same doors and units', () => {
  const dealOf = (account: Partial<Account>, items: Item[] = [tea()]) =>
    subjectOf(aPlan({ accounts: [anAccount(account)], items })).results.deals[0];

  // 10 doors from week 4, 4 of them closed in week 30: 6 x (26 x 10 + 26 x 6) in the first 52 weeks.
  test('planned closings', () => {
    const deal = dealOf({ cuts: [{ id: 'fewer', week: 30, doors: 4 }] });
    expect(deal?.items[0]?.firstYearUnits.toString()).toBe('2496');
  });

  // Tea 60 a week and 30 more in two weeks; mint 30 a week and 12 less: 3,180 and 1,536. 0.8667 off 180 of tea alone.
  test('a promotion and the item beside it', () => {
    const items = [tea(), tea({ id: 'mint', name: 'Mint' })];
    const listings = [aListing(), aListing({ itemId: 'mint', unitsPerStoreWeek: '3' })];
    const plain = dealOf({ listings }, items);
    const deal = dealOf(
      { listings, promotions: [aPromotion({ itemIds: ['tea'], sisterShare: '0.4' })] },
      items,
    );
    expect(deal?.items.map(({ firstYearUnits }) => firstYearUnits.toString())).toEqual(['3180', '1536']);
    const each = Number(plain?.items[0]?.contributionPerUnit);
    const more = Number(deal?.firstYearContribution) - Number(plain?.firstYearContribution);
    expect(more).toBeCloseTo((60 - 24) * each - 180 * 0.8667, 3);
  });

  // 120 + 105 + 90 + 75 + 60 in five weeks, 47 weeks of 60.
  test('a display that wears off', () => {
    const display = {
      buildAmountPerDoor: '0',
      freightAmountPerDoor: '0',
      buildWeeks: 0,
      feeAmountPerStoreWeek: '0',
      weeks: 5,
      liftRate: '1',
      liftEndRate: '0',
    };
    expect(dealOf({ display })?.items[0]?.firstYearUnits.toString()).toBe(String(450 + 47 * 60));
  });

  // Pallets of 50 cases of 12: a door is filled with 600, of which one case is free and 588 are paid for.
  test('fills in what is ordered', () => {
    const ordering = { ...everyWeek, orderIn: 'pallet' } as const;
    const deal = dealOf({ ordering, listings: [aListing({ freeCasesPerDoor: 1 })] });
    const each = deal?.items[0]?.contributionPerUnit;
    expect(deal?.fillMargin.toString()).toBe(each?.times(5880).toString());
  });
});
