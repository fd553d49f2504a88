/**
 * What stands on the roll-out's time axis, by hand: openings from the first door to the last, orders and where they land,
 * weeks as months, ISO weeks and 4-5-4 periods; and where doors and units of a week come from.
 * ISO 8601 gives week 10 of 2026 for 2 March 2026; the retail calendar's year 2026 starts on 1 February 2026
 * (tests/outside/calendar-454.test.ts has the published years).
 */
import { describe, expect, test } from 'vitest';
import { dayNumber } from '../../src/domain/calendar.ts';
import type { Results } from '../../src/domain/results.ts';
import { ordersOf } from '../../src/screens/roll-out/axis-products.ts';
import { axisTime } from '../../src/screens/roll-out/axis-weeks.ts';
import { lineHours } from '../../src/screens/roll-out/line-hours.ts';
import type { ScreenSay } from '../../src/screens/shared/screen-say.ts';
import { anAccount, anItem, aPlan, aWave } from '../support/builders.ts';
import { explained, subjectOf } from '../support/explained.ts';

describe('orders and where they land', () => {
  /** Units by week, zero where not named. */
  const series = (values: Record<number, number>): Float64Array =>
    Float64Array.from({ length: 20 }, (_, week) => values[week] ?? 0);
  const linksOf = (
    ordered: Record<number, number>,
    made: Record<number, number>,
    onOrder: { week: number; units: number }[] = [],
  ) => {
    const item = anItem({
      opening: {
        units: 0,
        stockAmount: '0',
        onOrder: onOrder.map(({ week, units }, index) => ({
          id: String(index),
          landsWeek: week,
          units,
          depositPaidAmount: '0',
        })),
      },
    });
    const results = {
      pass: { weeks: 20, units: [{ ordered: series(ordered), made: series(made) }] },
    } as unknown as Results;
    return ordersOf({ plan: aPlan({ items: [item] }), results, index: 0, say: {} as ScreenSay });
  };

  test('an order cut in two by a lid lands in both weeks, the next one after it', () => {
    expect(linksOf({ 2: 9000, 5: 1000 }, { 8: 6000, 9: 3000, 11: 1000 })).toEqual([
      { from: 2, first: 8, last: 9, size: 9000 },
      { from: 5, first: 11, last: 11, size: 1000 },
    ]);
  });

  test('what was on order before is none of them, and what lands after the plan points past its end', () => {
    expect(linksOf({ 0: 500, 18: 700 }, { 1: 300, 4: 500 }, [{ week: 1, units: 300 }])).toEqual([
      { from: 0, first: 4, last: 4, size: 500 },
      { from: 18, first: 20, last: 20, size: 700 },
    ]);
  });
});

test('hours of a line: what landed by units an hour, under its shifts, more from a step on', () => {
  // 2 shifts of 40 hours, 3 from week 5; 500 good units an hour: 6,000 are 12 hours; 60,000 would be 120, of 80.
  const base = aPlan();
  const line = {
    id: 'filling',
    name: 'Filling line',
    hoursPerShift: 40,
    shifts: 2,
    steps: [{ id: 'third', fromWeek: 5, shifts: 3, capitalAmount: '0', leadWeeks: 0, lifeWeeks: 52 }],
  };
  const supply = {
    ...anItem().supply,
    line: { lineId: 'filling', unitsPerHour: 500, yieldRate: '1', hoursShare: null },
  };
  const plan = aPlan({ items: [anItem({ supply })], business: { ...base.business, lines: [line] } });
  const { results } = subjectOf(plan);
  const made = Float64Array.from({ length: results.pass.weeks }, (_, week) =>
    week === 1 ? 6000 : week === 2 ? 60_000 : 0,
  );
  const pass = { ...results.pass, units: results.pass.units.map((units) => ({ ...units, made })) };
  const [hours] = lineHours(plan, { compiled: results.compiled, pass });
  expect(hours?.used.slice(0, 4)).toEqual([0, 12, 80, 0]);
  expect(hours?.lid.slice(3, 7)).toEqual([80, 80, 120, 120]);
});

describe('weeks on the axis', () => {
  const startDay = dayNumber('2026-03-02');
  const marksOf = (count: 'plan' | 'iso' | 'retail', weeks: number) =>
    axisTime({ startDay, weeks, count }).scales.map(({ marks }) => marks.map(({ text }) => text));

  test('a week stands in the month of its first day; the year is written where it begins', () => {
    const [months, weeks] = marksOf('plan', 46);
    // Mondays: 2 to 30 March are weeks 0 to 4, 6 April is week 5; 4 January 2027 is week 44.
    expect(months?.slice(0, 3)).toEqual(['Mar 2026', 'Apr', 'May']);
    expect(months?.at(-1)).toBe('Jan 2027');
    expect(axisTime({ startDay, weeks: 46, count: 'plan' }).lines.slice(0, 3)).toEqual([0, 5, 9]);
    expect(weeks?.slice(0, 3)).toEqual(['0', '1', '2']);
  });

  test('ISO weeks and retail periods are counted from their own years', () => {
    expect(marksOf('iso', 3)[1]).toEqual(['10', '11', '12']);
    // 2026: period 1 from 1 February has four weeks, period 2 from 1 March five, period 3 begins on 5 April.
    expect(marksOf('retail', 6)[1]).toEqual(['P2', '2', '3', '4', '5', 'P3']);
  });
});

describe('where a week’s doors and units come from', () => {
  test('doors opened so far: 60 at 10 a week from week 6 are 30 at the end of week 8', () => {
    const account = anAccount({ waves: [aWave({ openWeek: 6, doors: 60, doorsPerWeek: 10 })] });
    const subject = subjectOf(aPlan({ accounts: [account] }));
    const found = explained(subject, { of: 'accountWeek', accountId: 'corner', figure: 'doors', week: 8 });
    expect(found.value).toBe('30');
    expect(found.lines.map(({ label, value, path }) => [label, value, path])).toEqual([
      ['Opening 1, so far', '30', 'accounts/corner/waves/first/doors'],
    ]);
    const all = explained(subject, { of: 'planDoors', week: 20 });
    expect([all.value, all.lines[0]?.explains]).toEqual([
      '60',
      { of: 'accountWeek', accountId: 'corner', figure: 'doors', week: 20 },
    ]);
  });

  test('stock with us: 500 on the first day, 20 given as samples in week 2, nothing shipped', () => {
    const item = anItem({
      opening: { units: 500, stockAmount: '500', onOrder: [] },
      removals: [{ id: 'fair', week: 2, units: 20, reason: 'samples' }],
    });
    const subject = subjectOf(aPlan({ items: [item], accounts: [anAccount({ waves: [] })] }));
    const found = explained(subject, { of: 'itemUnits', itemId: 'tea', unit: 'ours', week: 2 });
    expect(found.formula).toBe('500 − 20 = 480');
    expect(found.lines.map(({ label, adds }) => [label, adds])).toEqual([
      ['Units with us, week 1 (2026-03-09)', '500'],
      ['Came back, taken out, or written off', '-20'],
    ]);
  });
});
