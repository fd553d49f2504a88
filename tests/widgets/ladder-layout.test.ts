/**
 * The ladder's geometry: to scale, stacked without gaps, and no label hidden by another, whatever the hands keep.
 * These are properties of a stacked bar (adjoining parts, heights in the ratio of the values), checked on random
 * hands. Worked figure: 3, 1 and 1 in 500 px put rungs at 200, 100 and 0 px.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layOutLadder } from '../../src/widgets/ladder-layout.ts';

const rows = fc.array(
  fc.record({ height: fc.integer({ min: -500, max: 2000 }), rowPx: fc.integer({ min: 44, max: 120 }) }),
  { minLength: 1, maxLength: 12 },
);

test('three hands by hand', () => {
  const { bands, zeroPx, heightPx } = layOutLadder({
    heights: [3, 1, 1],
    rowHeightsPx: [44, 44, 44],
    leastHeightPx: 500,
  });
  expect(bands.map((band) => band.rungPx)).toEqual([200, 100, 0]);
  expect([zeroPx, heightPx]).toEqual([500, 500]);
});

test('a hand that loses hangs between the two levels and is marked', () => {
  const { bands } = layOutLadder({ heights: [4, -1, 2], rowHeightsPx: [44, 44, 44], leastHeightPx: 500 });
  expect(bands[1]).toEqual({ topPx: 100, bottomPx: 200, rungPx: 200, negative: true });
  expect(bands[2]?.bottomPx).toBe(200);
});

test('every band is to scale and starts where the last one ended', () => {
  fc.assert(
    fc.property(rows, (hands) => {
      const layout = layOutLadder(measures(hands));
      let edge = layout.zeroPx;
      for (const [index, band] of layout.bands.entries()) {
        const height = hands[index]?.height ?? 0;
        expect((band.bottomPx - band.topPx) * layout.unitsPerPx).toBeCloseTo(
          layout.unitsPerPx === 0 ? 0 : Math.abs(height),
          6,
        );
        expect(height < 0 ? band.topPx : band.bottomPx).toBeCloseTo(edge, 6);
        edge = band.rungPx;
      }
    }),
  );
});

test('no label covers another or leaves the picture', () => {
  fc.assert(
    fc.property(rows, (hands) => {
      const layout = layOutLadder(measures(hands));
      let floor = layout.heightPx;
      for (const [index, topPx] of layout.labelTopsPx.entries()) {
        expect(topPx + (hands[index]?.rowPx ?? 0)).toBeLessThanOrEqual(floor + 1e-6);
        floor = topPx;
      }
      expect(floor).toBeGreaterThanOrEqual(-1e-6);
    }),
  );
});

test('a ladder without height is drawn flat, not broken', () => {
  const layout = layOutLadder({ heights: [0, 0], rowHeightsPx: [44, 44], leastHeightPx: 300 });
  expect(layout.unitsPerPx).toBe(0);
  expect(layout.bands.every((band) => band.rungPx === 300)).toBe(true);
});

function measures(hands: readonly { height: number; rowPx: number }[]): Parameters<typeof layOutLadder>[0] {
  return {
    heights: hands.map((hand) => hand.height),
    rowHeightsPx: hands.map((hand) => hand.rowPx),
    leastHeightPx: 320,
  };
}
