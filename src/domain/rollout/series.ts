// Many short series cut from one piece of memory: one piece of 136 kB is had in a moment, 164 small ones are not.
// Worked figure: 164 series of 104 weeks are one array of 17,056 places.

/** Cuts series of the lengths asked for, one after the other, all zero. Throws when more is asked than was said. */
export function seriesOf(places: number): (length: number) => Float64Array {
  const memory = new Float64Array(places);
  let used = 0;
  return (length) => {
    used += length;
    if (used > places) throw new Error(`${used} places asked of ${places}`);
    return new Float64Array(memory.buffer, (used - length) * Float64Array.BYTES_PER_ELEMENT, length);
  };
}
