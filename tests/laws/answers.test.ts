/**
 * What must be true of the answers whatever the plan, on random plans, the seed in the title: one word a week that the pass
 * bears out, changes that the rules of a plan accept, searches and a lender's block that come to an end and tie out.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  answerSolves,
  bindingOf,
  changedPlan,
  changeWords,
  liftsFrom,
} from '../../src/domain/answers/index.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import { lenderFrom } from '../../src/domain/lender/index.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import type { Results } from '../../src/domain/results.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { arbitraryPlan, PLAN_SEED } from '../support/arbitrary-plan.ts';

const RUNS = 60;
/** Each of these runs the model a hundred times and more. */
const MANY_RUNS = 25;
const TIMEOUT = 120_000;

const plans = fc
  .sample(arbitraryPlan(), { seed: PLAN_SEED, numRuns: RUNS })
  .map((plan) => ({ plan, results: resultsOf(plan) }));
const say = sayFor({ currency: 'USD', minorDigits: 2, startDay: 0 });

function resultsOf(plan: Plan): Results {
  const outcome = evaluate(plan, sayFor);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

describe(`answers on ${RUNS} random plans, seed ${PLAN_SEED}`, () => {
  test('every week has one word, and the pass bears it out', () => {
    for (const { plan, results } of plans) {
      const { weeks, stretches } = bindingOf(plan, results);
      const { low, units } = results.pass;
      expect(weeks.map(({ week }) => week)).toEqual(Array.from(low, (_, week) => week));
      const covered = stretches.reduce((sum, { fromWeek, toWeek }) => sum + toWeek - fromWeek + 1, 0);
      expect(covered).toBe(low.length);
      const knows = plan.business.openingCashAmount !== null;
      for (const { week, what, tight, items } of weeks) {
        const isShort = units.some(({ lost, backlog }) => (lost[week] ?? 0) + (backlog[week] ?? 0) > 0);
        const isNegative = knows && (low[week] ?? 0) < 0;
        expect(what === 'cash' && !tight).toBe(isNegative);
        if (what === 'stock') expect(isShort).toBe(true);
        if (what === 'doors' || what === 'demand') {
          expect(isShort).toBe(false);
          expect(knows && (low[week] ?? 0) < results.reading.bufferAmount).toBe(false);
        }
        expect(items.length > 0).toBe(what === 'stock' || what === 'capacity');
      }
    }
  });

  test(
    'changes keep the rules of a plan, change it, and have words; what is said to lift lifts',
    () => {
      for (const { plan, results } of plans.slice(0, MANY_RUNS)) {
        const { best, others, noHelp } = liftsFrom(plan, results);
        for (const { change, liftsCash, liftsUnits, before, after } of [...best, ...others, ...noHelp]) {
          const changed = changedPlan(plan, change);
          expect(changed).not.toEqual(plan);
          expect(checkRules({ ...changed, basis: [] })).toEqual([]);
          expect(changeWords(change, plan, say)).toMatch(/^\S.*\S$/);
          if (liftsUnits) expect(after.unitsLost).toBeLessThan(before.unitsLost);
          else if (!liftsCash) expect(after.lowestCash).toBeLessThanOrEqual(before.lowestCash);
        }
      }
    },
    TIMEOUT,
  );

  test(
    'searches end, and every one is confirmed by its runs',
    () => {
      for (const { plan, results } of plans.slice(0, MANY_RUNS)) {
        const { latestOrders, waveSpacing, doorsAWeek, neverCloses, fundsItself } = answerSolves(
          plan,
          results,
        );
        const all = [...latestOrders, waveSpacing, doorsAWeek, neverCloses, fundsItself];
        expect(all.filter((each) => each !== null && !each.confirmed)).toEqual([]);
      }
    },
    TIMEOUT,
  );

  test(
    'a lender’s block comes to an end, and lends on no more than there is',
    () => {
      for (const { plan, results } of plans.slice(0, MANY_RUNS)) {
        const { collateral, weeks, receivables } = lenderFrom(plan, results, 3);
        expect(collateral.onReceivables).toBeLessThanOrEqual(Math.max(0, receivables.total.sum));
        expect(collateral.onStock).toBeLessThanOrEqual(collateral.stock);
        expect(weeks.closes.length).toBe(Math.min(13, plan.horizonWeeks - 3));
      }
    },
    TIMEOUT,
  );
});
