/**
 * Rival offers on random plans: an offer laid over the plan's cash is what the weekly pass itself finds for the same money;
 * owners always hold the whole company and share the whole sale; what is printed is made of what was paid; and nothing is ever
 * not a number.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Funding } from '../../src/domain/funding/index.ts';
import { moneyOf, turningOf } from '../../src/domain/offers/index.ts';
import type { OfferPart } from '../../src/domain/offers/list.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { arbitraryPlan, PLAN_RUNS, PLAN_SEED } from '../support/arbitrary-plan.ts';
import { anOffer, anOwnership, equityPart, loanPart } from '../support/offers.ts';
import { pricedPlan } from '../support/oracle/compare.ts';

const plans = fc.sample(arbitraryPlan(), { seed: PLAN_SEED, numRuns: PLAN_RUNS });

function resultsOf(plan: Plan) {
  const results = evaluate(plan, sayFor);
  if (!results.ok) throw new Error(JSON.stringify(results.problems));
  return results.value;
}

const computed = plans
  .map((plan) => pricedPlan(plan).plan)
  .map((plan) => ({ plan, results: resultsOf(plan) }));

describe(`on ${PLAN_RUNS} random plans, seed ${PLAN_SEED}`, () => {
  test('money and loans over the plan’s cash: to the minor unit what the pass finds when it counts on them', () => {
    for (const { plan } of computed) {
      const week = Math.min(2, plan.horizonWeeks - 1);
      const when = { by: 'week', week } as const;
      const months = { interestOnlyMonths: 2, principalMonths: 7 };
      const kept = { ...months, yearlyRate: '0.11', feeAmount: '250' };
      const pairs: [OfferPart, Funding][] = [
        [
          equityPart({ amount: '30000', when }),
          { kind: 'equity', id: 'in', label: 'In', week, amount: '30000' },
        ],
        [
          loanPart({ amount: '12345.67', when, repaid: 'equalParts', ...kept }),
          { kind: 'loan', id: 'in', label: 'In', week, amount: '12345.67', ...kept },
        ],
      ];
      for (const [part, funding] of pairs) {
        const counted = { ...plan, business: { ...plan.business, funding: [funding] } };
        const rival = { ...plan, offers: [anOffer([part])], ownership: anOwnership() };
        const { pass } = resultsOf(counted);
        const [offer] = moneyOf(rival, resultsOf(rival)).offers;
        expect(offer?.cash).toEqual([...pass.balances.cash]);
        expect(offer?.low).toEqual([...pass.low]);
      }
    }
  });

  test('owners hold the whole company after every event, and share the whole sale', () => {
    for (const { plan, results } of computed) {
      for (const offer of moneyOf(plan, results).offers) {
        for (const { shares } of offer.dilution) {
          expect(shares.reduce((sum, { rate }) => sum + rate, 0)).toBeCloseTo(1, 9);
          for (const { rate } of shares) expect(rate).toBeGreaterThanOrEqual(0);
        }
        const shared = offer.holdings.reduce((sum, { amount }) => sum + amount, 0);
        expect(Math.abs(shared - offer.founder.sale.toOwners)).toBeLessThanOrEqual(1);
      }
    }
  });

  test('what is paid is the sum of its years; the end’s cash is the plan’s with the flows', () => {
    for (const { plan, results } of computed) {
      const { offers, basis } = moneyOf(plan, results);
      for (const offer of offers) {
        expect(offer.paidByYear.reduce((sum, { amount }) => sum + amount, 0)).toBe(offer.paid);
        expect(offer.totalPaid).toBe(offer.paid + offer.settles + offer.payout);
        const inside = offer.flows.filter(({ week }) => week < basis.weeks);
        const rounds = plan.ownership.rounds.length > 0;
        const net = inside.reduce((sum, { amount }) => sum + amount, 0);
        if (!rounds) expect(offer.cash.at(-1)).toBe((basis.cash.at(-1) ?? 0) + net);
        expect(offer.lowestCash).toBe(Math.min(...offer.low));
      }
    }
  });

  test('no figure is not a number or without end', () => {
    const wrong: string[] = [];
    const look = (value: unknown, path: string): void => {
      if (typeof value === 'number' && !Number.isFinite(value)) wrong.push(path);
      if (typeof value === 'object' && value !== null) {
        for (const [key, each] of Object.entries(value)) look(each, `${path}/${key}`);
      }
    };
    computed.forEach(({ plan, results }, at) => {
      const money = moneyOf(plan, results);
      look({ offers: money.offers, implied: money.implied, turned: turningOf(plan, money) }, `${at}`);
    });
    expect(wrong).toEqual([]);
  });
});
