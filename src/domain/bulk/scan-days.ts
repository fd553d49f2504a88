// The day a week of scans begins with, as tables write it: by ISO 8601, or as spreadsheets do, day and month in either order.
// The order is the table's own: one date that can only be read one way says how all are read. Nothing is guessed.
// Worked example: "2025-W41" is the week of Monday 2025-10-06; "6.10.2025" is too beside "13.10.2025", and alone it is refused.
import { dayNumber, isoDateOf, isoWeekOf, weekdayOf } from '../calendar.ts';
import type { Cell } from './csv.ts';
import { refuse } from './numbers.ts';
import type { Task } from './types.ts';

/** What comes first in a date like 6/10/2025; 'unclear' where no date says so, 'mixed' where dates contradict each other. */
export interface DayOrder {
  first: 'day' | 'month' | 'unclear' | 'mixed';
  /** A date that says so, as written; '' where none does. */
  by: string;
}

const SPREADSHEET = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})$/;
const YEAR_FIRST = /^(\d{4})([./-])(\d{1,2})\2(\d{1,2})$/;

/** Both readings of a date with the year last, as numbers of days; null where it isn't written so. */
function readings(text: string): { day: number | null; month: number | null } | null {
  const found = SPREADSHEET.exec(text);
  if (!found) return null;
  const [, one = '', , other = '', year = ''] = found;
  return { day: dayOf(year, other, one), month: dayOf(year, one, other) };
}

/** Of all dates of a table. */
export function dayOrderOf(texts: readonly string[]): DayOrder {
  let order: DayOrder = { first: 'unclear', by: '' };
  for (const text of texts) {
    const found = readings(text.trim());
    if (found === null || (found.day === null) === (found.month === null)) continue;
    const first = found.day === null ? 'month' : 'day';
    if (order.first === 'unclear') order = { first, by: text.trim() };
    else if (order.first !== first) return { first: 'mixed', by: text.trim() };
  }
  return order;
}

/** The number of a week's first day: a date, or a week of the year by ISO 8601. Null where it is none, with a problem. */
export function readDay(task: Task, cell: Cell, { first }: DayOrder): number | null {
  const text = cell.text.trim();
  const week = /^(\d{4})-?\s?W(\d{1,2})$/i.exec(text);
  const dated = YEAR_FIRST.exec(text);
  const either = readings(text);
  const { day: dayFirst = null, month: monthFirst = null } = either ?? {};
  if (either !== null && dayFirst !== monthFirst && (dayFirst ?? monthFirst) !== null) {
    if (first === 'day') return dayFirst;
    if (first === 'month') return monthFirst;
    const both = [dayFirst, monthFirst].flatMap((day) => (day === null ? [] : [isoDateOf(day)]));
    const expected =
      first === 'mixed'
        ? 'day and month in one order in all of the table, or dates like 2025-10-06'
        : `a date that reads one way alone, like 2025-10-06: this could be ${both.join(' or ')}`;
    refuse(task, cell, 'week', expected);
    return null;
  }
  const day = week
    ? mondayOf(Number(week[1]), Number(week[2]))
    : dated
      ? dayOf(dated[1] ?? '', dated[3] ?? '', dated[4] ?? '')
      : dayFirst;
  if (day === null)
    refuse(task, cell, 'week', 'the first day of a week, like 2025-10-06, or its ISO week, like 2025-W41');
  return day;
}

function dayOf(year: string, month: string, day: string): number | null {
  if (Number(year) < 1990 || Number(year) > 2199) return null;
  try {
    return dayNumber(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`);
  } catch {
    return null; // a day that isn't in the calendar
  }
}

/** January 4 is always in the year's first week (ISO 8601). */
function mondayOf(year: number, week: number): number | null {
  if (year < 1990 || year > 2198 || week < 1) return null;
  const fourth = dayNumber(`${year}-01-04`);
  const monday = fourth - weekdayOf(fourth) + 1 + 7 * (week - 1);
  return isoWeekOf(monday) === week ? monday : null;
}
