/**
 * `reckon FILE --range DRAWS --seed N` on a demo plan: reproducible, in order, and refused in a sentence where its words
 * can't be read.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/domain/evaluate.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { readArguments } from '../../src/reckon/arguments.ts';
import { rangeText } from '../../src/reckon/range.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { root } from '../support/source-files.ts';
import { RECKON_TIMEOUT, ran } from '../support/spawned-reckon.ts';

const file = 'demo-catalog/third-chain.json';

// biome-ignore lint/suspicious/noExplicitAny: what is printed is read by name
type Loose = any;

function printed(draws: number, seed: number): Loose {
  const parsed = parsePlanText(readFileSync(join(root, file), 'utf8'));
  if (!parsed.ok) throw new Error('no plan');
  const results = evaluate(parsed.value, sayFor);
  if (!results.ok) throw new Error('not computed');
  return rangeText(parsed.value, results.value, { draws, seed });
}

test('the same seed prints the same, another one something else', () => {
  expect(printed(150, 4)).toEqual(printed(150, 4));
  expect(printed(150, 4).cash).not.toEqual(printed(150, 5).cash);
});

test('quantiles come in their order, a place a week, inside their limits', () => {
  const range = printed(400, 4);
  for (const name of ['cash', 'revenue', 'doors']) {
    const { p10, p50, p90 } = range[name];
    expect(p10).toHaveLength(104);
    p10.forEach((_: string, w: number) => {
      expect(Number(p10[w])).toBeLessThanOrEqual(Number(p50[w]));
      expect(Number(p50[w])).toBeLessThanOrEqual(Number(p90[w]));
    });
  }
  for (const name of ['p50', 'p80', 'p95']) {
    const { low, high } = range.monteCarloError.need[name];
    expect(Number(low)).toBeLessThanOrEqual(Number(range.need[name]));
    expect(Number(high)).toBeGreaterThanOrEqual(Number(range.need[name]));
  }
  const chance = Number(range.chanceCashOut);
  expect(chance).toBeGreaterThan(Number(range.monteCarloError.chanceCashOut.low));
  expect(chance).toBeLessThan(Number(range.monteCarloError.chanceCashOut.high));
  const sizes = range.drivers.map(({ correlation }: { correlation: string }) =>
    Math.abs(Number(correlation)),
  );
  expect(sizes).toEqual([...sizes].sort((one, other) => other - one));
  expect(range.exactCheck.draws).toBe(40);
});

test(
  'the command prints it beside everything else',
  async () => {
    const { code, out } = await ran([file, '--range', '100', '--seed', '4']);
    expect(code).toBe(0);
    const { range, verdicts } = JSON.parse(out);
    expect(verdicts.cash.state).toBeTypeOf('string');
    expect(range).toEqual(printed(100, 4));
  },
  RECKON_TIMEOUT,
);

test(
  'spreads so wide that amounts outgrow exact sums are refused in a sentence, not with a fault',
  async () => {
    const plan = JSON.parse(readFileSync(join(root, 'demo-catalog/pays-but-runs-dry.json'), 'utf8'));
    plan.plan.promise.spreads.goodsRate = '100';
    const { code, out, err } = await ran(['-', '--range', '100'], JSON.stringify(plan));
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain('too large to add up exactly; expected narrower ones in promise/spreads');
  },
  RECKON_TIMEOUT,
);

describe('words that can not be read', () => {
  test.each([
    [['--range'], '--range expects a number of draws after it'],
    [['--range', '10,000'], '--range is given "10,000"; expected 100 to 20000 draws, like 10000'],
    [['--range', '99'], '--range is given "99"; expected 100 to 20000 draws, like 10000'],
    [['--range', '1e3'], '--range is given "1e3"; expected 100 to 20000 draws, like 10000'],
    [
      ['--range', '200', '--seed', '-3'],
      '--seed is given "-3"; expected a whole number from 0 to 4294967295',
    ],
    [['--range', '200', '--seed', '4294967296'], '--seed is given "4294967296"; expected a whole number'],
    [['--seed', '3'], '--seed is given without --range'],
    [['--range', '200', '--range', '200'], '--range is given twice'],
    [['--range', '200', '--seed', '1', '--seed', '1'], '--seed is given twice'],
  ])('%j', (words, why) => {
    const read = readArguments([file, ...words]);
    expect(read.ok ? '' : read.sentence).toContain(why);
  });

  test('and those that can', () => {
    const read = readArguments([file, '--range', '20000', '--seed', '4294967295']);
    expect(read.ok && read.options.range).toEqual({ draws: 20_000, seed: 4_294_967_295 });
    const usual = readArguments([file, '--range', '100']);
    expect(usual.ok && usual.options.range).toEqual({ draws: 100, seed: 1 });
  });
});
