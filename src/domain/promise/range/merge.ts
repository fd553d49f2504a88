// Chunks of draws read as one range: quantiles by week, the chance that cash runs out, what is needed, which input moves
// the lowest cash most, and how far chance alone may have moved all of it. Which chunks there are makes no difference.
// Worked figure: cash falls below 0 in 1,200 of 10,000 draws: a chance of 0.12, 0.114 to 0.127 with 95 %.
import type { Chunk } from './chunk.ts';
import { CAUSES, type Cause } from './draws.ts';
import { chanceLimits, type Limits, placeOf, placesAround, valuesAt } from './quantiles.ts';
import { correlationLimits, correlationOf, ranksOf } from './rank.ts';

/** By week. A tenth of the draws is at or below p10, half at or below p50. */
export interface Fan {
  p10: Float64Array;
  p50: Float64Array;
  p90: Float64Array;
}

export interface Driver {
  cause: Cause | 'opens';
  /** Of `opens`: the account's place in the plan. */
  account: number | null;
  /** Spearman's, with the lowest cash of the draw: above 0, more of it leaves more cash. */
  correlation: number;
  limits: Limits;
}

export interface Range {
  draws: number;
  weeks: number;
  /** Money in minor units. */
  cash: Fan;
  revenue: Fan;
  doors: Fan;
  /** Lowest cash within any week. */
  lowest: { p10: number; p50: number; p90: number };
  /** Share of draws whose cash falls below 0 within a week, with the plan's funding. */
  chanceCashOut: number;
  /** Without new funding; 80 % of draws need no more than p80. */
  need: { p50: number; p80: number; p95: number };
  /** The strongest first; only those that vary. */
  drivers: Driver[];
  /** 95 % limits of what more draws would say. */
  monteCarloError: {
    chanceCashOut: Limits;
    need: { p50: Limits; p80: Limits; p95: Limits };
    lowest: { p10: Limits; p50: Limits; p90: Limits };
  };
}

const SHARES = [0.1, 0.5, 0.9] as const;
const NEED_SHARES = [0.5, 0.8, 0.95] as const;

/** At least one chunk, together draws 0 to n - 1, in any order. */
export function mergeChunks(unordered: readonly Chunk[], weeks: number): Range {
  const chunks = [...unordered].sort((one, other) => one.from - other.from);
  const draws = chunks.reduce((sum, { count }) => sum + count, 0);
  const scratch = new Float64Array(draws);
  const lowest = joined(chunks, ({ lowest: values }) => values, draws);
  const need = joined(chunks, ({ need: values }) => values, draws);
  let out = 0;
  for (const low of lowest) if (low < 0) out += 1;
  const lowestAt = withLimits(lowest, SHARES);
  const needAt = withLimits(need, NEED_SHARES);
  return {
    draws,
    weeks,
    cash: fanOf(chunks, ({ cash }) => cash, weeks, scratch),
    revenue: fanOf(chunks, ({ revenue }) => revenue, weeks, scratch),
    doors: fanOf(chunks, ({ doors }) => doors, weeks, scratch),
    lowest: { p10: lowestAt[0].value, p50: lowestAt[1].value, p90: lowestAt[2].value },
    chanceCashOut: out / draws,
    need: { p50: needAt[0].value, p80: needAt[1].value, p95: needAt[2].value },
    drivers: driversOf(chunks, lowest, draws),
    monteCarloError: {
      chanceCashOut: chanceLimits(out, draws),
      need: { p50: needAt[0].limits, p80: needAt[1].limits, p95: needAt[2].limits },
      lowest: { p10: lowestAt[0].limits, p50: lowestAt[1].limits, p90: lowestAt[2].limits },
    },
  };
}

function joined(chunks: readonly Chunk[], of: (chunk: Chunk) => Float64Array, draws: number): Float64Array {
  const all = new Float64Array(draws);
  let place = 0;
  for (const chunk of chunks) {
    all.set(of(chunk), place);
    place += chunk.count;
  }
  return all;
}

function fanOf(
  chunks: readonly Chunk[],
  of: (chunk: Chunk) => Float64Array,
  weeks: number,
  scratch: Float64Array,
): Fan {
  const fan = {
    p10: new Float64Array(weeks),
    p50: new Float64Array(weeks),
    p90: new Float64Array(weeks),
  };
  const places = SHARES.map((share) => placeOf(share, scratch.length));
  for (let w = 0; w < weeks; w++) {
    let place = 0;
    for (const chunk of chunks) {
      scratch.set(of(chunk).subarray(w * chunk.count, (w + 1) * chunk.count), place);
      place += chunk.count;
    }
    const [low = 0, middle = 0, high = 0] = valuesAt(scratch, places);
    fan.p10[w] = low;
    fan.p50[w] = middle;
    fan.p90[w] = high;
  }
  return fan;
}

interface Known {
  value: number;
  limits: Limits;
}

function withLimits(values: Float64Array, shares: readonly [number, number, number]): [Known, Known, Known] {
  const known = (share: number): Known => {
    const { low, high } = placesAround(share, values.length);
    const [value = 0, least = 0, most = 0] = valuesAt(values, [placeOf(share, values.length), low, high]);
    return { value, limits: { low: least, high: most } };
  };
  return [known(shares[0]), known(shares[1]), known(shares[2])];
}

/** Fewer draws say nothing of correlations. */
const LEAST_DRAWS = 10;

function driversOf(chunks: readonly Chunk[], lowest: Float64Array, draws: number): Driver[] {
  if (draws < LEAST_DRAWS) return [];
  const outcome = ranksOf(lowest);
  const causes = (chunks[0]?.causes.length ?? 0) / (chunks[0]?.count ?? 1);
  const drivers: Driver[] = [];
  for (let cause = 0; cause < causes; cause++) {
    const values = joined(
      chunks,
      (chunk) => chunk.causes.subarray(cause * chunk.count, (cause + 1) * chunk.count),
      draws,
    );
    const correlation = correlationOf(ranksOf(values), outcome);
    if (correlation === null) continue;
    const name = CAUSES[cause];
    drivers.push({
      cause: name ?? 'opens',
      account: name === undefined ? cause - CAUSES.length : null,
      correlation,
      limits: correlationLimits(correlation, draws),
    });
  }
  return drivers.sort((one, other) => Math.abs(other.correlation) - Math.abs(one.correlation));
}
