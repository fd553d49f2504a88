// One draw through the coarser pass: the weekly order of events of PASS.md (receipts, purchase order, shipping, sales,
// orders, money). The inner loops run some 12 million times a range: each does one thing for all rows of a week, on
// typed arrays and plain locals; what one leaves for the next lies on the bench.
// Worked figure: 10,000 draws of 104 weeks and 12 rows are 12,480,000 turns of each of the four loops.
import { type Bench, type CoarseRun, type Draw, layOut } from './bench.ts';
import { buy } from './buy.ts';
import type { Coarse } from './coarse.ts';

/** Weeks until what is owed monthly or quarterly on an invoice is paid, in the middle. */
const SELLING_LAG = 5;

/** The draw's run, to be read until the next one. */
export function runDraw(coarse: Coarse, draw: Draw, bench: Bench): CoarseRun {
  const { weeks, items } = coarse;
  const { run, owed } = bench;
  layOut(coarse, draw, bench);
  let cash = 0;
  for (let w = 0; w < weeks; w++) {
    let out = owed[w] ?? 0;
    for (let i = 0; i < items; i++) {
      out += buy(coarse, draw, bench, i, w);
      out += ship(coarse, bench, i, w);
    }
    sell(coarse, draw, bench, w);
    run.revenue[w] = bill(coarse, bench, w);
    reorder(coarse, bench, w);
    out += openingSums(coarse, draw, bench, w);
    // What falls due within the week itself (no lead, no terms) is in by now.
    run.low[w] = cash - out;
    cash += settle(coarse, bench, w) - out;
    run.cash[w] = cash;
  }
  return run;
}

/** Fills join what waits; all of it ships as far as our stock reaches, row after row. Returns what shipping costs. */
function ship(coarse: Coarse, bench: Bench, i: number, w: number): number {
  const { rows, itemFirst } = coarse;
  const { fill, fillFree } = coarse.slipping;
  const { shipCost } = coarse.terms;
  const { shift, doors, open, freeLeft, shipped, paid } = bench;
  const until = itemFirst[i + 1] ?? 0;
  let ours = bench.ours[i] ?? 0;
  let backlog = 0;
  let out = 0;
  for (let l = itemFirst[i] ?? 0; l < until; l++) {
    const at = w * rows + (shift[l] ?? 0);
    const opening = doors[l] ?? 0;
    const waits = (open[l] ?? 0) + (fill[at] ?? 0) * opening;
    const ships = Math.min(waits, ours);
    const free = (freeLeft[l] ?? 0) + (fillFree[at] ?? 0) * opening;
    const given = Math.min(free, ships);
    ours -= ships;
    // What is ordered at the week's end is not yet late: the forecast has it.
    backlog += waits - ships;
    out += ships * (shipCost[l] ?? 0);
    open[l] = waits - ships;
    freeLeft[l] = free - given;
    shipped[l] = ships;
    paid[l] = ships - given;
  }
  bench.ours[i] = ours;
  bench.backlog[i] = backlog;
  return out;
}

/** What shipped arrives after its transit; shoppers take what they want and the shelf has; reviews take theirs back. */
function sell(coarse: Coarse, draw: Draw, bench: Bench, w: number): void {
  const { rows, longestTransit } = coarse;
  const { demand, withheld, stays, review } = coarse.slipping;
  const { calendar } = coarse.fixed;
  const { stayed } = coarse.terms;
  const { shift, want, shelf, transit, shipped, sold, arriving } = bench;
  const ramp = draw.ramp;
  const { transit: ways } = coarse.terms;
  const lanes = (longestTransit + 1) * rows;
  const lane = (w * rows) % lanes;
  for (let l = 0; l < rows; l++) {
    const at = w * rows + (shift[l] ?? 0);
    // Lanes follow each other in a ring; a division for each row would cost more than the rest of its turn.
    const way = lane + (ways[l] ?? 0) * rows;
    const arrives = (way < lanes ? way : way - lanes) + l;
    const ships = shipped[l] ?? 0;
    arriving[arrives] = (arriving[arrives] ?? 0) + ships;
    const arrived = arriving[lane + l] ?? 0;
    arriving[lane + l] = 0;
    transit[l] = (transit[l] ?? 0) + ships - arrived;
    // What stores send back leaves the shelf, and is ordered anew.
    const stands = (shelf[l] ?? 0) * (stays[at] ?? 1) + arrived * (stayed[l] ?? 1);
    const mature = (demand[at] ?? 0) - ramp * (withheld[at] ?? 0);
    const wanted = mature * (want[l] ?? 0) * (calendar[w * rows + l] ?? 1);
    const taken = wanted < stands ? Math.max(wanted, 0) : stands;
    sold[l] = taken;
    shelf[l] = stands - taken;
    if ((review[at] ?? 0) > 0) settleReview(coarse, bench, l, w);
  }
}

/** The doors reviewed this week send back their part of what was held, as far as the shelf has it. */
function settleReview(coarse: Coarse, bench: Bench, l: number, w: number): void {
  const { slipping, fixed, terms, rows } = coarse;
  const { held, shelf, ours } = bench;
  const ends = (held[l] ?? 0) * (slipping.review[w * rows + (bench.shift[l] ?? 0)] ?? 0);
  const back = Math.min(ends, shelf[l] ?? 0);
  const item = terms.item[l] ?? 0;
  held[l] = (held[l] ?? 0) - ends;
  shelf[l] = (shelf[l] ?? 0) - back;
  ours[item] = (ours[item] ?? 0) + back * (terms.resold[l] ?? 0);
  claim(coarse, bench, w, coarse.account[l] ?? 0, back * (fixed.price[w * rows + l] ?? 0));
}

/** Money an account takes off what it owes from a week on. */
function claim(
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
function bill(coarse: Coarse, bench: Bench, w: number): number {
  const { weeks, rows, terms, account, accounts } = coarse;
  const { price, claimPerSold } = coarse.fixed;
  const { earlyShare, earlyKept, collectEarly, sellingShare, onScan, claimLag, vatRate } = terms;
  const { paid, sold, due, owed, collect, kept, held, shift } = bench;
  const sellingWeek = Math.min(w + SELLING_LAG, weeks);
  let revenue = 0;
  let vat = 0;
  let selling = 0;
  for (let l = 0; l < rows; l++) {
    const at = w * rows + l;
    const units = onScan[l] === 1 ? (sold[l] ?? 0) : (paid[l] ?? 0);
    const claimed = (sold[l] ?? 0) * (claimPerSold[at] ?? 0);
    const a = account[l] ?? 0;
    if (claimed > 0) claim(coarse, bench, w + (claimLag[l] ?? 0), a, claimed);
    if (units <= 0) continue;
    const invoice = units * (price[at] ?? 0);
    const tax = invoice * (vatRate[l] ?? 0);
    const comesIn = invoice * (kept[l] ?? 0) + tax;
    const early = comesIn * (earlyShare[l] ?? 0);
    const later = w + (collect[l] ?? 0);
    const laterAt = Math.min(later, weeks) * accounts + a;
    revenue += invoice;
    vat += tax;
    selling += invoice * (sellingShare[l] ?? 0);
    due[laterAt] = (due[laterAt] ?? 0) + comesIn - early;
    held[l] = (held[l] ?? 0) + units * (coarse.slipping.held[w * rows + (shift[l] ?? 0)] ?? 0);
    if (early <= 0) continue;
    const soon = w + (collectEarly[l] ?? 0);
    const soonAt = Math.min(soon, weeks) * accounts + a;
    due[soonAt] = (due[soonAt] ?? 0) + early * (earlyKept[l] ?? 1);
  }
  owed[sellingWeek] = (owed[sellingWeek] ?? 0) + selling;
  if (vat > 0) {
    const week = Math.min(weeks, coarse.vatDue[w] ?? weeks);
    owed[week] = (owed[week] ?? 0) + vat;
  }
  return revenue;
}

/** Stores order up to their level, whole cases a door, at the end of order weeks. */
function reorder(coarse: Coarse, bench: Bench, w: number): void {
  const { rows } = coarse;
  const { fillTarget, ahead, depotAhead, slack } = coarse.slipping;
  const { orders, calendarAhead } = coarse.fixed;
  const { caseUnits } = coarse.terms;
  const { shift, doors, want, shelf, transit, open } = bench;
  for (let l = 0; l < rows; l++) {
    if (orders[w * rows + l] === 0) continue;
    const at = w * rows + (shift[l] ?? 0);
    const opening = doors[l] ?? 0;
    const wants = (want[l] ?? 0) * (calendarAhead[w * rows + l] ?? 1);
    const fills = (fillTarget[at] ?? 0) * opening;
    const weeks = (ahead[at] ?? 0) * wants;
    const target = Math.max(fills, weeks) + (depotAhead[at] ?? 0) * wants;
    const waits = open[l] ?? 0;
    const beyond = target - (shelf[l] ?? 0) - (transit[l] ?? 0) - waits - (slack[at] ?? 0) * opening;
    if (beyond >= (caseUnits[l] ?? 1)) open[l] = waits + beyond;
  }
}

/** Slotting, fees, displays: by the doors that are authorised, when they open; and the doors that then sell. */
function openingSums(coarse: Coarse, draw: Draw, bench: Bench, w: number): number {
  const { weeks, pad, accounts, sums } = coarse;
  const { opens, sells, slip } = draw;
  let out = 0;
  let doors = 0;
  for (let a = 0; a < accounts; a++) {
    const at = a * (pad + weeks) + pad + w - (slip[a] ?? 0);
    const opening = opens[a] ?? 0;
    out += (sums.out[at] ?? 0) * opening;
    doors += (sums.doors[at] ?? 0) * opening * (sells[a] ?? 0);
    const claimed = (sums.claims[at] ?? 0) * opening;
    if (claimed > 0) claim(coarse, bench, w, a, claimed);
  }
  bench.run.doors[w] = doors;
  return out;
}

/** What is due comes in less open claims, down to zero; what it can't carry stays open. */
function settle({ accounts }: Coarse, bench: Bench, w: number): number {
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
