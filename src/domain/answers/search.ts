// Searching whole numbers with a test that costs a run of the model: each is tried once, and what was seen tells whether
// the answer is the only one. Worked figure: holds up to 52, fails from 53: tried 1, 12, 23, ... 56, then halved to 52.

export interface Tried {
  /** The test's word on a number, run once. */
  holds: (value: number) => boolean;
  /** All that was tried. */
  seen: ReadonlyMap<number, boolean>;
}

/** A test that remembers. */
export function remembering(test: (value: number) => boolean): Tried {
  const seen = new Map<number, boolean>();
  return {
    seen,
    holds: (value) => {
      const known = seen.get(value);
      if (known !== undefined) return known;
      const found = test(value);
      seen.set(value, found);
      return found;
    },
  };
}

/** The number next to `fails` that holds, between one that holds and one that doesn't, on either side. */
export function halve({ holds }: Tried, held: number, fails: number): number {
  let good = held;
  let bad = fails;
  while (Math.abs(bad - good) > 1) {
    const middle = Math.trunc((good + bad) / 2);
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/**
 * From `least`, which holds, up to `most`: the end of the first stretch that holds. Steps of a sixteenth show a stretch
 * that fails before a larger number that holds again.
 */
export function lastOfFirstStretch(tried: Tried, least: number, most: number): number {
  const step = Math.max(1, Math.ceil((most - least) / 16));
  let held = least;
  for (let value = least + step; held < most; value += step) {
    const next = Math.min(value, most);
    if (!tried.holds(next)) return halve(tried, held, next);
    held = next;
  }
  return held;
}

/** Whether all tried up to `last` hold and all tried past it fail. */
export function isSteadyUpTo({ seen }: Tried, last: number): boolean {
  return [...seen].every(([value, held]) => held === value <= last);
}
