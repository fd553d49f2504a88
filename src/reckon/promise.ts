// What evidence says, for machines: the rate of sale that scans speak for, with its ranges; doors and claim (claim.ts).
// Worked figure: { "mean": "5.9961", "low80": "5.4710", "high80": "6.5698" } of eight stores much alike.
import type { Plan } from '../domain/plan/index.ts';
import { hasDoorEvidence } from '../domain/promise/doors.ts';
import {
  evidenceOf,
  evidenceOfAccount,
  type ItemEvidence,
  rangeOfNewStores,
} from '../domain/promise/evidence.ts';
import { halvingOf } from '../domain/promise/halving.ts';
import type { Range } from '../domain/promise/rate-of-sale.ts';
import { evidenceWarnings } from '../domain/promise/warnings.ts';
import type { Effect } from '../domain/promise/within-stores.ts';
import type { Results } from '../domain/results.ts';
import type { Say } from '../domain/verdicts/say.ts';
import { claimTexts } from './claim.ts';

/** Null without scans, standings, doors that are open, or a claim. */
export function promiseText(plan: Plan, results: Results, say: Say): object | null {
  const [first = null, ...others] = evidenceOf(plan).map((each) => rateText(plan, each, say));
  if (first === null && plan.promise.claim === null && !hasDoorEvidence(plan)) return null;
  return { rateOfSale: first, otherRates: others, ...claimTexts(plan, results) };
}

function rateText(plan: Plan, evidence: ItemEvidence, say: Say): object {
  const { itemId, counted, prior, rate, lifts, trend } = evidence;
  const doors = plan.accounts
    .filter(({ listings }) => listings.some((listing) => listing.itemId === itemId))
    .reduce((sum, { waves }) => sum + waves.reduce((all, wave) => all + wave.doors, 0), 0);
  return {
    itemId,
    mean: number(rate.mean),
    ...rangeText(rate.ofMean),
    stores: counted.stores.length,
    storeWeeks: number(rate.storeWeeks),
    units: rate.units,
    basis: counted.basis,
    leftOut: counted.leftOut,
    prior: prior.mean === null ? null : { mean: number(prior.mean), spread: number(prior.spread) },
    storesDiffer: number(rate.storesDiffer),
    weeksScatter: number(rate.weeksScatter),
    newStore: rangeText(rangeOfNewStores(evidence, 1)),
    newStores: doors === 0 ? null : { stores: doors, ...rangeText(rangeOfNewStores(evidence, doors)) },
    toHalve: halvingOf(evidence),
    lifts: lifts.map(({ on, ...effect }) => ({ on, ...effectText(effect) })),
    trend: trend && effectText(trend),
    accounts: accountsText(plan, evidence),
    warnings: evidenceWarnings(plan, evidence, say).map(({ sentence }) => sentence),
  };
}

function accountsText(plan: Plan, { itemId, counted }: ItemEvidence): object[] {
  const ids = [...new Set(counted.stores.map(({ accountId }) => accountId))];
  return ids.flatMap((accountId) => {
    const own = evidenceOfAccount(plan, itemId, accountId);
    if (own === null) return [];
    const { rate } = own;
    return [{ accountId, stores: rate.stores, mean: number(rate.mean), ...rangeText(rate.ofMean) }];
  });
}

function effectText({ factor, stores, weeks, ...range }: Effect): object {
  return { factor: number(factor), ...rangeText(range), stores, weeks };
}

function rangeText({ low80, high80, low95, high95 }: Range): object {
  return { low80: number(low80), high80: number(high80), low95: number(low95), high95: number(high95) };
}

function number(value: number): string {
  return value.toFixed(4);
}
