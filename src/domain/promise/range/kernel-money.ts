// The money of a draw, week by week: invoices and when their parts come in, claims and what carries them, VAT, selling
// costs, what is paid with openings. Part of the kernel: plain locals, typed arrays (places.ts).
// Worked figure: 100 units at 2.50, 5 % deducted, half of it paid early at 2 % off: 116.38 early, 118.75 late.
import type { Bench, Draw } from './bench.ts';
import type { Coarse } from './coarse.ts';
import {
  CLAIM_LAG,
  CLAIM_PER_SOLD,
  CLAIMED,
  DOORS_OPEN,
  EARLY_KEPT,
  EARLY_SHARE,
  FIXED,
  HELD,
  HELD_SHARE,
  KEPT,
  ON_SCAN,
  PAID,
  PAID_OUT,
  PRICE,
  SELLING,
  SLIPS,
  SOLD,
  STATE,
  SUMS,
  TERMS,
  VAT,
} from './places.ts';

/** Weeks until what is owed monthly or quarterly on an invoice is paid, in the middle. */
const SELLING_LAG = 5;

/** Money an account takes off what it owes from a week on. */
export function claim(
  { weeks, accounts }: Coarse,
  { claimed }: Bench,
  week: number,
  a: number,
  amount: number,
): void {
  const at = (week < weeks ? week : weeks) * accounts + a;
  claimed[at] = (claimed[at] ?? 0) + amount;
}

/** Invoices of what was shipped (or scanned), by when each part comes in; claims for what was sold. Returns revenue. */
export function bill(coarse: Coarse, bench: Bench, w: number): number {
  const { weeks, rows, account, accounts, terms, fixed, slipping } = coarse;
  const { state, due, owed, collect, shift } = bench;
  const sellingWeek = Math.min(weeks, w + SELLING_LAG);
  let revenue = 0;
  let vat = 0;
  let selling = 0;
  for (let l = 0; l < rows; l++) {
    const at = (w * rows + l) * FIXED;
    const own = l * STATE;
    const its = l * TERMS;
    const a = account[l] ?? 0;
    const sold = state[own + SOLD] ?? 0;
    const claimed = sold * (fixed[at + CLAIM_PER_SOLD] ?? 0);
    if (claimed > 0) claim(coarse, bench, w + (terms[its + CLAIM_LAG] ?? 0), a, claimed);
    const units = terms[its + ON_SCAN] === 1 ? sold : (state[own + PAID] ?? 0);
    if (units <= 0) continue;
    const invoice = units * (fixed[at + PRICE] ?? 0);
    const tax = invoice * (terms[its + VAT] ?? 0);
    const comesIn = invoice * (state[own + KEPT] ?? 0) + tax;
    const early = comesIn * (terms[its + EARLY_SHARE] ?? 0);
    const laterAt = Math.min(weeks, w + (collect[l] ?? 0)) * accounts + a;
    const held = slipping[w * rows * SLIPS + (shift[l] ?? 0) + HELD_SHARE] ?? 0;
    revenue += invoice;
    vat += tax;
    selling += invoice * (terms[its + SELLING] ?? 0);
    due[laterAt] = (due[laterAt] ?? 0) + comesIn - early;
    if (held > 0) state[own + HELD] = (state[own + HELD] ?? 0) + units * held;
    if (early > 0) collectEarly(coarse, bench, l, w, early * (terms[its + EARLY_KEPT] ?? 1));
  }
  owed[sellingWeek] = (owed[sellingWeek] ?? 0) + selling;
  if (vat > 0) {
    const week = Math.min(weeks, coarse.vatDue[w] ?? weeks);
    owed[week] = (owed[week] ?? 0) + vat;
  }
  return revenue;
}

function collectEarly(coarse: Coarse, { due }: Bench, l: number, w: number, amount: number): void {
  const { weeks, accounts, account } = coarse;
  const at = Math.min(weeks, w + (coarse.collectEarly[l] ?? 0)) * accounts + (account[l] ?? 0);
  due[at] = (due[at] ?? 0) + amount;
}

/** Slotting, fees, displays: by the doors that are authorised, when they open; and the doors that then sell. */
export function openingSums(coarse: Coarse, draw: Draw, bench: Bench, w: number): number {
  const { pad, accounts, sums } = coarse;
  const { opens, sells, slip } = draw;
  let out = 0;
  let doors = 0;
  for (let a = 0; a < accounts; a++) {
    const at = ((pad + w - (slip[a] ?? 0)) * accounts + a) * SUMS;
    const opening = opens[a] ?? 0;
    out += (sums[at + PAID_OUT] ?? 0) * opening;
    doors += (sums[at + DOORS_OPEN] ?? 0) * opening * (sells[a] ?? 0);
    const claimed = (sums[at + CLAIMED] ?? 0) * opening;
    if (claimed > 0) claim(coarse, bench, w, a, claimed);
  }
  bench.run.doors[w] = doors;
  return out;
}

/** What is due comes in less open claims, down to zero; what it can't carry stays open. */
export function settle({ accounts }: Coarse, bench: Bench, w: number): number {
  const { due, claimed, claims } = bench;
  let received = 0;
  for (let a = 0; a < accounts; a++) {
    const at = w * accounts + a;
    const pool = due[at] ?? 0;
    const open = (claims[a] ?? 0) + (claimed[at] ?? 0);
    const taken = Math.min(open, pool);
    claims[a] = open - taken;
    received += pool - taken;
  }
  return received;
}
