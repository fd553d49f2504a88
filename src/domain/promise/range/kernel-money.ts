// The money of a draw, week by week: when an invoice's parts come in, claims and what carries them, VAT, selling costs,
// what is paid with openings. Part of the kernel: plain locals, typed arrays (places.ts).
// Worked figure: 100 units at 2.50, 5 % deducted, half of it paid early at 2 % off: 116.38 early, 118.75 late.
import type { Bench, Draw } from './bench.ts';
import type { Coarse } from './coarse.ts';
import { CLAIMED, DOORS_OPEN, EARLY_KEPT, EARLY_SHARE, PAID_OUT, SUMS, TERMS } from './places.ts';

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

/** What an invoice of the week brings, by when each part comes in. */
export function fallDue(
  coarse: Coarse,
  { due, collect }: Bench,
  l: number,
  w: number,
  comesIn: number,
): void {
  const { weeks, accounts, account, terms } = coarse;
  const a = account[l] ?? 0;
  const early = comesIn * (terms[l * TERMS + EARLY_SHARE] ?? 0);
  const laterAt = Math.min(weeks, w + (collect[l] ?? 0)) * accounts + a;
  due[laterAt] = (due[laterAt] ?? 0) + comesIn - early;
  if (early <= 0) return;
  const earlyAt = Math.min(weeks, w + (coarse.collectEarly[l] ?? 0)) * accounts + a;
  due[earlyAt] = (due[earlyAt] ?? 0) + early * (terms[l * TERMS + EARLY_KEPT] ?? 1);
}

/** Broker and royalty on the week's invoices, and their VAT, to be paid later. */
export function oweShares(
  { weeks, vatDue }: Coarse,
  { owed }: Bench,
  w: number,
  selling: number,
  vat: number,
): void {
  const sellingWeek = Math.min(weeks, w + SELLING_LAG);
  owed[sellingWeek] = (owed[sellingWeek] ?? 0) + selling;
  if (vat <= 0) return;
  const vatWeek = Math.min(weeks, vatDue[w] ?? weeks);
  owed[vatWeek] = (owed[vatWeek] ?? 0) + vat;
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
