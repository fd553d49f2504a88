/**
 * Pallets on floors and boxes in layers against published counts. Carriers' guides give pallets by trailer and container
 * (a range where they differ); the boxes are instances of the pallet loading problem whose best counts are in the literature.
 */
import { describe, expect, test } from 'vitest';
import { arrange } from '../../src/domain/pack/arrange.ts';
import { palletsOnFloor } from '../../src/domain/pack/load.ts';
import { LOADS, type LoadName } from '../../src/domain/pack/loads.ts';
import { type PalletName, palletSides } from '../../src/domain/pack/pallets.ts';

describe('pallets in trailers and containers, carriers’ guides (footprints ISO 6780, inner sizes ISO 668)', () => {
  test.each<[LoadName, PalletName, number, number]>([
    ['trailer53', '1219x1016', 30, 30],
    ['trailerEu', '1200x800', 33, 33],
    ['trailerEu', '1200x1000', 26, 26],
    ['container20', '1200x800', 11, 11],
    ['container20', '1200x1000', 9, 10],
    ['container40', '1200x800', 23, 24],
    ['container40', '1200x1000', 20, 21],
  ])('%s of %s: from %i to %i', (load, pallet, least, most) => {
    const count = palletsOnFloor(load, pallet);
    expect(count).toBeGreaterThanOrEqual(least);
    expect(count).toBeLessThanOrEqual(most);
  });

  test('a 53 ft trailer, 48 x 40 in pallets lengthwise: 26 (carriers’ guides), two rows of thirteen', () => {
    const { lengthMm, widthMm } = LOADS.trailer53;
    const { length, width } = palletSides('1219x1016');
    expect(2 * Math.floor(lengthMm / length)).toBe(26);
    expect(Math.floor(widthMm / width)).toBe(2);
  });
});

/**
 * Floor, box, best count as published by Dowsland (J. Operational Research Society 38, 1987), Morabito and Morales (JORS 49,
 * 1998) and Lins, Lins and Morabito (JORS 54, 2003). The counts are from memory; that none is passed, and that each bound
 * reaches it, would show a wrong one.
 */
const PUBLISHED = [
  [22, 16, 5, 3, 23],
  [86, 82, 15, 11, 42],
  [57, 44, 12, 5, 41],
  [42, 31, 9, 4, 35],
  [53, 26, 7, 4, 48],
  [37, 30, 8, 3, 45],
  [81, 39, 9, 7, 49],
  [32, 22, 5, 4, 34],
  [40, 26, 7, 4, 36],
  [53, 51, 9, 7, 42],
  [63, 44, 8, 5, 68],
] as const;

test.each(PUBLISHED)('%i x %i, boxes %i x %i: %i', (length, width, boxLength, boxWidth, count) => {
  const { boxes, atMost } = arrange({ length, width, boxLength, boxWidth });
  expect(boxes).toHaveLength(count);
  expect(atMost).toBeGreaterThanOrEqual(count);
  expect(atMost).toBeLessThanOrEqual(count + 1);
});
