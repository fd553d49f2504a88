// Many values dealt into buckets of equal width, the lower values in the lower buckets: afterwards a place in their order
// is looked for in one small bucket instead of among all of them. Dealing has no branch that a processor could guess
// wrong, which is what selecting and searching among many values spend their time on; all answers stay exact.
// Worked figure: 0, 1, 2, ... 9,999 lie ten to a bucket, nearly; the 5,000th is in bucket 511 of 1,024.

export const BUCKETS = 1024;

export interface Buckets {
  low: number;
  /** 0 where all values are the same, or too far apart for their distance to be a number: all are in the first bucket then. */
  scale: number;
  /** Values in the buckets before each, and one place more: all of them. */
  before: Int32Array;
}

/** The bucket of a value that was dealt: monotone, since it is a difference and a product of rounded numbers. */
export function bucketOf({ low, scale }: Buckets, value: number): number {
  return scale === 0 ? 0 : ((value - low) * scale) | 0;
}

/** At least one value, none of them NaN. */
export function dealt(values: Float64Array): Buckets {
  let low = values[0] ?? 0;
  let high = low;
  for (let place = 1; place < values.length; place++) {
    const value = values[place] ?? 0;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  // A little less than all of them, so that the highest value is in the last bucket.
  const scale = (BUCKETS - 0.5) / (high - low);
  const buckets = {
    low,
    scale: Number.isFinite(scale) && scale > 0 ? scale : 0,
    before: new Int32Array(BUCKETS + 1),
  };
  const { before } = buckets;
  for (let place = 0; place < values.length; place++) {
    const after = bucketOf(buckets, values[place] ?? 0) + 1;
    before[after] = (before[after] ?? 0) + 1;
  }
  for (let bucket = 0; bucket < BUCKETS; bucket++) {
    before[bucket + 1] = (before[bucket + 1] ?? 0) + (before[bucket] ?? 0);
  }
  return buckets;
}

/** The bucket that holds a place of the order, from 0. */
export function bucketAt({ before }: Buckets, place: number): number {
  let low = 0;
  let high = BUCKETS - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((before[middle + 1] ?? 0) > place) high = middle;
    else low = middle + 1;
  }
  return low;
}
