/**
 * Kernel against oracle, one rule of the stores a plan: doors, demand, shelves, orders, shipping. Each test also shows
 * that what it is about did happen.
 */
import { describe, expect, test } from 'vitest';
import type { Account, Item, Plan } from '../../src/domain/plan/index.ts';
import { aListing, anAccount, anItem, aPlan, aPromotion, aWave } from '../support/builders.ts';
import { agreed, totalFrom } from '../support/oracle/agree.ts';

const planWith = (account: Partial<Account>, item: Partial<Item> = {}): Plan =>
  aPlan({ accounts: [anAccount(account)], items: [anItem(item)] });
const terms = (changes: Partial<Account['terms']>) => ({ ...anAccount().terms, ...changes });
const stocked = (units: number): Item['opening'] => ({ units, stockAmount: String(units), onOrder: [] });
/** Made too late for the opening. */
const lateSupply: Item['supply'] = { ...anItem().supply, leadWeeks: 9 };

describe('shipping', () => {
  test('a fill leaves as far as whole cases reach, the rest when there is more', () => {
    const pass = agreed(planWith({}, { opening: stocked(100), supply: lateSupply }));
    expect(pass.units[0]?.shipped[3]).toBe(96);
    expect(pass.units[0]?.backlog[3]).toBe(24);
    expect(pass.units[0]?.fillShipped[9]).toBe(24);
  });

  test('reorders that cannot leave are cancelled, fills never are: so a later fill comes first', () => {
    const waves = [aWave(), aWave({ id: 'second', openWeek: 8 })];
    const item = { opening: stocked(130), supply: { ...lateSupply, capacityUnitsPerWeek: 40 } };
    const cancelled = agreed(planWith({ waves, terms: terms({ shortage: 'cancelled' }) }, item));
    const kept = agreed(planWith({ waves }, item));
    expect(cancelled.units[0]?.backlog[7]).toBeGreaterThan(0);
    expect(totalFrom(cancelled.units[0]?.fillShipped, 0, 11)).toBeGreaterThan(
      totalFrom(kept.units[0]?.fillShipped, 0, 11),
    );
  });

  test('short stock goes by week placed, fill first, priority, then file order', () => {
    const accounts = [3, 1, 1].map((priority, at) =>
      anAccount({ id: `account${at}`, priority, waves: [aWave({ doors: 20 + at, doorsPerWeek: 7 })] }),
    );
    const pass = agreed(aPlan({ accounts, items: [anItem({ opening: stocked(150), supply: lateSupply })] }));
    const sold = pass.accounts.map((each) => totalFrom(each.sold, 0, 8));
    expect(sold).toEqual([0, 84, 60]); // seven doors of 12 are 84; of the other 66 units five cases reach the third
  });

  test.each([0, 1, 3])('transit takes %i weeks', (transitWeeks) => {
    const pass = agreed(planWith({ terms: terms({ transitWeeks }) }, { opening: stocked(200) }));
    expect(pass.units[0]?.received.findIndex((units) => units > 0)).toBe(4);
    expect(pass.units[0]?.shipped.findIndex((units) => units > 0)).toBe(4 - transitWeeks);
  });

  test('a fill ordered before week 0 leaves in week 0', () => {
    const account = { waves: [aWave({ openWeek: 2 })], terms: terms({ transitWeeks: 2 }) };
    expect(agreed(planWith(account, { opening: stocked(500) })).units[0]?.shipped[0]).toBe(120);
  });

  test('a slow seller orders by the case at each door', () => {
    const listings = [aListing({ unitsPerStoreWeek: '0.35', facings: 1, depthUnits: 2 })];
    const pass = agreed(planWith({ listings, waves: [aWave({ doors: 47, doorsPerWeek: 11 })] }));
    expect(totalFrom(pass.units[0]?.shipped)).toBeGreaterThan(totalFrom(pass.units[0]?.fillShipped));
  });
});

describe.each(['kept', 'credited', 'ours'] as const)('doors that close, their stock %s', (closedStock) => {
  test('attrition', () => {
    const account = {
      attritionYearlyRate: '0.7',
      closedStock,
      waves: [aWave({ doors: 83, doorsPerWeek: 30 })],
    };
    const pass = agreed(planWith(account));
    expect(pass.accounts[0]?.doors[51]).toBeLessThan(50);
    const left = closedStock === 'ours' ? pass.units[0]?.returned : pass.units[0]?.gone;
    expect(totalFrom(left)).toBeGreaterThan(0);
  });

  test('a cut, with a claim that no remittance carries', () => {
    const listings = [aListing({ unitsPerStoreWeek: '2', backStockUnits: 60 })];
    const pass = agreed(
      planWith({ listings, cutWeek: 20, closedStock, terms: terms({ transitWeeks: 2, paymentDays: 7 }) }),
    );
    expect(pass.units[0]?.inStores[20]).toBe(0);
    expect(totalFrom(pass.units[0]?.gone, 20) > 0).toBe(closedStock !== 'ours');
    expect(totalFrom(pass.units[0]?.returned, 20) > 0).toBe(closedStock === 'ours');
    expect(totalFrom(pass.flows.claimsPaid, 20) < 0).toBe(closedStock !== 'kept');
  });

  test('a cut, doors that were open from the start, goods on scan', () => {
    const pass = agreed(
      planWith(
        {
          waves: [],
          runningDoors: [{ id: 'old', doors: 30, ageWeeks: 40, unitsPerDoor: 9 }],
          attritionYearlyRate: '0.4',
          cutWeek: 14,
          closedStock,
          sale: { by: 'scan', shrinkRate: '0.03' },
        },
        { opening: stocked(900) },
      ),
    );
    expect(totalFrom(pass.units[0]?.sold, 0, 14)).toBeGreaterThan(0);
    expect(pass.units[0]?.inStores[14]).toBe(0);
  });
});

describe('doors', () => {
  test('a cut drops open orders, and those count no more as backlog to be bought', () => {
    const other = anAccount({ id: 'other', waves: [aWave({ openWeek: 12, doors: 9 })] });
    const cut = anAccount({ cutWeek: 8, listings: [aListing({ unitsPerStoreWeek: '14' })] });
    const supply = { ...anItem().supply, leadWeeks: 1, coverWeeks: 0, capacityUnitsPerWeek: 40 };
    const pass = agreed(aPlan({ accounts: [cut, other], items: [anItem({ supply })] }));
    expect(pass.units[0]?.backlog[7]).toBeGreaterThan(0);
    expect(pass.units[0]?.backlog[8]).toBe(0);
  });

  test('running doors start with stock on the shelf and an age', () => {
    const runningDoors = [{ id: 'old', doors: 25, ageWeeks: 3, unitsPerDoor: 20 }];
    const account = {
      waves: [],
      runningDoors,
      ramp: { startRate: '0.2', weeks: 9 },
      attritionYearlyRate: '0.1',
    };
    const pass = agreed(planWith(account, { opening: stocked(400) }));
    expect(pass.openingUnits[0]).toBe(900);
    expect(pass.units[0]?.sold[0]).toBe(70); // 25 x 6 x (0.2 + 0.8 x 3 / 9)
  });

  test('running doors that are cut in week 0 have sold nothing', () => {
    const runningDoors = [{ id: 'old', doors: 25, ageWeeks: 3, unitsPerDoor: 20 }];
    const pass = agreed(planWith({ waves: [], runningDoors, cutWeek: 0, closedStock: 'credited' }));
    expect(totalFrom(pass.units[0]?.sold)).toBe(0);
    expect(pass.units[0]?.gone[0]).toBe(500);
  });

  test('a wave that opens a door a week goes on past the horizon, and its displays are paid for within it', () => {
    const display = {
      buildAmountPerDoor: '85',
      freightAmountPerDoor: '15',
      buildWeeks: 40,
      feeAmountPerStoreWeek: '0',
      weeks: 4,
      liftRate: '0',
      liftEndRate: null,
    };
    const waves = [aWave({ openWeek: 10, doors: 80, doorsPerWeek: 1 })];
    const supply = { ...anItem().supply, leadWeeks: 0, coverWeeks: 0 };
    const pass = agreed(planWith({ display, waves, cutWeek: 90 }, { supply }));
    expect(pass.flows.displayBuild[49]).toBe(-10_000); // the door of week 89
    expect(pass.flows.displayBuild[50]).toBe(0);
  });

  test('a cut after the horizon already stops the last orders', () => {
    const account = { cutWeek: 53, terms: terms({ transitWeeks: 3 }) };
    const pass = agreed(planWith(account, { supply: { ...anItem().supply, leadWeeks: 0, coverWeeks: 0 } }));
    expect(pass.units[0]?.shipped[51]).toBe(0);
  });
});

describe('demand', () => {
  test('ramp, seasons, two items', () => {
    const seasonFactors = Array.from({ length: 52 }, (_, at) => String(1 + (at % 7) / 10));
    const items = [anItem({ seasonFactors }), anItem({ id: 'mint', name: 'Mint', caseUnits: 5 })];
    const listings = [
      aListing({ unitsPerStoreWeek: '4.567' }),
      aListing({ itemId: 'mint', unitsPerStoreWeek: '0.731' }),
    ];
    const account = anAccount({ listings, ramp: { startRate: '0.35', weeks: 11 } });
    const pass = agreed(aPlan({ items, accounts: [account], startDate: '2026-11-25', horizonWeeks: 60 }));
    expect(totalFrom(pass.units[1]?.sold)).toBeGreaterThan(0);
  });

  test('a scan-back promotion with a dip after it', () => {
    const promotion = aPromotion({ liftRate: '0.8', dipShare: '0.5', dipWeeks: 3, fundedShare: '0.6' });
    const pass = agreed(planWith({ promotions: [promotion] }));
    expect(pass.units[0]?.demand[20]).toBe(108);
    expect(pass.units[0]?.demand[22]).toBe(44); // 60 x (1 - 0.5 x 0.8 x 2 / 3)
  });

  test('an off-invoice promotion bought in beforehand, across another one', () => {
    const promotions = [
      aPromotion({ fundedBy: 'offInvoice', buyInWeeks: 3, weeks: 4, liftRate: '1.5' }),
      aPromotion({
        id: 'other',
        fromWeek: 22,
        fundedBy: 'offInvoice',
        depthRate: '0.9',
        weeks: 3,
        liftRate: '0',
      }),
    ];
    const pass = agreed(planWith({ promotions }));
    const plain = agreed(planWith({}));
    expect(totalFrom(pass.accounts[0]?.invoiced, 22, 24)).toBeLessThan(
      totalFrom(plain.accounts[0]?.invoiced, 22, 24),
    );
  });

  test('displays are paid before, expensed at opening, charged by the week while young', () => {
    const display = {
      buildAmountPerDoor: '85.505',
      freightAmountPerDoor: '12',
      buildWeeks: 6,
      feeAmountPerStoreWeek: '2.125',
      weeks: 5,
      liftRate: '0.4',
      liftEndRate: null,
    };
    const runningDoors = [{ id: 'old', doors: 7, ageWeeks: 2, unitsPerDoor: 30 }];
    const pass = agreed(
      planWith({ display, runningDoors, waves: [aWave({ doors: 25, openWeek: 8 })], cutWeek: 11 }),
    );
    expect(pass.flows.displayBuild[2]).toBe(-97505);
    expect(pass.balances.deposits[8]).toBeLessThan(pass.balances.deposits[7] ?? 0);
    expect(pass.flows.displayFees[0]).toBe(-1488); // 7 doors at 2.125
  });
});
