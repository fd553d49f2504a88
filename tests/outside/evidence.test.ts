/**
 * The distributions behind evidence against jstat (1.9.6), a general library of statistics: quantiles of the gamma and the
 * beta, and the negative binomial that a store's count has, with its belief summed up by brute force from jstat's terms.
 */
import { jStat } from 'jstat';
import { describe, expect, test } from 'vitest';
import { gammaQuantile } from '../../src/domain/promise/gamma.ts';
import { rateOfSale } from '../../src/domain/promise/rate-of-sale.ts';
import type { SeenStore, WeekOn } from '../../src/domain/promise/scans.ts';
import { liftsOf, trendOf } from '../../src/domain/promise/within-stores.ts';

const SHARES = [0.025, 0.1, 0.5, 0.9, 0.975];

test('gamma quantiles: jstat’s, to seven digits', () => {
  for (const shape of [0.6, 1, 4, 25, 300])
    for (const share of SHARES) {
      const theirs = jStat.gamma.inv(share, shape, 0.5);
      expect(gammaQuantile(share, shape, 2) / theirs).toBeCloseTo(1, 7);
    }
});

describe('belief in mean and difference of stores', () => {
  const stores = [
    { units: 41, weeks: 8 },
    { units: 22, weeks: 6 },
    { units: 63, weeks: 8 },
  ];
  const found = rateOfSale(stores, { mean: 6, spread: 0.4 });

  test('shares are in proportion to prior x jstat’s negative binomial terms', () => {
    const { means, shapes, shares } = found?.weights ?? { means: [], shapes: [], shares: [] };
    const places = [
      [100, 20],
      [120, 24],
      [140, 30],
      [128, 36],
    ] as const;
    const logs = places.map(([m, s]) => {
      const [mean = 0, shape = 0] = [means[m], shapes[s]];
      // 0.45 and 0.9: the prior of the coefficient of variation, as rate-of-sale.ts states it.
      const prior =
        -0.5 * (Math.log(mean / 6) / 0.4) ** 2 - 0.5 * (Math.log(1 / Math.sqrt(shape) / 0.45) / 0.9) ** 2;
      const seen = stores.map(({ units, weeks }) =>
        Math.log(jStat.negbin.pdf(units, shape, shape / (shape + mean * weeks))),
      );
      return prior + seen.reduce((sum, each) => sum + each, 0);
    });
    const ours = places.map(([m, s]) => Math.log(shares[m * shapes.length + s] ?? 0));
    for (const at of [1, 2, 3])
      expect((ours[at] ?? 0) - (ours[0] ?? 0)).toBeCloseTo((logs[at] ?? 0) - (logs[0] ?? 0), 6);
  });

  test('a store counted twice over is two stores', () => {
    const twice = rateOfSale([...stores, ...stores], { mean: null, spread: 0.5 });
    const times = rateOfSale(
      stores.map((store) => ({ ...store, times: 2 })),
      { mean: null, spread: 0.5 },
    );
    expect(times?.stores).toBe(6);
    expect(times?.mean).toBeCloseTo(twice?.mean ?? 0, 9);
    expect(times?.ofMean.low95).toBeCloseTo(twice?.ofMean.low95 ?? 0, 9);
  });
});

function aStore(weeks: readonly (readonly [units: number, on: WeekOn, calendarWeek: number])[]): SeenStore {
  return {
    store: 'Hill',
    accountId: null,
    gaps: 0,
    weeks: weeks.map(([units, on, calendarWeek]) => ({
      units,
      on,
      calendarWeek,
      weight: 1,
      isOpening: false,
    })),
  };
}

describe('conditional on a store’s total the share of its flagged weeks is a beta (jstat), half a unit more on either side', () => {
  // One week beside one: the share p = lift / (lift + 1), whose belief is Beta(x + 1/2, n - x + 1/2).
  test.each([
    [9, 6],
    [30, 10],
    [2, 7],
    [1, 12],
  ])('%i on display, %i beside it', (flagged, plain) => {
    const [lift] = liftsOf(
      [
        aStore([
          [flagged, 'display', 1],
          [plain, 'plain', 0],
        ]),
      ],
      1,
    );
    const exact = (share: number) => {
      const p = jStat.beta.inv(share, flagged + 0.5, plain + 0.5);
      return p / (1 - p);
    };
    expect((lift?.factor ?? 0) / exact(0.5)).toBeCloseTo(1, 1.7);
    expect((lift?.low80 ?? 0) / exact(0.1)).toBeCloseTo(1, 1.7);
    expect((lift?.high80 ?? 0) / exact(0.9)).toBeCloseTo(1, 1.7);
  });

  test('weeks that scatter twice as much are half as many units', () => {
    const store = aStore([
      [24, 'price', 1],
      [16, 'plain', 0],
    ]);
    const half = aStore([
      [12, 'price', 1],
      [8, 'plain', 0],
    ]);
    expect(liftsOf([store], 2)).toEqual(liftsOf([half], 1));
  });

  test('a trend of two weeks four weeks apart is their share (a third one, far off, empty), where counts leave the prior nothing', () => {
    const found = trendOf(
      [
        aStore([
          [2000, 'plain', 0],
          [0, 'plain', 40],
          [1000, 'plain', 4],
        ]),
      ],
      1,
    );
    expect(found?.factor).toBeGreaterThan(0.4);
    expect(found?.factor).toBeLessThan(0.52);
    // Without the empty week there are too few weeks to speak of a trend.
    const two = [[2000, 'plain', 0] as const, [1000, 'plain', 4] as const];
    expect(trendOf([aStore(two)], 1)).toBeNull();
  });

  test('a trend of three weeks, the middle one as it should be: the beta of the ends', () => {
    // 1600, 800 and 400 in weeks 0, 4 and 8 halve every four weeks; the range is that of a log-linear slope by its information.
    const found = trendOf(
      [
        aStore([
          [1600, 'plain', 0],
          [800, 'plain', 4],
          [400, 'plain', 8],
        ]),
      ],
      1,
    );
    // Fisher information of the slope per four weeks: n x variance of (0, 1, 2) with shares 4/7, 2/7, 1/7: 2800 x 0.5306.
    const sd = 1 / Math.sqrt(2800 * ((2 + 4) / 7 - (4 / 7) ** 2));
    expect(found?.factor).toBeCloseTo(0.5, 2);
    expect(Math.log((found?.high80 ?? 0) / (found?.low80 ?? 1)) / (2 * 1.2816 * sd)).toBeCloseTo(1, 1);
  });
});
