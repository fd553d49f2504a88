// Draws run by the weekly pass itself, on the plan changed as the draw says (what is bought still goes by the plan's
// forecast): the check on the coarser pass, which tells what the range missed, and any draw that others want exactly.
// Worked figure: 40 draws; half of them miss the lowest cash by at most 1,100, nine in ten by at most 4,000.
import { landedParts } from '../../ladder/landed.ts';
import type { Account, Plan } from '../../plan/index.ts';
import { compile } from '../../rollout/compile.ts';
import type { Compiled } from '../../rollout/compiled.ts';
import { runPass } from '../../rollout/pass.ts';
import type { PassResult } from '../../rollout/types.ts';
import type { RangeSetup } from './chunk.ts';
import { drawInto } from './draws.ts';
import { runDraw } from './kernel.ts';
import { placeOf, valuesAt } from './quantiles.ts';

/** Draws that are run exactly. */
export const CHECKED = 40;

export interface Miss {
  median: number;
  p90: number;
}

/** Money in minor units; misses have no sign. */
export interface ExactCheck {
  draws: number;
  /** Of the lowest cash, of the cash at the horizon, and of the week-end missed most. */
  lowestCash: Miss;
  endCash: Miss;
  worstWeek: Miss;
  /** How far the exact lowest cash lies from the plan's, in the middle of the draws: what the misses are to be seen beside. */
  swing: number;
}

/** A draw as the weekly pass ran it. */
export interface ExactRun {
  compiled: Compiled;
  pass: PassResult;
}

/** Draw k of `count` that lie evenly among draws 0 to `draws` - 1. */
export function evenDraw(k: number, count: number, draws: number): number {
  return Math.floor((k * draws) / count);
}

/** Draw n without the funding the plan counts on. Throws RangeError(TOO_LARGE) when amounts outgrow exact arithmetic. */
export function runDrawUnfunded(setup: RangeSetup, n: number): ExactRun {
  const { draw, detail, causes, drawing } = setup;
  drawInto(drawing, n, { draw, detail, causes });
  return runExactly(setup, false);
}

/** Runs so many of draws 0 to `draws` - 1 exactly, evenly spread; fewer where there are fewer. */
export function checkExactly(setup: RangeSetup, draws: number, checked = CHECKED): ExactCheck {
  const count = Math.min(checked, draws);
  const misses = {
    lowest: new Float64Array(count),
    end: new Float64Array(count),
    worst: new Float64Array(count),
  };
  const swings = new Float64Array(count);
  const planLowest = lowestOf(setup.anchors.low);
  for (let k = 0; k < count; k++) {
    const { draw, detail, causes, drawing, coarse, bench, anchors } = setup;
    drawInto(drawing, evenDraw(k, count, draws), { draw, detail, causes });
    const run = runDraw(coarse, draw, bench);
    const exact = runExactly(setup, true).pass;
    const near = (plan: Float64Array, drawn: Float64Array, base: Float64Array) =>
      plan.map((value, w) => value + ((drawn[w] ?? 0) - (base[w] ?? 0)));
    const cash = near(anchors.cash, run.cash, anchors.coarse.cash);
    const lowest = lowestOf(near(anchors.low, run.low, anchors.coarse.low));
    const exactLowest = lowestOf(exact.low);
    misses.lowest[k] = Math.abs(lowest - exactLowest);
    misses.end[k] = Math.abs((cash.at(-1) ?? 0) - (exact.balances.cash.at(-1) ?? 0));
    misses.worst[k] = cash.reduce(
      (most, value, w) => Math.max(most, Math.abs(value - (exact.balances.cash[w] ?? 0))),
      0,
    );
    swings[k] = Math.abs(exactLowest - planLowest);
  }
  return {
    draws: count,
    lowestCash: missOf(misses.lowest),
    endCash: missOf(misses.end),
    worstWeek: missOf(misses.worst),
    swing: missOf(swings).median,
  };
}

function lowestOf(low: Float64Array): number {
  return low.reduce((lowest, value) => Math.min(lowest, value), Number.POSITIVE_INFINITY);
}

function missOf(values: Float64Array): Miss {
  const [median = 0, p90 = 0] = valuesAt(values, [placeOf(0.5, values.length), placeOf(0.9, values.length)]);
  return { median, p90 };
}

/**
 * The weekly pass on the plan as the draw on the bench changes it, bought by the plan's own forecast; with the funding the
 * plan counts on, or without. No draw changes what a ladder is made of.
 */
function runExactly(setup: RangeSetup, isFunded: boolean): ExactRun {
  const { plan, results } = setup.args;
  const landed = landedParts(plan.items);
  const { ladders, minorDigits } = results;
  const compiled = compile({ plan: drawnPlan(setup), ladders, landed, minorDigits });
  deductMore(compiled, setup.draw.deducted);
  costMore(compiled, setup.draw.goods);
  if (!isFunded) compiled.business.funding = [];
  return { compiled, pass: runPass({ compiled, shippable: results.free.shippable, recorder: null }) };
}

/** What is a field of the plan: rates of sale, waves, ramp, lateness, voids. */
function drawnPlan({ args, coarse, draw, detail }: RangeSetup): Plan {
  const { plan } = args;
  let first = 0;
  return {
    ...plan,
    accounts: plan.accounts.map((account, a): Account => {
      const from = first;
      first += account.listings.length;
      return {
        ...account,
        listings: account.listings.map((listing, l) => ({
          ...listing,
          unitsPerStoreWeek: decimalText(
            Number(listing.unitsPerStoreWeek) * rateOfListing(coarse.listing, draw.rate, from + l),
          ),
        })),
        waves:
          draw.opens[a] === 0
            ? []
            : account.waves.map((wave) => ({ ...wave, openWeek: wave.openWeek + (draw.slip[a] ?? 0) })),
        ramp: { ...account.ramp, weeks: Math.round(account.ramp.weeks * detail.rampFactor) },
        terms: { ...account.terms, latenessDays: detail.latenessDays[a] ?? 0 },
        voidRate: decimalText(detail.voidRate[a] ?? 0),
      };
    }),
  };
}

/** Of its first row; a listing without rows has no doors. */
function rateOfListing(listings: Int32Array, rates: Float64Array, listing: number): number {
  const row = listings.indexOf(listing);
  return row < 0 ? 1 : (rates[row] ?? 1);
}

function decimalText(value: number): string {
  return String(Math.max(0, Math.round(value * 1e6)) / 1e6);
}

function deductMore(compiled: Compiled, deducted: Float64Array): void {
  for (const listing of compiled.listings) {
    const more = Math.round((deducted[listing.account] ?? 0) * 1e6);
    if (more !== 0) listing.deductions.push(more);
  }
}

/** Orders of the opening books are paid at the price they were placed at. */
function costMore(compiled: Compiled, factor: number): void {
  for (const { buying } of compiled.items) {
    for (const price of buying.prices) {
      price.goods = Math.round(price.goods * factor);
      price.shocked = Math.round(price.shocked * factor);
    }
  }
}
