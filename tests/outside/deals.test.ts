/**
 * Break-even, payback and leverage of a deal against published exercises. The exercises have one price, one variable
 * cost and fixed money; here that is one door, a list price, a landed cost and slotting, over a term short enough for
 * their quantities: units in all = rate of sale x weeks of the term.
 */
import { expect, test } from 'vitest';
import { firstItem, once, simpleDeal } from '../support/deals.ts';

test.each([
  {
    source: "HP 10bII+ Financial Calculator User's Guide, p. 110, table 11-2: units for a profit of 10,000",
    price: '300',
    cost: '250',
    fixed: '150000',
    profit: '10000',
    termWeeks: 10,
    units: 3200,
  },
  {
    source: 'Alberta Agriculture, Agdex 845-3, Pricing Processed Food Products: break-even units',
    price: '2.25',
    cost: '1.50',
    fixed: '1200',
    profit: '0',
    termWeeks: 16,
    units: 1600,
  },
  {
    source: 'managerial-accounting exercise: break-even of 200 a unit, 120 variable, 720,000 fixed',
    price: '200',
    cost: '120',
    fixed: '720000',
    profit: '0',
    termWeeks: 10,
    units: 9000,
  },
])('$source', ({ price, cost, fixed, profit, termWeeks, units }) => {
  const deal = simpleDeal({
    price,
    cost,
    rate: '50',
    termWeeks,
    account: { slotting: once(fixed), deal: { termWeeks, hurdleAmount: profit } },
  });
  const rate = firstItem(deal).breakEvenUnitsPerStoreWeek;
  expect(rate?.times(termWeeks).toString()).toBe(String(units));
  // planned over break-even, rounded down to the sixth decimal
  expect(deal.breakEvenRatio?.toNumber()).toBe(Math.floor(((50 * termWeeks) / units) * 1e6) / 1e6);
});

test('Garrison, Noreen & Brewer, Managerial Accounting: degree of operating leverage 1.26; sales +12 % bring 75,064', () => {
  // Sales of 137,000 at 40 % variable, fixed 17,000: 50 doors, a unit at 1.00 costing 0.40, 52 weeks.
  const year = (sales: number) =>
    simpleDeal({
      price: '1',
      cost: '0.4',
      rate: (sales / 50 / 52).toFixed(6),
      termWeeks: 52,
      account: {
        slotting: once('17000'),
        waves: [{ id: 'first', openWeek: 4, doors: 50, doorsPerWeek: 50 }],
      },
    });
  const before = year(137_000);
  const leverage = before.firstYearContribution.div(before.firstYearAfterFixed).toNumber();
  expect(leverage).toBeCloseTo(1.26, 2);
  expect(year(137_000 * 1.12).firstYearAfterFixed.toNumber()).toBeCloseTo(75_064, 1);
  const rise = year(137_000 * 1.12)
    .firstYearAfterFixed.div(before.firstYearAfterFixed)
    .minus(1)
    .toNumber();
  expect(rise).toBeCloseTo(0.12 * leverage, 6);
});

test('Brigham & Ehrhardt: 52,125 down and 12,000 a period for 8 periods are back after 4.3438 periods', () => {
  const deal = simpleDeal({
    price: '13',
    cost: '1',
    rate: '1000',
    termWeeks: 8,
    account: { slotting: once('52125') },
  });
  expect(deal.paybackWeeks?.toString()).toBe('4.3438');
});

test('a payback longer than the term is none: the same exercise over 4 periods', () => {
  const deal = simpleDeal({
    price: '13',
    cost: '1',
    rate: '1000',
    termWeeks: 4,
    account: { slotting: once('52125') },
  });
  expect(deal.paybackWeeks).toBeNull();
  expect(deal.cumulated.at(-1)).toBe(-412_500);
});
