/**
 * Talks worked by hand: 60 doors of a tea at 1.00 landed on a tag of 5.00, 6 a week, 40 % to the chain. The present value is
 * held against XNPV of @formulajs/formulajs, an implementation of the published spreadsheet functions. Steps are those the
 * step keys make. Everything else is arithmetic written beside the figure.
 */
import { XNPV } from '@formulajs/formulajs';
import { describe, expect, test } from 'vitest';
import type { Account } from '../../src/domain/plan/index.ts';
import {
  countersFor,
  figuresFor,
  type Objective,
  standingOf,
  stepOf,
  type Term,
  type Terms,
  targetsOf,
  termsOf,
  withTerms,
  worthOf,
} from '../../src/domain/talks/index.ts';
import { aHand, aListing, anAccount, aPlan, aPromotion, aWave } from '../support/builders.ts';

const FIRST_YEAR: Objective = { by: 'firstYear' };
const DOORS = 60;
/** 60 doors x 6 a week x 52 weeks. */
const UNITS = 18_720;

function aDeal(changes: Partial<Account> = {}) {
  const account = anAccount({
    hands: [aHand()],
    listings: [aListing({ list: { by: 'solved' }, shelf: { by: 'price', amount: '5' } })],
    waves: [aWave({ doors: DOORS, doorsPerWeek: DOORS })],
    slotting: { amount: '250', per: 'door', settled: 'atOpening' },
    ...changes,
  });
  return aPlan({ accounts: [account] });
}

function figures(plan: ReturnType<typeof aDeal>, terms: Terms, objective: Objective = FIRST_YEAR) {
  const changed = withTerms(plan, 'corner', terms);
  if (!changed.ok) throw new Error(JSON.stringify(changed.problems));
  const found = figuresFor({ plan: changed.value, accountId: 'corner', objective, reviewWeeks: 26 });
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.value;
}

function counters(plan: ReturnType<typeof aDeal>, asked: Terms, limits: Terms = {}, order: string[] = []) {
  const targets = targetsOf({ plan, accountId: 'corner' });
  if (!targets.ok) throw new Error('no target');
  const { objective, target } = targets.value;
  const found = countersFor({ plan, accountId: 'corner', objective, target, asked, limits, order });
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.value;
}

const alone = (plan: ReturnType<typeof aDeal>, asked: Terms, name: string, limits: Terms = {}) =>
  counters(plan, asked, limits).counters.find(({ kind, terms }) => kind === 'alone' && name in terms);

describe('figures', () => {
  test('list 5.00 x 60 % = 3.00, 2.00 kept a unit: 37,440 a year, less 15,000 slotting', () => {
    const found = figures(aDeal(), {});
    expect(found.contributionPerUnit.toFixed()).toBe('2');
    expect(found.firstYear).toBe(22_440);
    expect(found.moneyDownPerDoor.toFixed()).toBe('250');
    // 720 a week: 15,000 is back after 20.8333 weeks
    expect(found.paybackWeeks).toBe(20.8333);
    // dropped after 26 weeks: 26 x 720 - 15,000
    expect(found.droppedAtReview).toBe(3720);
  });

  test('what is lost at the first review is the deal cut in that week', () => {
    const plan = aDeal({ waves: [aWave({ doors: 50, doorsPerWeek: 5 })] });
    const whole = figures(plan, {});
    const cut = aDeal({ waves: [aWave({ doors: 50, doorsPerWeek: 5 })], cutWeek: 4 + 26 });
    expect(figures(cut, {}).firstYear).toBeCloseTo(whole.droppedAtReview, 2);
  });

  test('two points more margin cost 5.00 x 2 % = 0.10 a unit, 1,872 a year', () => {
    expect(figures(aDeal(), { margin: 0.42 }).firstYear).toBe(22_440 - 1872);
  });

  test('present value is XNPV of the weeks: money in after 30 days, goods in their week', () => {
    const rate = 0.08;
    const amounts: number[] = [];
    const dates: Date[] = [];
    const put = (amount: number, days: number) => {
      amounts.push(amount);
      dates.push(new Date(Date.UTC(2026, 2, 30 + days)));
    };
    put(-15_000, 0);
    for (let week = 0; week < 52; week++) {
      put(-360, 7 * week);
      put(3 * 360, 7 * week + 30);
    }
    const found = figures(aDeal(), {}, { by: 'presentValue', yearlyRate: String(rate) });
    expect(found.presentValue).toBeCloseTo(Number(XNPV(rate, amounts, dates)), 2);
  });

  test('an early discount of 2 % in 10 days, taken on half the invoices, is XNPV of both halves', () => {
    const rate = 0.2;
    const discount = { rate: '0.02', days: 10, takenShare: '0.5' };
    const plan = aDeal({ terms: { ...anAccount().terms, earlyDiscount: discount } });
    const amounts = [-15_000];
    const dates = [new Date(Date.UTC(2026, 2, 30))];
    for (let week = 0; week < 52; week++) {
      for (const [amount, days] of [
        [-360, 0],
        [0.5 * 0.98 * 1080, 10],
        [0.5 * 1080, 30],
      ] as const) {
        amounts.push(amount);
        dates.push(new Date(Date.UTC(2026, 2, 30 + 7 * week + days)));
      }
    }
    const found = figures(plan, {}, { by: 'presentValue', yearlyRate: String(rate) });
    expect(found.presentValue).toBeCloseTo(Number(XNPV(rate, amounts, dates)), 2);
  });
});

describe('targets', () => {
  test('nothing typed: the plan as it is, and the deal that just pays over its term', () => {
    const plan = aDeal();
    const targets = targetsOf({ plan, accountId: 'corner' });
    expect(targets).toEqual({ ok: true, value: { objective: FIRST_YEAR, target: 22_440, walkAway: 0 } });
    const at = (firstYear: number) =>
      standingOf({
        figures: { ...figures(plan, {}), firstYear },
        objective: FIRST_YEAR,
        target: 22_440,
        walkAway: 0,
      });
    expect([at(22_440), at(22_439.99), at(0), at(-0.01)].map(({ state }) => state)).toEqual([
      'holds',
      'tight',
      'tight',
      'fails',
    ]);
    expect(at(20_000).gap).toBe(-2440);
  });
});

describe('counters', () => {
  test('0.42 instead of 0.40: 1,872 over 60 doors is 31.20 of slotting a door: 218, 48.00 to spare', () => {
    expect(alone(aDeal(), { margin: 0.42 }, 'slotting')).toMatchObject({
      terms: { slotting: 218 },
      target: 22_440,
      reached: 22_488,
      miss: 48,
      holds: true,
    });
  });

  test('0.42 instead of 0.40: the tag at 5.18 leaves 0.58 x 5.18 = 3.0044, the 3.00 it was; 5.17 leaves 2.9986', () => {
    expect(alone(aDeal(), { margin: 0.42 }, 'shelf')?.terms).toEqual({ shelf: 5.18 });
  });

  test('a chain with price points is offered the next of them that is enough', () => {
    const pricePoints = {
      endings: ['0.49', '0.99'],
      listOfPrices: false,
      move: 'nearest',
      absorbedBy: 'us',
    } as const;
    const listings = [aListing({ list: { by: 'solved' }, shelf: { by: 'price', amount: '4.99' } })];
    const plan = aDeal({ listings, pricePoints: { ...pricePoints, endings: [...pricePoints.endings] } });
    expect(alone(plan, { margin: 0.42 }, 'shelf')?.terms).toEqual({ shelf: 5.49 });
  });

  test('an ask past a limit is pulled back to it, in every counter-offer', () => {
    const found = alone(aDeal(), { margin: 0.44 }, 'slotting', { margin: 0.42 });
    expect(found?.terms).toEqual({ margin: 0.42, slotting: 218 });
  });

  test('an ask that keeps the target needs no counter-offer', () => {
    expect(counters(aDeal(), { paymentDays: 60 })).toMatchObject({ counters: [], closest: null });
    expect(counters(aDeal(), { paymentDays: 60 }).withoutEffect).toContain('paymentDays');
  });

  test('what nothing makes up for is said with how far the closest is off', () => {
    const { counters: none, closest } = counters(aDeal({ slotting: null }), { margin: 0.95 });
    expect(none).toEqual([]);
    expect(closest?.holds).toBe(false);
    expect(closest?.miss).toBeLessThan(0);
    expect(closest?.miss).toBeCloseTo((closest?.reached ?? 0) - 37_440, 4);
  });

  test('the mix moves less of what we would rather give', () => {
    const moved = (order: string[]) => {
      const mix = counters(aDeal(), { margin: 0.42 }, {}, order).counters.find(({ kind }) => kind === 'mix');
      return 250 - (mix?.terms['slotting'] ?? 250);
    };
    expect(moved(['slotting', 'shelf', 'doors'])).toBeLessThan(moved(['doors', 'shelf', 'slotting']));
  });
});

describe('worth in each other', () => {
  const worth = (plan: ReturnType<typeof aDeal>, names: string[]) => {
    const found = worthOf({ plan, accountId: 'corner', objective: FIRST_YEAR, names });
    if (!found.ok) throw new Error(JSON.stringify(found.problems));
    return found.value;
  };
  const amount = (found: ReturnType<typeof worth>, term: string, other: string) =>
    found.cells.find((cell) => cell.term === term && cell.other === other)?.amount;

  test('one margin point is 0.05 a unit, 936 a year, 15.60 of slotting a door', () => {
    const found = worth(aDeal(), ['margin', 'slotting', 'paymentDays']);
    expect(found.terms).toEqual(['margin', 'slotting']);
    expect(found.effects).toEqual({ margin: 936, slotting: 60 });
    expect(amount(found, 'margin', 'slotting')).toBeCloseTo(936 / 60, 6);
    expect(amount(found, 'slotting', 'margin')).toBeCloseTo((0.01 * 60) / 936, 5);
    expect(UNITS * 0.05).toBe(936);
  });

  test('a straight term holds to its ends, a bent one between two values', () => {
    const plan = aDeal({
      promotions: [aPromotion({ liftRate: '1', depthRate: '0.2', weeks: 4, dipShare: '0', dipWeeks: 0 })],
    });
    const found = worth(plan, ['margin', 'slotting', 'promoDepth']);
    const ends = (other: string) => {
      const cell = found.cells.find((each) => each.term === 'margin' && each.other === other);
      return [cell?.holdsFrom, cell?.holdsTo];
    };
    expect(ends('slotting')).toEqual([null, null]);
    // lift grows with depth: 360 x 4 weeks x (1 + 5d)(2 - 5d) less 2: a parabola with its top at d = 0.1
    const at = (depth: number) => 1440 * (1 + 5 * depth) * (2 - 5 * depth);
    const [from, to] = ends('promoDepth');
    const slope = (at(0.21) - at(0.2)) / 0.01;
    for (const end of [from, to]) {
      const chord = (at(end ?? 0) - at(0.2)) / ((end ?? 0) - 0.2);
      expect(Math.abs(chord / slope - 1)).toBeCloseTo(0.1, 2);
    }
  });
});

describe('terms', () => {
  const term = (name: string): Term => {
    const found = termsOf(aDeal(), 'corner').find((each) => each.name === name);
    if (!found) throw new Error(name);
    return found;
  };

  test('steps land on round multiples', () => {
    const rows: [string, number, 1 | -1, 'step' | 'tenth', number][] = [
      ['slotting', 253, 1, 'step', 260],
      ['slotting', 253, -1, 'step', 250],
      ['slotting', 253, 1, 'tenth', 254],
      ['slotting', 0, 1, 'step', 10],
      ['slotting', 0, -1, 'step', 0],
      ['margin', 0.42, 1, 'step', 0.425],
      ['margin', 0.42, -1, 'tenth', 0.4195],
      ['paymentDays', 30, 1, 'step', 35],
      ['paymentDays', 32, -1, 'step', 30],
      ['paymentDays', 32, -1, 'tenth', 31],
      ['promoDepth', 0.2, 1, 'step', 0.25],
      ['promoFunded', 1, -1, 'step', 0.75],
      ['promoFunded', 1, 1, 'step', 1],
      ['spoils', 0.01, 1, 'step', 0.0125],
      ['freeFill', 0, 1, 'step', 1],
    ];
    for (const [name, value, way, size, expected] of rows) {
      expect(stepOf(term(name), value, way, size), `${name} ${value}`).toBe(expected);
    }
  });

  test('a tag steps to the chain’s next price point', () => {
    const points = {
      endings: ['0.49', '0.99'],
      listOfPrices: false,
      move: 'nearest',
      absorbedBy: 'us',
    } as const;
    const own = { ...points, endings: [...points.endings] };
    expect(stepOf(term('shelf'), 4.99, 1, 'step', own)).toBe(5.49);
    expect(stepOf(term('shelf'), 4.99, -1, 'tenth', own)).toBe(4.49);
  });

  test.each([
    [{ margin: 1.2 }, 'got 1.2; expected a share from 0 to 0.99; 42 % is 0.42'],
    [{ paymentDays: 30.5 }, 'got 30.5; expected a whole number of days from 0 to 365'],
    [{ freeFill: 9 }, 'the opening fill'],
    [{ shelf: Number.NaN }, 'got NaN; expected an amount'],
    [{ fame: 1 }, 'one of the account’s terms: margin, shelf, slotting'],
  ] as [Terms, string][])('refuses %j in words', (terms, words) => {
    const refused = withTerms(aDeal(), 'corner', terms);
    expect(refused.ok).toBe(false);
    const [problem] = refused.ok ? [] : refused.problems;
    expect(`got ${problem?.got}; expected ${problem?.expected}`).toContain(words);
  });

  test('a locked list price stands: the tag gives way for the margin, the chain for the tag', () => {
    const listings = [aListing({ list: { by: 'price', amount: '3' }, lockedRungs: ['list'] })];
    const plan = aDeal({ listings });
    const more = withTerms(plan, 'corner', { margin: 0.5 });
    expect(more.ok && termsOf(more.value, 'corner').find(({ name }) => name === 'shelf')?.value).toBe(6);
    const dearer = withTerms(plan, 'corner', { shelf: 6 });
    expect(dearer.ok && termsOf(dearer.value, 'corner').find(({ name }) => name === 'margin')?.value).toBe(
      0.5,
    );
    expect(withTerms(plan, 'corner', { shelf: 6, margin: 0.45 }).ok).toBe(false);
  });
});
