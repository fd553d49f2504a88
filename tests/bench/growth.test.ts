/**
 * How the cost of a whole recalculation grows: linearly with weeks x accounts x items, in real Chromium. A straight line
 * is laid through the times of 45 sizes by least squares; what is judged is how well it fits and that the largest plan
 * costs no more, for its size, than the middle ones. The figures depend on the machine, the fit does not.
 */
import { expect, test } from 'vitest';
import type { Growth, Size } from './growth-page.ts';
import { inBrowser } from './in-browser.ts';

test('a recalculation grows linearly with weeks x accounts x items', async () => {
  const { sizes, endCash } = await inBrowser<Growth>('tests/bench/growth-page.ts', 'firstfillGrowthBench');
  const points = sizes.map((size) => ({ x: sizeOf(size), y: size.milliseconds }));
  const line = straightLine(points);
  const power = straightLine(points.map(({ x, y }) => ({ x: Math.log(x), y: Math.log(y) }))).slope;
  console.log(
    [
      'weeks x accounts x items: median in Chromium, one run; line: the straight one through all',
      ...sizes.map(
        (size) =>
          `${String(size.weeks).padStart(4)} x ${String(size.accounts).padStart(2)} x ${size.items} = ${String(sizeOf(size)).padStart(5)}  ` +
          `${size.milliseconds.toFixed(3).padStart(8)} ms  line ${(line.start + line.slope * sizeOf(size)).toFixed(3).padStart(8)}`,
      ),
      `milliseconds = ${line.start.toFixed(3)} + ${(line.slope * 1000).toFixed(3)} per 1,000; R squared ${line.fit.toFixed(3)}; grows as the power ${power.toFixed(2)}`,
    ].join('\n'),
  );
  // Every size was really computed: no two plans end with the same cash.
  expect(new Set(endCash).size).toBe(sizes.length);
  expect(line.fit).toBeGreaterThan(0.9);
  expect(power).toBeLessThan(1.1);
}, 180_000);

const sizeOf = ({ weeks, accounts, items }: Size) => weeks * accounts * items;

/** Least squares: y = start + slope x, and the share of the spread that it explains (R squared). */
function straightLine(points: readonly { x: number; y: number }[]) {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [meanX, meanY] = [mean(points.map(({ x }) => x)), mean(points.map(({ y }) => y))];
  const sum = (of: (point: { x: number; y: number }) => number) =>
    points.reduce((total, point) => total + of(point), 0);
  const slope = sum(({ x, y }) => (x - meanX) * (y - meanY)) / sum(({ x }) => (x - meanX) ** 2);
  const start = meanY - slope * meanX;
  const missed = sum(({ x, y }) => (y - start - slope * x) ** 2);
  return { start, slope, fit: 1 - missed / sum(({ y }) => (y - meanY) ** 2) };
}
