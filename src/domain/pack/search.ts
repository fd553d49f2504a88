// The search behind arrange.ts: a rectangle is cut into five parts like the blades of a wheel around a middle, at
// x1 <= x2 and y1 <= y2; cuts that fall together leave four parts, or two. Rectangles are places in the floor's sums, and
// what was found for one is kept. Plain numbers and typed memory, since it runs some hundred thousand times an answer.
// Worked figure: boxes of 5 x 3 on 22 x 16: cut at 10, 12 and 6, 10 it holds 23, where rows of one direction hold 21.
import { type Axis, axisOf } from './floor.ts';
import { mostWithin, type Sizes } from './raster.ts';

/** Where five parts meet, as places in the floor's sums. */
export interface Cuts {
  x1: number;
  x2: number;
  y1: number;
  y2: number;
}

export interface Search {
  sizes: Sizes;
  x: Axis;
  y: Axis;
  /** By depth, x place and y place: the most boxes found; -1 where nobody has looked. */
  known: readonly Int32Array[];
  /** The cuts of those that are better cut than in rows, by the same key. */
  cuts: readonly Map<number, Cuts>[];
  /** Cuts that may still be tried. */
  left: number;
}

/** Depth 0: rows of one direction. 1: cut at whole rows, the middle again so. 2: cut at any sum, the parts at depth 1. */
export const DEEPEST = 2;
/** Sums along both sides, multiplied: past this only rows are looked at, so small are the boxes. */
const PLACES_MOST = 40_000;

export function startSearch(sizes: Sizes, cutsMost: number): Search {
  const x = axisOf(sizes.length, sizes);
  const y = axisOf(sizes.width, sizes);
  const places = x.sums.length * y.sums.length;
  const tables = Array.from({ length: DEEPEST + 1 }, () => new Int32Array(places).fill(-1));
  const cuts = tables.map(() => new Map<number, Cuts>());
  return { sizes, x, y, known: tables, cuts, left: places > PLACES_MOST ? 0 : cutsMost };
}

/** All boxes in one direction, the better of the two. */
export function rowsOf({ boxLength, boxWidth }: Sizes, length: number, width: number) {
  const along = Math.floor(length / boxLength) * Math.floor(width / boxWidth);
  const turned = Math.floor(length / boxWidth) * Math.floor(width / boxLength);
  return { count: Math.max(along, turned), turned: turned > along };
}

/** The most boxes found on the rectangle whose sides are at these places. */
export function best(search: Search, xPlace: number, yPlace: number, depth: number): number {
  const key = xPlace * search.y.sums.length + yPlace;
  const table = search.known[depth];
  const known = table?.[key] ?? -1;
  if (known >= 0) return known;
  const length = search.x.sums[xPlace] ?? 0;
  const width = search.y.sums[yPlace] ?? 0;
  let count = rowsOf(search.sizes, length, width).count;
  if (depth > 0 && count > 0) {
    const most = mostWithin(search.sizes, length, width);
    if (count < most) count = bestCut(search, { xPlace, yPlace, depth, least: count, most });
  }
  if (table) table[key] = count;
  return count;
}

interface Rect {
  xPlace: number;
  yPlace: number;
  depth: number;
  least: number;
  most: number;
}

function bestCut(search: Search, { xPlace, yPlace, depth, least, most }: Rect): number {
  const { x, y } = search;
  const xs = depth < DEEPEST ? x.whole : [...x.sums.keys()];
  const ys = depth < DEEPEST ? y.whole : [...y.sums.keys()];
  const xCount = x.sums.length;
  const yCount = y.sums.length;
  const middle = depth === 1 ? 1 : depth - 1;
  let count = least;
  for (let i = 0; i < xs.length && (xs[i] ?? 0) <= xPlace; i++) {
    const x1 = xs[i] ?? 0;
    const besideX1 = x.left[xPlace * xCount + x1] ?? 0;
    for (let j = i; j < xs.length && (xs[j] ?? 0) <= xPlace; j++) {
      const x2 = xs[j] ?? 0;
      const besideX2 = x.left[xPlace * xCount + x2] ?? 0;
      const between = x.left[x2 * xCount + x1] ?? 0;
      for (let k = 0; k < ys.length && (ys[k] ?? 0) <= yPlace; k++) {
        const y1 = ys[k] ?? 0;
        const underY1 = y.left[yPlace * yCount + y1] ?? 0;
        const fixed = part(search, besideX1, y1, depth - 1) + part(search, besideX2, underY1, depth - 1);
        for (let l = k; l < ys.length && (ys[l] ?? 0) <= yPlace; l++) {
          const y2 = ys[l] ?? 0;
          if (x1 + y1 === 0 && x2 === xPlace && y2 === yPlace) continue; // the middle would be all of it
          if (--search.left < 0) return count;
          const sum =
            fixed +
            part(search, x1, y2, depth - 1) +
            part(search, x2, y.left[yPlace * yCount + y2] ?? 0, depth - 1) +
            part(search, between, y.left[y2 * yCount + y1] ?? 0, middle);
          if (sum <= count) continue;
          count = sum;
          search.cuts[depth]?.set(xPlace * yCount + yPlace, { x1, x2, y1, y2 });
          if (count >= most) return count;
        }
      }
    }
  }
  return count;
}

function part(search: Search, xPlace: number, yPlace: number, depth: number): number {
  return xPlace === 0 || yPlace === 0 ? 0 : best(search, xPlace, yPlace, depth);
}
