/**
 * The kernel of the weekly pass against a second computation written from its description (tests/support/oracle): random
 * plans, the demo plans, and one known by hand. Hand-written plans, one rule each, stand in the oracle-*.test.ts beside.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planSchema } from '../../src/domain/plan/index.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import { sentence } from '../../src/domain/problems.ts';
import { BALANCE_NAMES, FLOW_NAMES, type PassResult } from '../../src/domain/rollout/types.ts';
import { arbitraryPlan, PLAN_RUNS, PLAN_SEED } from '../support/arbitrary-plan.ts';
import { aPlan } from '../support/builders.ts';
import { agreed } from '../support/oracle/agree.ts';
import { differences, kernelOf, oracleOf, pricedPlan } from '../support/oracle/compare.ts';
import { root } from '../support/source-files.ts';

test('one chain, one item, worked by hand: both say the same, and both say this', () => {
  const pass = agreed(aPlan());
  const [tea] = pass.units;
  // 10 doors from week 4, transit 1: 12 units a door are ordered at the end of week 2 and leave in week 3.
  expect(tea?.shipped.slice(0, 6)).toEqual(Float64Array.of(0, 0, 0, 120, 0, 60));
  // 6 a week and door: 60 of 120 are sold in week 4. Target max(120, 3 x 60) = 180, so the gap is 120, and
  // (120 - 9 x 11 / 2) / 12 is 5.9: five cases, 60 units, leave in week 5 and are there in week 6.
  expect(tea?.sold.slice(4, 7)).toEqual(Float64Array.of(60, 60, 60));
  expect(tea?.inTransit[5]).toBe(60);
  expect(pass.flows.remittances[3 + Math.ceil(30 / 7)]).toBe(120 * 260);
});

const minute = 60_000;
const demoFolder = join(root, 'demo-catalog');
const demos = existsSync(demoFolder) ? readdirSync(demoFolder).filter((name) => name.endsWith('.json')) : [];

describe.skipIf(demos.length === 0)('every demo plan', () => {
  test.each(demos)(
    '%s',
    (name) => {
      const file = JSON.parse(readFileSync(join(demoFolder, name), 'utf8')) as { plan?: unknown };
      agreed(planSchema.parse(file.plan ?? file));
    },
    minute,
  );
});

/** Fields meet in many ways: more plans than the other checks need. */
const AGREED_RUNS = 300;

describe(`random plans, seed ${PLAN_SEED}, ${PLAN_RUNS} of them`, () => {
  const settings = { seed: PLAN_SEED, numRuns: PLAN_RUNS, endOnFailure: true };

  test(
    'each is sound by the schema and by every rule',
    () => {
      fc.assert(
        fc.property(arbitraryPlan(), (plan) => {
          expect(planSchema.parse(plan)).toEqual(plan);
          expect(checkRules(plan).map(sentence)).toEqual([]);
        }),
        settings,
      );
    },
    minute,
  );

  test('between them they move every flow, and hold every balance', () => {
    const passes = fc.sample(arbitraryPlan(), settings).map((plan) => kernelOf(pricedPlan(plan)).pass);
    const isIdle = (series: (pass: PassResult) => Float64Array) =>
      passes.every((pass) => series(pass).every((amount) => amount === 0));
    expect(FLOW_NAMES.filter((name) => isIdle(({ flows }) => flows[name]))).toEqual([]);
    expect(BALANCE_NAMES.filter((name) => isIdle(({ balances }) => balances[name]))).toEqual([]);
  });

  test(
    `kernel and oracle agree to the minor unit, on ${AGREED_RUNS}`,
    () => {
      fc.assert(
        fc.property(arbitraryPlan(), (plan) => {
          const priced = pricedPlan(plan);
          expect(differences(plan, kernelOf(priced).pass, oracleOf(priced)).slice(0, 12)).toEqual([]);
        }),
        { ...settings, numRuns: AGREED_RUNS },
      );
    },
    minute,
  );
});
