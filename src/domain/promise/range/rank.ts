// Which input moves an outcome most: Spearman's rank correlation with its 95 % limits. Equal values share the mean of their
// ranks. Worked figure: ten pairs whose squared rank differences add up to 194 correlate by 1 - 6 x 194 / 990 = -0.1758.
import { type Limits, Z_95 } from './quantiles.ts';

/** Ranks from 1; equal values get their mean. Each is looked up among the values in order: quicker than ordering places. */
export function ranksOf(values: Float64Array): Float64Array {
  const inOrder = Float64Array.from(values).sort();
  return values.map((value) => {
    const below = placeOfFirst(inOrder, (each) => each >= value);
    const upTo = inOrder[below + 1] === value ? placeOfFirst(inOrder, (each) => each > value) : below + 1;
    return (below + 1 + upTo) / 2;
  });
}

/** The first place of an ordered list that is so, its length where none is; all after the first are. */
function placeOfFirst(inOrder: Float64Array, isSo: (value: number) => boolean): number {
  let low = 0;
  let high = inOrder.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isSo(inOrder[middle] ?? 0)) high = middle;
    else low = middle + 1;
  }
  return low;
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
