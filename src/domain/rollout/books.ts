// The books of one pass: ten balances, the flows and profit parts of the week at hand. post() adds up each event's
// postings; closeBooks() carries the sums to both their sides at the week's end, and nothing else changes a balance. A
// recorder, when given, is told every posting, so that each figure can show what made it.
// Worked figure: freight of 1,240 and 760 posted and closed: retained −2,000, cash −2,000, flow freightOut −2,000.
import { EVENTS, type EventName } from './events.ts';
import { BALANCE_NAMES, FLOW_NAMES, PROFIT_NAMES } from './types.ts';

/** One posting, for the workings: amount is whole minor units, negative for a reversal. */
export interface Posting {
  week: number;
  event: EventName;
  amount: number;
  /** Index of account and item, or -1. */
  account: number;
  item: number;
}

/** One instalment of a purchase order as it is placed: what no posting says of it. Money is whole minor units. */
export interface PlacedInstalment {
  /** The week it is ordered in, and the one it lands in (beyond the horizon too). */
  week: number;
  lands: number;
  /** Index of the item, and of its supplier: 0 the first, -1 for a rush order. */
  item: number;
  supplier: number;
  units: number;
  goods: number;
  freight: number;
  deposit: number;
}

/** Told every posting, and every instalment where it asks for them. */
export interface Recorder {
  (posting: Posting): void;
  placed?: (instalment: PlacedInstalment) => void;
}

export interface Books {
  /** In the order of BALANCE_NAMES, each in its natural sign. */
  balances: Float64Array;
  flows: Float64Array;
  profit: Float64Array;
  /** Of the week at hand, by event: what was posted and is not yet carried to the balances. */
  posted: Float64Array;
  week: number;
  recorder: Recorder | null;
}

/** Balances before this index are assets. */
export const FIRST_CLAIM_INDEX = BALANCE_NAMES.indexOf('payables');
export const CASH = BALANCE_NAMES.indexOf('cash');

/** An event's two sides as places in the books. */
export interface EntryIndex {
  event: EventName;
  /** Its place among the events. */
  place: number;
  dr: number;
  cr: number;
  /** Sign of the effect on each balance. */
  drSign: number;
  crSign: number;
  flow: number;
  flowSign: number;
  profit: number;
  profitSign: number;
}

function indexed(event: EventName, place: number): EntryIndex {
  const entry: { dr: string; cr: string; flow?: string; profit?: string } = EVENTS[event];
  const dr = (BALANCE_NAMES as readonly string[]).indexOf(entry.dr);
  const cr = (BALANCE_NAMES as readonly string[]).indexOf(entry.cr);
  return {
    event,
    place,
    dr,
    cr,
    drSign: dr < FIRST_CLAIM_INDEX ? 1 : -1,
    crSign: cr < FIRST_CLAIM_INDEX ? -1 : 1,
    flow: entry.flow ? (FLOW_NAMES as readonly string[]).indexOf(entry.flow) : -1,
    flowSign: entry.dr === 'cash' ? 1 : -1,
    profit: entry.profit ? (PROFIT_NAMES as readonly string[]).indexOf(entry.profit) : -1,
    profitSign: entry.cr === 'retained' ? 1 : -1,
  };
}

const ENTRIES: readonly EntryIndex[] = (Object.keys(EVENTS) as EventName[]).map(indexed);

/** Every event, ready to post: `post(books, E.freightOut, 1240)`. */
export const E = Object.fromEntries(ENTRIES.map((entry) => [entry.event, entry])) as Record<
  EventName,
  EntryIndex
>;

export function openBooks(recorder: Recorder | null): Books {
  return {
    balances: new Float64Array(BALANCE_NAMES.length),
    flows: new Float64Array(FLOW_NAMES.length),
    profit: new Float64Array(PROFIT_NAMES.length),
    posted: new Float64Array(ENTRIES.length),
    week: 0,
    recorder,
  };
}

/** Book one event for a whole number of minor units. Zero books nothing. */
export function post(books: Books, entry: EntryIndex, amount: number, account = -1, item = -1): void {
  if (amount === 0) return;
  const { posted } = books;
  posted[entry.place] = (posted[entry.place] ?? 0) + amount;
  if (books.recorder) books.recorder({ week: books.week, event: entry.event, amount, account, item });
}

/** A week begins: nothing has flowed yet. */
export function openWeek(books: Books, week: number): void {
  books.week = week;
  books.flows.fill(0);
  books.profit.fill(0);
}

/** Carries the week's postings to both sides of their events, to their flows and parts of the result. */
export function closeBooks(books: Books): void {
  const { balances, flows, profit, posted } = books;
  for (const entry of ENTRIES) {
    const amount = posted[entry.place] ?? 0;
    if (amount === 0) continue;
    posted[entry.place] = 0;
    balances[entry.dr] = (balances[entry.dr] ?? 0) + entry.drSign * amount;
    balances[entry.cr] = (balances[entry.cr] ?? 0) + entry.crSign * amount;
    if (entry.flow >= 0) flows[entry.flow] = (flows[entry.flow] ?? 0) + entry.flowSign * amount;
    if (entry.profit >= 0) profit[entry.profit] = (profit[entry.profit] ?? 0) + entry.profitSign * amount;
  }
}
