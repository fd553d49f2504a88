/**
 * Which of two offers wins how often, worked by hand. 40,000 for 20 % against a loan of 40,000 without interest, 100,000 in
 * the bank, the business sold for once its year's net sales S: the part leaves 0.8 (S + 140,000), the loan S + 100,000 (what
 * isn't paid back yet is taken off the sale). They are equal at S = 60,000; below it the part leaves more.
 */
import { describe, expect, test } from 'vitest';
import type { Basis } from '../../src/domain/offers/basis.ts';
import { foundIn } from '../../src/domain/offers/drawn.ts';
import { coversIn, futuresOf } from '../../src/domain/offers/futures.ts';
import type { DrawnOffers } from '../../src/domain/offers/types.ts';
import { aPlan } from '../support/builders.ts';
import { anOffer, anOwnership, aSteadyBasis, equityPart, loanPart } from '../support/offers.ts';

const plan = aPlan({
  offers: [
    anOffer([equityPart({ amount: '40000', partRate: '0.2' })], { id: 'part' }),
    anOffer([loanPart({ amount: '40000', yearlyRate: '0' })], { id: 'loan' }),
  ],
  ownership: anOwnership({ exit: { by: 'revenue', multiple: '1' } }),
});

/** A draw that sells so much a week; the numbers run against the sales, so that order is by sales alone. */
function drawn(draw: number, netSalesPerWeek: number, changes: Partial<Basis> = {}): DrawnOffers {
  const basis = { ...aSteadyBasis({ netSalesPerWeek }), ...changes };
  return { draw, found: foundIn(plan, basis) };
}

const ten = Array.from({ length: 10 }, (_, at) => drawn(at, 2000 - 200 * at));

/** Cash without new money so deep below zero that 40,000 don't lift it. */
const dry = { low: new Float64Array(52).fill(-5_000_000) };
/** Without new money at zero, and that far below it in the last week. */
const tightFor = (lowest: number) => ({ low: new Float64Array(52).fill(0).fill(lowest, 51) });

describe('ten draws that sell 200, 400 ... 2,000 a week', () => {
  const futures = futuresOf(ten);

  test('the part wins up to 1,000 a week (52,000 a year), the loan from 1,200 on (62,400)', () => {
    expect(futures).toMatchObject({ draws: 10, uncomputed: 0, noneLasts: 0, ties: 0 });
    expect(futures.offers.map(({ offerId, wins, share, lasts }) => [offerId, wins, share, lasts])).toEqual([
      ['part', 5, 0.5, 10],
      ['loan', 5, 0.5, 10],
    ]);
    // Wilson by hand, z = 1.959964: (0.5 + z²/20 -+ z root(0.025 + z²/400)) / (1 + z²/10) = 0.5 -+ 0.2634
    const limits = futures.offers[0]?.limits;
    expect(limits?.low).toBeCloseTo(0.2366, 4);
    expect(limits?.high).toBeCloseTo(0.7634, 4);
  });

  test('P10, P50, P90 are the draws of 200, 1,000 and 1,800 a week', () => {
    expect(futures.outcomes.map(({ name, draw, netSales, best }) => [name, draw, netSales, best])).toEqual([
      ['p10', 9, 1_040_000, 'part'],
      ['p50', 5, 5_200_000, 'part'],
      ['p90', 1, 9_360_000, 'loan'],
    ]);
    // 0.8 (10,400 + 140,000) and 10,400 + 100,000
    expect(futures.outcomes[0]?.founder.map(({ amount }) => amount)).toEqual([12_032_000, 11_040_000]);
  });

  test('what is kept, over all draws: 0.8 (S + 140,000) at S = 10,400, 52,000 and 93,600', () => {
    expect(futures.offers[0]?.kept).toEqual({ p10: 12_032_000, p50: 15_360_000, p90: 18_688_000 });
    expect(futures.offers[1]?.kept).toEqual({ p10: 11_040_000, p50: 15_200_000, p90: 19_360_000 });
  });

  test('in whatever order they come', () => {
    expect(futuresOf([...ten].reverse())).toEqual(futures);
  });
});

describe('twenty draws that need 2,000, 4,000 ... 40,000', () => {
  // Every week the same low: 40,000 lifts them all; the loan is half paid back in a year, and lifts the first half and no more.
  const needs = Array.from({ length: 20 }, (_, at) => -200_000 * (at + 1));
  const twenty = (changes: (low: number) => Partial<Basis>) =>
    futuresOf(needs.map((low, at) => drawn(at, 1000, changes(low))));

  test('half need 20,000 at most, 80 of 100 32,000, 95 of 100 38,000: the part covers them all', () => {
    const futures = twenty((low) => ({ low: new Float64Array(52).fill(low) }));
    expect(futures.need).toEqual({ p50: 2_000_000, p80: 3_200_000, p95: 3_800_000 });
    expect(coversIn(futures, { id: 'part' })).toEqual([
      { name: 'p50', need: 2_000_000, left: 2_000_000, covers: true },
      { name: 'p80', need: 3_200_000, left: 800_000, covers: true },
      { name: 'p95', need: 3_800_000, left: 200_000, covers: true },
    ]);
  });

  test('the same needs in the last week: a loan that pays back until then covers half, not 80 of 100', () => {
    const futures = twenty((low) => tightFor(low));
    // 40,000 over 24 months from March 2 without interest: twelve parts of 1,666.67 by the last week, February 22: 11.
    const left = 4_000_000 - 11 * 166_667;
    const covers = coversIn(futures, { id: 'loan' });
    expect(covers.map((each) => [each.name, each.covers])).toEqual([
      ['p50', true],
      ['p80', false],
      ['p95', false],
    ]);
    expect(Math.abs((covers[0]?.left ?? 0) - (left - 2_000_000))).toBeLessThan(20);
    expect(futures.offers[1]?.lasts).toBe(10);
  });
});

describe('draws that nobody wins', () => {
  test('cash runs out under one: the other wins, though it leaves less; under both: nobody', () => {
    // At 2,000 a week the loan leaves more, but a year of it is half paid back: 40,000 less some 18,000 in the last week.
    const futures = futuresOf([drawn(0, 2000, tightFor(-3_000_000)), drawn(1, 2000, dry)]);
    expect(futures).toMatchObject({ draws: 2, noneLasts: 1, ties: 0 });
    expect(futures.offers.map(({ wins, lasts }) => [wins, lasts])).toEqual([
      [1, 1],
      [0, 0],
    ]);
    expect(futures.outcomes[0]).toMatchObject({ draw: 0, best: 'part', bestLasts: true });
    expect(futures.outcomes[2]).toMatchObject({ draw: 1, best: 'loan', bestLasts: false });
  });

  test('equal to the minor unit at 60,000 a year: a tie', () => {
    const futures = futuresOf([drawn(0, 1000, { yearRevenue: 6_000_000 }), drawn(1, 1000)]);
    expect(futures).toMatchObject({ draws: 2, noneLasts: 0, ties: 1 });
    expect(futures.offers.map(({ wins }) => wins)).toEqual([1, 0]);
    expect(futures.outcomes[0]).toMatchObject({ draw: 0, best: null, bestLasts: true });
  });

  test('too large to compute: counted beside, in nothing else', () => {
    const lost: DrawnOffers = { draw: 77, found: null };
    expect(futuresOf([lost, ...ten])).toEqual({ ...futuresOf(ten), uncomputed: 1 });
    expect(futuresOf([lost])).toEqual({
      draws: 0,
      uncomputed: 1,
      noneLasts: 0,
      ties: 0,
      offers: [],
      need: { p50: 0, p80: 0, p95: 0 },
      outcomes: [],
    });
  });
});
