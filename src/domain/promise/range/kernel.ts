// One draw through the coarser pass: the weekly order of events of PASS.md (receipts, purchase order, shipping, sales,
// orders, money). The inner loops run some 12 million times a range: each does one thing for all rows of a week, on
// typed arrays and plain locals; what one leaves for the next lies on the bench.
// Worked figure: 10,000 draws of 104 weeks and 12 rows are 12,480,000 turns of each of the four loops.
import { type Bench, type CoarseRun, type Draw, layOut } from './bench.ts';
import { buy } from './buy.ts';
import type { Coarse } from './coarse.ts';
import { bill, claim, openingSums, settle } from './kernel-money.ts';
import {
  AHEAD,
  CALENDAR,
  CALENDAR_AHEAD,
  CASE_UNITS,
  DEMAND,
  DEPOT_AHEAD,
  DOORS,
  FILL,
  FILL_FREE,
  FILL_TARGET,
  FIXED,
  FREE_LEFT,
  HELD,
  ON_THE_WAY,
  OPEN,
  ORDERS,
  PAID,
  PRICE,
  RESOLD,
  REVIEW,
  SHELF,
  SHIP_COST,
  SHIPPED,
  SLACK,
  SLIPS,
  SOLD,
  STATE,
  STAYED,
  STAYS,
  TERMS,
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

/** What shipped arrives after its transit; shoppers take what they want and the shelf has; reviews take theirs back. */
function sell(coarse: Coarse, draw: Draw, bench: Bench, w: number): void {
  const { rows, longestTransit, slipping, fixed, terms, transit } = coarse;
  const { shift, state, arriving } = bench;
  const { ramp } = draw;
  const week = w * rows;
  const lanes = (longestTransit + 1) * rows;
  const lane = week % lanes;
  for (let l = 0; l < rows; l++) {
    const at = week * SLIPS + (shift[l] ?? 0);
    const own = l * STATE;
    // Lanes follow each other in a ring; a division for each row would cost as much as the rest of its turn.
    const way = lane + (transit[l] ?? 0) * rows;
    const arrives = (way < lanes ? way : way - lanes) + l;
    const ships = state[own + SHIPPED] ?? 0;
    arriving[arrives] = (arriving[arrives] ?? 0) + ships;
    const arrived = arriving[lane + l] ?? 0;
    arriving[lane + l] = 0;
    state[own + ON_THE_WAY] = (state[own + ON_THE_WAY] ?? 0) + ships - arrived;
    // What stores send back leaves the shelf, and is ordered anew.
    const stayed = arrived * (terms[l * TERMS + STAYED] ?? 1);
    const stands = (state[own + SHELF] ?? 0) * (slipping[at + STAYS] ?? 1) + stayed;
    const mature = (slipping[at + DEMAND] ?? 0) - ramp * (slipping[at + WITHHELD] ?? 0);
    const wanted = mature * (state[own + WANT] ?? 0) * (fixed[(week + l) * FIXED + CALENDAR] ?? 1);
    const taken = Math.min(Math.max(wanted, 0), stands);
    state[own + SOLD] = taken;
    state[own + SHELF] = stands - taken;
    if ((slipping[at + REVIEW] ?? 0) > 0) settleReview(coarse, bench, l, w);
  }
}

/** The doors reviewed this week send back their part of what was held, as far as the shelf has it. */
function settleReview(coarse: Coarse, bench: Bench, l: number, w: number): void {
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
}

/** Stores order up to their level, whole cases a door, at the end of order weeks. */
function reorder(coarse: Coarse, bench: Bench, w: number): void {
  const { rows, slipping, fixed, terms } = coarse;
  const { shift, state } = bench;
  for (let l = 0; l < rows; l++) {
    const week = (w * rows + l) * FIXED;
    if (fixed[week + ORDERS] === 0) continue;
    const at = w * rows * SLIPS + (shift[l] ?? 0);
    const own = l * STATE;
    const opening = state[own + DOORS] ?? 0;
    const wants = (state[own + WANT] ?? 0) * (fixed[week + CALENDAR_AHEAD] ?? 1);
    const fills = (slipping[at + FILL_TARGET] ?? 0) * opening;
    const ahead = (slipping[at + AHEAD] ?? 0) * wants;
    const target = Math.max(fills, ahead) + (slipping[at + DEPOT_AHEAD] ?? 0) * wants;
    const waits = state[own + OPEN] ?? 0;
    const there = (state[own + SHELF] ?? 0) + (state[own + ON_THE_WAY] ?? 0) + waits;
    const beyond = target - there - (slipping[at + SLACK] ?? 0) * opening;
    if (beyond >= (terms[l * TERMS + CASE_UNITS] ?? 1)) state[own + OPEN] = waits + beyond;
  }
}
