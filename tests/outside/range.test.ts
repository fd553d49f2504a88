/**
 * The parts of the range against published values: quantiles of the normal distribution, the generator, rank correlation,
 * limits of a share and of a quantile.
 */
import { describe, expect, test } from 'vitest';
import {
  normalQuantile,
  normalShareBelow,
  normalTable,
  PARTS,
} from '../../src/domain/promise/range/normal.ts';
import { chanceLimits, placeOf, placesAround, valuesAt } from '../../src/domain/promise/range/quantiles.ts';
import { type Random, randomOf } from '../../src/domain/promise/range/random.ts';
import { correlationLimits, correlationOf, ranksOf } from '../../src/domain/promise/range/rank.ts';

/** Strictly between 0 and 1, one of 2^32 places. */
const shareOf = (random: Random): number => (random.next() + 0.5) / 4_294_967_296;

describe('the normal distribution', () => {
  test.each([
    [0.5, 0],
    [0.8, 0.8416212],
    [0.9, 1.2815516],
    [0.95, 1.6448536],
    [0.975, 1.959964],
    [0.99, 2.3263479],
    [0.995, 2.5758293],
  ])('a share of %d lies below %d (Abramowitz & Stegun, table 26.5, values from memory)', (share, z) => {
    expect(normalQuantile(share)).toBeCloseTo(z, 6);
    expect(normalQuantile(1 - share)).toBeCloseTo(-z, 6);
    expect(normalShareBelow(z)).toBeCloseTo(share, 7);
  });

  test('the table rises, mirrors itself, and has the variance its head states', () => {
    const table = normalTable();
    let square = 0;
    table.forEach((z, place) => {
      expect(z).toBe(-(table[PARTS - 1 - place] ?? 0));
      if (place > 0) expect(z).toBeGreaterThan(table[place - 1] ?? 0);
      square += z * z;
    });
    expect(square / PARTS).toBeCloseTo(0.9997, 4);
    expect(table.at(-1)).toBeCloseTo(3.66, 1);
    for (const place of [0, 17, 2048, 4000]) {
      expect(normalShareBelow(table[place] ?? 0)).toBeCloseTo((place + 0.5) / PARTS, 12);
    }
  });
});

describe('the generator', () => {
  /** sfc32 once more, in whole numbers without limit (PractRand's definition, from memory). */
  function* plain(seed: number, draw: number) {
    const cut = (value: bigint) => value & 0xffffffffn;
    let [a, b, c, counter] = [BigInt(seed), BigInt(draw), 0x9e3779b9n, 1n];
    for (;;) {
      const out = cut(a + b + counter);
      counter += 1n;
      a = b ^ (b >> 9n);
      b = cut(c + cut(c << 3n));
      c = cut(cut(c << 21n) | (c >> 11n));
      c = cut(c + out);
      yield Number(out);
    }
  }

  test.each([
    [1, 0],
    [4_294_967_295, 9_999],
    [20_261_125, 4_000_000_000],
  ])('seed %d, draw %d: the same as in whole numbers', (seed, draw) => {
    const random = randomOf(seed, draw);
    const other = plain(seed, draw);
    for (let warm = 0; warm < 15; warm++) other.next();
    for (let n = 0; n < 200; n++) expect(random.next()).toBe(other.next().value);
  });

  test('first numbers of 20,000 neighbouring draws lie evenly (chi square, 99 cells: 5 % to 95 % of it)', () => {
    const counts = new Float64Array(100);
    for (let draw = 0; draw < 20_000; draw++) {
      const cell = Math.floor(shareOf(randomOf(1, draw)) * 100);
      counts[cell] = (counts[cell] ?? 0) + 1;
    }
    const chi = counts.reduce((sum, count) => sum + (count - 200) ** 2 / 200, 0);
    // 99 degrees of freedom: 77.05 and 123.23 (published tables of chi square, from memory).
    expect(chi).toBeGreaterThan(77.05);
    expect(chi).toBeLessThan(123.23);
  });
});

describe('rank correlation', () => {
  test('ten pairs of a published example (IQ and hours of television: -29/165, Wikipedia, "Spearman\'s rank correlation coefficient")', () => {
    const iq = Float64Array.of(106, 86, 100, 101, 99, 103, 97, 113, 112, 110);
    const hours = Float64Array.of(7, 2, 27, 50, 28, 29, 20, 12, 6, 17);
    expect(correlationOf(ranksOf(iq), ranksOf(hours))).toBeCloseTo(-29 / 165, 12);
  });

  test('equal values share the mean of their ranks', () => {
    expect([...ranksOf(Float64Array.of(3, 1, 3, 2, 3))]).toEqual([4, 1, 4, 2, 4]);
    expect(correlationOf(ranksOf(Float64Array.of(5, 5, 5)), ranksOf(Float64Array.of(1, 2, 3)))).toBeNull();
  });

  test('limits by the formula of Fieller, Hartley & Pearson, worked by hand: 0.6 over 109 pairs', () => {
    // atanh 0.6 = 0.693147; its deviation is root(1.06 / 106) = 0.1, so 0.693147 -+ 0.195996.
    const { low, high } = correlationLimits(0.6, 109);
    expect(low).toBeCloseTo(Math.tanh(0.497151), 6);
    expect(high).toBeCloseTo(Math.tanh(0.889144), 6);
  });

  /** Independent pairs: their limits hold 0 nineteen times in twenty. */
  test('limits of 2,000 independent samples of 60 hold 0 in about 95 %', () => {
    let held = 0;
    for (let sample = 0; sample < 2000; sample++) {
      const random = randomOf(99, sample);
      const [one, other] = [0, 1].map(() =>
        ranksOf(Float64Array.from({ length: 60 }, () => shareOf(random))),
      );
      const { low, high } = correlationLimits(
        correlationOf(one as Float64Array, other as Float64Array) ?? 1,
        60,
      );
      if (low <= 0 && high >= 0) held += 1;
    }
    // 95 % of 2,000 is 1,900; three standard deviations are 29.
    expect(Math.abs(held - 1900)).toBeLessThan(30);
  });
});

describe('Monte Carlo error', () => {
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])(
    '%i of %i: Wilson, %d to %d (Newcombe, Statistics in Medicine 17 (1998) 857, table I, from memory)',
    (times, of, low, high) => {
      const limits = chanceLimits(times, of);
      expect(limits.low).toBeCloseTo(low, 4);
      expect(limits.high).toBeCloseTo(high, 4);
    },
  );

  test('quantiles are those of the values in order', () => {
    const random = randomOf(5, 5);
    for (const count of [1, 2, 10, 101, 1000]) {
      // Few different values, so that many are equal.
      const values = Float64Array.from({ length: count }, () => Math.floor(shareOf(random) * 40));
      const inOrder = [...values].sort((one, other) => one - other);
      const places = [0.1, 0.5, 0.9].map((share) => placeOf(share, count));
      expect(valuesAt(values, places)).toEqual(places.map((place) => inOrder[place]));
    }
    expect([0.1, 0.5, 0.9].map((share) => placeOf(share, 10))).toEqual([0, 4, 8]);
  });

  test('limits of a quantile hold it in 95 % or a little more', () => {
    const { low, high } = placesAround(0.8, 400);
    let held = 0;
    for (let sample = 0; sample < 1000; sample++) {
      const random = randomOf(7, sample);
      const values = Float64Array.from({ length: 400 }, () => shareOf(random)).sort();
      if ((values[low] ?? 1) <= 0.8 && (values[high] ?? 0) >= 0.8) held += 1;
    }
    expect(held).toBeGreaterThan(930);
    expect(held).toBeLessThan(985);
  });
});
