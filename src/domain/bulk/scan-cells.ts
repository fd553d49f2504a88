// The columns of scans, and what only their cells hold: what a week was on, yes or no; days are read in scan-days.ts.
// Worked example: "both" is a week on display and at a lower price.
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
