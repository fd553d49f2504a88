// A run of draws from one number to another: what a worker does. The draws of a chunk depend on their numbers alone, so
// it doesn't matter who does which. Worked figure: 500 draws of 104 weeks are three series of 52,000 places.
import type { Plan } from '../../plan/index.ts';
import type { Results } from '../../results.ts';
import { withoutFunding } from '../../rollout/index.ts';
import { evidenceFor } from '../evidence.ts';
import { type Bench, type Draw, newBench, noChange } from './bench.ts';
import { type Coarse, coarseOf } from './coarse.ts';
import { CAUSES, type Drawing, type DrawnDetail, drawInto, drawingOf, newDetail } from './draws.ts';
import { runDraw } from './kernel.ts';
import { type Varies, whatVaries } from './varies.ts';

export interface RangeArgs {
  plan: Plan;
  results: Results;
  /** 0 to 2^32 - 1. */
  seed: number;
}

/** A plan ready to be drawn. */
export interface RangeSetup {
  args: RangeArgs;
  coarse: Coarse;
  varies: Varies;
  drawing: Drawing;
  bench: Bench;
  draw: Draw;
  detail: DrawnDetail;
  causes: Float64Array;
  anchors: Anchors;
}

/** By week: the plan's own exact figures, and what the coarser pass makes of the plan; a draw adds the difference. */
export interface Anchors {
  cash: Float64Array;
  low: Float64Array;
  /** Without the funding the plan counts on. */
  unfundedLow: Float64Array;
  revenue: Float64Array;
  doors: Float64Array;
  coarse: { cash: Float64Array; low: Float64Array; revenue: Float64Array; doors: Float64Array };
}

/** Money in minor units. Series are [week x count + draw - from]. */
export interface Chunk {
  from: number;
  count: number;
  cash: Float64Array;
  revenue: Float64Array;
  doors: Float64Array;
  /** By draw: lowest cash with the plan's funding, and what is needed without it. */
  lowest: Float64Array;
  need: Float64Array;
  /** [cause x count + draw - from]: CAUSES, then each account. */
  causes: Float64Array;
}

export function setUpRange(args: RangeArgs): RangeSetup {
  const { plan, results } = args;
  const { compiled, free } = results;
  const rates = plan.items.map(({ id }) => evidenceFor(plan, id)?.rate ?? null);
  const varies = whatVaries(plan, rates);
  const coarse = coarseOf({ plan, compiled, shippable: free.shippable, longestSlip: varies.longestSlip });
  const bench = newBench(coarse);
  const draw = noChange(coarse);
  const { cash, low, revenue, doors } = runDraw(coarse, draw, bench);
  return {
    args,
    coarse,
    varies,
    drawing: drawingOf(varies, coarse, args.seed),
    bench,
    draw,
    detail: newDetail(coarse.accounts),
    causes: new Float64Array(CAUSES.length + coarse.accounts),
    anchors: {
      cash: results.pass.balances.cash,
      low: results.pass.low,
      unfundedLow: withoutFunding(compiled, free, results.pass).low,
      revenue: results.pass.profit.invoiced,
      doors: doorsByWeek(results),
      coarse: { cash: cash.slice(), low: low.slice(), revenue: revenue.slice(), doors: doors.slice() },
    },
  };
}

function doorsByWeek({ pass }: Results): Float64Array {
  return Float64Array.from({ length: pass.weeks }, (_, w) =>
    pass.accounts.reduce((sum, { doors }) => sum + (doors[w] ?? 0), 0),
  );
}

/** Draws [from, until). */
export function runChunk(setup: RangeSetup, from: number, until: number): Chunk {
  const { coarse, drawing, draw, detail, causes } = setup;
  const count = until - from;
  const chunk: Chunk = {
    from,
    count,
    cash: new Float64Array(coarse.weeks * count),
    revenue: new Float64Array(coarse.weeks * count),
    doors: new Float64Array(coarse.weeks * count),
    lowest: new Float64Array(count),
    need: new Float64Array(count),
    causes: new Float64Array(causes.length * count),
  };
  for (let n = 0; n < count; n++) {
    drawInto(drawing, from + n, { draw, detail, causes });
    runDraw(coarse, draw, setup.bench);
    write(setup, chunk, n);
    for (let cause = 0; cause < causes.length; cause++) {
      chunk.causes[cause * count + n] = causes[cause] ?? 0;
    }
  }
  return chunk;
}

/** The plan's own figures, and the difference the draw makes. */
function write({ anchors, bench, coarse }: RangeSetup, chunk: Chunk, n: number): void {
  const { cash, low, revenue, doors } = bench.run;
  const base = anchors.coarse;
  const { count } = chunk;
  let lowest = Number.POSITIVE_INFINITY;
  let unfunded = Number.POSITIVE_INFINITY;
  for (let w = 0; w < coarse.weeks; w++) {
    const at = w * count + n;
    chunk.cash[at] = (anchors.cash[w] ?? 0) + ((cash[w] ?? 0) - (base.cash[w] ?? 0));
    const planned = anchors.revenue[w] ?? 0;
    // A week that the coarser pass sells in and the plan doesn't would come out below nothing where it sells less.
    const least = Math.min(0, planned);
    chunk.revenue[at] = Math.max(least, planned + ((revenue[w] ?? 0) - (base.revenue[w] ?? 0)));
    chunk.doors[at] = (anchors.doors[w] ?? 0) + ((doors[w] ?? 0) - (base.doors[w] ?? 0));
    const moved = (low[w] ?? 0) - (base.low[w] ?? 0);
    lowest = Math.min(lowest, (anchors.low[w] ?? 0) + moved);
    unfunded = Math.min(unfunded, (anchors.unfundedLow[w] ?? 0) + moved);
  }
  chunk.lowest[n] = lowest;
  chunk.need[n] = Math.max(0, -unfunded);
}
