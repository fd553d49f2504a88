// Answers kept for those who ask the same again: pictures and searches ask for the same dates and places many times.
// Worked example: keptBy(64, growthAt) runs the model once for a factor, until 64 others were asked for.

/** The same answer for the same place, worked out once; when `most` are kept, all are let go. */
export function keptBy<T>(most: number, of: (place: number) => T): (place: number) => T {
  const known = new Map<number, T>();
  return (place) => {
    const found = known.get(place);
    if (found !== undefined) return found;
    const made = of(place);
    if (known.size >= most) known.clear();
    known.set(place, made);
    return made;
  };
}
