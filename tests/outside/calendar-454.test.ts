/**
 * The retail calendar against the National Retail Federation's published 4-5-4 calendars: which years have 53 weeks,
 * where years start. The months' first days of 2024 are from memory of the same calendar.
 */
import { describe, expect, test } from 'vitest';
import { dayNumber, isoDateOf, weekdayOf } from '../../src/domain/calendar.ts';
import {
  monthOfPeriod,
  PERIODS_IN_YEAR,
  periodStart,
  retailWeekOf,
  retailYearStart,
  weeksInPeriod,
  weeksInRetailYear,
} from '../../src/domain/calendar-454.ts';

test.each([
  [2024, '2024-02-04'],
  [2025, '2025-02-02'],
  [2026, '2026-02-01'],
])('NRF 4-5-4 calendar: fiscal year %i starts on %s', (year, date) => {
  expect(isoDateOf(retailYearStart(year))).toBe(date);
});

test('NRF 4-5-4 calendar: of 2000 to 2023, the years 2000, 2006, 2012, 2017 and 2023 have 53 weeks', () => {
  const years = Array.from({ length: 24 }, (_, at) => 2000 + at);
  expect(years.filter((year) => weeksInRetailYear(year) === 53)).toEqual([2000, 2006, 2012, 2017, 2023]);
  expect(years.every((year) => [52, 53].includes(weeksInRetailYear(year)))).toBe(true);
});

test('NRF 4-5-4 calendar, 2024 (from memory): the first days of its periods', () => {
  const starts = Array.from({ length: 12 }, (_, at) => isoDateOf(periodStart(2024, at + 1)));
  expect(starts).toEqual([
    '2024-02-04',
    '2024-03-03',
    '2024-04-07',
    '2024-05-05',
    '2024-06-02',
    '2024-07-07',
    '2024-08-04',
    '2024-09-01',
    '2024-10-06',
    '2024-11-03',
    '2024-12-01',
    '2025-01-05',
  ]);
});

describe('the rule itself, for every year from 1990 to 2099', () => {
  const years = Array.from({ length: 110 }, (_, at) => 1990 + at);

  test('a year ends on a Saturday at most three days from 31 January', () => {
    for (const year of years) {
      const last = retailYearStart(year + 1) - 1;
      expect(weekdayOf(last)).toBe(6);
      expect(Math.abs(last - dayNumber(`${year + 1}-01-31`))).toBeLessThanOrEqual(3);
    }
  });

  test('every day lies in the period that starts at or before it and ends after it', () => {
    for (const year of years) {
      for (let day = retailYearStart(year); day < retailYearStart(year + 1); day += 5) {
        const found = retailWeekOf(day);
        const start = periodStart(found.year, found.period);
        expect(found.year).toBe(year);
        expect(Math.floor((day - start) / 7) + 1).toBe(found.weekOfPeriod);
        expect(found.weekOfPeriod).toBeLessThanOrEqual(weeksInPeriod(found.year, found.period));
        expect(Math.floor((day - retailYearStart(year)) / 7) + 1).toBe(found.weekOfYear);
      }
    }
  });

  test('the fifth week of the last period is the only one that 52 weeks lack', () => {
    for (const year of years) {
      const weeks = Array.from({ length: PERIODS_IN_YEAR }, (_, at) => weeksInPeriod(year, at + 1));
      expect(weeks.slice(0, -1)).toEqual([4, 5, 4, 4, 5, 4, 4, 5, 4, 4, 5]);
      expect(weeks.at(-1)).toBe(weeksInRetailYear(year) - 48);
    }
  });
});

test('periods are called by months, February first', () => {
  expect(Array.from({ length: 12 }, (_, at) => monthOfPeriod(at + 1))).toEqual([
    2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 1,
  ]);
});

test('a thirteenth period is a bug', () => {
  expect(() => weeksInPeriod(2026, 13)).toThrow('periods 1 to 12');
});
