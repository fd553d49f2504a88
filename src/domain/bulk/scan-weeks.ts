// The weeks of a plan's scans as a table has them: by the number of their first day, and written a row a week.
// Worked example: 12 units in a week on display are shown as "12, display".
import { dayNumber, isoDateOf } from '../calendar.ts';
import type { Plan, Scan } from '../plan/index.ts';
import { nameReader, withGuard } from './names.ts';

export interface SaidWeek {
  units: number | null;
  display: boolean;
  price: boolean;
}

export const NOT_SEEN: SaidWeek = { units: null, display: false, price: false };

export function weeksOf(scan: Scan): [number, SaidWeek][] {
  const first = dayNumber(scan.firstDate);
  return scan.units.map((units, at) => [first + 7 * at, { units, ...flagsOf(scan, first + 7 * at) }]);
}

export function flagsOf(scan: Scan | null, day: number): { display: boolean; price: boolean } {
  if (scan === null) return { display: false, price: false };
  const at = (day - dayNumber(scan.firstDate)) / 7;
  return { display: scan.displayWeeks.includes(at), price: scan.priceWeeks.includes(at) };
}

export function isSame(one: SaidWeek, other: SaidWeek): boolean {
  return one.units === other.units && one.display === other.display && one.price === other.price;
}

export function shownWeek({ units, display, price }: SaidWeek): string {
  const on = display && price ? ', display and price' : display ? ', display' : price ? ', price' : '';
  return `${units ?? 'not seen'}${on}`;
}

export function writeScans({ promise, items, accounts }: Plan): string[][] {
  const [products, chains] = [nameReader(items, 'product'), nameReader(accounts, 'chain')];
  return promise.scans.flatMap((scan) => {
    const item = items.find(({ id }) => id === scan.itemId);
    const account = accounts.find(({ id }) => id === scan.accountId);
    return weeksOf(scan).map(([day, { units, display, price }], at) => [
      withGuard(scan.store.trim()),
      isoDateOf(day),
      units === null ? '' : String(units),
      item ? products.write(item) : '',
      account ? chains.write(account) : '',
      display && price ? 'both' : display ? 'display' : price ? 'price' : '',
      at === 0 ? (scan.opened ? 'yes' : 'no') : '',
    ]);
  });
}
