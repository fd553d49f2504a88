/**
 * The time axis: bars share lanes as long as grips and texts keep apart, marks are thinned out to what fits, steps are
 * level over their point. Hand-worked on round sizes; 44 px is W3C "Web Content Accessibility Guidelines 2.2", 2.5.5.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spanOf, stepPath } from '../../src/widgets/AxisGraphs.tsx';
import {
  type AxisBar,
  axisWidthPx,
  edgePx,
  lanesOf,
  textPx,
  thinned,
  widthOfText,
} from '../../src/widgets/axis-spec.ts';

const geometry = { count: 52, pointPx: 12, laneHeightPx: 44, typeScale: 1 };

function bar(id: string, from: number, to: number, moves = true): AxisBar {
  const move = moves ? { label: id, valueText: '' } : null;
  return { id, from, to, text: '180 doors', drawing: 'truck', move };
}

describe('places', () => {
  test('a point begins 24 px from the left and its points before it', () => {
    expect(edgePx(geometry, 0)).toBe(24);
    expect(edgePx(geometry, 10)).toBe(144);
    // 24 before, 52 x 12, 128 after.
    expect(axisWidthPx(geometry)).toBe(776);
  });

  test('a text stands beside the bar, or beside the grip where that is longer', () => {
    expect(textPx(geometry, bar('long', 10, 13))).toBe(144 + 48 + 6);
    expect(textPx(geometry, bar('short', 10, 10))).toBe(144 + 26 + 6);
  });
});

describe('lanes', () => {
  test('bars at one place stand below each other, far ones side by side', () => {
    const { laneOf, count } = lanesOf([bar('a', 4, 13), bar('b', 4, 13), bar('c', 40, 41)], geometry);
    expect(count).toBe(2);
    expect([laneOf.get('a'), laneOf.get('b'), laneOf.get('c')]).toEqual([0, 1, 0]);
  });

  test('no two grips of a lane come nearer than 44 px, and no text lies under a grip', () => {
    const spans = fc.array(fc.tuple(fc.nat(51), fc.nat(20)), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(spans, (drawn) => {
        const bars = drawn.map(([from, weeks], index) => bar(String(index), from, from + weeks));
        const { laneOf } = lanesOf(bars, geometry);
        for (const one of bars)
          for (const other of bars) {
            if (one === other || laneOf.get(one.id) !== laneOf.get(other.id) || one.from > other.from)
              continue;
            const apart = edgePx(geometry, other.from) - edgePx(geometry, one.from);
            expect(apart).toBeGreaterThanOrEqual(44);
            expect(edgePx(geometry, other.from)).toBeGreaterThanOrEqual(
              textPx(geometry, one) + widthOfText(geometry, one.text),
            );
          }
      }),
    );
  });
});

describe('scales', () => {
  const weeks = Array.from({ length: 52 }, (_, index) => ({ index, text: String(index) }));

  test('marks that would touch are left out, strong ones last of all', () => {
    // "0" takes 7 + 8 px, two points of 12; "10" takes 22, two points as well.
    const kept = thinned({ id: 'weeks', label: '', marks: weeks }, geometry);
    expect(kept.slice(0, 6).map(({ index }) => index)).toEqual([0, 2, 4, 6, 8, 10]);
    const strong = weeks.map((mark) => ({ ...mark, strong: mark.index === 3 }));
    const withStrong = thinned({ id: 'weeks', label: '', marks: strong }, geometry);
    expect(withStrong.some(({ index }) => index === 3)).toBe(true);
    expect(withStrong.some(({ index }) => index === 2)).toBe(false);
  });
});

describe('graphs', () => {
  test('a step is level over its point', () => {
    const three = { ...geometry, count: 3 };
    expect(stepPath([10, 10, 4], three, (value) => 20 - value)).toBe('M24 10H36V10H48V16H60');
  });

  test('the span holds zero and every value, and is never empty', () => {
    expect(spanOf([{ by: 'step', values: [5, 7], colour: 'ours' }])).toEqual({ low: 0, high: 7 });
    expect(spanOf([{ by: 'step', values: [-3, -1], colour: 'ours' }])).toEqual({ low: -3, high: 0 });
    expect(spanOf([{ by: 'step', values: [0, 0], colour: 'ours' }])).toEqual({ low: 0, high: 1 });
    expect(spanOf([{ by: 'plumb', index: 0, value: -9 }])).toEqual({ low: -9, high: 0 });
  });
});
