/**
 * Arrangements of boxes: none overlaps, none sticks out, there are never more than the bound, and on small floors exactly as
 * many as trying everything finds.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arrange, type Placed } from '../../src/domain/pack/arrange.ts';
import type { Sizes } from '../../src/domain/pack/raster.ts';

const side = (least: number, most: number) => fc.integer({ min: least, max: most });
const sizes = (floor: number, box: number) =>
  fc.record({
    length: side(1, floor),
    width: side(1, floor),
    boxLength: side(1, box),
    boxWidth: side(1, box),
  });

test('boxes lie inside, apart, each as large as it is, and no more than the bound', () => {
  const large = fc.record({
    length: side(800, 1300),
    width: side(700, 1300),
    boxLength: side(90, 700),
    boxWidth: side(90, 700),
  });
  fc.assert(
    fc.property(fc.oneof(sizes(60, 30), large), (one) => {
      const { boxes, atMost } = arrange(one);
      expect(boxes.length).toBeLessThanOrEqual(atMost);
      for (const box of boxes) {
        expect([box.along, box.across].sort()).toEqual([one.boxLength, one.boxWidth].sort());
        expect(Math.min(box.x, box.y)).toBeGreaterThanOrEqual(0);
        expect(box.x + box.along).toBeLessThanOrEqual(one.length);
        expect(box.y + box.across).toBeLessThanOrEqual(one.width);
      }
      expect(overlaps(boxes)).toBe(0);
    }),
    { numRuns: 150 },
  );
});

test('as many as trying every place finds, on small floors', () => {
  fc.assert(
    fc.property(
      fc.record({ length: side(2, 9), width: side(2, 8), boxLength: side(2, 5), boxWidth: side(1, 3) }),
      (one) => {
        const { boxes, atMost } = arrange(one);
        const best = mostByTrying(one);
        expect(boxes).toHaveLength(best);
        expect(atMost).toBeGreaterThanOrEqual(best);
      },
    ),
    { numRuns: 150 },
  );
});

function overlaps(boxes: readonly Placed[]): number {
  let count = 0;
  for (const [at, one] of boxes.entries()) {
    for (const other of boxes.slice(at + 1)) {
      const apart =
        one.x + one.along <= other.x ||
        other.x + other.along <= one.x ||
        one.y + one.across <= other.y ||
        other.y + other.across <= one.y;
      if (!apart) count++;
    }
  }
  return count;
}

/** Fills the floor cell by cell: the first free cell is left empty, or a box begins there, one way or the other. */
function mostByTrying({ length, width, boxLength, boxWidth }: Sizes): number {
  const taken = Array.from({ length: length * width }, () => false);
  let best = 0;
  const free = (from: number) => {
    let at = from;
    while (at < taken.length && taken[at]) at++;
    return at;
  };
  const ways =
    boxLength === boxWidth
      ? [[boxLength, boxWidth]]
      : [
          [boxLength, boxWidth],
          [boxWidth, boxLength],
        ];
  const go = (from: number, count: number, left: number): void => {
    best = Math.max(best, count);
    const at = free(from);
    if (at >= taken.length || count + Math.floor(left / (boxLength * boxWidth)) <= best) return;
    const x = at % length;
    const y = Math.floor(at / length);
    for (const [along = 0, across = 0] of ways) {
      if (x + along > length || y + across > width) continue;
      const cells = Array.from(
        { length: along * across },
        (_, i) => (y + Math.floor(i / along)) * length + x + (i % along),
      );
      if (cells.some((cell) => taken[cell])) continue;
      for (const cell of cells) taken[cell] = true;
      go(at + 1, count + 1, left - along * across);
      for (const cell of cells) taken[cell] = false;
    }
    taken[at] = true;
    go(at + 1, count, left - 1);
    taken[at] = false;
  };
  go(0, 0, length * width);
  return best;
}
