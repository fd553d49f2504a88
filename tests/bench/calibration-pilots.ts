/**
 * Invented pilots whose truth is known: a chain's mean rate of sale and how much its stores differ, some stores drawn from
 * it, some weeks counted in each. Used by calibration.test.ts to see how often the ranges hold the truth.
 * Worked figure: of 1,000 ranges of 80 % that are right some 800 hold it, give or take 1.3 points (one standard error).
 */
import { newStores, type Range, rateOfSale } from '../../src/domain/promise/rate-of-sale.ts';
import type { SeenStore } from '../../src/domain/promise/scans.ts';
import { weeksScatter } from '../../src/domain/promise/within-stores.ts';

/** sfc32 (C. Doty-Humphrey, PractRand), seeded by one number: the same pilots everywhere. */
export function randomFrom(seed: number): () => number {
  let [a, b, c, d] = [seed | 0, 0x9e3779b9 | 0, 0x243f6a88 | 0, 1];
  const next = (): number => {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return ((t >>> 0) + 0.5) / 4294967296;
  };
  for (let turn = 0; turn < 15; turn++) next();
  return next;
}

type Random = () => number;

export function normal(random: Random): number {
  return Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}

/** Marsaglia and Tsang, ACM Transactions on Mathematical Software 26 (2000) 363; mean 1. */
export function gammaOfMeanOne(random: Random, shape: number): number {
  if (shape < 1) return (gammaOfMeanOne(random, shape + 1) * (shape + 1) * random() ** (1 / shape)) / shape;
  const d = shape - 1 / 3;
  for (;;) {
    const x = normal(random);
    const v = (1 + x / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(random()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return (d * v) / shape;
  }
}

export function poisson(random: Random, mean: number): number {
  if (mean > 60) return poisson(random, mean / 2) + poisson(random, mean / 2);
  let [count, left] = [0, random()];
  for (const end = Math.exp(-mean); left > end; count++) left *= random();
  return count;
}

export interface Truth {
  mean: number;
  /** Coefficient of variation of stores. */
  cv: number;
}

export interface Pilot {
  stores: number;
  weeks: number;
  truth: (random: Random) => Truth;
  /** Variance over mean of weeks in a store; 1: counts. */
  scatter: number;
  /** Stores not as the model has them: lognormal instead of gamma. */
  lognormal?: boolean;
}

export interface Hit {
  mean80: boolean;
  mean95: boolean;
  store80: boolean;
  store95: boolean;
  /** Width of the 80 % range of the mean over the truth. */
  width80: number;
}

/** One pilot, counted and read as a plan's scans are, and whether the ranges hold what is true. */
export function hitOf(pilot: Pilot, random: Random, withStore: boolean): Hit {
  const truth = pilot.truth(random);
  const store = () => truth.mean * differing(random, truth.cv, pilot.lognormal ?? false);
  const seen = Array.from({ length: pilot.stores }, () => weeksOf(pilot, store(), random));
  const counts = seen.map(({ weeks }) => ({
    units: weeks.reduce((sum, { units }) => sum + units, 0),
    weeks: weeks.length,
  }));
  const found = rateOfSale(counts, { mean: null, spread: 0.5 }, weeksScatter(seen));
  if (found === null) throw new Error('a pilot without a week');
  const another = store();
  const next = withStore ? newStores(found.weights, 1, found.mean) : found.ofMean;
  return {
    ...holds('mean', found.ofMean, truth.mean),
    ...holds('store', next, another),
    width80: (found.ofMean.high80 - found.ofMean.low80) / truth.mean,
  } as Hit;
}

function holds(what: 'mean' | 'store', range: Range, value: number): Record<string, boolean> {
  return {
    [`${what}80`]: value >= range.low80 && value <= range.high80,
    [`${what}95`]: value >= range.low95 && value <= range.high95,
  };
}

function differing(random: Random, cv: number, lognormal: boolean): number {
  if (!lognormal) return gammaOfMeanOne(random, 1 / cv ** 2);
  const variance = Math.log1p(cv ** 2);
  return Math.exp(Math.sqrt(variance) * normal(random) - variance / 2);
}

function weeksOf({ weeks, scatter }: Pilot, rate: number, random: Random): SeenStore {
  // A negative binomial of that mean with variance `scatter` times as large.
  const units = () =>
    poisson(random, scatter > 1 ? rate * gammaOfMeanOne(random, rate / (scatter - 1)) : rate);
  return {
    store: '',
    accountId: null,
    gaps: 0,
    weeks: Array.from({ length: weeks }, (_, calendarWeek) => ({
      calendarWeek,
      units: units(),
      weight: 1,
      on: 'plain',
      isOpening: false,
    })),
  };
}
