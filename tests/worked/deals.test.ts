/**
 * Deals worked by hand: what a chain asks for, when it is put down, when it is back, and what the chain itself gets.
 * The account of the builders is ten doors from week 4, tea at 2.60, landed 1.00, 6 a store and week: 1.60 a unit.
 */
import { describe, expect, test } from 'vitest';
import type { Account } from '../../src/domain/plan/index.ts';
import { aHand, aListing, anAccount, anItem, aPromotion, aWave } from '../support/builders.ts';
import { dealOf, firstItem, oddNumbers, once, simpleDeal } from '../support/deals.ts';

const fixed = (account: Partial<Account>, plan = {}) =>
  Object.fromEntries(
    dealOf({ account: anAccount(account), plan }).fixedLines.map(({ id, amount }) => [id, amount.toString()]),
  );
const twoItems = { items: [anItem(), anItem({ id: 'jam', name: 'Jam' })] };
const twoListings = [aListing(), aListing({ itemId: 'jam' })];

describe('a plain deal', () => {
  test('60 doors at 6 a week and 0.63 a unit: 3.78 a store and week, 11,793.60 a year, 250 a door is not back', () => {
    const deal = simpleDeal({
      price: '1.63',
      cost: '1',
      rate: '6',
      termWeeks: 52,
      account: {
        waves: [aWave({ doors: 60, doorsPerWeek: 60 })],
        slotting: { amount: '250', per: 'door', settled: 'atOpening' },
      },
    });
    expect(deal.contributionPerStoreWeek.toString()).toBe('3.78');
    expect(firstItem(deal).firstYearUnits.toString()).toBe('18720');
    expect(deal.firstYearContribution.toString()).toBe('11793.6');
    expect(deal.fixedAmount.toString()).toBe('15000');
    expect(deal.moneyDownPerDoor.toString()).toBe('250');
    expect(deal.firstYearAfterFixed.toString()).toBe('-3206.4');
    expect(deal.paybackWeeks).toBeNull();
    // 15,000 / (60 x 52 x 0.63) = 7.6312576..., up
    expect(firstItem(deal).breakEvenUnitsPerStoreWeek?.toString()).toBe('7.631258');
    expect(deal.breakEvenRatio?.toString()).toBe('0.78624');
  });

  test('one door, 96 down, 9.60 a week: back after 10 weeks; the curve is in whole cents', () => {
    const account = anAccount({ waves: [aWave({ doors: 1, doorsPerWeek: 1 })], slotting: once('96') });
    const deal = dealOf({ account });
    expect(deal.cumulated.slice(0, 11)).toEqual([
      -8640, -7680, -6720, -5760, -4800, -3840, -2880, -1920, -960, 0, 960,
    ]);
    expect(deal.paybackWeeks?.toString()).toBe('10');
    // net 2.60 x 312 units less 96, over 312 units
    expect(deal.fullyLoadedNetPerUnit?.toString()).toBe('2.2923');
  });

  test('money back within the first week counts from the opening day: 4.80 down and 9.60 a week are half a week', () => {
    const account = anAccount({ waves: [aWave({ doors: 1, doorsPerWeek: 1 })], slotting: once('4.8') });
    expect(dealOf({ account }).paybackWeeks?.toString()).toBe('0.5');
  });

  test('nothing down and no hurdle: pays from the first unit', () => {
    const deal = dealOf({ account: anAccount() });
    expect([deal.nothingDown, deal.paybackWeeks?.toString(), deal.breakEvenRatio]).toEqual([true, '0', null]);
    expect(firstItem(deal).breakEvenUnitsPerStoreWeek?.toString()).toBe('0');
  });

  test('a hurdle alone is to be earned: 499.20 a year on ten doors asks for a tenth of the planned rate', () => {
    const deal = dealOf({ account: anAccount({ deal: { termWeeks: 52, hurdleAmount: '499.2' } }) });
    expect([deal.nothingDown, firstItem(deal).breakEvenUnitsPerStoreWeek?.toString()]).toEqual([
      false,
      '0.6',
    ]);
    expect(deal.breakEvenRatio?.toString()).toBe('10');
  });
});

describe('what the chain asks for', () => {
  test.each([
    ['chain', '250'],
    ['item', '500'],
    ['door', '2500'],
    ['itemDoor', '5000'],
  ] as const)('slotting of 250 per %s, 2 items and 10 doors: %s', (per, due) => {
    const slotting = { amount: '250', per, settled: 'offRemittances' as const };
    expect(fixed({ slotting, listings: twoListings }, twoItems)).toEqual({ slotting: due });
  });

  test('opening fees stand beside slotting, each by its own rule', () => {
    const openingFees = [
      { id: 'set-up', label: 'Item set-up', amount: '75', per: 'item' as const },
      { id: 'reset', label: 'Shelf reset', amount: '12.5', per: 'door' as const },
    ];
    expect(fixed({ openingFees, slotting: once('900') })).toEqual({
      slotting: '900',
      'set-up': '75',
      reset: '125',
    });
  });

  const freeCase = [aListing({ freeCasesPerDoor: 1 })];
  const shipping: Account['allowances'] = [
    { kind: 'freightOut', id: 'freight', amount: '1.8', per: 'case' },
    { kind: 'pickAndPack', id: 'picking', amount: '0.05', per: 'unit' },
  ];

  test('a free case of 12 in each of 10 doors: landed 1.00 + freight 0.15 + picking 0.05, 144.00', () => {
    expect(fixed({ listings: freeCase, allowances: shipping })).toEqual({ 'free-fill-tea': '144' });
  });

  test('free goods bear broker only where it is said: 5 % of 2.60 more, 159.60', () => {
    const broker = { kind: 'broker' as const, id: 'broker', rate: '0.05', onFreeGoods: true };
    expect(fixed({ listings: freeCase, allowances: [...shipping, broker] })).toEqual({
      'free-fill-tea': '159.6',
    });
    const paidOnly = { ...broker, onFreeGoods: false };
    expect(fixed({ listings: freeCase, allowances: [...shipping, paidOnly] })).toEqual({
      'free-fill-tea': '144',
    });
  });

  test('billed back by a distributor at 20 %: landed 1.00 + its 3.25 - our 2.60 = 1.65 a unit, 198.00', () => {
    const hands = [aHand({ id: 'distributor', rule: { by: 'margin', rate: '0.2' } }), aHand()];
    const freeFill = { settled: 'billedBack' as const, lagWeeks: 4 };
    expect(fixed({ hands, listings: freeCase, freeFill })).toEqual({ 'free-fill-tea': '198' });
  });

  test('free goods can’t be more than the fill: 9 cases offered, a fill of 12 + 1 units is 2 cases, 24 units', () => {
    const listings = [aListing({ freeCasesPerDoor: 9, backStockUnits: 1 })];
    expect(fixed({ listings })).toEqual({ 'free-fill-tea': '240' });
  });

  test('margin on the paid part of the fill stands apart: 24 less 12 free, x 10 doors x 1.60', () => {
    const listings = [aListing({ freeCasesPerDoor: 1, backStockUnits: 12 })];
    expect(dealOf({ account: anAccount({ listings }) }).fillMargin.toString()).toBe('192');
    const scan = { by: 'scan' as const, shrinkRate: '0' };
    expect(dealOf({ account: anAccount({ listings, sale: scan }) }).fillMargin.toString()).toBe('0');
  });

  test('displays: 40 built and 8 carried a door, 2 a store and week for 6 weeks, lift of half', () => {
    const display = {
      buildAmountPerDoor: '40',
      freightAmountPerDoor: '8',
      buildWeeks: 4,
      feeAmountPerStoreWeek: '2',
      weeks: 6,
      liftRate: '0.5',
      liftEndRate: null,
    };
    expect(fixed({ display })).toEqual({
      'display-build': '400',
      'display-freight': '80',
      'display-fees': '120',
    });
    const deal = dealOf({ account: anAccount({ display }) });
    // 10 doors x 6 x (52 + 6 x 0.5) weeks
    expect(firstItem(deal).firstYearUnits.toString()).toBe('3300');
    // first week: 10 x 6 x 1.5 x 1.60 = 144.00 less 480 and 20 of fees
    expect(deal.cumulated[0]).toBe(-35_600);
  });
});

describe('doors over time', () => {
  test('a ramp from half over 4 weeks takes 1.25 weeks of sales: 0.5 + 0.375 + 0.25 + 0.125', () => {
    const deal = dealOf({ account: anAccount({ ramp: { startRate: '0.5', weeks: 4 } }) });
    expect(firstItem(deal).firstYearUnits.toString()).toBe('3045');
  });

  test('each door puts its money down as it opens: 10 doors, 4 a week, 100 a door', () => {
    const deal = dealOf({
      account: anAccount({
        waves: [aWave({ doorsPerWeek: 4 })],
        slotting: { amount: '100', per: 'door', settled: 'atOpening' },
      }),
    });
    // 4, 4, 2 doors: -400 + 38.40; -400 + 76.80; -200 + 96.00; then 96.00 a week
    expect(deal.cumulated.slice(0, 4)).toEqual([-36_160, -68_480, -78_880, -69_280]);
    expect(deal.paybackWeeks?.toNumber()).toBeCloseTo(3 + 788.8 / 96, 3);
  });

  test('a second wave that sinks the curve again moves the payback: the last crossing counts', () => {
    const deal = dealOf({
      account: anAccount({
        waves: [
          aWave({ doors: 1, doorsPerWeek: 1 }),
          aWave({ id: 'second', openWeek: 24, doors: 1, doorsPerWeek: 1 }),
        ],
        slotting: { amount: '96', per: 'door', settled: 'atOpening' },
      }),
    });
    // week-end 20: 96.00; then -96 and 19.20 a week: week-end 21 at 19.20, never below zero again
    expect(deal.cumulated.slice(19, 22)).toEqual([9600, 1920, 3840]);
    expect(deal.paybackWeeks?.toString()).toBe('10');
    const sooner = dealOf({
      account: anAccount({
        waves: [
          aWave({ doors: 1, doorsPerWeek: 1 }),
          aWave({ id: 'second', openWeek: 16, doors: 1, doorsPerWeek: 1 }),
        ],
        slotting: { amount: '96', per: 'door', settled: 'atOpening' },
      }),
    });
    // above zero at week-ends 11 and 12 (9.60, 19.20), then -57.60, -38.40, -19.20, 0
    expect(sooner.cumulated.slice(10, 16)).toEqual([960, 1920, -5760, -3840, -1920, 0]);
    expect(sooner.paybackWeeks?.toString()).toBe('16');
  });

  test('attrition of a fifth a year leaves (1 - 0.8) / (1 - 0.8^(1/52)) door-weeks of each door', () => {
    const deal = dealOf({ account: anAccount({ attritionYearlyRate: '0.2' }) });
    const doorWeeks = 10 * ((1 - 0.8) / (1 - 0.8 ** (1 / 52)));
    expect(firstItem(deal).firstYearUnits.toNumber()).toBeCloseTo(6 * doorWeeks, 5);
  });

  test('a chain that takes us off its shelves in week 14 sells ten weeks; doors that would open later never do', () => {
    const waves = [aWave(), aWave({ id: 'never', openWeek: 14 })];
    const deal = dealOf({ account: anAccount({ waves, cutWeek: 14 }) });
    expect([deal.doors, firstItem(deal).firstYearUnits.toString()]).toEqual([10, '600']);
  });

  test('the first year and the term run on past the plan’s horizon', () => {
    const account = anAccount({
      waves: [aWave({ openWeek: 50 })],
      deal: { termWeeks: 104, hurdleAmount: '0' },
    });
    const deal = dealOf({ account, plan: { horizonWeeks: 52 } });
    expect([deal.cumulated.length, firstItem(deal).firstYearUnits.toString()]).toEqual([104, '3120']);
    expect(deal.cumulated.at(-1)).toBe(104 * 9600);
  });

  test('season by ISO week of each week’s first day: twice the sales in weeks 49 to 52 of 2026', () => {
    const seasonFactors = Array.from({ length: 52 }, (_, index) => (index >= 48 ? '2' : '1'));
    const deal = dealOf({ account: anAccount(), plan: { items: [anItem({ seasonFactors })] } });
    // a year from 2026-03-30 has ISO weeks 49, 50, 51, 52 and 53 (2026 has 53; week 53 uses 52): 5 weeks x 60 more
    expect(firstItem(deal).firstYearUnits.toString()).toBe('3420');
  });

  test('an account that only runs on is counted on the doors it has, with nothing put down', () => {
    const runningDoors = [{ id: 'now', doors: 30, ageWeeks: 100, unitsPerDoor: 12 }];
    const deal = dealOf({ account: anAccount({ waves: [], runningDoors, slotting: once('900') }) });
    expect([deal.doors, deal.fixedAmount.toString(), deal.moneyDownPerDoor.toString()]).toEqual([
      30,
      '0',
      '0',
    ]);
    expect([deal.nothingDown, firstItem(deal).firstYearUnits.toString()]).toEqual([true, '9360']);
  });

  test('doors already running pay for no new ones: beside a wave they are left out of the deal', () => {
    const runningDoors = [{ id: 'now', doors: 30, ageWeeks: 100, unitsPerDoor: 12 }];
    const deal = dealOf({ account: anAccount({ runningDoors, slotting: once('900') }) });
    expect([deal.doors, firstItem(deal).firstYearUnits.toString()]).toEqual([10, '3120']);
  });
});

describe('promotions and deal weeks', () => {
  const promotions = [aPromotion({ dipShare: '0.2', dipWeeks: 2 })];

  test('2 weeks at a lift of half, a fifth of it borrowed: 2 x 30 more, 2 x 6 less; 20 % of 4.3334 on what is scanned', () => {
    const deal = dealOf({ account: anAccount({ promotions }) });
    expect(firstItem(deal).firstYearUnits.toString()).toBe('3168');
    // 0.8667 a unit on 2 x 90 units
    expect(deal.firstYearContribution.toString()).toBe('4912.794');
  });

  test('off-invoice takes the same amount a unit; half funded takes half of it', () => {
    const offInvoice = [aPromotion({ fundedBy: 'offInvoice', buyInWeeks: 2 })];
    const scanBack = [aPromotion()];
    const year = (each: Account['promotions']) =>
      dealOf({ account: anAccount({ promotions: each }) }).firstYearContribution;
    expect(year(offInvoice).toString()).toBe(year(scanBack).toString());
    // 3,180 x 1.60 less 180 x round4(4.3334 x 0.2 x 0.5)
    expect(year([aPromotion({ fundedShare: '0.5' })]).toString()).toBe('5010.006');
  });

  test('a scan-back allowance of 0.40 in weeks 4 to 7 is 4 weeks x 60 units x 0.40 off the year', () => {
    const scanBack = {
      kind: 'scanBack' as const,
      id: 'intro',
      amountPerUnit: '0.4',
      fromWeek: 4,
      weeks: 4,
      lagWeeks: 4,
    };
    const deal = dealOf({ account: anAccount({ allowances: [scanBack] }) });
    expect(firstItem(deal).contributionPerUnit.toString()).toBe('1.6');
    expect(deal.firstYearContribution.toString()).toBe('4896');
  });

  test('weeks before the first opening and after the first year do not count', () => {
    const early = aPromotion({ fromWeek: 2, weeks: 2 });
    const late = aPromotion({ id: 'late', fromWeek: 56, weeks: 2 });
    expect(
      dealOf({ account: anAccount({ promotions: [early, late] }) }).firstYearContribution.toString(),
    ).toBe('4992');
  });
});

describe('how it is sold', () => {
  test('bad debts of 2 % of the invoice are 0.052 a unit', () => {
    const account = anAccount({ terms: { ...anAccount().terms, badDebtRate: '0.02' } });
    expect(firstItem(dealOf({ account })).contributionPerUnit.toString()).toBe('1.548');
  });

  test('guaranteed sale, a fifth back, half of it fit to sell again: a quarter unit of 0.50 for each unit scanned', () => {
    const sale = {
      by: 'guaranteed' as const,
      expectedReturnRate: '0.2',
      reviewWeeks: 26,
      resaleableShare: '0.5',
    };
    expect(firstItem(dealOf({ account: anAccount({ sale }) })).riskPerUnit.toString()).toBe('0.125');
  });

  test('guaranteed sale with everything back sells nothing, and is still a number', () => {
    const sale = {
      by: 'guaranteed' as const,
      expectedReturnRate: '1',
      reviewWeeks: 26,
      resaleableShare: '0',
    };
    const deal = dealOf({ account: anAccount({ sale, slotting: once('10') }) });
    expect([deal.breakEvenRatio, deal.paybackWeeks]).toEqual([null, null]);
  });

  test('pay-on-scan with 4 % shrink: 0.04 / 0.96 of a unit’s landed cost', () => {
    const sale = { by: 'scan' as const, shrinkRate: '0.04' };
    expect(firstItem(dealOf({ account: anAccount({ sale }) })).riskPerUnit.toString()).toBe('0.0417');
  });
});

describe('deals that do not pay', () => {
  test('a unit that brings nothing, and one that costs: no break-even, no payback', () => {
    for (const price of ['1', '0.8']) {
      const deal = simpleDeal({
        price,
        cost: '1',
        rate: '6',
        termWeeks: 52,
        account: { slotting: once('100') },
      });
      expect(firstItem(deal).breakEvenUnitsPerStoreWeek).toBeNull();
      expect([deal.breakEvenRatio, deal.paybackWeeks, deal.nothingDown]).toEqual([null, null, false]);
    }
  });

  test('no doors at all: zeros and nothing else', () => {
    const deal = dealOf({ account: anAccount({ waves: [], slotting: once('100') }) });
    const { retailer } = firstItem(deal);
    expect([deal.doors, deal.fixedLines.length, deal.moneyDownPerDoor.toString()]).toEqual([0, 0, '0']);
    expect([deal.firstYearContribution.toString(), deal.fullyLoadedNetPerUnit]).toEqual(['0', null]);
    expect([deal.breakEvenRatio, deal.paybackWeeks, deal.nothingDown]).toEqual([null, null, false]);
    expect([retailer.gmroi, retailer.turnsPerYear, retailer.weeksOfSupply]).toEqual([null, null, null]);
    expect(deal.cumulated.every((level) => Object.is(level, 0))).toBe(true);
    expect(oddNumbers(deal)).toEqual([]);
  });
});

describe('two items', () => {
  test('one factor on both rates breaks even: the stronger item carries the weaker', () => {
    const listings = [
      aListing(),
      aListing({ itemId: 'jam', unitsPerStoreWeek: '2', list: { by: 'price', amount: '0.9' } }),
    ];
    const deal = dealOf({ account: anAccount({ listings, slotting: once('2444') }), plan: twoItems });
    // a year: 10 x 52 x (6 x 1.60 - 2 x 0.10) = 4,888
    expect(deal.firstYearContribution.toString()).toBe('4888');
    expect(deal.items.map((item) => item.breakEvenUnitsPerStoreWeek?.toString())).toEqual(['3', '1']);
    expect(deal.breakEvenRatio?.toString()).toBe('2');
  });
});

describe('the retailer’s side', () => {
  test('front margin on its invoice price; all-in adds deductions, fixed money and free goods at its cost', () => {
    const deal = dealOf({
      account: anAccount({
        hands: [aHand({ rule: { by: 'solved' } })],
        listings: [
          aListing({
            list: { by: 'price', amount: '2.5' },
            shelf: { by: 'price', amount: '4' },
            freeCasesPerDoor: 1,
            replaces: { unitsPerStoreWeek: '4', shelfBeforeTaxAmount: '3', buyingAmount: '2' },
          }),
        ],
        allowances: [
          { kind: 'offInvoice', id: 'standing', rate: '0.04', on: 'list', passedOn: false },
          { kind: 'spoils', id: 'spoils', rate: '0.01' },
          {
            kind: 'expectedReturns',
            id: 'back',
            rate: '0.03',
            resaleableShare: '0',
            freightBackPerUnit: '0',
            lagWeeks: 4,
          },
        ],
        slotting: { amount: '62.4', per: 'door', settled: 'atOpening' },
      }),
      stock: [15],
    });
    const { retailer } = firstItem(deal);
    // direct: it buys at the invoice price, 2.50 less 4 %
    expect([retailer.buying, retailer.pennyProfit, retailer.frontMarginRate].map(String)).toEqual([
      '2.4',
      '1.6',
      '0.4',
    ]);
    // 0.024 spoils + 624 / 3,120 slotting + 12 x 10 x 2.40 / 3,120 free; the returns it is credited for are no gain
    expect(retailer.pennyProfitAllIn.toString()).toBe('1.9163');
    expect(retailer.allInMarginRate.toNumber()).toBeCloseTo(1.9163 / 4, 4);
    // 6 x 1.60 against 4 x 1.00
    expect(retailer.againstReplacedPerStoreWeek?.toString()).toBe('5.6');
    // 312 units a year on 15: 20.8 turns, x 1.60 / 2.40
    expect([retailer.turnsPerYear, retailer.gmroi, retailer.weeksOfSupply].map(String)).toEqual([
      '20.8',
      '13.8667',
      '2.5',
    ]);
  });

  test('behind a distributor it buys at the distributor’s price, and a standing off-invoice is not its own', () => {
    const account = anAccount({
      hands: [aHand({ id: 'distributor', rule: { by: 'margin', rate: '0.2' } }), aHand()],
      allowances: [{ kind: 'offInvoice', id: 'standing', rate: '0.04', on: 'list', passedOn: false }],
    });
    expect(firstItem(dealOf({ account })).retailer.buying.toString()).toBe('3.25');
  });
});
