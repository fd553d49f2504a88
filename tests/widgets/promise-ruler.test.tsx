// @vitest-environment happy-dom
/**
 * The promise ruler: its rods hold all that is drawn, whatever the amounts; the picture has a name that says it, the flag
 * stands where the claim is. Places are checked by hand: 1,900 on a rule from 0 to 2,000 is 95 % along.
 */
import { cleanup, render, screen } from '@testing-library/preact';
import fc from 'fast-check';
import { afterEach, expect, test } from 'vitest';
import { rodEnds } from '../../src/screens/promise/scale.ts';
import { FoldingRule } from '../../src/widgets/FoldingRule.tsx';

afterEach(cleanup);

test.each([
  [1900, true, [0, 500, 1000, 1500, 2000]],
  [180, true, [0, 50, 100, 150, 200]],
  [3, true, [0, 1, 2, 3]],
  [0, true, [0, 1]],
  [12, false, [0, 2, 4, 6, 8, 10, 12]],
])('rods up to %d', (most, whole, ends) => {
  expect(rodEnds(most, whole)).toEqual(ends);
});

test('rods are even, few, and reach all of it', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e12, noNaN: true }), fc.boolean(), (most, whole) => {
      const ends = rodEnds(most, whole);
      const rod = ends[1] ?? Number.NaN;
      expect(ends[0]).toBe(0);
      expect(ends.at(-1)).toBeGreaterThanOrEqual(most * (1 - 1e-6));
      expect(ends.length).toBeLessThanOrEqual(8);
      ends.forEach((end, index) => {
        expect(end).toBeCloseTo(index * rod, 6);
      });
      if (whole) expect(ends.every(Number.isInteger)).toBe(true);
    }),
  );
});

test('is one picture with a name; flag and lengths stand where they belong', () => {
  const { container } = render(
    <FoldingRule
      alt="The claim of 1,900 doors stands above that."
      ends={[0, 500, 1000, 1500, 2000].map((at) => ({ at, text: String(at) }))}
      solid={{ low: 340, high: 1120 }}
      thin={{ low: 180, high: 1400 }}
      middle={720}
      flag={{ at: 1900, text: 'claimed 1,900' }}
      pointers={[{ at: 450, text: 'today 450', filled: false }]}
    />,
  );
  expect(screen.getByRole('img', { name: 'The claim of 1,900 doors stands above that.' })).toBeDefined();
  expect(container.querySelector<HTMLElement>('.ff-rule-flag > span')?.style.left).toBe('95%');
  const solid = [...container.querySelectorAll('.ff-rule-solid')];
  const from = Math.min(...solid.map((part) => Number(part.getAttribute('x'))));
  const wide = solid.reduce((sum, part) => sum + Number(part.getAttribute('width')), 0);
  expect(from).toBe(170);
  expect(wide).toBeCloseTo(390, 9);
  expect(container.querySelector('.ff-rule-pole')?.getAttribute('d')).toBe('M950 0V44');
});
