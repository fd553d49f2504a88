// The plan as a draw runs it: a row a listing (doors already open apart from those to come), in doubles, with everything
// that stays the same from draw to draw left out (RANGE.md). Series are by week, then row, so that one week's rows lie
// together; those that move when an account slips have `pad` empty weeks before the plan's first, so that a slip is only
// another place to begin reading. Worked figure: 12 rows, 104 weeks and slips of up to 8 weeks are 12 x 112 places.
import type { Account, Plan } from '../../plan/index.ts';
import type { Compiled } from '../../rollout/compiled.ts';
import { calendarOf } from './calendar.ts';
import { type BoughtItem, boughtItem, vatWeeks } from './coarse-items.ts';
import { rowsOf, writeRow } from './coarse-rows.ts';
import { writeAccount } from './coarse-sums.ts';
import { CALENDAR, CALENDAR_AHEAD, FIXED, SLIPS, STAYS, SUMS, TERMS } from './places.ts';

/** Money is minor units, units are whole or not. */
export interface Coarse {
  weeks: number;
  /** Weeks of nothing before week 0 in the series that can slip; no draw slips further. */
  pad: number;
  accounts: number;
  rows: number;
  items: number;
  /** By row; rows of one item stand side by side in shipping order. */
  account: Int32Array;
  listing: Int32Array;
  /** 1 for doors that sell already: no draw takes or delays them. */
  running: Uint8Array;
  /** First row of each item, and one place more. */
  itemFirst: Int32Array;
  /** What slips with the account: [((pad + week) x rows + row) x SLIPS + place] (places.ts). */
  slipping: Float64Array;
  /** Whatever slips: [(week x rows + row) x FIXED + place]. */
  fixed: Float64Array;
  /** [row x TERMS + place] */
  terms: Float64Array;
  /** By row, in weeks: to the shelf, until invoices are paid, and the part of them that is paid early. */
  transit: Int32Array;
  collect: Int32Array;
  collectEarly: Int32Array;
  /** By row. */
  item: Int32Array;
  /** [((pad + week) x accounts + account) x SUMS + place] */
  sums: Float64Array;
  buys: BoughtItem[];
  /** Seconds by week that items of a line can land out of. */
  hours: readonly Float64Array[];
  longestTransit: number;
  /** Week in which VAT of a week is settled; empty without VAT. */
  vatDue: Int32Array;
  vatOnPurchases: number;
}

export interface CoarseArgs {
  plan: Plan;
  compiled: Compiled;
  /** U of the plan, by item: what is bought goes by it in every draw. */
  shippable: readonly Float64Array[];
  longestSlip: number;
}

export function coarseOf({ plan, compiled, shippable, longestSlip }: CoarseArgs): Coarse {
  const { weeks, accounts, items } = compiled;
  const byItem = items.map(({ byPriority }) => byPriority.flatMap((listing) => rowsOf(compiled, listing)));
  const rows = byItem.flat();
  const pad = Math.min(weeks, longestSlip);
  const coarse: Coarse = {
    weeks,
    pad,
    accounts: accounts.length,
    rows: rows.length,
    items: items.length,
    account: Int32Array.from(rows, ({ listing }) => compiled.listings[listing]?.account ?? 0),
    listing: Int32Array.from(rows, ({ listing }) => listing),
    running: Uint8Array.from(rows, ({ running }) => (running ? 1 : 0)),
    itemFirst: firstRows(byItem),
    slipping: filled((pad + weeks) * rows.length, SLIPS, [STAYS]),
    fixed: filled(weeks * rows.length, FIXED, [CALENDAR, CALENDAR_AHEAD]),
    terms: new Float64Array(rows.length * TERMS),
    transit: new Int32Array(rows.length),
    collect: new Int32Array(rows.length),
    collectEarly: new Int32Array(rows.length),
    item: Int32Array.from(rows, ({ listing }) => compiled.listings[listing]?.item ?? 0),
    sums: new Float64Array((pad + weeks) * accounts.length * SUMS),
    buys: items.map((_, i) => boughtItem(compiled, i, shippable[i] as Float64Array)),
    hours: compiled.hours,
    longestTransit: 0,
    vatDue: vatWeeks(compiled),
    vatOnPurchases: (compiled.business.vat?.purchases ?? 0) / 1e6,
  };
  rows.forEach((row, place) => {
    const account = plan.accounts[coarse.account[place] ?? 0] as Account;
    const calendar = calendarOf(compiled, row.listing);
    writeRow(coarse, compiled, { ...row, place, calendar, depotWeeks: depotWeeks(account) });
  });
  accounts.forEach((_, a) => {
    writeAccount(coarse, compiled, a);
  });
  return coarse;
}

/** Weeks of demand a depot keeps beside what its stores have. */
function depotWeeks({ depot, ordering }: Account): number {
  return depot === null ? 0 : ordering.everyWeeks + depot.transitWeeks + depot.coverWeeks;
}

function firstRows(byItem: readonly (readonly unknown[])[]): Int32Array {
  const first = new Int32Array(byItem.length + 1);
  byItem.forEach((rows, i) => {
    first[i + 1] = (first[i] ?? 0) + rows.length;
  });
  return first;
}

/** So many records of zeros, with ones at some of their places. */
function filled(records: number, size: number, ones: readonly number[]): Float64Array {
  const made = new Float64Array(records * size);
  for (let record = 0; record < records; record++) for (const place of ones) made[record * size + place] = 1;
  return made;
}
