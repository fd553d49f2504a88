/**
 * Kernel against oracle, one rule of supply a plan: lines, further suppliers, price breaks, rush orders, lots. Each test also
 * shows that what it is about did happen.
 */
import { describe, expect, test } from 'vitest';
import type { Account, Business, Item, Plan } from '../../src/domain/plan/index.ts';
import { aBusiness, aListing, anAccount, anItem, aPlan, aWave } from '../support/builders.ts';
import { agreed, totalFrom } from '../support/oracle/agree.ts';

type Supply = Item['supply'];

const plain = anItem().supply;
const supplied = (changes: Partial<Supply>, item: Partial<Item> = {}): Item =>
  anItem({ supply: { ...plain, ...changes }, ...item });
const planOf = (items: Item[], account: Partial<Account> = {}, business: Partial<Business> = {}): Plan =>
  aPlan({
    items,
    accounts: [
      anAccount({
        waves: [aWave({ openWeek: 8, doors: 300, doorsPerWeek: 300 })],
        listings: items.map(({ id }) => aListing({ itemId: id })),
        ...account,
      }),
    ],
    business: aBusiness({ openingCashAmount: '900000', ...business }),
  });
const line = (changes: Partial<Business['lines'][number]> = {}) => ({
  lines: [{ id: 'line', name: 'Line', hoursPerShift: 1, shifts: 1, steps: [], ...changes }],
});
const onLine = (unitsPerHour: number, hoursShare: string | null = null, yieldRate = '1') => ({
  lineId: 'line',
  unitsPerHour,
  yieldRate,
  hoursShare,
});
const onOrder = (weeks: number[], units: number) => ({
  units: 0,
  stockAmount: '0',
  onOrder: weeks.map((landsWeek, at) => ({ id: `o${at}`, landsWeek, units, depositPaidAmount: '0' })),
});
const source = (changes: Partial<Supply['sources'][number]> = {}): Supply['sources'][number] => ({
  id: 'other',
  name: 'Another maker',
  leadWeeks: 3,
  minimumOrderUnits: 0,
  batchUnits: 1,
  capacityUnitsPerWeek: null,
  goodsAmountPerUnit: '1.3',
  freightAmountPerUnit: '0.1',
  depositRate: '0.5',
  supplierDays: 21,
  ...changes,
});

describe('a line', () => {
  test('lands what its hours make, good units only', () => {
    const pass = agreed(planOf([supplied({ line: onLine(1000, null, '0.9333') })], {}, line()));
    expect(Math.max(...(pass.units[0]?.made ?? []))).toBe(933);
  });

  // 3,000 an hour: a unit is 1.2 seconds. Ten orders of one use 2 each of 3,600 seconds: 3,580 make floor(2,983.3).
  test('counts whole seconds of each instalment', () => {
    const item = supplied(
      { line: onLine(3000), leadWeeks: 5 },
      { opening: onOrder(new Array(10).fill(5), 1) },
    );
    const waves = [aWave({ openWeek: 8, doors: 900, doorsPerWeek: 900 })];
    const pass = agreed(planOf([item], { waves }, line()));
    expect(pass.units[0]?.made[5]).toBe(10 + 2983);
  });

  test('is shared: hours of its own first, then item after item takes what is left', () => {
    const items = [
      supplied({ line: onLine(600) }),
      supplied({ line: onLine(400) }, { id: 'mint', name: 'Mint' }),
      supplied({ line: onLine(500, '0.25') }, { id: 'sage', name: 'Sage' }),
    ];
    const pass = agreed(planOf(items, {}, line({ hoursPerShift: 4 })));
    const most = pass.units.map(({ made }) => Math.max(...made));
    expect(most[0]).toBe(1800); // three of four hours
    expect(most[2]).toBe(500); // its own quarter
    expect(totalFrom(pass.units[1]?.made, 0, 12)).toBeLessThan(totalFrom(pass.units[0]?.made, 0, 12));
  });

  test('has more shifts from a week on, for capital that wears off', () => {
    const step = {
      id: 'more',
      fromWeek: 10,
      shifts: 3,
      capitalAmount: '1234.56',
      leadWeeks: 4,
      lifeWeeks: 20,
    };
    const pass = agreed(planOf([supplied({ line: onLine(300) })], {}, line({ steps: [step] })));
    expect(pass.flows.capital[6]).toBe(-123_456);
    expect(totalFrom(pass.profit.depreciation)).toBe(-123_456);
    expect(pass.units[0]?.made[9]).toBe(300);
    expect(pass.units[0]?.made[10]).toBe(900);
  });

  test('and the item has a lid beside it', () => {
    const pass = agreed(planOf([supplied({ line: onLine(500), capacityUnitsPerWeek: 450 })], {}, line()));
    expect(Math.max(...(pass.units[0]?.made ?? []))).toBe(450);
  });
});

describe('further suppliers', () => {
  test('take what the first cannot land in its cover, in their own minimum and batch', () => {
    const sources = [
      source({ capacityUnitsPerWeek: 200, minimumOrderUnits: 250, batchUnits: 50 }),
      source({ id: 'third', leadWeeks: 1, capacityUnitsPerWeek: 100, goodsAmountPerUnit: '1.9' }),
    ];
    const pass = agreed(planOf([supplied({ capacityUnitsPerWeek: 300, sources })]));
    expect(Math.max(...(pass.units[0]?.made ?? []))).toBe(600);
  });

  test('what none can take goes back to the first', () => {
    const sources = [source({ capacityUnitsPerWeek: 50 })];
    const pass = agreed(planOf([supplied({ capacityUnitsPerWeek: 100, minimumOrderUnits: 400, sources })]));
    expect(totalFrom(pass.units[0]?.ordered, 0, 9)).toBeGreaterThan(3 * 150 + 3 * 50);
  });

  test('land at once, be it the first or another', () => {
    const sources = [source({ leadWeeks: 0, capacityUnitsPerWeek: 2000 })];
    const vat = { salesRate: '0.19', purchasesRate: '0.07' };
    const items = [supplied({ leadWeeks: 0, capacityUnitsPerWeek: 700, sources, depositRate: '0.25' })];
    expect(totalFrom(agreed(planOf(items, {}, { vat })).flows.supplierPayments)).toBeLessThan(0);
  });
});

describe('the price of an order', () => {
  const breaks = (fromUnits: number) => ({
    priceBreaks: [
      { id: 'some', fromUnits: 100, goodsFactor: '0.95' },
      { id: 'many', fromUnits, goodsFactor: '0.7' },
    ],
  });
  const ends = { depositRate: '1', minimumOrderUnits: 5000 };

  test.each([
    [5000, '0.7'],
    [5001, '0.95'],
  ])('breaks at %i units or more', (fromUnits, factor) => {
    const pass = agreed(planOf([supplied({ ...ends, ...breaks(fromUnits) })]));
    const first = pass.units[0]?.ordered.findIndex((units) => units > 0) ?? -1;
    expect(pass.units[0]?.ordered[first]).toBe(5000);
    expect(pass.flows.supplierDeposits[first]).toBe(Math.round(-5000 * 100 * Number(factor)));
  });

  test('rises with a shock from its week on, also for what is rushed', () => {
    const purchaseCurrency = {
      code: 'SEK',
      rate: '0.0937',
      rateDate: '2026-02-27',
      shockRate: '0.155555',
      shockFromWeek: 12,
    };
    const expedite = { leadWeeks: 1, extraAmountPerUnit: '0.0333', mostUnitsPerWeek: null };
    const items = [
      supplied({ leadWeeks: 4, purchaseCurrency, expedite, ...breaks(2000), depositRate: '0.3' }),
    ];
    const pass = agreed(planOf(items));
    expect(totalFrom(pass.units[0]?.ordered, 12)).toBeGreaterThan(0);
  });
});

describe('rush orders', () => {
  test('bring in full cases what is missing within their own lead time, for their price on top', () => {
    const expedite = { leadWeeks: 2, extraAmountPerUnit: '0.4', mostUnitsPerWeek: 1000 };
    const waves = [aWave({ openWeek: 4, doors: 200, doorsPerWeek: 200 })];
    const pass = agreed(planOf([supplied({ leadWeeks: 8, expedite })], { waves }));
    expect(Math.max(...(pass.units[0]?.rushed ?? []))).toBe(996); // 83 cases of 12 in 1,000
    expect(totalFrom(pass.flows.rushFreight)).toBe(-40 * totalFrom(pass.units[0]?.rushed));
  });

  test('at once, with VAT on the goods, on the freight and on the rush', () => {
    const expedite = { leadWeeks: 0, extraAmountPerUnit: '0.0457', mostUnitsPerWeek: null };
    const freight: Item['costLines'][number] = {
      id: 'freight',
      label: 'Freight',
      family: 'freight',
      rule: { by: 'unit', amount: '0.2113' },
    };
    const item = supplied({ leadWeeks: 6, expedite }, { costLines: [...anItem().costLines, freight] });
    const vat = { salesRate: '0.19', purchasesRate: '0.077' };
    const pass = agreed(planOf([item], { waves: [aWave({ openWeek: 3 })] }, { vat }));
    expect(totalFrom(pass.flows.rushFreight)).toBeLessThan(0);
  });
});

describe('what keeps only so long', () => {
  const fresh = { shelfLife: { weeks: 6, leastWeeksAtReceipt: 3 }, minimumOrderUnits: 6000 };

  test('leaves oldest first, and what gets too old is written off', () => {
    const pass = agreed(planOf([supplied(fresh)]));
    expect(totalFrom(pass.units[0]?.gone)).toBeGreaterThan(0);
    expect(totalFrom(pass.profit.other)).toBeLessThan(0);
  });

  test('stays behind for a far place while a near one still gets it', () => {
    const far = { ...anAccount().terms, transitWeeks: 3 };
    const plan = planOf([supplied(fresh)]);
    const near = plan.accounts[0] as Account;
    const accounts = [
      { ...near, id: 'far', terms: far },
      { ...near, id: 'near' },
    ];
    const pass = agreed({ ...plan, accounts });
    expect(totalFrom(pass.units[0]?.backlog)).toBeGreaterThan(0);
  });

  test('to a depot it is the way there that counts', () => {
    const depot: Account['depot'] = {
      keptBy: 'distributor',
      transitWeeks: 2,
      openingWeeks: 0,
      fillWeeks: 2,
      coverWeeks: 2,
      minimumOrderUnits: 0,
      orderIn: 'case',
    };
    const terms = { ...anAccount().terms, transitWeeks: 4 };
    const life = { shelfLife: { weeks: 6, leastWeeksAtReceipt: 4 }, minimumOrderUnits: 9000 };
    const pass = agreed(planOf([supplied(life)], { depot, terms }));
    expect(totalFrom(pass.units[0]?.received)).toBeGreaterThan(0); // from us to a shelf 4 weeks away it never could
  });

  test.each(['ours', 'kept', 'credited'] as const)(
    'what comes back is never sold again: %s',
    (closedStock) => {
      const returns = {
        kind: 'expectedReturns',
        id: 'returns',
        rate: '0.2',
        lagWeeks: 2,
        freightBackPerUnit: '0.1',
        resaleableShare: '0.9',
      } as const;
      const ways: Partial<Account>[] = [
        { allowances: [returns], cutWeek: 20 },
        { cutWeek: 20, sale: { by: 'scan', shrinkRate: '0.01' } },
        {
          sale: { by: 'guaranteed', expectedReturnRate: '0.3', reviewWeeks: 6, resaleableShare: '1' },
          attritionYearlyRate: '0.6',
        },
      ];
      for (const way of ways) {
        const pass = agreed(planOf([supplied(fresh)], { closedStock, ...way }));
        expect(totalFrom(pass.units[0]?.gone)).toBeGreaterThan(0);
      }
    },
  );

  test('samples take the oldest, whatever is left of their time', () => {
    const removals = [9, 10, 11].map((week) => ({
      id: `r${week}`,
      week,
      units: 250,
      reason: 'samples' as const,
    }));
    const item = supplied({ ...fresh, sources: [source()], capacityUnitsPerWeek: 1500 }, { removals });
    expect(totalFrom(agreed(planOf([item])).units[0]?.gone)).toBeGreaterThanOrEqual(750);
  });
});
