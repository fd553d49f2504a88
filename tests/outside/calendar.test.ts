/**
 * The calendar of src/domain/calendar.ts against published ISO 8601 examples, and day by day against the
 * JavaScript engine's own Date in UTC, which shares no code with it.
 */
import { expect, test } from 'vitest';
import {
  addDays,
  dayNumber,
  isoDateOf,
  isoWeekOf,
  monthIndexOf,
  quarterEndDay,
  quarterIndexOf,
  weekdayOf,
  weekStart,
} from '../../src/domain/calendar.ts';

test.each([
  ['2022-12-31', 52, 6], // ISO 8601 example: 2022-W52-6
  ['1977-01-01', 53, 6], // the next four from ISO 8601's list of years that begin or end in another: from memory
  ['1977-01-03', 1, 1],
  ['1981-12-31', 53, 4],
  ['2008-12-29', 1, 1],
  ['2010-01-03', 53, 7],
])('ISO 8601: %s lies in week %i, weekday %i', (date, week, weekday) => {
  expect(isoWeekOf(dayNumber(date))).toBe(week);
  expect(weekdayOf(dayNumber(date))).toBe(weekday);
});

test('POSIX.1-2017, seconds since the epoch: 1970-01-01 is day 0; 2001-09-09 (second 1,000,000,000) is day 11574', () => {
  expect(dayNumber('1970-01-01')).toBe(0);
  expect(dayNumber('2001-09-09')).toBe(Math.floor(1_000_000_000 / 86_400));
});

test('every day from 1990 to 2199 agrees with Date in UTC: date, weekday, month, quarter and its end', () => {
  const last = dayNumber('2199-12-31');
  for (let day = dayNumber('1990-01-01'); day <= last; day += 1) {
    const date = new Date(day * 86_400_000);
    const text = date.toISOString().slice(0, 10);
    const month = date.getUTCFullYear() * 12 + date.getUTCMonth();
    const quarter = Math.floor(month / 3);
    const quarterEnd =
      Date.UTC(date.getUTCFullYear(), Math.floor(date.getUTCMonth() / 3) * 3 + 3, 0) / 86_400_000;
    const seen = [isoDateOf(day), dayNumber(text), weekdayOf(day), monthIndexOf(day), quarterIndexOf(day)];
    const due = [text, day, date.getUTCDay() || 7, month, quarter];
    if (seen.join() !== due.join() || quarterEndDay(quarter) !== quarterEnd) {
      expect([...seen, quarterEndDay(quarter)]).toEqual([...due, quarterEnd]);
    }
  }
});

test('weeks of a plan begin seven days apart, over a leap day and a year end', () => {
  expect(isoDateOf(weekStart('2024-02-26', 1))).toBe('2024-03-04');
  expect(addDays('2023-12-28', 7)).toBe('2024-01-04');
  expect(addDays('2024-03-01', -1)).toBe('2024-02-29');
});

test('a date that does not exist is a bug', () => {
  expect(() => dayNumber('2023-02-29')).toThrow('not a date that exists');
  expect(() => dayNumber('2023-2-9')).toThrow('not a date written');
});
