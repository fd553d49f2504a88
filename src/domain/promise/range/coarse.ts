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
  slipping: SlippingSeries;
  fixed: FixedSeries;
  terms: RowTerms;
  /** By account, [account x (pad + weeks) + pad + week]: per doors authorised; claims are taken off remittances. */
  sums: { out: Float64Array; claims: Float64Array; doors: Float64Array };
  buys: BoughtItem[];
  /** Seconds by week that items of a line can land out of. */
  hours: readonly Float64Array[];
  longestTransit: number;
  /** Week in which VAT of a week is settled; empty without VAT. */
  vatDue: Int32Array;
  vatOnPurchases: number;
}

/** [(pad + week) x rows + row], the week counted without the account's slip. */
export interface SlippingSeries {
  /** Units wanted, before season and promotions; and those that the ramp still withholds. */
  demand: Float64Array;
  withheld: Float64Array;
  /** Fills that can ship in the week, and how much of them is free. */
  fill: Float64Array;
  fillFree: Float64Array;
  fillTarget: Float64Array;
  /** Demand that orders look ahead to, and a depot's beside its stores'. */
  ahead: Float64Array;
  depotAhead: Float64Array;
  /** What rounding to full cases a door leaves unordered. */
  slack: Float64Array;
  /** Share of the shelf that stays when doors close; 1 where none do. */
  stays: Float64Array;
  /** 1 in the week what is held under guarantee is settled. */
  review: Float64Array;
  /** Share of what is shipped that may come back at the review, before it. */
  held: Float64Array;
}

/** [week x rows + row], whatever slips. */
export interface FixedSeries {
  /** Season times promotions, and its mean over the weeks an order looks ahead. */
  calendar: Float64Array;
  calendarAhead: Float64Array;
  price: Float64Array;
  claimPerSold: Float64Array;
  /** 1 in weeks stores order. */
  orders: Uint8Array;
}

/** By row. */
export interface RowTerms {
  openingShelf: Float64Array;
  caseUnits: Float64Array;
  transit: Int32Array;
  collect: Int32Array;
  collectEarly: Int32Array;
  claimLag: Int32Array;
  /** Part of an invoice that is paid early, and what a discount leaves of it. */
  earlyShare: Float64Array;
  earlyKept: Float64Array;
  /** Parts of an invoice that never come in, or come back out: deductions and bad debt, returns, broker and royalty. */
  deducted: Float64Array;
  returned: Float64Array;
  sellingShare: Float64Array;
  /** Share of what can't come in that is VAT on top of the invoice. */
  vatRate: Float64Array;
  shipCost: Float64Array;
  onScan: Uint8Array;
  item: Int32Array;
  /** Share of what arrives that stays (ordinary returns don't); and of what reviews send back, what we sell again. */
  stayed: Float64Array;
  resold: Float64Array;
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
    slipping: slippingSeries((pad + weeks) * rows.length),
    fixed: fixedSeries(weeks * rows.length),
    terms: rowTerms(rows.length),
    sums: {
      out: new Float64Array(accounts.length * (pad + weeks)),
      claims: new Float64Array(accounts.length * (pad + weeks)),
      doors: new Float64Array(accounts.length * (pad + weeks)),
    },
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

function slippingSeries(places: number): SlippingSeries {
  const series = () => new Float64Array(places);
  return {
    demand: series(),
    withheld: series(),
    fill: series(),
    fillFree: series(),
    fillTarget: series(),
    ahead: series(),
    depotAhead: series(),
    slack: series(),
    stays: series().fill(1),
    review: series(),
    held: series(),
  };
}

function fixedSeries(places: number): FixedSeries {
  return {
    calendar: new Float64Array(places).fill(1),
    calendarAhead: new Float64Array(places).fill(1),
    price: new Float64Array(places),
    claimPerSold: new Float64Array(places),
    orders: new Uint8Array(places),
  };
}

function rowTerms(rows: number): RowTerms {
  const each = () => new Float64Array(rows);
  const weekOf = () => new Int32Array(rows);
  return {
    openingShelf: each(),
    caseUnits: each(),
    transit: weekOf(),
    collect: weekOf(),
    collectEarly: weekOf(),
    claimLag: weekOf(),
    earlyShare: each(),
    earlyKept: each(),
    deducted: each(),
    returned: each(),
    sellingShare: each(),
    vatRate: each(),
    shipCost: each(),
    onScan: new Uint8Array(rows),
    item: weekOf(),
    stayed: each(),
    resold: each(),
  };
}
