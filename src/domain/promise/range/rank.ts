// Which input moves an outcome most: Spearman's rank correlation with its 95 % limits. Equal values share the mean of their
// ranks. Worked figure: ten pairs whose squared rank differences add up to 194 correlate by 1 - 6 x 194 / 990 = -0.1758.
import { type Limits, Z_95 } from './quantiles.ts';

/** Ranks from 1; equal values get their mean. */
export function ranksOf(values: Float64Array): Float64Array {
  const order = Uint32Array.from(values, (_, place) => place).sort(
    (one, other) => (values[one] ?? 0) - (values[other] ?? 0),
  );
  const ranks = new Float64Array(values.length);
  let from = 0;
  while (from < order.length) {
    const value = values[order[from] ?? 0];
    let until = from + 1;
    while (until < order.length && values[order[until] ?? 0] === value) until += 1;
    for (let place = from; place < until; place++) ranks[order[place] ?? 0] = (from + 1 + until) / 2;
    from = until;
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
