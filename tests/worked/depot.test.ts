/**
 * A depot by hand. Ten doors open in week 6 at 6 a week, filled with 12 each; a week from the depot to the shelf, a week from
 * us to the depot, weekly orders, a week of depot cover, two weeks of sale laid in at each opening. Our stock is plenty.
 * - The stores' fill of 120 is asked of the depot at the end of week 4. Ordered from us a week before: 120 + 10 x 6 x 2 = 240
 *   at the end of week 3, shipped in 4, there in 5; 120 go on to the stores, 120 stay.
 * - End of week 6, 60 on the shelves: up to 60 x 3 = 180, 120 short, (120 − 9 x 11 / 2) / 12 = 5 cases, 60 asked of the depot.
 *   It needs 60 x (1 + 1 + 1) = 180 and has 120 − 60: it orders 120. Week 7: 60 leave it.
 * - End of week 7, none on the shelves and 60 on their way: 60 again. It has 60 + 120 on its way − 60: it orders 60.
 * - Week 8: 120 arrive, 60 leave it: 120 in it. And so on with 60 a week.
 */
import { describe, expect, test } from 'vitest';
import type { Account, Item } from '../../src/domain/plan/index.ts';
import { replay } from '../../src/domain/rollout/index.ts';
import { aListing, anAccount, anItem, aPlan, aWave } from '../support/builders.ts';
import { kernelOf, pricedPlan } from '../support/oracle/compare.ts';

type Depot = NonNullable<Account['depot']>;

const depot: Depot = {
  keptBy: 'distributor',
  transitWeeks: 1,
  openingWeeks: 0,
  fillWeeks: 2,
  coverWeeks: 1,
  minimumOrderUnits: 0,
  orderIn: 'case',
};
const stocked = (units: number): Item =>
  anItem({
    supply: { ...anItem().supply, leadWeeks: 40, coverWeeks: 0 },
    opening: { units, stockAmount: String(units), onOrder: [] },
  });

function runOf(account: Partial<Account> = {}, units = 10_000) {
  const plan = aPlan({
    accounts: [anAccount({ depot, waves: [aWave({ openWeek: 6 })], ...account })],
    items: [stocked(units)],
  });
  const run = kernelOf(pricedPlan(plan));
  const invoiced: Record<number, number> = {};
  const claimed: Record<number, number> = {};
  replay(run, ({ event, week, amount }) => {
    if (event === 'invoiced') invoiced[week] = (invoiced[week] ?? 0) + amount;
    if (event === 'claimAccrued' || event === 'returnCredited') claimed[week] = (claimed[week] ?? 0) + amount;
  });
  const tea = run.pass.units[0];
  if (!tea) throw new Error('no tea');
  return { ...run, tea, invoiced, claimed };
}

const weeks = (series: Float64Array, from: number, count: number) =>
  Array.from(series.slice(from, from + count));

describe('a depot', () => {
  test('orders a week ahead of the fill, then what its stores will ask for', () => {
    const { tea, free } = runOf();
    expect(weeks(tea.shipped, 3, 7)).toEqual([0, 240, 0, 0, 120, 60, 60]);
    expect(weeks(tea.atDepot, 4, 5)).toEqual([0, 120, 120, 60, 120]);
    expect(weeks(tea.received, 5, 4)).toEqual([0, 120, 0, 60]);
    expect(tea.fillShipped.every((units) => units === 0)).toBe(true);
    // Nothing ran short, so the run without limits ships the same.
    expect(weeks(free.shippable[0] as Float64Array, 0, 40)).toEqual(weeks(tea.shipped, 0, 40));
  });

  test('is invoiced when goods leave us; the free part of the fills it orders for leaves first', () => {
    const { invoiced, tea } = runOf({ listings: [aListing({ freeCasesPerDoor: 1 })] });
    expect(tea.shipped[4]).toBe(240);
    expect(invoiced[4]).toBe(120 * 260); // one free case of 12 for each of ten doors
    expect(invoiced[7]).toBe(120 * 260);
  });

  test('takes at least its minimum, in its own multiple', () => {
    const { tea } = runOf({ depot: { ...depot, minimumOrderUnits: 250, orderIn: 'pallet' } });
    expect(tea.shipped[4]).toBe(600); // a pallet of 50 cases of 12
  });

  // 150 units: 144 leave for it, 96 wait; 120 of them are the fill, 24 stay. Of the 60 asked for after week 6 two cases leave.
  test('passes on what it has; the rest waits with it', () => {
    const { tea } = runOf({}, 150);
    expect(tea.shipped[4]).toBe(144);
    expect(tea.backlog[4]).toBe(96);
    expect(weeks(tea.received, 6, 3)).toEqual([120, 0, 24]);
    expect(tea.atDepot[7]).toBe(0);
  });

  // Every second week from week 0: the fill is asked for in week 4, ordered in week 2 (the next order, in 4, comes too late).
  test('ordering every second week, it orders early enough', () => {
    const ordering: Account['ordering'] = { everyWeeks: 2, firstWeek: 0, daily: false, orderIn: 'case' };
    const { tea } = runOf({ ordering });
    expect(weeks(tea.shipped, 2, 4)).toEqual([0, 240, 0, 0]);
    expect(tea.received[6]).toBe(120);
  });

  // Four weeks' sale at 6 of two running groups: 7 x 6 x 4 + 5 x 6 x 4 = 288 lie there on the first day, 144 on shelves.
  test('holds some weeks of the running doors’ sale on the first day', () => {
    const runningDoors = [7, 5].map((doors, at) => ({
      id: `old${at}`,
      doors,
      ageWeeks: 30,
      unitsPerDoor: 12,
    }));
    const { pass, tea } = runOf({ waves: [], runningDoors, depot: { ...depot, openingWeeks: 4 } });
    expect(pass.openingUnits).toEqual([10_000 + 288 + 144]);
    expect((tea.atDepot[0] ?? 0) + (tea.inStores[0] ?? 0) + (tea.sold[0] ?? 0)).toBe(288 + 144);
  });
});

describe('the end of a depot', () => {
  const ends = { cutWeek: 20 };

  test('what lies there with the last door stays there, is credited, or comes back', () => {
    const before = runOf(ends);
    const left = (before.tea.atDepot[19] ?? 0) + (before.tea.inStores[19] ?? 0);
    expect(before.tea.atDepot[19]).toBeGreaterThan(0);
    expect(before.tea.gone[20]).toBe(left);
    expect(before.claimed[20]).toBeUndefined();
    const credited = runOf({ ...ends, closedStock: 'credited' });
    expect(credited.claimed[20]).toBe(left * 260);
    const ours = runOf({ ...ends, closedStock: 'ours' });
    expect(ours.tea.returned[20]).toBe(left);
    expect((ours.tea.ours[20] ?? 0) - (ours.tea.ours[19] ?? 0)).toBe(left);
    const marked = runOf({ ...ends, exitMarkdownRate: '0.5' });
    expect(marked.claimed[20]).toBe(left * 130);
  });

  test('it orders nothing that would reach no open door', () => {
    const { tea } = runOf(ends);
    // Ordered at the end of week w it is on a shelf in w + 3: the last order is of week 16, the last shipment of week 17.
    expect(tea.shipped[17]).toBeGreaterThan(0);
    expect(weeks(tea.shipped, 18, 10)).toEqual(new Array(10).fill(0));
    expect(tea.inTransit[20]).toBe(0);
  });

  test('by scan all of it is ours until it is sold; what stays there at the end is written off', () => {
    const { pass, tea } = runOf({ ...ends, sale: { by: 'scan', shrinkRate: '0' } });
    expect(pass.accounts[0]?.invoiced[4]).toBe(0);
    expect(pass.balances.stock[5]).toBe(10_000 * 100);
    expect(pass.accounts[0]?.invoiced[6]).toBe(60 * 260);
    const left = (tea.atDepot[19] ?? 0) + (tea.inStores[19] ?? 0);
    expect(pass.profit.other[20]).toBe(-left * 100);
  });
});
