/**
 * Evidence and promise against published values: exact Poisson limits (Garwood, Biometrika 28 (1936) 437: the limits of a
 * count of 0 as seen published, the others recomputed), the binomial and Poisson-binomial distributions, and the bands of
 * the US Merger Guidelines 2023, section 2.1, with the US DOJ's worked index.
 */
import { describe, expect, test } from 'vitest';
import {
  chanceOfAtLeast,
  doorOdds,
  doorsAt,
  expectedDoors,
  sharedDoorOdds,
} from '../../src/domain/promise/door-odds.ts';
import {
  exactPoissonLimits,
  gammaQuantile,
  gammaShareBelow,
  logGamma,
} from '../../src/domain/promise/gamma.ts';
import { leaningOf } from '../../src/domain/promise/leaning.ts';
import { rateOfSale } from '../../src/domain/promise/rate-of-sale.ts';

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

  test('no counted week says nothing', () => {
    expect(rateOfSale([], weak)).toBeNull();
    expect(rateOfSale([{ units: 0, weeks: 0 }], weak)).toBeNull();
  });
});
