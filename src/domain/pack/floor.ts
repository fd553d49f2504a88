// A floor as its two sides see it: the sums of box sides at which boxes can begin. A rectangle is then two places in those
// sums, and what is left beside a cut is looked up instead of worked out.
// Worked figure: boxes of 5 x 3 on a length of 9: sums 0, 3, 5, 6, 8, 9; beside a cut at 5 the 4 that are left hold no more
// than 3.
import { type Sizes, sumsUpTo } from './raster.ts';

export interface Axis {
  /** Sums of box sides, ascending from 0. */
  sums: readonly number[];
  /** By from x count + cut, both places: the place of what is left. */
  left: Int32Array;
  /** Places of the sums that are whole rows of one direction, ascending. */
  whole: readonly number[];
}

/** One side of the floor. */
export function axisOf(most: number, sizes: Sizes): Axis {
  const sums = sumsUpTo(most, sizes);
  const count = sums.length;
  const placeAt = new Int32Array(most + 1);
  for (const [place, sum] of sums.entries()) placeAt.fill(place, sum, sums[place + 1] ?? most + 1);
  const left = new Int32Array(count * count);
  for (const [from, sum] of sums.entries()) {
    for (let cut = 0; cut <= from; cut++) left[from * count + cut] = placeAt[sum - (sums[cut] ?? 0)] ?? 0;
  }
  const whole = [...sums.keys()].filter((place) => {
    const sum = sums[place] ?? 0;
    return sum % sizes.boxLength === 0 || sum % sizes.boxWidth === 0;
  });
  return { sums, left, whole };
}
