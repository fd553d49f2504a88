/**
 * What must be true of doors and claims whatever the plan, on random plans, the seed in the title: doors of a slip are the
 * doors of the weekly pass with every wave so much later; a larger claim has no better chance, a later date no worse one.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import { doorsOpen, doorsThen, later } from '../../src/domain/promise/doors.ts';
import { type Claim, placeClaim } from '../../src/domain/promise/place-claim.ts';
import '../../src/domain/promise/sales-odds.ts';
import type { Results } from '../../src/domain/results.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { arbitraryPlan, PLAN_SEED } from '../support/arbitrary-plan.ts';

const RUNS = 60;
const plans = fc
  .sample(arbitraryPlan(), { seed: PLAN_SEED, numRuns: RUNS })
  .filter(({ accounts }) => accounts.length > 0)
  .map((plan) => ({ plan, results: resultsOf(plan) }));

function resultsOf(plan: Plan): Results {
  const outcome = evaluate(plan, sayFor);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

function withClaim(plan: Plan, claim: Claim): Plan {
  return { ...plan, promise: { ...plan.promise, claim } };
}

const spoken: Plan['accounts'][number]['standing'] = {
  rung: 'saidYes',
  chance: null,
  slipLikelyWeeks: 2,
  slipMostWeeks: 9,
  papers: [],
};

describe(`the promise of ${plans.length} random plans, seed ${PLAN_SEED}`, () => {
  test('doors on time are those of the weekly pass, week by week', () => {
    for (const { plan, results } of plans) {
      plan.accounts.forEach((account, a) => {
        for (let week = 0; week < plan.horizonWeeks; week += 3)
          expect(doorsOpen(account, week), `${account.id} ${week}`).toBe(
            results.pass.accounts[a]?.doors[week],
          );
      });
    }
  });

  test('and late, where the rules allow the waves so late', () => {
    let compared = 0;
    for (const { plan } of plans) {
      const slipped = { ...plan, accounts: plan.accounts.map((account) => later(account, 3)) };
      if (checkRules({ ...slipped, basis: [] }).length > 0) continue;
      const { pass } = resultsOf(slipped);
      slipped.accounts.forEach((_, a) => {
        for (let week = 0; week < plan.horizonWeeks; week += 5) {
          const account = plan.accounts[a];
          if (account) expect(doorsOpen(later(account, 3), week)).toBe(pass.accounts[a]?.doors[week]);
          compared += 1;
        }
      });
    }
    expect(compared).toBeGreaterThan(100);
  });

  test('doors expected of each account add up to those of the plan, whatever is shared', () => {
    for (const { plan } of plans) {
      const accounts = plan.accounts.map((account) => ({ ...account, standing: account.standing ?? spoken }));
      const { accounts: each, expected, odds } = doorsThen({ ...plan, accounts }, plan.horizonWeeks - 5);
      const sum = each.reduce((all, account) => all + account.expected, 0);
      expect(Math.abs(sum - expected)).toBeLessThan(1e-6 * (1 + sum));
      expect(odds.reduce((all, share) => all + share, 0)).toBeCloseTo(1, 9);
    }
  });

  test('a larger claim has no better chance; it and the percentile add up to 1', () => {
    for (const { plan, results } of plans) {
      const accounts = plan.accounts.map((account) => ({ ...account, standing: account.standing ?? spoken }));
      for (const of of ['doors', 'units', 'revenue'] as const) {
        let before = 1;
        for (const amount of ['0', '1', '40', '300', '2500', '90000', '4000000']) {
          const byDate = addDays(plan.startDate, 7 * plan.horizonWeeks - 8);
          const { placed } = placeClaim(
            withClaim({ ...plan, accounts }, { of, amount, byDate, who: '' }),
            results.pass,
          );
          if (placed === null) throw new Error('the claim has a date in the plan, and standings');
          expect(placed.chance).toBeLessThanOrEqual(before + 1e-9);
          expect(placed.chance).toBeGreaterThanOrEqual(0);
          expect(placed.chance + placed.percentile).toBeCloseTo(1, 12);
          before = placed.chance;
        }
        expect(before).toBeLessThanOrEqual(1);
      }
    }
  });

  test('a later date has no worse chance, where no doors close', () => {
    for (const { plan } of plans) {
      const accounts = plan.accounts.map((account) => ({
        ...account,
        attritionYearlyRate: '0',
        cutWeek: null,
        cuts: [],
        standing: account.standing ?? spoken,
      }));
      const growing = { ...plan, accounts };
      const { planned } = doorsThen(growing, plan.horizonWeeks + 200);
      for (const amount of [1, Math.ceil(planned / 2), planned]) {
        let before = 0;
        for (let week = 0; week < plan.horizonWeeks + 30; week += 4) {
          const { odds } = doorsThen(growing, week);
          const chance = odds.reduce((sum, share, n) => sum + (n >= amount ? share : 0), 0);
          expect(chance).toBeGreaterThanOrEqual(before - 1e-9);
          before = chance;
        }
      }
    }
  });
});
