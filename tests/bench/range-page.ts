/**
 * What the range's speed test runs inside a real browser, in one page and one run: 10,000 draws of 104 weeks, 12 accounts
 * and one item in two workers; the draws' kernel alone; and beside it a loop that does as many multiply-adds in registers.
 */
import { createRangePool, type RangePool } from '../../src/compute/range-pool.ts';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { type Range, runChunk, setUpRange } from '../../src/domain/promise/range/index.ts';
import { runDraw } from '../../src/domain/promise/range/kernel.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { bigPlan } from '../support/big-plan.ts';

export interface RangeTimes {
  rows: number;
  weeks: number;
  /** Milliseconds, with the workers' start. */
  cold: Timed;
  /** Milliseconds; the first is the first after workers were started ahead. */
  runs: Timed[];
  /** The longest the page's own thread was not free, while the workers ran. */
  longestHeld: number;
  /** Nanoseconds of a row and week, the fastest of many short turns. */
  kernel: number;
  registers: number;
  multiplyAdds: number;
  bytes: number;
  chances: number[];
}

const DRAWS = 10_000;
const RUNS = 7;

/**
 * Counted in kernel.ts and kernel-money.ts, of a row in a week of a plan like this one: 23 multiplications and 33 additions,
 * those of an account's sums in; comparisons, and all that indexes cost, left out. A multiply-add is one of each.
 */
const MULTIPLY_ADDS = 28;

/** Twelve accounts with one item each, as uncertain as a new plan is. */
function rangePlan(): Plan {
  const plan = bigPlan();
  return {
    ...plan,
    items: plan.items.slice(0, 1),
    accounts: plan.accounts.map((account) => ({
      ...account,
      listings: account.listings.slice(0, 1),
      standing: { rung: 'saidYes', chance: null, slipLikelyWeeks: 2, slipMostWeeks: 8, papers: [] },
    })),
  };
}

function fastest(turns: number, work: () => void): number {
  let best = Number.POSITIVE_INFINITY;
  for (let turn = 0; turn < turns; turn++) {
    const start = performance.now();
    work();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

/** Four sums side by side, so that none waits for the one before: as many multiply-adds as asked for, nothing else. */
function inRegisters(times: number): number {
  let [a, b, c, d] = [1.1, 1.2, 1.3, 1.4];
  for (let turn = 0; turn < times; turn += 4) {
    a = a * 0.999999 + 1e-9;
    b = b * 0.999999 + 1e-9;
    c = c * 0.999999 + 1e-9;
    d = d * 0.999999 + 1e-9;
  }
  return a + b + c + d;
}

/** Milliseconds between looks at the page's thread: seldom enough that looking takes nothing from the workers. */
const LOOK_EVERY = 4;

/** How much later than due the page's thread got its turn at worst; the function returned tells it, and ends the looks. */
function heartbeat(): () => number {
  let [last, longest] = [performance.now(), 0];
  const timer = setInterval(() => {
    const now = performance.now();
    longest = Math.max(longest, now - last - LOOK_EVERY);
    last = now;
  }, LOOK_EVERY);
  return () => {
    clearInterval(timer);
    return longest;
  };
}

interface Timed {
  firstFan: number;
  whole: number;
}

/** One range, from the question to all draws read. */
async function timed(pool: RangePool, plan: Plan, seed: number): Promise<Timed & { range: Range }> {
  const start = performance.now();
  let firstFan = 0;
  const range = await new Promise<Range>((settle, fail) => {
    pool.ask({ plan, draws: DRAWS, seed }, (found) => {
      if ('trouble' in found) return fail(new Error(found.trouble));
      if (found.range === null) return;
      if (firstFan === 0) firstFan = performance.now() - start;
      if (found.range.draws === DRAWS) settle(found.range);
    });
  });
  return { firstFan, whole: performance.now() - start, range };
}

/** Longer than workers take to start, and than the check on the exact pass goes on: no run is to wait for either. */
const quiet = () => new Promise((done) => setTimeout(done, 1500));

async function pooled(plan: Plan): Promise<Pick<RangeTimes, 'cold' | 'runs' | 'longestHeld' | 'chances'>> {
  const { rangeWorkerScript } = globalThis as unknown as { rangeWorkerScript: string };
  const address = URL.createObjectURL(new Blob([rangeWorkerScript], { type: 'text/javascript' }));
  const pool = createRangePool(() => new Worker(address), 2);
  const { range: _, ...cold } = await timed(pool, plan, 0);
  pool.stop();
  // As a view does that offers a range.
  pool.warmUp({ plan, draws: DRAWS, seed: 0 });
  await quiet();
  const runs: RangeTimes['runs'] = [];
  const chances: number[] = [];
  let longestHeld = 0;
  for (let run = 0; run < RUNS; run++) {
    const beat = heartbeat();
    const { range, ...times } = await timed(pool, plan, run);
    longestHeld = Math.max(longestHeld, beat());
    runs.push(times);
    chances.push(range.lowest.p50);
    await quiet();
  }
  pool.stop();
  return { cold, runs, longestHeld, chances };
}

export async function run(): Promise<RangeTimes> {
  const plan = rangePlan();
  const evaluated = evaluate(plan, ({ minorDigits, startDay }) =>
    plainSay({ minorDigits, startDay, dateOf: isoDateOf }),
  );
  if (!evaluated.ok) throw new Error(JSON.stringify(evaluated.problems));
  const setup = setUpRange({ plan, results: evaluated.value, seed: 1 });
  const { rows, weeks } = setup.coarse;
  const chunk = runChunk(setup, 0, 1500);
  inRegisters(1_000_000);
  // Long enough for a clock of a tenth of a millisecond.
  const draws = 150;
  const cells = draws * rows * weeks;
  const turn = () => {
    for (let draw = 0; draw < draws; draw++) runDraw(setup.coarse, setup.draw, setup.bench);
  };
  const kernel = (fastest(150, turn) * 1e6) / cells;
  const registers = (fastest(150, () => inRegisters(cells * MULTIPLY_ADDS)) * 1e6) / cells;
  const perDraw = chunk.cash.byteLength + chunk.revenue.byteLength + chunk.doors.byteLength;
  const bytes = ((perDraw + chunk.causes.byteLength) / chunk.count) * DRAWS;
  return { rows, weeks, kernel, registers, multiplyAdds: MULTIPLY_ADDS, bytes, ...(await pooled(plan)) };
}

Object.assign(globalThis, { firstfillRangeBench: run });
