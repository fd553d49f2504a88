/**
 * Odds of doors against what is known elsewhere: quantiles of the normal distribution as in any table of it (Abramowitz &
 * Stegun, Handbook of Mathematical Functions (1964), table 26.1), the chance that two correlated normals are both above
 * their middles (Sheppard, Phil. Trans. A 192 (1899) 101: 1/4 + asin(r) / 2 pi; three of them: 1/8 + the sum of the three
 * arcsines / 4 pi), and every future counted one by one.
 */
import { describe, expect, test } from 'vitest';
import { chanceOfAtLeast, expectedDoors, type Fate, sharedOdds } from '../../src/domain/promise/door-odds.ts';
import { gammaShareBelow } from '../../src/domain/promise/gamma.ts';
import { scoreBelow, shareBelowScore } from '../../src/domain/promise/score.ts';
import { sharedDoorOdds } from '../support/door-odds.ts';

describe('the normal distribution', () => {
  test('against the incomplete gamma function, from -8 to 8', () => {
    for (let z = -8; z <= 8; z += 0.0625) {
      const within = gammaShareBelow(0.5, (z * z) / 2);
      expect(shareBelowScore(z)).toBeCloseTo(z < 0 ? (1 - within) / 2 : (1 + within) / 2, 13);
    }
  });

  test.each([
    [0.5, 0],
    [0.9, 1.281551566],
    [0.95, 1.644853627],
    [0.975, 1.959963985],
    [0.995, 2.575829304],
    [0.999, 3.090232306],
  ])('the score below which %d lies', (share, score) => {
    expect(scoreBelow(share)).toBeCloseTo(score, 8);
    expect(scoreBelow(1 - share)).toBeCloseTo(-score, 8);
  });

  test('certain and impossible lie infinitely far out', () => {
    expect([scoreBelow(0), scoreBelow(1)]).toEqual([Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]);
  });
});

describe('accounts that share a fate', () => {
  const coins = (count: number) => Array.from({ length: count }, () => ({ doors: 1, chance: 0.5 }));

  test.each([0, 0.1, 0.3, 0.5, 0.8, 0.95])(
    'Sheppard: two and three at one half each, correlated by %d',
    (r) => {
      const both = 1 / 4 + Math.asin(r) / (2 * Math.PI);
      const allThree = 1 / 8 + (3 * Math.asin(r)) / (4 * Math.PI);
      expect(chanceOfAtLeast(sharedDoorOdds(coins(2), r), 2)).toBeCloseTo(both, 6);
      expect(chanceOfAtLeast(sharedDoorOdds(coins(3), r), 3)).toBeCloseTo(allThree, 6);
    },
  );

  test('each keeps its own chance, and its own chances of slipping', () => {
    for (const shared of [0.1, 0.3, 0.7]) {
      const fate: Fate = { chance: 0.6, slips: [0.2, 0.5, 0.3], ifLate: [30, 20, 0], without: 0 };
      const certain = sharedOdds([{ ...fate, chance: 1 }], shared);
      [0.3, 0.5, 0.2].forEach((share, place) => {
        expect(certain[[0, 20, 30][place] ?? 0]).toBeCloseTo(share, 6);
      });
      expect(expectedDoors(sharedOdds([{ ...fate, slips: [1], ifLate: [30] }], shared))).toBeCloseTo(18, 5);
    }
  });

  test('wholly shared: all or none', () => {
    const odds = sharedDoorOdds(coins(8), 1);
    // The closest that is laid out is 0.99.
    expect(odds[0]).toBeGreaterThan(0.43);
    expect(odds[8]).toBeGreaterThan(0.43);
  });
});

describe('accounts that may come late', () => {
  const fates: Fate[] = [
    { chance: 0.9, slips: [0.5, 0.3, 0.2], ifLate: [40, 40, 10], without: 5 },
    { chance: 0.25, slips: [1], ifLate: [120], without: 0 },
    { chance: 1, slips: [0.1, 0.9], ifLate: [12, 13], without: 0 },
    { chance: 0, slips: [0.5, 0.5], ifLate: [70, 60], without: 8 },
    { chance: 0.6, slips: [0.25, 0.25, 0.25, 0.25], ifLate: [60, 0, 0, 60], without: 0 },
  ];

  test('every future counted one by one', () => {
    let futures = new Map([[0, 1]]);
    for (const { chance, slips, ifLate, without } of fates) {
      const next = new Map<number, number>();
      const add = (n: number, share: number) => next.set(n, (next.get(n) ?? 0) + share);
      for (const [n, share] of futures) {
        add(n + without, share * (1 - chance));
        slips.forEach((slip, late) => {
          add(n + (ifLate[late] ?? 0), share * chance * slip);
        });
      }
      futures = next;
    }
    const odds = sharedOdds(fates, 0);
    for (let n = 0; n < odds.length; n++) expect(odds[n], `${n}`).toBeCloseTo(futures.get(n) ?? 0, 12);
    const possible = [...futures].filter(([, share]) => share > 0).map(([n]) => n);
    expect(Math.max(...possible)).toBeLessThan(odds.length);
  });

  test('adds up to 1 whatever is shared', () => {
    for (const shared of [0, 0.2, 0.9, 1]) {
      expect(sharedOdds(fates, shared).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    }
  });
});
