/**
 * One expectation for many tests: the plan is sound, and kernel and oracle agree on it in every flow, balance, low and
 * unit count of every week. Hands back the kernel's pass, so that a test can show that what it is about did happen.
 * Worked figure: agreed(aPlan()).flows.remittances[8] is what the chain pays for the fill of week 3.
 */
import { expect } from 'vitest';
import type { Plan } from '../../../src/domain/plan/index.ts';
import { checkRules } from '../../../src/domain/plan/rules.ts';
import { sentence } from '../../../src/domain/problems.ts';
import type { PassResult } from '../../../src/domain/rollout/types.ts';
import { differences, kernelOf, oracleOf, pricedPlan } from './compare.ts';

/** Differences shown of a plan; the first are the ones to look at. */
const SHOWN = 12;

export function agreed(plan: Plan): PassResult {
  expect(checkRules(plan).map(sentence)).toEqual([]);
  const priced = pricedPlan(plan);
  const { pass } = kernelOf(priced);
  expect(differences(plan, pass, oracleOf(priced)).slice(0, SHOWN)).toEqual([]);
  return pass;
}

export function totalFrom(
  series: Float64Array | undefined,
  from = 0,
  until = Number.POSITIVE_INFINITY,
): number {
  return Array.from(series ?? []).reduce(
    (sum, each, week) => (week >= from && week < until ? sum + each : sum),
    0,
  );
}
