/**
 * The double of a decimal, against what JavaScript reads from its text (ECMAScript 2025, "StringToNumber": the double
 * nearest to the written value).
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dec, numberOf } from '../../src/domain/money/decimal.ts';

const decimalText = fc
  .tuple(fc.constantFrom('', '-'), fc.bigInt({ min: 0n, max: 10n ** 30n }), fc.nat({ max: 30 }))
  .map(([sign, digits, places]) => {
    const text = digits.toString().padStart(places + 1, '0');
    const point = text.length - places;
    return `${sign}${text.slice(0, point)}${places > 0 ? `.${text.slice(point)}` : ''}`;
  });
const priceText = fc.nat({ max: 10_000_000 }).map((ticks) => (ticks / 10_000).toFixed(4));

test.each([
  ['prices of four decimals', priceText],
  ['any decimals', decimalText],
] as const)('numberOf() is the nearest double: %s', (_, texts) => {
  fc.assert(
    fc.property(texts, (text) => {
      expect(numberOf(dec(text))).toBe(Number(text));
    }),
    { numRuns: 2000 },
  );
});

test.each([
  '0',
  '-0',
  '9999999',
  '10000000',
  '99999999999999',
  '100000000000000',
  '0.0000001',
  '1e-22',
  '1e22',
])('numberOf(%s)', (text) => {
  expect(numberOf(dec(text))).toBe(Number(text));
});
