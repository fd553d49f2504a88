/**
 * Laws of rival offers on draws of the range: without spreads every draw is the plan, and leaves the founder what the plan does,
 * to the minor unit; draws are the same however they are cut into slices, and each time; every draw is somebody's or counted as
 * nobody's; and what can't be computed is counted.
 */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { jobAnswer } from '../../src/compute/jobs.ts';
import type { Job } from '../../src/compute/protocol.ts';
import {
  basesOfDraws,
  basisOf,
  drawOffers,
  futuresOf,
  moneyOf,
  OFFER_DRAWS,
} from '../../src/domain/offers/index.ts';
import type { DrawnOffers } from '../../src/domain/offers/types.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { DRAWS_USUAL } from '../../src/domain/promise/range/index.ts';
import type { Results } from '../../src/domain/results.ts';
import { arbitraryPlan, PLAN_RUNS, PLAN_SEED } from '../support/arbitrary-plan.ts';
import { computed, demoFiles, demoPlan, resultsOf, withSpreads } from '../support/demo-plans.ts';
import { anOffer, anOwnership, equityPart, loanPart, royaltyPart } from '../support/offers.ts';

vi.setConfig({ testTimeout: 60_000 });

const offers = [
  anOffer([equityPart()], { id: 'part' }),
  anOffer([royaltyPart({ amountPerUnit: '0.1' })], { id: 'royalty' }),
  anOffer([loanPart()], { id: 'loan' }),
];

/** A demo with three rival offers. */
function demo(file: string): Plan {
  return { ...demoPlan(file), offers, ownership: anOwnership() };
}

/** So many slices of one draw: enough for a law. */
function some(args: { plan: Plan; results: Results }, count: number): DrawnOffers[] {
  return Array.from({ length: count }, (_, at) => drawOffers(args, at * 9, () => false)).flat();
}

function strays(plan: Plan, results: Results): string[] {
  const { offers: planned } = moneyOf(plan, results);
  const found: string[] = [];
  for (const { draw, found: drawn } of some({ plan, results }, 3)) {
    if (drawn === null) found.push(`${draw} isn't computed`);
    planned.forEach(({ id, founder, lowestCash }, at) => {
      const here = drawn?.founder[at];
      if (here?.offerId !== id || here.amount !== founder.amount) found.push(`${draw} ${id}: amount`);
      if (here?.lowestCash !== lowestCash) found.push(`${draw} ${id}: lowest cash`);
    });
  }
  return found;
}

describe('without spreads every draw is the plan', () => {
  test.each(demoFiles)('%s', (name) => {
    const { plan, results } = computed(withSpreads(demo(name), {}));
    expect(strays(plan, results)).toEqual([]);
    expect(basesOfDraws({ plan, results }, [0, 4150])).toEqual([
      basisOf(plan, results),
      basisOf(plan, results),
    ]);
  });

  test(`random plans and offers, seed ${PLAN_SEED}`, () => {
    let compared = 0;
    for (const drawn of fc.sample(arbitraryPlan(), { seed: PLAN_SEED, numRuns: PLAN_RUNS })) {
      const plan = withSpreads(drawn, {});
      const results = resultsOf(plan);
      if (results === null || plan.offers.length === 0) continue;
      compared += 1;
      expect(strays(plan, results)).toEqual([]);
    }
    expect(compared).toBeGreaterThan(10);
  });
});

describe('the same draws', () => {
  const args = computed(demo('third-chain.json'));
  const whole = drawOffers(args);

  test('evenly spread over the range’s, in whatever slices, and each time', () => {
    expect(whole.map(({ draw }) => draw)).toEqual(
      Array.from({ length: OFFER_DRAWS }, (_, k) => (k * DRAWS_USUAL) / OFFER_DRAWS),
    );
    let left = 0;
    const sliced: DrawnOffers[] = [];
    while (sliced.length < OFFER_DRAWS) {
      left = 70;
      sliced.push(...drawOffers(args, sliced.length, () => --left > 0));
    }
    expect(sliced).toEqual(whole);
  });

  test('by the worker’s jobs, from where it is asked; and the bases of three of them', () => {
    const ask = (job: Job): unknown => {
      const answer = jobAnswer(structuredClone(job));
      if (!answer.ok) throw new Error('no answer');
      return structuredClone(answer.value);
    };
    const drawn = ask({ kind: 'offerDraws', plan: args.plan, from: 150 }) as DrawnOffers[];
    expect(drawn.length).toBeGreaterThan(0);
    expect(drawn).toEqual(whole.slice(150, 150 + drawn.length));
    const draws = futuresOf(whole).outcomes.map(({ draw }) => draw);
    expect(draws).toHaveLength(3);
    expect(ask({ kind: 'offerBases', plan: args.plan, draws })).toEqual(basesOfDraws(args, draws));
  });

  test('another draw is another future', () => {
    expect(new Set(whole.map(({ found }) => found?.netSales)).size).toBeGreaterThan(OFFER_DRAWS / 2);
  });
});

describe('every draw is somebody’s, or counted', () => {
  test(`random plans, seed ${PLAN_SEED}: wins, ties, draws that none lasts in, and the winner keeps most`, () => {
    for (const drawn of fc.sample(arbitraryPlan(), { seed: PLAN_SEED, numRuns: PLAN_RUNS })) {
      const plan = { ...drawn, offers, ownership: anOwnership() };
      const results = resultsOf(plan);
      if (results === null) continue;
      const {
        draws,
        uncomputed,
        noneLasts,
        ties,
        offers: odds,
        outcomes,
      } = futuresOf(some({ plan, results }, 8));
      expect(draws + uncomputed).toBe(8);
      expect(odds.reduce((sum, { wins }) => sum + wins, noneLasts + ties)).toBe(draws);
      for (const { wins, share, limits, lasts, kept } of odds) {
        expect(lasts).toBeGreaterThanOrEqual(wins);
        // the formula is a hair off 0 where there is no win
        expect(limits.low).toBeLessThanOrEqual(share + 1e-12);
        expect(limits.high).toBeGreaterThanOrEqual(share);
        expect(kept.p10).toBeLessThanOrEqual(kept.p50);
        expect(kept.p50).toBeLessThanOrEqual(kept.p90);
      }
      expect(outcomes.map(({ netSales }) => netSales)).toEqual(
        outcomes.map(({ netSales }) => netSales).sort((a, b) => a - b),
      );
      for (const { best, bestLasts, founder } of outcomes) {
        const inRunning = founder.filter(({ lowestCash }) => !bestLasts || lowestCash >= 0);
        const winner = founder.find(({ offerId }) => offerId === best);
        if (winner === undefined) continue;
        for (const { offerId, amount } of inRunning) {
          if (offerId !== best) expect(winner.amount).toBeGreaterThan(amount);
        }
      }
    }
  });

  test('goods that may cost a million times as much: what can’t be kept exact is counted', () => {
    const plan = withSpreads(demo('third-chain.json'), { goodsRate: '9' });
    const args = computed(plan);
    const drawn = drawOffers(args);
    const lost = drawn.filter(({ found }) => found === null).length;
    expect(lost).toBeGreaterThan(0);
    expect(futuresOf(drawn)).toMatchObject({ draws: OFFER_DRAWS - lost, uncomputed: lost });
    expect(futuresOf(drawn).offers.every(({ share }) => Number.isFinite(share))).toBe(true);
  });
});
