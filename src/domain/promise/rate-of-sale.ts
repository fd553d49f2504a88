// What store sales say of the rate of sale: stores differ (gamma), weeks within a store are counts (Poisson). The pair
// of unknowns, the mean over all stores and how much stores differ, is weighed on a grid, so that few stores and small
// counts give wide ranges instead of wrong ones. Method: Bayes on a grid for the gamma-Poisson model (Gelman et al.,
// Bayesian Data Analysis, 3rd ed., ch. 2.7 and 3.7), with the priors stated below.
// Worked figure: 8 stores, 6 weeks each, 288 units in all, much alike: 6.0 a store and week, 80 % within 5.5 to 6.6.
import { gammaShareBelow, logGamma, quantileOf } from './gamma.ts';

/** One store's counted weeks. */
export interface StoreCount {
  units: number;
  /** Weeks counted, above 0: gaps and opening weeks are left out before. */
  weeks: number;
  /** So many stores of these counts; not only whole ones, where it is asked what more stores would tell. */
  times?: number;
}

/**
 * What is held before any store was seen. `mean` null: nothing is known of the rate between a twentieth of a unit and 500
 * a store and week (or beyond, where counts lie there), each doubling as likely as the next. With a mean it is lognormal about
 * it, `spread` wide (0.5: two thirds of what one would bet lies within a factor of 1.65).
 */
export interface Prior {
  mean: number | null;
  spread: number;
}

export interface Range {
  low80: number;
  high80: number;
  low95: number;
  high95: number;
}

export interface RateOfSale {
  stores: number;
  storeWeeks: number;
  units: number;
  /**
   * Of all stores like these: as likely to be more as to be less, and its ranges. Not the mean of what is believed: after
   * one store that would lie far above what it sold, by the little that is believed of very large rates.
   */
  mean: number;
  ofMean: Range;
  /** How much stores differ: standard deviation over mean (coefficient of variation), middle of what is believed. */
  storesDiffer: number;
  /** Weeks scatter so many times more than counts do (variance over mean); at least 1. It widens all ranges. */
  weeksScatter: number;
  weights: Belief;
}

/** The grid, with the share of belief on each pair; for ranges of other things than these. */
export interface Belief {
  means: Float64Array;
  shapes: Float64Array;
  /** [mean x shapes.length + shape], adding up to 1. */
  shares: Float64Array;
}

const MEANS = 240;
const SHAPES = 48;
const JOINED_MEANS = 4;
const JOINED_SHAPES = 2;
const LEAST_MEAN = 0.05;
const MOST_MEAN = 500;
/** Where counts lie beyond those ends, so many times less, or more, is tried. */
const BEYOND = 4;
/** Stores' coefficient of variation: from nearly alike to wildly different. */
const LEAST_CV = 0.03;
const MOST_CV = 2.5;
/**
 * Before any data: half of all products' stores differ by less than PRIOR_CV, two thirds within a factor of e^0.9 about it.
 * Judgement, set so that ranges of few stores hold what they say over what shops are like (CALIBRATION.md): narrower, and
 * stores that differ much are missed too often; wider, and two stores say next to nothing.
 */
export const PRIOR_CV = 0.45;
export const PRIOR_CV_SPREAD = 0.9;

/**
 * The rate of sale behind the stores' counts. Needs one store with one counted week at least; null without.
 * `weeksScatter` (see within-stores.ts) divides counts and weeks alike: so much less is known.
 */
export function rateOfSale(stores: readonly StoreCount[], prior: Prior, weeksScatter = 1): RateOfSale | null {
  const counted = stores.filter(({ weeks }) => weeks > 0);
  if (counted.length === 0) return null;
  const scatter = Math.max(1, weeksScatter);
  const weights = believe(
    counted.map((each) => ({ ...each, units: each.units / scatter, weeks: each.weeks / scatter })),
    prior,
  );
  const meanShares = sharesOfMeans(weights);
  return {
    stores: totalOf(counted, () => 1),
    storeWeeks: totalOf(counted, ({ weeks }) => weeks),
    units: totalOf(counted, ({ units }) => units),
    mean: quantileOnGrid(weights.means, meanShares, 0.5),
    ofMean: rangeBy((share) => quantileOnGrid(weights.means, meanShares, share)),
    storesDiffer: medianCv(weights),
    weeksScatter: scatter,
    weights,
  };
}

/** The mean rate of so many more stores like these (1: of a single one): the more, the nearer to that of all stores. */
export function newStores(belief: Belief, stores: number, near: number): Range {
  const pairs = coarser(belief);
  // The mean of n stores of a gamma is a gamma of n times the shape.
  const shareBelow = (x: number): number =>
    pairs.reduce(
      (sum, { mean, shape, share }) =>
        sum + share * gammaShareBelow(shape * stores, (x * shape * stores) / mean),
      0,
    );
  return rangeBy((share) => quantileOf(shareBelow, share, near));
}

/** Neighbours joined: for a mixture of wide distributions a coarser grid does. Adds up to 1 but for what is negligible. */
function coarser({ means, shapes, shares }: Belief): { mean: number; shape: number; share: number }[] {
  const pairs: { mean: number; shape: number; share: number }[] = [];
  let kept = 0;
  for (let m = 0; m < means.length; m += JOINED_MEANS) {
    for (let s = 0; s < shapes.length; s += JOINED_SHAPES) {
      let share = 0;
      for (let i = m; i < m + JOINED_MEANS; i++) {
        for (let j = s; j < s + JOINED_SHAPES; j++) share += shares[i * shapes.length + j] ?? 0;
      }
      if (share < 1e-7) continue;
      kept += share;
      pairs.push({
        mean: middleOf(means, m, JOINED_MEANS),
        shape: middleOf(shapes, s, JOINED_SHAPES),
        share,
      });
    }
  }
  return pairs.map((pair) => ({ ...pair, share: pair.share / kept }));
}

/** Geometric middle of so many neighbours of a grid that is even in the logarithm. */
function middleOf(values: Float64Array, from: number, count: number): number {
  return Math.sqrt((values[from] ?? 1) * (values[from + count - 1] ?? 1));
}

function rangeBy(quantile: (share: number) => number): Range {
  return { low80: quantile(0.1), high80: quantile(0.9), low95: quantile(0.025), high95: quantile(0.975) };
}

function logSpaced(least: number, most: number, count: number): Float64Array {
  const step = Math.log(most / least) / (count - 1);
  return Float64Array.from({ length: count }, (_, place) => least * Math.exp(step * place));
}

function believe(stores: readonly StoreCount[], prior: Prior): Belief {
  const means = meansWorthTrying(stores, prior);
  const cvs = logSpaced(LEAST_CV, MOST_CV, SHAPES);
  const shapes = cvs.map((cv) => 1 / cv ** 2);
  const logs = new Float64Array(means.length * shapes.length);
  const seen = stores.map(({ units, weeks, times = 1 }) => ({ units, weeks, times }));
  const units = totalOf(seen, (store) => store.units);
  shapes.forEach((shape, s) => {
    // Negative binomial: a Poisson count whose mean is gamma of that shape. What depends on neither unknown is left out.
    const fixed = totalOf(seen, (store) => logGamma(store.units + shape) - logGamma(shape));
    const priorOfCv = -0.5 * (Math.log((cvs[s] ?? 1) / PRIOR_CV) / PRIOR_CV_SPREAD) ** 2;
    means.forEach((mean, m) => {
      let log = priorOfCv + priorOfMean(mean, prior) + fixed + units * Math.log(mean / shape);
      for (const store of seen)
        log -= store.times * (store.units + shape) * Math.log1p((mean * store.weeks) / shape);
      logs[m * shapes.length + s] = log;
    });
  });
  return { means, shapes, shares: sharesOf(logs) };
}

/**
 * Fine where the counts put the mean, so that a narrow range is not read off two places of a wide grid; as far as what was
 * held before, where that contradicts them. Counts beyond what is usual move the ends: a rate isn't pressed to them.
 */
function meansWorthTrying(stores: readonly StoreCount[], prior: Prior): Float64Array {
  const units = totalOf(stores, (store) => store.units);
  const weeks = totalOf(stores, (store) => store.weeks);
  const middle = (units + 0.5) / weeks;
  const held = prior.mean ?? middle;
  // Eight standard deviations of the logarithm, by counts and by stores that differ a great deal.
  const spread =
    8 * Math.sqrt(1 / (units + 0.5) + 0.6 / totalOf(stores, () => 1)) +
    (prior.mean === null ? 0 : prior.spread);
  // Three more than were counted: of none in n weeks a rate of 3 / n is still believable, so few weeks rule nothing usual out.
  const under = (units + 3) / weeks / BEYOND;
  const least = Math.max(Math.min(LEAST_MEAN, under), middle * Math.exp(-spread));
  const most = Math.min(Math.max(MOST_MEAN, middle * BEYOND), middle * Math.exp(spread));
  return logSpaced(Math.min(least, held), Math.max(most, held), MEANS);
}

function totalOf(stores: readonly StoreCount[], of: (store: StoreCount) => number): number {
  return stores.reduce((sum, store) => sum + of(store) * (store.times ?? 1), 0);
}

function priorOfMean(mean: number, prior: Prior): number {
  return prior.mean === null ? 0 : -0.5 * (Math.log(mean / prior.mean) / prior.spread) ** 2;
}

function sharesOf(logs: Float64Array): Float64Array {
  const most = logs.reduce((best, log) => Math.max(best, log), Number.NEGATIVE_INFINITY);
  const raw = logs.map((log) => Math.exp(log - most));
  const total = raw.reduce((sum, each) => sum + each, 0);
  return raw.map((each) => each / total);
}

/** The belief in each mean, however much stores differ. */
export function sharesOfMeans({ means, shapes, shares }: Belief): Float64Array {
  return means.map((_, m) => {
    let sum = 0;
    for (let s = 0; s < shapes.length; s++) sum += shares[m * shapes.length + s] ?? 0;
    return sum;
  });
}

/** On a grid of even steps in the logarithm: the share grows evenly from the middle below a place to the one above. */
export function quantileOnGrid(values: Float64Array, shares: Float64Array, share: number): number {
  const half = Math.log((values[1] ?? 1) / (values[0] ?? 1)) / 2;
  let below = 0;
  for (let place = 0; place < values.length; place++) {
    const here = shares[place] ?? 0;
    if (below + here >= share) {
      const part = here === 0 ? 0.5 : (share - below) / here;
      return (values[place] ?? 0) * Math.exp(half * (2 * part - 1));
    }
    below += here;
  }
  return values.at(-1) ?? 0;
}

function medianCv({ means, shapes, shares }: Belief): number {
  let below = 0;
  for (let s = 0; s < shapes.length; s++) {
    for (let m = 0; m < means.length; m++) below += shares[m * shapes.length + s] ?? 0;
    if (below >= 0.5) return 1 / Math.sqrt(shapes[s] ?? 1);
  }
  return MOST_CV;
}
