/**
 * What reckon prints of the answers and of the lender's block, on the example that pays but runs dry: the keys that issue and
 * help name, weeks as numbers, money as decimal texts, and the same figures as the rest of the answer.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { evaluate } from '../../src/domain/evaluate.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { outputOf } from '../../src/reckon/output.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { root } from '../support/source-files.ts';

interface Printed {
  solves: { mostDoors: unknown[] };
  rollout: {
    cashNeed: { amount: string };
    units: { lost: number };
    binding: { week: number; what: string; tight: boolean }[];
    lifts: Record<string, unknown>[];
    solves: Record<string, unknown>;
    lender: { cashFlow: { closes: string[]; fromWeek: number }; collateral: Record<string, unknown> };
  };
}

function printed(): Printed {
  const parsed = parsePlanText(readFileSync(join(root, 'demo-catalog/pays-but-runs-dry.json'), 'utf8'));
  if (!parsed.ok) throw new Error('no plan');
  const results = evaluate(parsed.value, sayFor);
  if (!results.ok) throw new Error('not computed');
  const args = { plan: parsed.value, results: results.value, weeks: false, journal: false };
  return outputOf(args).output as Printed;
}

const { solves, rollout } = printed();

test('binding: every week in order, with one of five words', () => {
  expect(rollout.binding.map(({ week }) => week)).toEqual(Array.from({ length: 78 }, (_, week) => week));
  const words = ['cash', 'capacity', 'stock', 'doors', 'demand'];
  expect(rollout.binding.filter(({ what }) => !words.includes(what))).toEqual([]);
});

test('lifts: each begins where the plan stands', () => {
  expect(rollout.lifts.length).toBeGreaterThan(5);
  for (const lift of rollout.lifts) {
    expect(lift['cashNeedBefore']).toBe(rollout.cashNeed.amount);
    expect(lift['unitsLostBefore']).toBe(rollout.units.lost);
    expect(lift['cashNeedAfter']).toMatch(/^\d+\.\d\d$/);
    expect(typeof lift['unitsLostAfter']).toBe('number');
    expect(lift['change']).toMatch(/^(Tarrowby Grocers|Hot honey, 12 oz)\b/);
  }
});

test('solves: those of before, and the searches beside them', () => {
  expect(Object.keys(rollout.solves)).toEqual([
    'leastOpeningCash',
    'mostDoors',
    'latestOrders',
    'waveSpacing',
    'doorsAWeek',
    'neverCloses',
    'fundsItself',
  ]);
  expect(rollout.solves['mostDoors']).toEqual(solves.mostDoors);
});

test('lender: 13 weeks, and an amount at the plan’s rates', () => {
  const { cashFlow, collateral } = rollout.lender;
  expect(cashFlow.closes.length).toBe(13);
  expect(collateral['receivablesRate']).toBe('0.8');
  const sum = Number(collateral['onReceivables']) + Number(collateral['onStock']);
  expect(Number(collateral['amount'])).toBeCloseTo(sum, 6);
  expect(Number(collateral['onReceivables'])).toBeCloseTo(Number(collateral['eligibleReceivables']) * 0.8, 1);
});
