/**
 * Laws of the seven numbers, on random ones (fast-check prints the seed of a failure): whatever is typed within each
 * number's own limits makes a sound plan, the numbers come back out, and its results hold no NaN.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import { planSchema } from '../../src/domain/plan/index.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import { sentence } from '../../src/domain/problems.ts';
import { quickPlan, REGIONS, type SevenNumbers, sevenOf } from '../../src/domain/quick/index.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { oddNumbers } from '../support/deals.ts';

const decimal = (least: number, most: number, decimals: number) =>
  fc
    .integer({ min: Math.round(least * 10 ** decimals), max: Math.round(most * 10 ** decimals) })
    .map((n) => (n / 10 ** decimals).toFixed(decimals));

const anySeven: fc.Arbitrary<SevenNumbers> = fc.record({
  shelfPrice: decimal(0.01, 2000, 2),
  landedPerUnit: decimal(0, 500, 4),
  retailerMarginRate: decimal(0, 0.95, 3),
  moneyDownPerStore: fc.option(decimal(0, 5000, 2), { nil: null }),
  stores: fc.option(fc.integer({ min: 1, max: 5000 }), { nil: null }),
  unitsPerStoreWeek: fc.option(decimal(0.01, 200, 2), { nil: null }),
  cash: fc.option(decimal(-1000, 1_000_000, 2), { nil: null }),
  freeFill: fc.boolean(),
  distributor: fc.boolean(),
  productName: fc.constantFrom('', 'Plum jam', '  '),
  chainName: fc.constantFrom('', 'Corner Basket'),
});

test('seven numbers within their limits make a sound plan that gives them back', () => {
  fc.assert(
    fc.property(anySeven, fc.constantFrom(...REGIONS), (seven, region) => {
      const made = quickPlan({ seven, region, startDate: '2026-03-02', planId: 'quick' });
      expect(made.ok).toBe(true);
      if (!made.ok) return;
      expect(planSchema.parse(made.value)).toEqual(made.value);
      expect(checkRules(made.value).map(sentence)).toEqual([]);
      const back = sevenOf(made.value);
      expect([back?.shelfPrice, back?.retailerMarginRate, back?.cash]).toEqual([
        seven.shelfPrice,
        seven.retailerMarginRate,
        seven.cash,
      ]);
      expect([back?.stores, back?.unitsPerStoreWeek]).toEqual([
        seven.stores ?? 1,
        seven.unitsPerStoreWeek ?? '1',
      ]);
    }),
  );
});

test('its results are numbers, or a problem in words', () => {
  fc.assert(
    fc.property(anySeven, fc.constantFrom(...REGIONS), (seven, region) => {
      const made = quickPlan({ seven, region, startDate: '2026-03-02', planId: 'quick' });
      if (!made.ok) throw new Error('within limits');
      const results = evaluate(made.value, (args) => plainSay({ ...args, dateOf: isoDateOf }));
      if (!results.ok) {
        expect(results.problems.map(({ code }) => code)).not.toContain('field-invalid');
        expect(results.problems.every(({ expected }) => expected.length > 0)).toBe(true);
        return;
      }
      const { verdicts, deals, reading } = results.value;
      expect(oddNumbers({ verdicts, deals, reading })).toEqual([]);
      expect(verdicts.cash.state === 'unknown').toBe(seven.cash === null);
    }),
    { numRuns: 40 },
  );
});
