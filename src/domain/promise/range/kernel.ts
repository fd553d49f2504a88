// One draw through the coarser pass: the weekly order of events of PASS.md (receipts, purchase order, shipping, sales,
// orders, money). The inner loops run some 12 million times a range, on typed arrays and plain locals; what one week
// leaves for the next lies on the bench. Worked figure: 10,000 draws of 104 weeks and 12 rows are 12,480,000 turns.
import { type Bench, type CoarseRun, type Draw, layOut } from './bench.ts';
import { buy } from './buy.ts';
import type { Coarse } from './coarse.ts';
import { claim, fallDue, openingSums, oweShares, settle } from './kernel-money.ts';
import {
  AHEAD,
  CALENDAR,
  CALENDAR_AHEAD,
  CASE_UNITS,
  CLAIM_LAG,
  CLAIM_PER_SOLD,
  DEMAND,
  DEPOT_AHEAD,
  DOORS,
  FILL,
  FILL_FREE,
  FILL_TARGET,
  FIXED,
  FREE_LEFT,
  HELD,
  HELD_SHARE,
  KEPT,
  ON_SCAN,
  ON_THE_WAY,
  OPEN,
  ORDERS,
  PAID,
  PRICE,
  RESOLD,
  REVIEW,
  SELLING,
  SHELF,
  SHIP_COST,
  SHIPPED,
  SLACK,
  SLIPS,
  STATE,
  STAYED,
  STAYS,
  TERMS,
  VAT,
  WANT,
  WITHHELD,
} from './places.ts';

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
    run.revenue[w] = trade(coarse, draw, bench, w);
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
  const { rows, itemFirst, slipping, terms } = coarse;
  const { shift, state } = bench;
  const until = itemFirst[i + 1] ?? 0;
  const week = w * rows * SLIPS;
  let ours = bench.ours[i] ?? 0;
  let backlog = 0;
  let out = 0;
  for (let l = itemFirst[i] ?? 0; l < until; l++) {
    const at = week + (shift[l] ?? 0);
    const own = l * STATE;
    const opening = state[own + DOORS] ?? 0;
    const waits = (state[own + OPEN] ?? 0) + (slipping[at + FILL] ?? 0) * opening;
    const free = (state[own + FREE_LEFT] ?? 0) + (slipping[at + FILL_FREE] ?? 0) * opening;
    const ships = Math.min(waits, ours);
    const given = Math.min(free, ships);
    ours -= ships;
    // What is ordered at the week's end is not yet late: the forecast has it.
    backlog += waits - ships;
    out += ships * (terms[l * TERMS + SHIP_COST] ?? 0);
    state[own + OPEN] = waits - ships;
    state[own + FREE_LEFT] = free - given;
    state[own + SHIPPED] = ships;
    state[own + PAID] = ships - given;
  }
  bench.ours[i] = ours;
  bench.backlog[i] = backlog;
  return out;
}

/**
 * What shipped arrives after its transit; shoppers take what they want and the shelf has; reviews take theirs back; what
 * was shipped or scanned is invoiced; stores order anew. Returns revenue. One loop: four, each reading and writing the
 * rows' state, took a fifth longer.
 */
function trade(coarse: Coarse, draw: Draw, bench: Bench, w: number): number {
  const { rows, longestTransit, slipping, fixed, terms, transit, account } = coarse;
  const { shift, state, arriving } = bench;
  const { ramp } = draw;
  const lanes = (longestTransit + 1) * rows;
  const lane = (w * rows) % lanes;
  let revenue = 0;
  let vat = 0;
  let selling = 0;
  for (let l = 0; l < rows; l++) {
    const at = w * rows * SLIPS + (shift[l] ?? 0);
    const week = (w * rows + l) * FIXED;
    const own = l * STATE;
    const its = l * TERMS;
    // Lanes follow each other in a ring; a division for each row would cost as much as the rest of its turn.
    const way = lane + (transit[l] ?? 0) * rows;
    const arrives = (way < lanes ? way : way - lanes) + l;
    const ships = state[own + SHIPPED] ?? 0;
    arriving[arrives] = (arriving[arrives] ?? 0) + ships;
    const arrived = arriving[lane + l] ?? 0;
    arriving[lane + l] = 0;
    const onTheWay = (state[own + ON_THE_WAY] ?? 0) + ships - arrived;
    state[own + ON_THE_WAY] = onTheWay;
    // What stores send back leaves the shelf, and is ordered anew.
    const stayed = arrived * (terms[its + STAYED] ?? 1);
    const stands = (state[own + SHELF] ?? 0) * (slipping[at + STAYS] ?? 1) + stayed;
    const mature = (slipping[at + DEMAND] ?? 0) - ramp * (slipping[at + WITHHELD] ?? 0);
    const wanted = mature * (state[own + WANT] ?? 0) * (fixed[week + CALENDAR] ?? 1);
    const sold = Math.min(Math.max(wanted, 0), stands);
    state[own + SHELF] = stands - sold;
    if ((slipping[at + REVIEW] ?? 0) > 0) revenue += settleReview(coarse, bench, l, w);
    const claimed = sold * (fixed[week + CLAIM_PER_SOLD] ?? 0);
    if (claimed > 0) claim(coarse, bench, w + (terms[its + CLAIM_LAG] ?? 0), account[l] ?? 0, claimed);
    const units = terms[its + ON_SCAN] === 1 ? sold : (state[own + PAID] ?? 0);
    if (units > 0) {
      const invoice = units * (fixed[week + PRICE] ?? 0);
      const tax = invoice * (terms[its + VAT] ?? 0);
      const held = slipping[at + HELD_SHARE] ?? 0;
      // What may still come back under guarantee is no revenue yet.
      revenue += invoice * (1 - held);
      vat += tax;
      selling += invoice * (terms[its + SELLING] ?? 0);
      fallDue(coarse, bench, l, w, invoice * (state[own + KEPT] ?? 0) + tax);
      if (held > 0) state[own + HELD] = (state[own + HELD] ?? 0) + units * held;
    }
    if (fixed[week + ORDERS] === 0) continue;
    const waits = state[own + OPEN] ?? 0;
    const there = (state[own + SHELF] ?? 0) + onTheWay + waits;
    state[own + OPEN] = waits + ordered(coarse, state, l, at, week, there);
  }
  oweShares(coarse, bench, w, selling, vat);
  return revenue;
}

/**
 * The doors reviewed this week send back their part of what was held, as far as the shelf has it. Returns the revenue of the
 * rest, which stays.
 */
function settleReview(coarse: Coarse, bench: Bench, l: number, w: number): number {
  const { slipping, fixed, terms, rows } = coarse;
  const { state, ours } = bench;
  const own = l * STATE;
  const held = state[own + HELD] ?? 0;
  const shelf = state[own + SHELF] ?? 0;
  const ends = held * (slipping[w * rows * SLIPS + (bench.shift[l] ?? 0) + REVIEW] ?? 0);
  const back = Math.min(ends, shelf);
  const item = coarse.item[l] ?? 0;
  state[own + HELD] = held - ends;
  state[own + SHELF] = shelf - back;
  ours[item] = (ours[item] ?? 0) + back * (terms[l * TERMS + RESOLD] ?? 0);
  const price = fixed[(w * rows + l) * FIXED + PRICE] ?? 0;
  claim(coarse, bench, w, coarse.account[l] ?? 0, back * price);
  return (ends - back) * price;
}

/** What a row's stores order up to their level, whole cases a door, at the end of an order week. */
function ordered(
  { slipping, fixed, terms }: Coarse,
  state: Float64Array,
  l: number,
  at: number,
  week: number,
  there: number,
): number {
  const own = l * STATE;
  const opening = state[own + DOORS] ?? 0;
  const wants = (state[own + WANT] ?? 0) * (fixed[week + CALENDAR_AHEAD] ?? 1);
  const fills = (slipping[at + FILL_TARGET] ?? 0) * opening;
  const ahead = (slipping[at + AHEAD] ?? 0) * wants;
  const target = Math.max(fills, ahead) + (slipping[at + DEPOT_AHEAD] ?? 0) * wants;
  const beyond = target - there - (slipping[at + SLACK] ?? 0) * opening;
  return beyond >= (terms[l * TERMS + CASE_UNITS] ?? 1) ? beyond : 0;
}
