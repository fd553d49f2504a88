/**
 * The weekly pass against published figures: each test builds a plan whose pass has to reproduce them. The source stands
 * in the title. Gross requirements are made of opening fills: doors x units a door, shipped in the week they open.
 */
import { describe, expect, test } from 'vitest';
import type { Account, Item, Plan } from '../../src/domain/plan/index.ts';
import type { PassResult } from '../../src/domain/rollout/types.ts';
import { aBusiness, aListing, anAccount, anItem, aPlan, aWave } from '../support/builders.ts';
import { kernelOf, pricedPlan } from '../support/oracle/compare.ts';

const rollOut = (plan: Plan) => kernelOf(pricedPlan(plan));
const weeksOf = (series: Float64Array | undefined) =>
  Object.fromEntries(
    Array.from(series ?? [], (value, week) => [week, value]).filter(([, value]) => value !== 0),
  );

/** A chain without transit whose shoppers buy next to nothing, so that fills are all that ships. */
function chainOpening(waves: { week: number; doors: number }[], unitsPerDoor: number): Account {
  return anAccount({
    listings: [
      aListing({ unitsPerStoreWeek: '0.000001', facings: 1, depthUnits: unitsPerDoor, coverWeeks: 0 }),
    ],
    waves: waves.map(({ week, doors }) =>
      aWave({ id: `w${week}`, openWeek: week, doors, doorsPerWeek: doors }),
    ),
    terms: { ...anAccount().terms, transitWeeks: 0 },
  });
}

function itemMade(changes: { leadWeeks: number; caseUnits: number; opening: Item['opening'] }): Item {
  const { leadWeeks, caseUnits, opening } = changes;
  return anItem({ caseUnits, opening, supply: { ...anItem().supply, leadWeeks, coverWeeks: 0 } });
}

describe('what is made for what is wanted', () => {
  test(
    'Nahmias, Production and Operations Analysis, the valve casing example: on hand 186, receipt of 96 in week 5, ' +
      'gross 126, 126, 96 in weeks 4 to 6, lead time 3: net 0, 0, 66; 66 released in week 3',
    () => {
      const gross = [
        { week: 4, doors: 21 },
        { week: 5, doors: 21 },
        { week: 6, doors: 16 },
      ];
      const onOrder = [{ id: 'scheduled', landsWeek: 5, units: 96, depositPaidAmount: '0' }];
      const item = itemMade({
        leadWeeks: 3,
        caseUnits: 6,
        opening: { units: 186, stockAmount: '186', onOrder },
      });
      const { pass } = rollOut(aPlan({ accounts: [chainOpening(gross, 6)], items: [item] }));
      const [units] = pass.units;
      expect(weeksOf(units?.shipped)).toEqual({ 4: 126, 5: 126, 6: 96 });
      expect(weeksOf(units?.ordered)).toEqual({ 3: 66 });
      expect(weeksOf(units?.made)).toEqual({ 5: 96, 6: 66 });
    },
  );

  test('operations management course, lot for lot: lead time 2, gross 20 in week 5 and 80 in week 6: released in weeks 3 and 4', () => {
    const gross = [
      { week: 5, doors: 10 },
      { week: 6, doors: 40 },
    ];
    const item = itemMade({
      leadWeeks: 2,
      caseUnits: 2,
      opening: { units: 0, stockAmount: '0', onOrder: [] },
    });
    const { pass } = rollOut(aPlan({ accounts: [chainOpening(gross, 2)], items: [item] }));
    expect(weeksOf(pass.units[0]?.ordered)).toEqual({ 3: 20, 4: 80 });
    expect(weeksOf(pass.units[0]?.shipped)).toEqual({ 5: 20, 6: 80 });
  });
});

describe('cash', () => {
  test('AccountingTools, expected cash collections: 100,000 billed in January, 40 / 50 / 10 % over three months: 40,000; 50,000; 10,000', () => {
    // Three customers billed in the first week of January 2026 at 10.00 a unit, paying at once, in 30 and in 60 days.
    const customers = [
      { share: 40, paymentDays: 0 },
      { share: 50, paymentDays: 30 },
      { share: 10, paymentDays: 60 },
    ].map(({ share, paymentDays }) => {
      const account = chainOpening([{ week: 0, doors: share }], 100);
      const listings = account.listings.map((each) => ({
        ...each,
        list: { by: 'price' as const, amount: '10' },
      }));
      return { ...account, id: `customer-${share}`, listings, terms: { ...account.terms, paymentDays } };
    });
    const item = itemMade({
      leadWeeks: 0,
      caseUnits: 100,
      opening: { units: 0, stockAmount: '0', onOrder: [] },
    });
    const plan = aPlan({ accounts: customers, items: [item], startDate: '2026-01-05', horizonWeeks: 13 });
    const { pass } = rollOut(plan);
    expect(weeksOf(pass.accounts[0]?.invoiced)).toEqual({ 0: 4_000_000 });
    expect(byMonth(pass, plan.startDate)).toEqual({
      '2026-01': 4_000_000,
      '2026-02': 5_000_000,
      '2026-03': 1_000_000,
    });
  });

  test(
    'finance exercise, cash conversion cycle: stock 17,000; cost of goods 455,000; receivables 33,000; sales 580,000; ' +
      'payables 28,000: 13.64 + 20.77 - 22.46 = 11.95 days',
    () => {
      // A year's sales and cost by the week, paid and collected at once; what is owed from before stands until the last of
      // the 13 weeks, so it is 13/12 of the mean.
      const weekly = (580_000 * 7) / 365;
      const dated = (id: string, amount: number) => ({ id, label: id, week: 12, amount: amount.toFixed(2) });
      const business = aBusiness({
        openingBooks: {
          ...aBusiness().openingBooks,
          receivables: [dated('owed-to-us', (33_000 * 13) / 12)],
          payables: [dated('owed-by-us', (28_000 * 13) / 12)],
        },
        baseSales: {
          revenueAmountPerWeek: weekly.toFixed(2),
          costRate: (455_000 / 580_000).toFixed(6),
          collectDays: 0,
          payDays: 0,
        },
      });
      const stock = anItem({ opening: { units: 1000, stockAmount: '17000', onOrder: [] } });
      const { reading } = rollOut(aPlan({ accounts: [], business, items: [stock], horizonWeeks: 13 }));
      const days = [reading.daysInventory, reading.daysReceivable, reading.daysPayable].map((each) =>
        each?.toFixed(2),
      );
      expect(days).toEqual(['13.64', '20.77', '22.46']);
      // The exercise adds its rounded parts; ours are added first: 11.943.
      expect(Number(days[0]) + Number(days[1]) - Number(days[2])).toBeCloseTo(11.95, 9);
      expect(Math.abs((reading.cashCycleDays ?? 0) - 11.95)).toBeLessThan(0.01);
    },
  );
});

describe('seasons by ISO week', () => {
  /** Ten doors that want 10 a week each, twice as many in ISO week 52. */
  function demandFrom(startDate: string): number[] {
    const seasonFactors = Array.from({ length: 52 }, (_, at) => (at === 51 ? '2' : '1'));
    const account = anAccount({
      listings: [aListing({ unitsPerStoreWeek: '10' })],
      waves: [],
      runningDoors: [{ id: 'old', doors: 10, ageWeeks: 0, unitsPerDoor: 500 }],
    });
    const { pass } = rollOut(
      aPlan({ accounts: [account], items: [anItem({ seasonFactors })], startDate, horizonWeeks: 4 }),
    );
    return [...(pass.units[0]?.demand ?? [])];
  }

  test('ISO 8601: 2022-12-31 is 2022-W52-6, the week after it is week 1', () => {
    expect(demandFrom('2022-12-31')).toEqual([200, 100, 100, 100]);
  });

  test('ISO 8601 (from memory): 2009 and 2020 have a week 53, which takes the factor of week 52', () => {
    expect(demandFrom('2020-12-24')).toEqual([200, 200, 100, 100]);
    expect(demandFrom('2009-12-28')).toEqual([200, 100, 100, 100]);
  });
});

function byMonth(pass: PassResult, startDate: string): Record<string, number> {
  const months: Record<string, number> = {};
  pass.flows.remittances.forEach((flow, week) => {
    if (flow === 0) return;
    const month = new Date(Date.parse(startDate) + week * 7 * 86_400_000).toISOString().slice(0, 7);
    months[month] = (months[month] ?? 0) + flow;
  });
  return months;
}
