/**
 * What reckon prints of the evidence of the example that pays but runs dry: counts by hand from its scans, the ranges in
 * order, the plan's own rate above what the stores say; nothing where nothing was scanned.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { evaluate } from '../../src/domain/evaluate.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { outputOf } from '../../src/reckon/output.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { root } from '../support/source-files.ts';

type Range = Record<'low80' | 'high80' | 'low95' | 'high95', string>;

interface Printed {
  promise: {
    rateOfSale: Range & {
      mean: string;
      units: number;
      storeWeeks: string;
      leftOut: object;
      newStore: Range;
      lifts: { on: string; factor: string; weeks: number }[];
    };
    otherRates: unknown[];
  } | null;
}

function printed(name: string): Printed['promise'] {
  const parsed = parsePlanText(readFileSync(join(root, 'demo-catalog', name), 'utf8'));
  if (!parsed.ok) throw new Error('no plan');
  const results = evaluate(parsed.value, sayFor);
  if (!results.ok) throw new Error('not computed');
  const args = { plan: parsed.value, results: results.value, weeks: false, journal: false };
  return (outputOf(args).output as Printed).promise;
}

test('the hot honey: 327 units in 97 weeks of eight stores, about 3.5 a week where the plan counts on 4.5', () => {
  const rate = printed('pays-but-runs-dry.json')?.rateOfSale;
  // 132 weeks of 8 stores less 3 not seen, 6 x 4 after openings, 6 on display, 2 at a lower price: 97.
  expect(rate).toMatchObject({
    units: 327,
    storeWeeks: '97.0000',
    leftOut: { openings: 24, deals: 8, gaps: 3 },
  });
  expect(Number(rate?.mean)).toBeGreaterThan(327 / 97);
  expect(Number(rate?.mean)).toBeLessThan(3.7);
  expect(Number(rate?.high80)).toBeLessThan(4.5);
  expect(Number(rate?.newStore.high80)).toBeGreaterThan(4.5);
  expect(rate?.lifts.map(({ on, weeks }) => [on, weeks])).toEqual([
    ['display', 6],
    ['price', 2],
  ]);
});

test('without scans: nothing', () => {
  expect(printed('margin-not-markup.json')).toBeNull();
});
