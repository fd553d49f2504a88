// Which input moves an outcome most: Spearman's rank correlation with its 95 % limits. Equal values share the mean of their
// ranks. Worked figure: ten pairs whose squared rank differences add up to 194 correlate by 1 - 6 x 194 / 990 = -0.1758.
import { bucketOf, dealt } from './buckets.ts';
import { type Limits, Z_95 } from './quantiles.ts';

/** Ranks from 1; equal values get their mean. Each is looked up among those of its bucket in order. */
export function ranksOf(values: Float64Array): Float64Array {
  const buckets = dealt(values);
  const inOrder = Float64Array.from(values).sort();
  const ranks = meanRanks(inOrder);
  return values.map((value) => {
    const bucket = bucketOf(buckets, value);
    let low = buckets.before[bucket] ?? 0;
    let high = (buckets.before[bucket + 1] ?? 0) - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((inOrder[middle] ?? 0) >= value) high = middle;
      else low = middle + 1;
    }
    return ranks[low] ?? 0;
  });
}

/** Of values in order, from 1. */
function meanRanks(inOrder: Float64Array): Float64Array {
  const ranks = new Float64Array(inOrder.length);
  for (let first = 0; first < inOrder.length; ) {
    let after = first + 1;
    while (after < inOrder.length && inOrder[after] === inOrder[first]) after++;
    ranks.fill((first + 1 + after) / 2, first, after);
    first = after;
  }
  return ranks;
}

/** Pearson's correlation of two rankings; null where one of them has no two different values. */
export function correlationOf(one: Float64Array, other: Float64Array): number | null {
  const middle = (one.length + 1) / 2;
  let both = 0;
  let first = 0;
  let second = 0;
  for (let place = 0; place < one.length; place++) {
    const x = (one[place] ?? 0) - middle;
    const y = (other[place] ?? 0) - middle;
    both += x * y;
    first += x * x;
    second += y * y;
  }
  return first > 0 && second > 0 ? both / Math.sqrt(first * second) : null;
}

/**
 * 95 % limits of a rank correlation over n pairs: Fisher's z with variance 1.06 / (n - 3), Fieller, Hartley & Pearson,
 * Biometrika 44 (1957) 470. Needs n above 3; meant for 10 and more.
 */
export function correlationLimits(correlation: number, n: number): Limits {
  const z = Math.atanh(Math.max(-1 + 1e-15, Math.min(1 - 1e-15, correlation)));
  const half = Z_95 * Math.sqrt(1.06 / (n - 3));
  return { low: Math.tanh(z - half), high: Math.tanh(z + half) };
}
