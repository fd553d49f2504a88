/**
 * Evidence and promise against published values: exact Poisson limits (Garwood, Biometrika 28 (1936) 437: the limits of a
 * count of 0 as seen published, the others recomputed), the binomial and Poisson-binomial distributions, the band
 * above 1,800 of the US Merger Guidelines 2023, section 2.1, and the US DOJ's page on the index: its lower band and worked index.
 */
import { describe, expect, test } from 'vitest';
import { chanceOfAtLeast, doorsAt, expectedDoors } from '../../src/domain/promise/door-odds.ts';
import {
  exactPoissonLimits,
  gammaQuantile,
  gammaShareBelow,
  logGamma,
} from '../../src/domain/promise/gamma.ts';
import { leaningOf } from '../../src/domain/promise/leaning.ts';
import { rateOfSale } from '../../src/domain/promise/rate-of-sale.ts';
import { doorOdds, sharedDoorOdds } from '../support/door-odds.ts';

describe('Garwood 1936: 95 % limits of a Poisson mean', () => {
  test.each([
    [0, 0, 3.6889],
    [1, 0.0253, 5.5716],
    [5, 1.6235, 11.6683],
    [10, 4.7954, 18.3904],
  ])('a count of %i: %d to %d', (count, low, high) => {
    const limits = exactPoissonLimits(count, 0.95);
    expect(limits.low).toBeCloseTo(low, 4);
    expect(limits.high).toBeCloseTo(high, 4);
  });
});

describe('the gamma function and distribution', () => {
  test('factorials and the square root of pi', () => {
    expect(Math.exp(logGamma(11))).toBeCloseTo(3_628_800, 4);
    expect(Math.exp(logGamma(0.5))).toBeCloseTo(Math.sqrt(Math.PI), 12);
  });

  test('of shape 1 it is the exponential', () => {
    for (const x of [0.01, 0.5, 1, 3, 20]) expect(gammaShareBelow(1, x)).toBeCloseTo(1 - Math.exp(-x), 13);
  });

  test('a quantile is where the share is reached, from tiny shapes to large', () => {
    for (const shape of [0.1, 0.7, 1, 5, 60, 900]) {
      for (const share of [0.025, 0.1, 0.5, 0.9, 0.975]) {
        expect(gammaShareBelow(shape, gammaQuantile(share, shape, 2) * 2)).toBeCloseTo(share, 9);
      }
    }
  });
});

describe('doors', () => {
  test('Poisson-binomial of .1 .2 .3 .4 .5, worked out by hand', () => {
    const odds = doorOdds([0.1, 0.2, 0.3, 0.4, 0.5].map((chance) => ({ doors: 1, chance })));
    [0.1512, 0.3714, 0.3274, 0.1274, 0.0214, 0.0012].forEach((share, n) => {
      expect(odds[n]).toBeCloseTo(share, 4);
    });
  });

  test('equal chances and one door each: the binomial, 10 of 0.3', () => {
    const odds = doorOdds(Array.from({ length: 10 }, () => ({ doors: 1, chance: 0.3 })));
    let choose = 1;
    for (let n = 0; n <= 10; n++) {
      expect(odds[n]).toBeCloseTo(choose * 0.3 ** n * 0.7 ** (10 - n), 12);
      choose = (choose * (10 - n)) / (n + 1);
    }
  });

  test('every future counted one by one, for five accounts of different size', () => {
    const accounts = [12, 60, 7, 60, 180].map((doors, i) => ({
      doors,
      chance: [0.9, 0.4, 0.25, 0.7, 0.05][i] ?? 0,
    }));
    const odds = doorOdds(accounts);
    const counted = new Map<number, number>();
    for (let future = 0; future < 2 ** accounts.length; future++) {
      let doors = 0;
      let share = 1;
      accounts.forEach((account, i) => {
        const opens = ((future >> i) & 1) === 1;
        doors += opens ? account.doors : 0;
        share *= opens ? account.chance : 1 - account.chance;
      });
      counted.set(doors, (counted.get(doors) ?? 0) + share);
    }
    odds.forEach((share, n) => {
      expect(share).toBeCloseTo(counted.get(n) ?? 0, 12);
    });
    expect(expectedDoors(odds)).toBeCloseTo(12 * 0.9 + 60 * 0.4 + 7 * 0.25 + 60 * 0.7 + 180 * 0.05, 9);
  });

  test('certain accounts are certain, impossible ones never, with a shock or without', () => {
    const accounts = [
      { doors: 30, chance: 1 },
      { doors: 40, chance: 0 },
    ];
    for (const shock of [0, 1]) {
      const odds = sharedDoorOdds(accounts, shock);
      expect([chanceOfAtLeast(odds, 30), chanceOfAtLeast(odds, 31), doorsAt(odds, 0.5)]).toEqual([1, 0, 30]);
    }
  });

  test('a shared fate widens the range and leaves the middle', () => {
    const accounts = Array.from({ length: 12 }, () => ({ doors: 100, chance: 0.5 }));
    const alone = doorOdds(accounts);
    const together = sharedDoorOdds(accounts, 1);
    expect(together.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(expectedDoors(together)).toBeCloseTo(expectedDoors(alone), 6);
    expect(doorsAt(together, 0.1)).toBeLessThan(doorsAt(alone, 0.1));
    expect(doorsAt(together, 0.9)).toBeGreaterThan(doorsAt(alone, 0.9));
  });
});

describe('leaning on one: US DOJ’s worked index, and the bands of 2023', () => {
  test.each([
    [[30, 30, 20, 20], 2600, 'high'],
    [[40, 30, 20, 10], 3000, 'high'],
    [Array(10).fill(10), 1000, 'moderate'],
    [Array(20).fill(5), 500, 'low'],
  ] as const)('%j', (amounts, index, band) => {
    const leaning = leaningOf(amounts as number[]);
    expect(leaning.index).toBeCloseTo(index, 9);
    expect(leaning.band).toBe(band);
  });

  test('nothing sold leans on nobody', () => {
    expect(leaningOf([0, 0])).toEqual({ shares: [0, 0], index: 0, band: 'low', largest: null });
  });
});

describe('rate of sale', () => {
  const weak = { mean: null, spread: 0.5 };

  test('many stores all alike come near to one Poisson count of all their weeks', () => {
    const stores = Array.from({ length: 60 }, () => ({ units: 40, weeks: 10 }));
    const found = rateOfSale(stores, weak);
    const exact = exactPoissonLimits(2400, 0.95);
    expect(found?.mean).toBeCloseTo(4, 1);
    // A little wider: stores that look alike may still differ somewhat.
    expect(found?.ofMean.low95).toBeLessThan(exact.low / 600);
    expect(found?.ofMean.low95).toBeGreaterThan((exact.low / 600) * 0.97);
  });

  test('one store that sold nothing: most likely next to nothing elsewhere, and one store can’t rule out more', () => {
    const found = rateOfSale([{ units: 0, weeks: 8 }], weak);
    expect(found?.ofMean.low80).toBeLessThan(0.2);
    expect(found?.ofMean.low95).toBeGreaterThan(0);
    const more = rateOfSale(Array(8).fill({ units: 0, weeks: 8 }), weak);
    expect(more?.ofMean.high95).toBeLessThan((found?.ofMean.high95 ?? 0) / 3);
  });

  test('many stores that sell next to nothing, or hundreds a week: what was counted, not the end of what is usual', () => {
    // 20 units in 520 weeks: exact limits 0.0235 to 0.0594 a week.
    const slow = rateOfSale(Array(20).fill({ units: 1, weeks: 26 }), weak);
    const exact = exactPoissonLimits(20, 0.95);
    expect((slow?.mean ?? 0) / (20 / 520)).toBeCloseTo(1, 1);
    expect((slow?.ofMean.low95 ?? 0) / (exact.low / 520)).toBeCloseTo(1, 0);
    expect((slow?.ofMean.high95 ?? 0) / (exact.high / 520)).toBeCloseTo(1, 0);
    // None in 1,000 weeks: the exact upper limit is 0.0037.
    const none = rateOfSale(Array(50).fill({ units: 0, weeks: 20 }), weak);
    expect(none?.ofMean.high95).toBeLessThan(exactPoissonLimits(0, 0.95).high / 1000);
    const fast = rateOfSale(Array(5).fill({ units: 4800, weeks: 6 }), weak);
    expect((fast?.mean ?? 0) / 800).toBeCloseTo(1, 2);
    expect(fast?.ofMean.high95).toBeGreaterThan(800);
  });

  test('hundreds of stores: the range is as narrow as their counts, not as a step of a grid', () => {
    // 50,000 units: exact 95 % limits lie 0.9 % either way; stores as alike as these could still differ a little.
    const found = rateOfSale(Array(500).fill({ units: 100, weeks: 20 }), weak);
    const exact = exactPoissonLimits(50_000, 0.95);
    const width = (found?.ofMean.high95 ?? 0) - (found?.ofMean.low95 ?? 0);
    expect(width / ((exact.high - exact.low) / 10_000)).toBeCloseTo(1, 0.9);
  });

  test('what was held before and what was counted contradict each other: both are within what is tried', () => {
    // 100 stores of 50 a week, where 5 was held, for all but certain: the belief lies between, at no end of the grid.
    const found = rateOfSale(Array(100).fill({ units: 300, weeks: 6 }), { mean: 5, spread: 0.05 });
    const {
      means = new Float64Array(),
      shapes = new Float64Array(),
      shares = new Float64Array(),
    } = found?.weights ?? {};
    const atEnds = shapes.map(
      (_, s) => (shares[s] ?? 0) + (shares[(means.length - 1) * shapes.length + s] ?? 0),
    );
    expect(atEnds.reduce((sum, each) => sum + each, 0)).toBeLessThan(1e-6);
    expect(found?.ofMean.low95).toBeGreaterThan(5);
    expect(found?.ofMean.high95).toBeLessThan(50);
  });

  test('no counted week says nothing', () => {
    expect(rateOfSale([], weak)).toBeNull();
    expect(rateOfSale([{ units: 0, weeks: 0 }], weak)).toBeNull();
  });
});
