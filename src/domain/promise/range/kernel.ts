// One draw through the coarser pass: the weekly order of events of PASS.md (receipts, purchase order, shipping, sales,
// orders, money) a listing at a time. The inner loop runs some 12 million times a range: plain locals, typed arrays.
// Worked figure: a draw of factors 1, slips 0 and nothing late is the plan's own run, bit for bit, every time.
import { type Coarse, SELLING_LAG } from './coarse.ts';

/** What a draw changes, by account and for all. */
export interface Draw {
  /** Times the plan's rate of sale. */
  rate: Float64Array;
  /** Share of the planned doors that open. */
  doors: Float64Array;
  /** Weeks everything at the account comes later. */
  slip: Int32Array;
  /** Weeks it pays later. */
  late: Int32Array;
  /** Of what the ramp withholds, more (up to 1) or less (down to -1). */
  ramp: number;
  /** Times what goods cost, and times what is deducted. */
  cost: number;
  deductions: number;
}

export function noChange(coarse: Coarse): Draw {
  return {
    rate: new Float64Array(coarse.accounts).fill(1),
    doors: new Float64Array(coarse.accounts).fill(1),
    slip: new Int32Array(coarse.accounts),
    late: new Int32Array(coarse.accounts),
    ramp: 0,
    cost: 1,
    deductions: 1,
  };
}

/** Cash by week, from 0 on, without what no draw changes; and what revenue and units it made. */
export interface CoarseRun {
  cash: Float64Array;
  low: Float64Array;
  revenue: Float64Array;
  units: Float64Array;
}

const TAIL = 160;

/** Memory that every draw writes over. */
export interface Bench {
  run: CoarseRun;
  shelf: Float64Array;
  transit: Float64Array;
  open: Float64Array;
  freeLeft: Float64Array;
  held: Float64Array;
  arriving: Float64Array;
  due: Float64Array;
  owed: Float64Array;
  landing: Float64Array[];
  /** Seconds left by week. */
  hours: Float64Array[];
  ours: Float64Array;
  onOrder: Float64Array;
  backlog: Float64Array;
}

export function newBench(coarse: Coarse): Bench {
  const { weeks, rows, items } = coarse;
  return {
    run: {
      cash: new Float64Array(weeks),
      low: new Float64Array(weeks),
      revenue: new Float64Array(weeks),
      units: new Float64Array(weeks),
    },
    shelf: new Float64Array(rows),
    transit: new Float64Array(rows),
    open: new Float64Array(rows),
    freeLeft: new Float64Array(rows),
    held: new Float64Array(rows),
    arriving: new Float64Array(rows * (coarse.longestTransit + 1)),
    due: new Float64Array(weeks + TAIL),
    owed: new Float64Array(weeks + TAIL),
    landing: coarse.buys.map(({ landing }) => new Float64Array(landing.length)),
    hours: coarse.hours.map((hours) => new Float64Array(hours.length)),
    ours: new Float64Array(items),
    onOrder: new Float64Array(items),
    backlog: new Float64Array(items),
  };
}

/** The draw's run, to be read until the next one. */
export function runDraw(coarse: Coarse, draw: Draw, bench: Bench): CoarseRun {
  const { weeks, items } = coarse;
  const { run, due, owed } = bench;
  reset(coarse, bench);
  let cash = 0;
  for (let w = 0; w < weeks; w++) {
    let out = owed[w] ?? 0;
    for (let i = 0; i < items; i++) out += buy(coarse, draw, bench, i, w);
    run.revenue[w] = 0;
    run.units[w] = 0;
    for (let i = 0; i < items; i++) out += sell(coarse, draw, bench, i, w);
    out += fixedSums(coarse, draw, bench, w);
    // What falls due within the week itself (no lead, no terms) is in by now.
    run.low[w] = cash - out;
    cash += (due[w] ?? 0) - out;
    run.cash[w] = cash;
  }
  return run;
}

function reset(coarse: Coarse, bench: Bench): void {
  bench.shelf.set(coarse.openingShelf);
  bench.transit.fill(0);
  bench.open.fill(0);
  bench.freeLeft.fill(0);
  bench.held.fill(0);
  bench.arriving.fill(0);
  bench.due.fill(0);
  bench.owed.fill(0);
  bench.backlog.fill(0);
  coarse.buys.forEach((item, i) => {
    const landing = bench.landing[i] as Float64Array;
    landing.set(item.landing);
    bench.ours[i] = item.opening;
    bench.onOrder[i] = item.onOrder;
  });
  coarse.hours.forEach((hours, line) => {
    bench.hours[line]?.set(hours);
  });
}

/** Goods land, and what the plan's forecast will need is ordered; returns what is paid now. */
function buy(coarse: Coarse, draw: Draw, bench: Bench, i: number, w: number): number {
  const item = coarse.buys[i] as Coarse['buys'][number];
  const landing = bench.landing[i] as Float64Array;
  let ours = bench.ours[i] ?? 0;
  let onOrder = bench.onOrder[i] ?? 0;
  const landed = landing[w] ?? 0;
  ours += landed;
  onOrder -= landed;
  const { line } = item;
  let paid = 0;
  const need = (item.ahead[w] ?? 0) + (bench.backlog[i] ?? 0) - ours - onOrder;
  if (need > 0) {
    let left = Math.ceil(Math.max(need, item.minimum) / item.batch) * item.batch;
    const goods = item.goods * draw.cost;
    for (let t = w + item.lead; left > 0 && t < landing.length; t++) {
      let part = (item.capacity[t] ?? 0) - (landing[t] ?? 0);
      if (line !== null) part = Math.min(part, takeHours(bench, line, t, Math.min(left, part)));
      if (part > left) part = left;
      if (part <= 0) continue;
      landing[t] = (landing[t] ?? 0) + part;
      left -= part;
      onOrder += part;
      paid += part * goods * item.depositRate;
      owe(bench, t, part * item.freight);
      owe(bench, t + item.supplierWeeks, part * goods * (1 - item.depositRate));
    }
    if (item.lead === 0) {
      const more = (landing[w] ?? 0) - landed;
      ours += more;
      onOrder -= more;
    }
  }
  bench.ours[i] = ours;
  bench.onOrder[i] = onOrder;
  return paid;
}

/** Units of those wanted that the line has hours for in a week; the hours are taken. */
function takeHours(
  bench: Bench,
  { hours, unitsPerHour }: { hours: number; unitsPerHour: number },
  week: number,
  wanted: number,
): number {
  const seconds = bench.hours[hours] as Float64Array;
  const place = Math.min(week, seconds.length - 1);
  const left = seconds[place] ?? 0;
  const units = Math.min(wanted, Math.floor((left * unitsPerHour) / 3600));
  // After the horizon the last week stands for all: nothing is taken from it.
  if (units > 0 && week < seconds.length) seconds[place] = left - Math.ceil((units * 3600) / unitsPerHour);
  return units;
}

function owe({ owed }: Bench, week: number, amount: number): void {
  if (week < owed.length) owed[week] = (owed[week] ?? 0) + amount;
}

/** Shipping, sales and orders of an item's listings, in shipping order; returns what shipping costs. */
function sell(coarse: Coarse, draw: Draw, bench: Bench, i: number, w: number): number {
  const { weeks, rows, account, longestTransit } = coarse;
  const { shelf, transit, open, arriving, freeLeft, held, due, owed, run } = bench;
  const round = longestTransit + 1;
  const until = coarse.itemFirst[i + 1] ?? 0;
  let ours = bench.ours[i] ?? 0;
  let backlog = 0;
  let out = 0;
  let revenue = 0;
  let units = 0;
  for (let l = coarse.itemFirst[i] ?? 0; l < until; l++) {
    const a = account[l] ?? 0;
    const isRunning = coarse.running[l] === 1;
    const then = isRunning ? w : w - (draw.slip[a] ?? 0);
    if (then < 0) continue;
    const at = l * weeks + then;
    const doors = isRunning ? 1 : (draw.doors[a] ?? 0);
    const filled = (coarse.fill[at] ?? 0) * doors;
    let waits = open[l] ?? 0;
    if (filled > 0) {
      waits += filled;
      freeLeft[l] = (freeLeft[l] ?? 0) + (coarse.fillFree[at] ?? 0) * doors;
    }
    const ships = waits < ours ? waits : ours;
    ours -= ships;
    waits -= ships;
    const free = Math.min(freeLeft[l] ?? 0, ships);
    freeLeft[l] = (freeLeft[l] ?? 0) - free;
    out += ships * (coarse.shipCost[l] ?? 0);
    const lane = (coarse.transit[l] ?? 0) % round;
    const arrives = ((w + lane) % round) * rows + l;
    arriving[arrives] = (arriving[arrives] ?? 0) + ships;
    const here = (w % round) * rows + l;
    const arrived = arriving[here] ?? 0;
    arriving[here] = 0;
    const onTheWay = (transit[l] ?? 0) + ships - arrived;
    const stands = (shelf[l] ?? 0) * (coarse.stays[at] ?? 1) + arrived;
    const rate = (draw.rate[a] ?? 1) * doors;
    const wanted = ((coarse.demand[at] ?? 0) - draw.ramp * (coarse.withheld[at] ?? 0)) * rate;
    const sold = wanted < stands ? (wanted > 0 ? wanted : 0) : stands;
    let left = stands - sold;
    const paid = ships - free;
    const review = coarse.review[l] ?? -1;
    if (review >= 0 && then <= review) {
      const kept =
        (held[l] ?? 0) + (then + (coarse.transit[l] ?? 0) < review ? paid * (coarse.held[l] ?? 0) : 0);
      const back = then === review ? Math.min(kept, left) : 0;
      left -= back;
      held[l] = then === review ? 0 : kept;
      const week = w + (coarse.collect[l] ?? 0);
      if (back > 0 && week < due.length) due[week] = (due[week] ?? 0) - back * (coarse.price[at] ?? 0);
    }
    shelf[l] = left;
    transit[l] = onTheWay;
    units += sold;
    const invoice = ((coarse.onScan[l] ?? 0) === 1 ? sold : paid) * (coarse.price[at] ?? 0);
    if (invoice > 0) {
      revenue += invoice;
      const kept = invoice * (1 - (coarse.deducted[l] ?? 0) * draw.deductions - (coarse.returned[l] ?? 0));
      const early = kept * (coarse.earlyShare[l] ?? 0);
      const lateness = draw.late[a] ?? 0;
      const onTime = w + (coarse.collectEarly[l] ?? 0);
      const later = w + (coarse.collect[l] ?? 0) + lateness;
      if (early > 0 && onTime < due.length)
        due[onTime] = (due[onTime] ?? 0) + early * (coarse.earlyKept[l] ?? 1);
      if (later < due.length) due[later] = (due[later] ?? 0) + kept - early;
      const selling = invoice * (coarse.sellingShare[l] ?? 0);
      if (selling > 0) owed[w + SELLING_LAG] = (owed[w + SELLING_LAG] ?? 0) + selling;
    }
    const claimed = sold * (coarse.claimPerSold[at] ?? 0);
    if (claimed > 0) {
      const week = w + (coarse.claimLag[l] ?? 0);
      if (week < due.length) due[week] = (due[week] ?? 0) - claimed * draw.deductions;
    }
    // What is ordered below is not yet late: the forecast has it.
    backlog += waits;
    if ((coarse.orders[l * weeks + w] ?? 0) === 1) {
      const fills = (coarse.fillTarget[at] ?? 0) * doors;
      const ahead = (coarse.aheadTarget[at] ?? 0) * rate;
      const target = fills > ahead ? fills : ahead;
      const beyond = target - left - onTheWay - waits - (coarse.slack[at] ?? 0) * doors;
      if (beyond >= (coarse.caseUnits[l] ?? 1)) waits += beyond;
    }
    open[l] = waits;
  }
  bench.ours[i] = ours;
  bench.backlog[i] = backlog;
  run.revenue[w] = (run.revenue[w] ?? 0) + revenue;
  run.units[w] = (run.units[w] ?? 0) + units;
  return out;
}

/** Slotting, fees, displays: by the doors that open, when they open. */
function fixedSums(coarse: Coarse, draw: Draw, bench: Bench, w: number): number {
  const { weeks, accounts } = coarse;
  let out = 0;
  for (let a = 0; a < accounts; a++) {
    const then = w - (draw.slip[a] ?? 0);
    if (then < 0) continue;
    const doors = draw.doors[a] ?? 0;
    out += (coarse.fixedOut[a * weeks + then] ?? 0) * doors;
    const claimed = (coarse.fixedClaims[a * weeks + then] ?? 0) * doors;
    if (claimed > 0) bench.due[w] = (bench.due[w] ?? 0) - claimed;
  }
  return out;
}
