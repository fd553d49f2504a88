// Searching a number: where a figure that rises crosses zero, and every place where two lines of a picture cross.
// Worked figure: rising({ least: 0, most: 10, of: (x) => x - 4 }) is 4.

/** Where a figure that never falls reaches zero between two ends; null where it doesn't. Refined to a 1e-12 part. */
export function rising(args: { least: number; most: number; of: (at: number) => number }): number | null {
  const { least, most, of } = args;
  if (of(least) >= 0) return least;
  if (!(of(most) >= 0)) return null;
  return between(least, most, of);
}

/** Bisection between two places at which a figure has different signs; gives the far end of the last interval. */
export function between(from: number, to: number, of: (at: number) => number, turns = 100): number {
  let [low, high] = [from, to];
  const isBelow = of(low) < 0;
  for (let turn = 0; turn < turns && Math.abs(high - low) > 1e-12 * Math.max(1, Math.abs(high)); turn++) {
    const middle = (low + high) / 2;
    if (of(middle) < 0 === isBelow) low = middle;
    else high = middle;
  }
  return high;
}

/** A change of sign of a difference, between two places of a grid, or over a stretch where it is zero. */
export interface Crossing {
  from: number;
  to: number;
  below: number;
  above: number;
}

/** Where a difference changes sign along a grid; places where it is zero are passed over. */
export function crossings(places: readonly number[], differences: readonly number[]): Crossing[] {
  const found: Crossing[] = [];
  let last = -1;
  differences.forEach((difference, at) => {
    if (difference === 0 || Number.isNaN(difference)) return;
    const before = differences[last];
    if (before !== undefined && before < 0 !== difference < 0) {
      found.push({ from: places[last] ?? 0, to: places[at] ?? 0, below: before, above: difference });
    }
    last = at;
  });
  return found;
}
