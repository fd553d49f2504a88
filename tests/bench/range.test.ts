/**
 * The range in real Chromium with two workers. What is judged is the kernel beside a loop of as many multiply-adds in
 * registers, in the same run: a ratio, which a busy machine bears. Milliseconds are printed, to be read on a quiet one: there
 * all draws are to be in within 500, the first fan within 150, and the page's thread is never held up for 50.
 */
import { expect, test } from 'vitest';
import { inBrowser } from './in-browser.ts';
import type { RangeTimes } from './range-page.ts';

const REGISTERS_MOST = 3;
const BYTES_MOST = 100e6;

test('10,000 draws x 104 weeks x 12 accounts x 1 item', async () => {
  const times = await inBrowser<RangeTimes>('tests/bench/range-page.ts', 'firstfillRangeBench', {
    rangeWorkerScript: 'src/compute/range-worker.ts',
  });
  const ratio = times.kernel / times.registers;
  const first = times.runs[0];
  const median = (of: (run: { firstFan: number; whole: number }) => number) => {
    const sorted = times.runs.map(of).sort((one, other) => one - other);
    return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
  };
  const ms = (value: number | undefined) => `${value?.toFixed(0)} ms`;
  console.log(
    [
      `${times.rows} rows x ${times.weeks} weeks, 10,000 draws, two workers, one page, one run`,
      `kernel ${times.kernel.toFixed(1)} ns a row and week; ${times.multiplyAdds} multiply-adds in registers ${times.registers.toFixed(1)} ns: ${ratio.toFixed(2)} times`,
      `with the workers' start: first fan ${ms(times.cold.firstFan)}, whole ${ms(times.cold.whole)}`,
      `first after they were started ahead: first fan ${ms(first?.firstFan)}, whole ${ms(first?.whole)}`,
      `median of ${times.runs.length}: first fan ${ms(median(({ firstFan }) => firstFan))}, whole ${ms(median(({ whole }) => whole))}`,
      `fastest: first fan ${ms(Math.min(...times.runs.map(({ firstFan }) => firstFan)))}, whole ${ms(Math.min(...times.runs.map(({ whole }) => whole)))}`,
      `page's thread held up for ${ms(times.longestHeld)} at most; draws kept: ${(times.bytes / 1e6).toFixed(0)} MB`,
    ].join('\n'),
  );
  // Every run really drew: seven seeds, seven ranges.
  expect(new Set(times.chances).size).toBe(times.runs.length);
  expect(times.bytes).toBeLessThan(BYTES_MOST);
  expect(ratio).toBeLessThan(REGISTERS_MOST);
}, 180_000);
