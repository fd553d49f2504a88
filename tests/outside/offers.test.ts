/**
 * Offers against values from outside: a published loan schedule, a published cap table, payouts under a preference, a revenue
 * share, and royalties in closed form. Where a value is the definition worked out, that is said.
 */
import { describe, expect, test } from 'vitest';
import { loanOutcome } from '../../src/domain/offers/loan.ts';
import { roundPrice } from '../../src/domain/offers/round.ts';
import { datedIn, runOffer } from '../../src/domain/offers/run.ts';
import { turningPoints } from '../../src/domain/offers/turning.ts';
import { sharedOut } from '../../src/domain/offers/waterfall.ts';
import { aPlan } from '../support/builders.ts';
import {
  anOffer,
  anOwnership,
  aSteadyBasis,
  equityPart,
  loanPart,
  royaltyPart,
  sharePart,
} from '../support/offers.ts';

describe('loan schedules', () => {
  /** A published exercise (answer key of a corporate-finance textbook's, slideshare.net, "5-year loan of $39,000"); yearly there, monthly here. */
  test('39,000 at 9 % a period in five equal payments: interest and balance of every period', () => {
    const basis = aSteadyBasis({ weeks: 60 });
    const loan = {
      ...loanPart({ yearlyRate: '1.08', principalMonths: 5 }),
      feeRate: '0',
      feeAmount: '0',
    };
    const { flows } = loanOutcome(
      loan,
      { money: [{ week: 0, amount: 3_900_000 }], flows: [], never: [], asked: 0 },
      basis,
    );
    const of = (what: string) => flows.filter((flow) => flow.what === what).map(({ amount }) => -amount);
    expect(of('interest')).toEqual([351_000, 292_351, 228_423, 158_741, 82_788]);
    // The last payment takes what rounding left: 9,198.74 instead of 9,198.70.
    expect(of('principal').slice(0, 4)).toEqual([651_661, 710_310, 774_238, 843_920]);
    expect(of('principal').reduce((sum, each) => sum + each, 0)).toBe(3_900_000);
  });

  /** numpy-financial documentation, ipmt: 2,500 at 8.24 % over 12 months; the page's table and its sum, from memory. */
  test('2,500 at 8.24 % over a year: first rows, and 112.98 of interest in all', () => {
    const basis = aSteadyBasis({ weeks: 60 });
    const came = { money: [{ week: 0, amount: 250_000 }], flows: [], never: [], asked: 0 };
    const { flows } = loanOutcome(loanPart({ yearlyRate: '0.0824', principalMonths: 12 }), came, basis);
    const interest = flows.filter(({ what }) => what === 'interest').map(({ amount }) => -amount);
    const principal = flows.filter(({ what }) => what === 'principal').map(({ amount }) => -amount);
    expect(interest.slice(0, 4)).toEqual([1717, 1579, 1440, 1301]);
    expect(principal.slice(0, 3)).toEqual([20_058, 20_196, 20_335]);
    expect(Math.abs(interest.reduce((sum, each) => sum + each, 0) - 11_298)).toBeLessThanOrEqual(2);
  });
});

describe('who owns what', () => {
  /** "Cap Table 101", founders' handbook of 1984.vc: two founders of a million shares, 2,000,000 at 8,000,000 before it. */
  test('2 M on 8 M pre-money: 4.00 a share, 500,000 new shares, 20 %', () => {
    const priced = roundPrice({ shares: 2e6, preMoney: 8e6, amount: 2e6, poolRate: 0, converting: [] });
    expect(priced?.price).toBeCloseTo(4, 9);
    expect(2e6 / (priced?.price ?? 0)).toBeCloseTo(500_000, 4);
    const run = runOffer(
      aSteadyBasis(),
      anOffer([equityPart({ amount: '2000000', partRate: '0.2' })]),
      anOwnership(),
    );
    expect(run.company.rows.at(-1)?.shares.map(({ rate }) => rate.toFixed(6))).toEqual([
      '0.800000',
      '0.000000',
      '0.000000',
      '0.200000',
    ]);
    expect(run.company.rows[1]).toMatchObject({ preMoney: 800_000_000, postMoney: 1_000_000_000 });
  });

  /** Business-school text (pre-money 500, 25 shares, invest 100): 20 a share, 5 new shares, 16.67 %. */
  test('pre-money 500 on 25 shares, 100 in', () => {
    const priced = roundPrice({ shares: 25, preMoney: 500, amount: 100, poolRate: 0, converting: [] });
    expect(priced?.price).toBeCloseTo(20, 9);
    expect(100 / (priced?.price ?? 1) / 30).toBeCloseTo(0.166667, 6);
  });

  /** Angel-investing text: 4 M before, 1 M in: 5 M after, 20 %. */
  test('a later round of 1 M on 4 M pre-money takes 20 %', () => {
    const rounds = [
      { id: 'a', label: 'A', week: 10, amount: '1000000', preMoneyAmount: '4000000', poolRate: '0' },
    ];
    const run = runOffer(aSteadyBasis(), anOffer([]), anOwnership({ rounds }));
    const row = run.company.rows[1];
    expect(row?.postMoney).toBe(500_000_000);
    expect(row?.shares.at(-1)?.rate).toBeCloseTo(0.2, 12);
  });

  /** F. Wilson's example of a pro rata right (quoted at alexanderjarvis.com): 1 % before 3 M on 9 M; with 30,000 it stays 1 %, else .75 %. */
  test.each([
    [true, 0.01, 3_000_000],
    [false, 0.0075, 0],
  ])('pro rata %s: %f after the round, %i paid in', (proRata, rate, paysIn) => {
    const rounds = [
      { id: 'a', label: 'A', week: 10, amount: '3000000', preMoneyAmount: '9000000', poolRate: '0' },
    ];
    const part = equityPart({ amount: '50000', partRate: '0.01', proRata });
    const run = runOffer(aSteadyBasis(), anOffer([part]), anOwnership({ rounds }));
    const held = run.company.rows[2]?.shares.find(({ id }) => id === part.id);
    expect(held?.rate).toBeCloseTo(rate, 12);
    expect(run.moneyIn - 5_000_000).toBe(paysIn);
  });

  /** The definition worked out: money / cap of the shares before the round's money; 20 % less than the round without a cap. */
  test('100,000 under a post-money cap of 1,000,000, then 1 M on 4 M: 10 % of the 80 % before the round', () => {
    const capped = { amount: 100_000, cap: 1e6, capBase: 'postMoney' as const, discountRate: 0 };
    const priced = roundPrice({ shares: 1, preMoney: 4e6, amount: 1e6, poolRate: 0, converting: [capped] });
    const shares = priced?.converts[0] ?? 0;
    expect(shares / (1 + shares)).toBeCloseTo(0.1, 12);
    expect(shares / (1 + shares + 1e6 / (priced?.price ?? 1))).toBeCloseTo(0.08, 12);
    const cheaper = { amount: 100_000, cap: null, capBase: 'preMoney' as const, discountRate: 0.2 };
    const other = roundPrice({ shares: 1, preMoney: 4e6, amount: 1e6, poolRate: 0, converting: [cheaper] });
    expect(100_000 / (other?.converts[0] ?? 1)).toBeCloseTo(0.8 * (other?.price ?? 0), 3);
  });
});

describe('payouts', () => {
  /** Equity help pages of gust.com, "participating preferred": 2 M for 30 %, sold at 10 M: 2 M and 30 % of 8 M are 4.4 M. */
  test('participating: 4.4 M of 10 M', () => {
    const claims = [
      { shares: 0.7, preference: 0, participates: false },
      { shares: 0.3, preference: 2e6, participates: true },
    ];
    const [founder, investor] = sharedOut(claims, 10e6);
    expect(investor).toBeCloseTo(4.4e6, 6);
    expect(founder).toBeCloseTo(5.6e6, 6);
  });

  /** metrickittools.com, guide to 1x non-participating: it converts above preference / part. */
  test('non-participating: 2 M for 30 % takes its money below 6.67 M, its part above', () => {
    const claims = [
      { shares: 0.7, preference: 0, participates: false },
      { shares: 0.3, preference: 2e6, participates: false },
    ];
    expect(sharedOut(claims, 6.6e6)[1]).toBeCloseTo(2e6, 6);
    expect(sharedOut(claims, 2e6 / 0.3)[1]).toBeCloseTo(2e6, 6);
    expect(sharedOut(claims, 10e6)[1]).toBeCloseTo(3e6, 6);
    expect(sharedOut(claims, 1e6)).toEqual([0, 1e6]);
  });
});

describe('royalties and shares of revenue', () => {
  /** Finance glossary: 500,000 at a cap of 1.6 for 5 % of 100,000 a month is paid back in 160 months. */
  test('a revenue share to a cap of 1.6 x: over after 160 months, at 800,000', () => {
    const weeks = 720;
    const basis = aSteadyBasis({ weeks, netSalesPerWeek: (100_000 * 12 * 7) / 365.2425 });
    const run = runOffer(
      basis,
      anOffer([sharePart({ amount: '500000', rate: '0.05', capMultiple: '1.6' })]),
      anOwnership(),
    );
    const paid = run.flows.filter(({ amount }) => amount < 0);
    expect(paid.reduce((sum, { amount }) => sum - amount, 0)).toBe(80_000_000);
    expect(Math.abs(paid.length - 160)).toBeLessThanOrEqual(1);
  });

  /** In closed form: at 1.00 a unit until 60,000 is back, then .25, N units owe 60,000 + (N - 60,000) / 4; a loan that costs L in all turns there. */
  test('turning point of a royalty and a loan at constant sales', () => {
    const basis = aSteadyBasis({ weeks: 52, unitsPerWeek: 1000 });
    const royalty = {
      ...anOffer([royaltyPart({ amount: '40000', amountPerUnit: '1', later: '0.25', untilMultiple: '1.5' })]),
      id: 'royalty',
    };
    const loan = {
      ...anOffer([loanPart({ amount: '40000', yearlyRate: '0.24', principalMonths: 72 })]),
      id: 'loan',
    };
    const runs = [royalty, loan].map((offer) => runOffer(basis, offer, anOwnership()));
    const [, second] = runs;
    const cost = second ? datedIn(second) / 100 : 0;
    expect(cost).toBeGreaterThan(60_000);
    const units = 60_000 + (cost - 60_000) * 4;
    const [point] = turningPoints(aPlan(), runs).points.filter(({ on }) => on === 'units');
    expect(point).toMatchObject({ between: ['royalty', 'loan'], below: 'royalty', above: 'loan' });
    // Paid amounts are whole cents: a cent is .04 units at the later rate.
    expect(Math.abs((point?.at ?? 0) - units)).toBeLessThan(0.1);
  });
});
