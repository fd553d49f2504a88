// What weeks of the same store say of each other, whatever that store sells: how much more they scatter than counts do, what
// a display or a lower price adds, whether sales fall. Each is conditional on what a store sold in all, so that stores that
// differ can't be mistaken for it: given its total, a store's weeks are multinomial with shares in proportion to weight x
// effect, and the effect is weighed on a grid (conditional likelihood: McCullagh & Nelder, Generalized Linear Models, 2nd ed.,
// ch. 7.2). Before: of a lift, half a unit on either side (Jeffreys' prior of a share); of a trend, no change in four weeks with
// a standard deviation of its logarithm of 0.5 (judgement): what little was seen can't claim much.
// Worked figure: 60 units in 10 plain weeks, 27 in 3 on display: 9 a week against 6, a factor of 1.5.

import { quantileOnGrid, type Range } from './rate-of-sale.ts';
import type { SeenStore, SeenWeek, WeekOn } from './scans.ts';

/** A factor with its ranges: 1.5 is half more. */
export interface Effect extends Range {
  factor: number;
  stores: number;
  weeks: number;
}

export interface Lift extends Effect {
  on: Exclude<WeekOn, 'plain'>;
}

/** Counts scatter as much as their mean; with so few weeks to tell by, that is held until many say otherwise. */
const HELD_AS_COUNTS = 10;

/**
 * How many times more weeks scatter within their stores than Poisson counts would, at least 1: Pearson's chi square over its
 * degrees of freedom (McCullagh & Nelder, ch. 6.2.3), drawn towards 1 as by `HELD_AS_COUNTS` further degrees (judgement).
 */
export function weeksScatter(stores: readonly SeenStore[]): number {
  let square = 0;
  let degrees = 0;
  for (const { weeks } of stores) {
    const rate = sum(weeks, ({ units }) => units) / sum(weeks, ({ weight }) => weight);
    if (!(rate > 0)) continue;
    degrees += weeks.length - 1;
    for (const { units, weight } of weeks) square += (units - rate * weight) ** 2 / (rate * weight);
  }
  return Math.max(1, (square + HELD_AS_COUNTS) / (degrees + HELD_AS_COUNTS));
}

/** Factors of weeks on display, at a lower price, and both, where stores have such weeks and plain ones beside them. */
export function liftsOf(stores: readonly SeenStore[], scatter: number): Lift[] {
  return (['display', 'price', 'both'] as const).flatMap((on) => {
    const pairs = liftPairs(stores, on);
    if (pairs.length === 0 || pairs.every(({ flagged, plain }) => noneIn(flagged) && noneIn(plain)))
      return [];
    const weighed = pairs.map(({ flagged, plain }) => ({
      units: sum(flagged, ({ units }) => units),
      all: sum([...flagged, ...plain], ({ units }) => units),
      flagged: sum(flagged, ({ weight }) => weight),
      plain: sum(plain, ({ weight }) => weight),
    }));
    const before = {
      flagged: sum(weighed, (each) => each.flagged),
      plain: sum(weighed, (each) => each.plain),
    };
    const effect = onGrid(
      LIFTS,
      (lift) =>
        jeffreys(lift, before) +
        sum(weighed, (each) => {
          const share = (lift * each.flagged) / (lift * each.flagged + each.plain);
          return (each.units * Math.log(share) + (each.all - each.units) * Math.log1p(-share)) / scatter;
        }),
    );
    return [{ on, stores: pairs.length, weeks: sum(pairs, ({ flagged }) => flagged.length), ...effect }];
  });
}

/** Weeks of such a kind beside plain ones of the same store; opening weeks are neither. */
export interface LiftPair {
  store: SeenStore;
  flagged: SeenWeek[];
  plain: SeenWeek[];
}

/** The stores that have both. */
export function liftPairs(stores: readonly SeenStore[], on: Lift['on']): LiftPair[] {
  return stores.flatMap((store) => {
    const settled = store.weeks.filter(({ isOpening }) => !isOpening);
    const flagged = settled.filter((week) => week.on === on);
    const plain = settled.filter((week) => week.on === 'plain');
    return flagged.length > 0 && plain.length > 0 ? [{ store, flagged, plain }] : [];
  });
}

/** Half a unit on either side, of all stores together; a density of the lift's logarithm. */
function jeffreys(lift: number, { flagged, plain }: { flagged: number; plain: number }): number {
  const share = (lift * flagged) / (lift * flagged + plain);
  return 0.5 * (Math.log(share) + Math.log1p(-share));
}

/** Sales against those of four weeks before. Null where no store has three weeks, or nothing was sold. */
export function trendOf(stores: readonly SeenStore[], scatter: number): Effect | null {
  const long = stores.filter(({ weeks }) => weeks.length >= LEAST_WEEKS && !noneIn(weeks));
  if (long.length === 0) return null;
  const effect = onGrid(TRENDS, (factor) => {
    const perWeek = Math.log(factor) / TREND_WEEKS;
    return (
      -0.5 * (Math.log(factor) / TREND_SPREAD) ** 2 +
      sum(long, ({ weeks }) => {
        const from = Math.min(...weeks.map(({ calendarWeek }) => calendarWeek));
        const since = (week: SeenWeek) => perWeek * (week.calendarWeek - from);
        const all = sum(weeks, ({ units }) => units);
        const shares = sum(weeks, (week) => week.weight * Math.exp(since(week)));
        return (sum(weeks, (week) => week.units * since(week)) - all * Math.log(shares)) / scatter;
      })
    );
  });
  return { stores: long.length, weeks: sum(long, ({ weeks }) => weeks.length), ...effect };
}

export const TREND_WEEKS = 4;
const LEAST_WEEKS = 3;
const TREND_SPREAD = 0.5;
/** Even in the logarithm. */
const PLACES = 2401;
const LIFTS = gridOf(0.001, 1000);
const TRENDS = gridOf(0.02, 50);

function gridOf(least: number, most: number): Float64Array {
  const step = Math.log(most / least) / (PLACES - 1);
  return Float64Array.from({ length: PLACES }, (_, place) => least * Math.exp(step * place));
}

/** The middle of what is believed, and its ranges. */
function onGrid(
  factors: Float64Array,
  logLikelihood: (factor: number) => number,
): Range & { factor: number } {
  const logs = factors.map(logLikelihood);
  const most = logs.reduce((best, log) => Math.max(best, log), Number.NEGATIVE_INFINITY);
  const heights = logs.map((log) => Math.exp(log - most));
  const all = heights.reduce((total, height) => total + height, 0);
  const shares = heights.map((height) => height / all);
  const quantile = (share: number) => quantileOnGrid(factors, shares, share);
  return {
    factor: quantile(0.5),
    low80: quantile(0.1),
    high80: quantile(0.9),
    low95: quantile(0.025),
    high95: quantile(0.975),
  };
}

function sum<T>(list: readonly T[], of: (each: T) => number): number {
  return list.reduce((total, each) => total + of(each), 0);
}

function noneIn(weeks: readonly SeenWeek[]): boolean {
  return weeks.every(({ units }) => units === 0);
}
