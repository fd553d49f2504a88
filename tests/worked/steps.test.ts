/**
 * Steppers land on round numbers. The rows are worked by hand: 1, 2 or 5 times a power of ten, nearest to 4 % of the
 * value, counted from a multiple of itself. Common practice, no source.
 */
import { expect, test } from 'vitest';
import { type StepArgs, stepped } from '../../src/screens/shared/steps.ts';

const up = (args: Pick<StepArgs, 'value' | 'step'>) =>
  stepped({ ...args, direction: 1, fine: false, least: 0 });
const down = (args: Pick<StepArgs, 'value' | 'step'>) =>
  stepped({ ...args, direction: -1, fine: false, least: 0 });

test.each([
  ['sum', '250', '260', '240'],
  ['sum', '253', '260', '250'],
  ['sum', '0', '1', '0'],
  ['sum', '36000', '37000', '35000'],
  ['margin', '0.42', '0.425', '0.415'],
  ['margin', '0.4213', '0.425', '0.42'],
  ['tag', '4.99', '5.09', '4.89'],
  ['days', 30, '35', '25'],
  ['days', 32, '35', '30'],
  ['one', 6, '7', '5'],
  ['depth', '0.2', '0.25', '0.15'],
  ['slowShare', '0.02', '0.0225', '0.0175'],
  ['funded', '0.5', '0.75', '0.25'],
  ['doors', 1, '2', '0'],
  ['rate', '6', '6.5', '5.5'],
] as const)('%s from %s: up to %s, down to %s', (step, value, higher, lower) => {
  expect(up({ step, value })).toBe(higher);
  expect(down({ step, value })).toBe(lower);
});

test('a fine step is a tenth, and nothing goes below its least', () => {
  const fine = { direction: 1, fine: true, least: 0 } as const;
  expect(stepped({ ...fine, value: '250', step: 'sum' })).toBe('251');
  expect(stepped({ ...fine, value: '0.42', step: 'margin' })).toBe('0.4205');
  expect(stepped({ value: '1', step: 'doors', direction: -1, fine: false, least: 1 })).toBe('1');
  expect(stepped({ value: '-1200', step: 'sum', direction: -1, fine: false, least: null })).toBe('-1250');
});
