// The columns of scans, and what only their cells hold: the day a week begins with, what it was on, yes or no.
// Worked example: "2025-W41" is the week of Monday 2025-10-06; "6.10.2025" could be June or October, and is refused.
import { dayNumber, isoWeekOf, weekdayOf } from '../calendar.ts';
import type { Cell } from './csv.ts';
import { refuse } from './numbers.ts';
import type { Column, Task } from './types.ts';

export const SCAN_COLUMNS: readonly Column[] = [
  {
    key: 'store',
    heading: 'store',
    also: ['shop', 'outlet', 'door', 'site', 'location', 'store name'],
    needed: true,
  },
  {
    key: 'week',
    heading: 'week',
    also: ['wk', 'date', 'day', 'first day', 'week of', 'week beginning', 'week commencing', 'iso week'],
    needed: true,
  },
  {
    key: 'units',
    heading: 'units',
    also: ['sold', 'sales', 'qty', 'quantity', 'scans', 'pieces', 'unit sales', 'units sold'],
    needed: true,
  },
  {
    key: 'item',
    heading: 'product',
    also: ['item', 'sku', 'article', 'item name'],
    needed: false,
    beside: true,
  },
  {
    key: 'account',
    heading: 'chain',
    also: ['account', 'customer', 'retailer', 'banner'],
    needed: false,
    beside: true,
  },
  {
    key: 'on',
    heading: 'on',
    also: ['flag', 'deal', 'promotion', 'promo', 'display', 'price or display'],
    needed: false,
    beside: true,
  },
  {
    key: 'opening',
    heading: 'opening',
    also: ['opened', 'launch', 'first week'],
    needed: false,
    beside: true,
  },
];

/** The number of a week's first day, by ISO 8601: a date, or a week of the year. Null where it is none. */
export function readDay(task: Task, cell: Cell): number | null {
  const text = cell.text.trim();
  const week = /^(\d{4})-?\s?W(\d{1,2})$/i.exec(text);
  const day = week ? mondayOf(Number(week[1]), Number(week[2])) : dayOf(text);
  if (day === null)
    refuse(task, cell, 'week', 'the first day of a week, like 2025-10-06, or its ISO week, like 2025-W41');
  return day;
}

function dayOf(text: string): number | null {
  const year = Number(/^(\d{4})-\d{2}-\d{2}$/.exec(text)?.[1] ?? 0);
  if (year < 1990 || year > 2199) return null;
  try {
    return dayNumber(text);
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

/** Without the column a week stays as it is flagged; nothing in its cell is neither. */
export function readOn(
  task: Task,
  cell: Cell | undefined,
): { display: boolean; price: boolean } | 'same' | null {
  if (cell === undefined) return 'same';
  switch (cell.text.trim().toLowerCase()) {
    case '':
    case 'no':
      return { display: false, price: false };
    case 'display':
      return { display: true, price: false };
    case 'price':
      return { display: false, price: true };
    case 'both':
      return { display: true, price: true };
    default:
      refuse(task, cell, 'on', '“display”, “price”, “both”, or nothing');
      return null;
  }
}

/** Whether the store first had it on the shelf in that week. */
export function readYes(task: Task, cell: Cell | undefined): boolean | 'same' | null {
  const text = cell?.text.trim().toLowerCase() ?? '';
  if (cell === undefined || text === '') return 'same';
  if (['yes', 'y', 'true', '1', 'x'].includes(text)) return true;
  if (['no', 'n', 'false', '0'].includes(text)) return false;
  refuse(task, cell, 'opening', '“yes” in the week a store opened, or nothing');
  return null;
}
