// What a draw changes, and the memory that every draw writes over: nothing is made anew in the inner loops.
// Worked figure: a draw of factors 1, slips 0 and nothing late is the plan's own run, bit for bit, every time.
import type { Coarse } from './coarse.ts';
import {
  DEDUCTED,
  DOORS,
  KEPT,
  OPENING_SHELF,
  RETURNED,
  SHELF,
  SLIPS,
  STATE,
  TERMS,
  WANT,
} from './places.ts';

/** One draw. Rates and shares are factors or parts, weeks whole. */
export interface Draw {
  /** By row: times the plan's rate of sale. */
  rate: Float64Array;
  /** By account: 1 when its doors open, 0 when they don't; and, of those that open, times the plan's that sell (voids). */
  opens: Float64Array;
  sells: Float64Array;
  /** By account: weeks its openings come later, at most the coarse plan's pad. */
  slip: Int32Array;
  /** By account: weeks it pays later; may be below 0, never before it would at no lateness. */
  late: Int32Array;
  /** By account: part of an invoice deducted beside the plan's deductions; may be below 0. */
  deducted: Float64Array;
  /** Of what the ramp withholds, so much more (0: as planned; 1: twice). */
  ramp: number;
  /** Times what goods cost. */
  goods: number;
}

export function noChange({ rows, accounts }: Pick<Coarse, 'rows' | 'accounts'>): Draw {
  return {
    rate: new Float64Array(rows).fill(1),
    opens: new Float64Array(accounts).fill(1),
    sells: new Float64Array(accounts).fill(1),
    slip: new Int32Array(accounts),
    late: new Int32Array(accounts),
    deducted: new Float64Array(accounts),
    ramp: 0,
    goods: 1,
  };
}

/** Cash by week, from 0 on, without what no draw changes; and the revenue and doors it made. */
export interface CoarseRun {
  cash: Float64Array;
  low: Float64Array;
  revenue: Float64Array;
  doors: Float64Array;
}

export interface Bench {
  run: CoarseRun;
  /** [row x STATE + place] (places.ts) */
  state: Float64Array;
  /** By row, for the draw: where its slipping series begin to be read, and weeks until invoices are paid. */
  shift: Int32Array;
  collect: Int32Array;
  /** [week modulo lanes x rows + row] */
  arriving: Float64Array;
  /** [week x accounts + account], and a last week for all that is later: what comes in, and what is taken off it. */
  due: Float64Array;
  claimed: Float64Array;
  /** By account: claims still open. */
  claims: Float64Array;
  /** By week, the last place for all that is later: what is paid. */
  owed: Float64Array;
  /** By item, by week it lands. */
  landing: Float64Array[];
  hours: Float64Array[];
  /** By item. */
  ours: Float64Array;
  onOrder: Float64Array;
  backlog: Float64Array;
}

export function newBench(coarse: Coarse): Bench {
  const { weeks, rows, items, accounts, longestTransit } = coarse;
  return {
    run: {
      cash: new Float64Array(weeks),
      low: new Float64Array(weeks),
      revenue: new Float64Array(weeks),
      doors: new Float64Array(weeks),
    },
    state: new Float64Array(rows * STATE),
    shift: new Int32Array(rows),
    collect: new Int32Array(rows),
    arriving: new Float64Array(rows * (longestTransit + 1)),
    due: new Float64Array((weeks + 1) * accounts),
    claimed: new Float64Array((weeks + 1) * accounts),
    claims: new Float64Array(accounts),
    owed: new Float64Array(weeks + 1),
    landing: coarse.buys.map(({ landing }) => new Float64Array(landing.length)),
    hours: coarse.hours.map((hours) => new Float64Array(hours.length)),
    ours: new Float64Array(items),
    onOrder: new Float64Array(items),
    backlog: new Float64Array(items),
  };
}

/** The bench as a draw begins. */
export function layOut(coarse: Coarse, draw: Draw, bench: Bench): void {
  const { rows, pad, account, running, terms } = coarse;
  const { state, due, claimed, claims, owed, backlog, arriving } = bench;
  for (const zeroed of [state, due, claimed, claims, owed, backlog, arriving]) zeroed.fill(0);
  for (let l = 0; l < rows; l++) {
    const a = account[l] ?? 0;
    const isRunning = running[l] === 1;
    const doors = isRunning ? 1 : (draw.opens[a] ?? 0) * (draw.sells[a] ?? 0);
    const own = l * STATE;
    const its = l * TERMS;
    bench.shift[l] = ((pad - (isRunning ? 0 : (draw.slip[a] ?? 0))) * rows + l) * SLIPS;
    bench.collect[l] = Math.max(0, (coarse.collect[l] ?? 0) + (draw.late[a] ?? 0));
    state[own + DOORS] = doors;
    state[own + WANT] = doors * (draw.rate[l] ?? 1);
    state[own + KEPT] =
      1 - (terms[its + DEDUCTED] ?? 0) - (terms[its + RETURNED] ?? 0) - (draw.deducted[a] ?? 0);
    state[own + SHELF] = terms[its + OPENING_SHELF] ?? 0;
  }
  coarse.buys.forEach((item, i) => {
    bench.landing[i]?.set(item.landing);
    bench.ours[i] = item.opening;
    bench.onOrder[i] = item.onOrder;
  });
  coarse.hours.forEach((hours, line) => {
    bench.hours[line]?.set(hours);
  });
}
