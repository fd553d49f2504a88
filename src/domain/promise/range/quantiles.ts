// Quantiles of many draws without sorting them all, and how far chance alone may have moved them. A quantile here is the
// lowest value that at least that share of the draws does not pass (the inverse of the empirical distribution).
// Worked figure: of 1, 2, ... 10 the tenth is 1, the half 5, nine tenths 9.
import { bucketAt, bucketOf, dealt } from './buckets.ts';

export interface Limits {
  low: number;
  high: number;
}

/** Place of a quantile among so many values in order, from 0. */
export function placeOf(share: number, count: number): number {
  return Math.min(count - 1, Math.max(0, Math.ceil(share * count - 1e-9) - 1));
}

/** Values at those places were they in order; they stay as they lie. Dealt into buckets, then selected within one. */
export function valuesAt(values: Float64Array, places: readonly number[]): number[] {
  const buckets = dealt(values);
  return places.map((place) => {
    const bucket = bucketAt(buckets, place);
    const before = buckets.before[bucket] ?? 0;
    const inside = new Float64Array((buckets.before[bucket + 1] ?? 0) - before);
    let kept = 0;
    for (let each = 0; each < values.length; each++) {
      const value = values[each] ?? 0;
      if (bucketOf(buckets, value) === bucket) inside[kept++] = value;
    }
    select(inside, place - before);
    return inside[place - before] ?? 0;
  });
}

/** Afterwards the value at `place` is where it would be in order. Hoare's selection. */
function select(values: Float64Array, place: number): void {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = middleOfThree(values[low] ?? 0, values[(low + high) >> 1] ?? 0, values[high] ?? 0);
    let i = low;
    let j = high;
    while (i <= j) {
      while ((values[i] ?? 0) < pivot) i++;
      while ((values[j] ?? 0) > pivot) j--;
      if (i > j) break;
      const kept = values[i] ?? 0;
      values[i++] = values[j] ?? 0;
      values[j--] = kept;
    }
    if (place <= j) high = j;
    else if (place >= i) low = i;
    else return;
  }
}

function middleOfThree(x: number, y: number, z: number): number {
  return Math.max(Math.min(x, y), Math.min(Math.max(x, y), z));
}

/** Of a normal distribution 95 % lie within so many standard deviations. */
export const Z_95 = 1.959963984540054;

/**
 * Places between which a quantile lies with 95 %: order statistics, the binomial by its normal approximation (Conover,
 * Practical Nonparametric Statistics, 3rd ed., 3.2). Needs some 20 draws on either side of the quantile to be meant.
 */
export function placesAround(share: number, count: number): { low: number; high: number } {
  const half = Z_95 * Math.sqrt(count * share * (1 - share));
  const within = (place: number) => Math.min(count - 1, Math.max(0, place));
  return {
    low: within(Math.floor(count * share - half) - 1),
    high: within(Math.ceil(count * share + half) - 1),
  };
}

/** 95 % limits of a chance that came up `times` in `count` draws: Wilson, J. Amer. Statist. Assoc. 22 (1927) 209. */
export function chanceLimits(times: number, count: number): Limits {
  const share = times / count;
  const square = Z_95 ** 2;
  const middle = (share + square / (2 * count)) / (1 + square / count);
  const half =
    (Z_95 * Math.sqrt((share * (1 - share)) / count + square / (4 * count ** 2))) / (1 + square / count);
  return { low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}
