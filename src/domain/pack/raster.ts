// Where an edge of a box can lie when boxes stand close together: sums of box sides; and from it how many boxes can lie on
// a rectangle at most, whatever their arrangement.
// Source of the bound: F. W. Barnes, Packing the maximum number of m x n tiles in a large p x q rectangle, Discrete
// Mathematics 26 (1979): in bars of a x 1 (and of b x 1) some of the floor stays empty, so it does in boxes of a x b.
// Worked figure: boxes of 5 x 3 on 22 x 16: by area 23.4, so at most 23.

/** Floor and box in the same whole unit, sides above zero; a box may be turned by a quarter, never tilted. */
export interface Sizes {
  length: number;
  width: number;
  boxLength: number;
  boxWidth: number;
}

/** Every sum of box sides from 0 to `most`, ascending. */
export function sumsUpTo(most: number, { boxLength, boxWidth }: Sizes): number[] {
  const sums = new Set<number>();
  for (let long = 0; long <= most; long += boxLength) {
    for (let sum = long; sum <= most; sum += boxWidth) sums.add(sum);
  }
  return [...sums].sort((one, other) => one - other);
}

/** The longest row of boxes that is not longer than `most`, lying either way. */
export function longestRow(most: number, { boxLength, boxWidth }: Sizes): number {
  let longest = 0;
  for (let long = 0; long <= most; long += boxLength) {
    longest = Math.max(longest, long + boxWidth * Math.floor((most - long) / boxWidth));
  }
  return longest;
}

/** No arrangement has more boxes than this. */
export function mostBoxes(sizes: Sizes): number {
  return mostWithin(sizes, longestRow(sizes.length, sizes), longestRow(sizes.width, sizes));
}

/** The same on a floor whose sides are sums of box sides already. */
export function mostWithin({ boxLength, boxWidth }: Sizes, length: number, width: number): number {
  const fits = Math.min(length, width) >= Math.min(boxLength, boxWidth);
  if (!fits || Math.max(length, width) < Math.max(boxLength, boxWidth)) return 0;
  const empty = Math.max(emptyBehindBars(length, width, boxLength), emptyBehindBars(length, width, boxWidth));
  return Math.max(0, Math.floor((length * width - empty) / (boxLength * boxWidth)));
}

/** Floor that bars of `bar` x 1 leave empty at least. */
function emptyBehindBars(length: number, width: number, bar: number): number {
  const alongLeft = length % bar;
  const acrossLeft = width % bar;
  return Math.min(alongLeft * acrossLeft, (bar - alongLeft) * (bar - acrossLeft));
}
