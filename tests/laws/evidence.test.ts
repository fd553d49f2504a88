/**
 * Evidence of random plans: whatever was scanned, ranges are in order and finite, sentences hold no stray value, and more of
 * the same tells more. Stores and counts of every size.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evidenceOf, rangeOfNewStores } from '../../src/domain/promise/evidence.ts';
import { halvingOf } from '../../src/domain/promise/halving.ts';
import { type Range, rateOfSale } from '../../src/domain/promise/rate-of-sale.ts';
import { evidenceWarnings } from '../../src/domain/promise/warnings.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { arbitraryPlan } from '../support/arbitrary-plan.ts';

const say = plainSay({ minorDigits: 2, startDay: 0, dateOf: isoDateOf });
const weak = { mean: null, spread: 0.5 };

function inOrder({ low95, low80, high80, high95 }: Range): boolean {
  const all = [0, low95, low80, high80, high95];
  return all.every((each, at) => Number.isFinite(each) && each >= (all[at - 1] ?? 0));
}

const width = ({ low80, high80 }: Range) => Math.log(high80 / low80);

const store = fc.record({ units: fc.integer({ min: 0, max: 4000 }), weeks: fc.integer({ min: 1, max: 60 }) });

test('random plans: ranges in order, sentences whole', { timeout: 60_000 }, () => {
  let seen = 0;
  fc.assert(
    fc.property(arbitraryPlan(), (plan) => {
      for (const evidence of evidenceOf(plan)) {
        seen += 1;
        const { rate, lifts, trend } = evidence;
        expect(inOrder(rate.ofMean)).toBe(true);
        expect(rate.mean).toBeGreaterThan(0);
        expect(rate.weeksScatter).toBeGreaterThanOrEqual(1);
        for (const effect of [...lifts, ...(trend === null ? [] : [trend])]) {
          expect(inOrder(effect)).toBe(true);
          expect(effect.factor).toBeGreaterThan(0);
        }
        const words = evidenceWarnings(plan, evidence, say).map(({ sentence }) => sentence);
        expect(words.join(' ')).not.toMatch(/NaN|undefined|null|Infinity/);
      }
    }),
    { numRuns: 60 },
  );
  expect(seen).toBeGreaterThan(20);
});

test('a new store is no surer than all stores, and halving asks for one more at least', {
  timeout: 60_000,
}, () => {
  fc.assert(
    fc.property(arbitraryPlan(), (plan) => {
      for (const evidence of evidenceOf(plan).slice(0, 1)) {
        const one = rangeOfNewStores(evidence, 1);
        expect(inOrder(one)).toBe(true);
        // A coarser grid: a hundredth to spare.
        expect(one.high80 - one.low80).toBeGreaterThan(
          0.99 * (evidence.rate.ofMean.high80 - evidence.rate.ofMean.low80),
        );
        const { stores, weeks } = halvingOf(evidence);
        for (const more of [stores, weeks]) expect(more === null || more >= 1).toBe(true);
      }
    }),
    { numRuns: 12 },
  );
});

test('any stores: ranges in order; the same stores three times over tell more', { timeout: 60_000 }, () => {
  fc.assert(
    fc.property(fc.array(store, { minLength: 1, maxLength: 8 }), (stores) => {
      const once = rateOfSale(stores, weak);
      const thrice = rateOfSale(
        stores.map((each) => ({ ...each, times: 3 })),
        weak,
      );
      if (once === null || thrice === null) throw new Error('stores without a rate');
      expect(inOrder(once.ofMean)).toBe(true);
      const sold = stores.reduce((sum, { units }) => sum + units, 0);
      if (sold > 10) expect(width(thrice.ofMean)).toBeLessThan(width(once.ofMean));
    }),
    { numRuns: 60 },
  );
});

test('a store more that sold nothing never raises the mean', { timeout: 60_000 }, () => {
  fc.assert(
    fc.property(fc.array(store, { minLength: 1, maxLength: 6 }), (stores) => {
      const sold = stores.reduce((sum, { units }) => sum + units, 0);
      fc.pre(sold > 20);
      const before = rateOfSale(stores, weak)?.mean ?? 0;
      const after = rateOfSale([...stores, { units: 0, weeks: 20 }], weak)?.mean ?? 0;
      expect(after).toBeLessThan(before * 1.001);
    }),
    { numRuns: 40 },
  );
});
