/**
 * Public holidays in the table against what governments publish, and against the library it was made with.
 * Worked figure: 4 July 2026 is a Saturday; offices of the United States keep Friday 3 July.
 */
import { expect, test } from 'vitest';
import { isoDateOf, weekdayOf } from '../../src/domain/calendar.ts';
import { HOLIDAY_PLACES } from '../../src/domain/plan/readiness.ts';
import { HOLIDAY_DAYS } from '../../src/domain/readiness/holiday-days.ts';
import { closedDaysOf, KNOWN_YEARS } from '../../src/domain/readiness/holidays.ts';
import { libraryDays } from '../support/write-holidays.ts';

type Place = (typeof HOLIDAY_PLACES)[number];

/** Those that fall on Monday to Friday, as MM-DD. */
function onWorkDays(holidays: Place, year: number): string[] {
  return closedDaysOf({ holidays })(year)
    .filter((day) => weekdayOf(day) <= 5)
    .map((day) => isoDateOf(day).slice(5));
}

test.each<[Place, number, string, string]>([
  [
    'US',
    2026,
    'Office of Personnel Management, federal holidays 2026 (from memory)',
    '01-01 01-19 02-16 05-25 06-19 07-03 09-07 10-12 11-11 11-26 12-25',
  ],
  [
    'GB-ENG',
    2026,
    'gov.uk, bank holidays, England and Wales 2026 (from memory)',
    '01-01 04-03 04-06 05-04 05-25 08-31 12-25 12-28',
  ],
  [
    'DE',
    2026,
    'Germany, holidays that all states have, 2026 (from memory)',
    '01-01 04-03 04-06 05-01 05-14 05-25 12-25',
  ],
])('%s in %i: %s', (place, year, _, days) => {
  expect(onWorkDays(place, year).join(' ')).toBe(days);
});

test('the table is the library date-holidays, place by place (first, a middle and the last year)', () => {
  for (const place of HOLIDAY_PLACES) {
    const words = HOLIDAY_DAYS[place].split(' ');
    expect(words.length, place).toBe(KNOWN_YEARS.until - KNOWN_YEARS.from + 1);
    for (const year of [KNOWN_YEARS.from, 2031, KNOWN_YEARS.until]) {
      expect(words[year - KNOWN_YEARS.from], `${place} ${year}`).toBe(libraryDays(place, year).join(''));
    }
  }
});

test('no holidays are counted where none are asked for, or known', () => {
  expect(closedDaysOf({ holidays: null })(2026)).toEqual([]);
  expect(closedDaysOf({ holidays: 'US' })(KNOWN_YEARS.until + 1)).toEqual([]);
});
