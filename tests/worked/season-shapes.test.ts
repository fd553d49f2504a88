/**
 * Shapes of a year to start from: what they promise of themselves. They are invented, and no source is claimed; that a mean
 * of 1 leaves a year's sale as it was is arithmetic (52 weeks at rate r sell 52 r when the factors add up to 52).
 */
import { describe, expect, test } from 'vitest';
import { dec } from '../../src/domain/money/decimal.ts';
import { SEASON_SHAPES, type SeasonName, shapeOf } from '../../src/domain/season-shapes.ts';

function factorsOf(name: SeasonName): readonly string[] {
  const shape = SEASON_SHAPES.find((each) => each.name === name);
  if (!shape) throw new Error(`no shape ${name}`);
  return shape.factors;
}

describe.each(SEASON_SHAPES.map((shape) => [shape.name, shape] as const))('%s', (_, { factors, source }) => {
  test('has 52 factors of at most two decimals that add up to 52 exactly', () => {
    expect(factors).toHaveLength(52);
    for (const factor of factors) expect(factor).toMatch(/^\d(?:\.\d{1,2})?$/);
    expect(factors.reduce((sum, factor) => sum.plus(factor), dec(0)).toFixed()).toBe('52');
  });

  test('says in a sentence what it is', () => {
    expect(source).toMatch(/^[A-Z].*\.$/);
  });
});

test('summer peaks in week 28 at 1.30 and is lowest about week 2; winter is the other way round', () => {
  const summer = factorsOf('summer').map(Number);
  const winter = factorsOf('winter').map(Number);
  expect([Math.max(...summer), summer[27], summer[1], Math.min(...summer)]).toEqual([1.3, 1.3, 0.7, 0.7]);
  expect([Math.max(...winter), winter[1], winter[27], Math.min(...winter)]).toEqual([1.3, 1.3, 0.7, 0.7]);
});

test('gifts are flat to week 44, highest in week 50, and over in week 52', () => {
  const gift = factorsOf('gift').map(Number);
  expect(new Set(gift.slice(0, 44))).toEqual(new Set([0.83]));
  expect(gift.indexOf(Math.max(...gift))).toBe(49);
  expect(gift[51]).toBeLessThan(1);
});

test('a list of factors is known as its shape however it is written, and as its own once one is typed over', () => {
  const summer = factorsOf('summer');
  expect(shapeOf(summer)?.name).toBe('summer');
  expect(shapeOf(Array.from({ length: 52 }, () => '1.00'))?.name).toBe('flat');
  expect(shapeOf(summer.with(27, '1.31'))).toBeNull();
});
