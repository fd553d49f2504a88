// How boxes of one size lie on a rectangle: rows of one direction, rows of both, or blocks around a middle. A rectangle is
// cut into five (E. Bischoff and W. B. Dowsland, J. Operational Research Society 33, 1982), its parts again (R. Morabito
// and S. Morales, JORS 49, 1998), and the best cuts win. How many cuts are tried is limited, so that it is done in a frame
// or two whatever the sizes; `atMost` says how much better there could be.
// Worked figure: 1200 x 1000 pallets in 5867 x 2330 (a 20 ft container) lie as 3 + 2 beside 3 + 2 turned: 10.
import { mostBoxes, type Sizes } from './raster.ts';
import { best, DEEPEST, rowsOf, type Search, startSearch } from './search.ts';

/** A box from (x, y), `along` the length and `across` the width of the floor. */
export interface Placed {
  x: number;
  y: number;
  along: number;
  across: number;
}

export interface Arrangement {
  /** Every box where it lies; their count is what fits. */
  boxes: readonly Placed[];
  /** No arrangement has more; equal to the count where this one is known to be best. */
  atMost: number;
}

const CUTS_MOST = 1_200_000;

/** The best arrangement found; no boxes where none fits. All sizes whole, in one unit. */
export function arrange(sizes: Sizes): Arrangement {
  const search = startSearch(sizes, CUTS_MOST);
  const last = { x: search.x.sums.length - 1, y: search.y.sums.length - 1 };
  const atMost = mostBoxes(sizes);
  let depth = 1;
  if (best(search, last.x, last.y, 1) < atMost && best(search, last.x, last.y, DEEPEST) > 0) depth = DEEPEST;
  const boxes: Placed[] = [];
  place({ search, x: 0, y: 0, xPlace: last.x, yPlace: last.y, depth, into: boxes });
  return { boxes, atMost };
}

interface Spot {
  search: Search;
  x: number;
  y: number;
  /** The rectangle's sides, as places in the floor's sums. */
  xPlace: number;
  yPlace: number;
  depth: number;
  into: Placed[];
}

/** Puts down the boxes of one rectangle, as the search found them. */
function place(spot: Spot): void {
  const { search, xPlace, yPlace, depth } = spot;
  const xs = search.x.sums;
  const ys = search.y.sums;
  const cuts = search.cuts[depth]?.get(xPlace * ys.length + yPlace);
  if (!cuts) {
    placeRows(spot, xs[xPlace] ?? 0, ys[yPlace] ?? 0);
    return;
  }
  const { x1, x2, y1, y2 } = cuts;
  const leftX = (from: number, cut: number) => search.x.left[from * xs.length + cut] ?? 0;
  const leftY = (from: number, cut: number) => search.y.left[from * ys.length + cut] ?? 0;
  const put = (atX: number, atY: number, sides: [x: number, y: number], to: number): void => {
    if (sides[0] === 0 || sides[1] === 0) return;
    const corner = { x: spot.x + (xs[atX] ?? 0), y: spot.y + (ys[atY] ?? 0) };
    place({ ...spot, ...corner, xPlace: sides[0], yPlace: sides[1], depth: to });
  };
  put(0, 0, [x1, y2], depth - 1);
  put(x1, 0, [leftX(xPlace, x1), y1], depth - 1);
  put(x2, y1, [leftX(xPlace, x2), leftY(yPlace, y1)], depth - 1);
  put(0, y2, [x2, leftY(yPlace, y2)], depth - 1);
  put(x1, y1, [leftX(x2, x1), leftY(y2, y1)], Math.max(1, depth - 1));
}

function placeRows({ search, x, y, into }: Spot, length: number, width: number): void {
  const { boxLength, boxWidth } = search.sizes;
  const { turned } = rowsOf(search.sizes, length, width);
  const along = turned ? boxWidth : boxLength;
  const across = turned ? boxLength : boxWidth;
  for (let right = 0; right + along <= length; right += along) {
    for (let up = 0; up + across <= width; up += across)
      into.push({ x: x + right, y: y + up, along, across });
  }
}
