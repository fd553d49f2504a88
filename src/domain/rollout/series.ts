// Many short series cut from one piece of memory: one piece of 136 kB is had in a moment, 164 small ones are not, and
// memory that a run has done with serves the next one, already touched. Worked figure: 164 series of 104 weeks are one
// array of 17,056 places.

/** Cuts the next series of a length, all zero. Throws when more is asked than was said at first. */
export type CutSeries = (length: number) => Float64Array;

/** Series that stay with their owner. */
export function seriesOf(places: number): CutSeries {
  return cutFrom(new Float64Array(places), places);
}

let bench = new Float64Array(0);
let isLent = false;

/** Series for as long as `run` takes and no longer: nothing of them may be in what it returns. */
export function withSeries<T>(places: number, run: (cut: CutSeries) => T): T {
  if (isLent) return run(seriesOf(places));
  isLent = true;
  try {
    if (bench.length < places) bench = new Float64Array(places);
    else bench.fill(0, 0, places);
    return run(cutFrom(bench, places));
  } finally {
    isLent = false;
  }
}

function cutFrom(memory: Float64Array, places: number): CutSeries {
  let used = 0;
  return (length) => {
    used += length;
    if (used > places) throw new Error(`${used} places asked of ${places}`);
    return new Float64Array(memory.buffer, (used - length) * Float64Array.BYTES_PER_ELEMENT, length);
  };
}
