/**
 * Evidence, worked out by hand in the comments: which weeks count, how weeks scatter, what would halve the range, and the
 * warnings that say what the scans can't carry.
 */
import { describe, expect, test } from 'vitest';
import { isoDateOf } from '../../src/domain/calendar.ts';
import type { Evidence, Plan, Scan } from '../../src/domain/plan/index.ts';
import { NO_EVIDENCE } from '../../src/domain/plan/plainly.ts';
import {
  evidenceFor,
  evidenceOf,
  evidenceOfAccount,
  rangeOfNewStores,
} from '../../src/domain/promise/evidence.ts';
import { halvingOf } from '../../src/domain/promise/halving.ts';
import { evidenceWarnings } from '../../src/domain/promise/warnings.ts';
import { weeksScatter } from '../../src/domain/promise/within-stores.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { anAccount, anItem, aPlan } from '../support/builders.ts';

const say = plainSay({ minorDigits: 2, startDay: 0, dateOf: isoDateOf });

function aScan(store: string, units: (number | null)[], changes: Partial<Scan> = {}): Scan {
  return {
    id: store.toLowerCase().replaceAll(' ', '-'),
    itemId: 'tea',
    accountId: null,
    store,
    firstDate: '2025-09-01',
    opened: false,
    units,
    displayWeeks: [],
    priceWeeks: [],
    ...changes,
  };
}

function withScans(scans: Scan[], changes: Partial<Evidence> = {}, plan: Partial<Plan> = {}): Plan {
  return aPlan({ ...plan, promise: { ...NO_EVIDENCE, scans, ...changes } });
}

const codes = (plan: Plan): string[] => {
  const evidence = evidenceFor(plan, 'tea');
  return evidence === null ? [] : evidenceWarnings(plan, evidence, say).map(({ code }) => code);
};

describe('which weeks count', () => {
  test('an opening leaves four weeks out, a gap is no zero, a zero is one, a display is set aside', () => {
    const units = [30, 12, 9, 10, 8, null, 0, 14];
    const evidence = evidenceFor(
      withScans([aScan('Hill', units, { opened: true, displayWeeks: [7] })]),
      'tea',
    );
    // Left: 8 in week 4 and 0 in week 6.
    expect(evidence?.stores).toEqual([{ units: 8, weeks: 2 }]);
    expect(evidence?.counted).toMatchObject({ basis: 'plain', leftOut: { openings: 4, deals: 1, gaps: 1 } });
  });

  test('a store just begun, with no week seen, leaves no gap', () => {
    const evidence = evidenceFor(withScans([aScan('Hill', [6, null, 5]), aScan('New', [null])]), 'tea');
    expect(evidence?.counted.leftOut.gaps).toBe(1);
    expect(evidence?.stores).toEqual([{ units: 11, weeks: 2 }]);
  });

  test('the same store of the same chain in two scans is one store; of another chain another', () => {
    const plan = withScans([
      aScan('Hill Street', [5, 6]),
      aScan('hill  street', [7], { id: 'again', firstDate: '2025-10-06' }),
      aScan('Hill Street', [9], { id: 'other', accountId: 'corner' }),
    ]);
    expect(evidenceFor(plan, 'tea')?.stores).toEqual([
      { units: 18, weeks: 3 },
      { units: 9, weeks: 1 },
    ]);
    expect(evidenceOfAccount(plan, 'tea', 'corner')?.stores).toEqual([{ units: 9, weeks: 1 }]);
  });

  test('a week of the season counts as its factor: ISO weeks 36 and 37 of 2 and 0.5', () => {
    const seasonFactors = Array.from({ length: 52 }, (_, at) => (at === 35 ? '2' : at === 36 ? '0.5' : '1'));
    const plan = withScans([aScan('Hill', [12, 3])], {}, { items: [anItem({ seasonFactors })] });
    expect(evidenceFor(plan, 'tea')?.stores).toEqual([{ units: 15, weeks: 2.5 }]);
  });

  test('several items are kept apart', () => {
    const plan = withScans(
      [aScan('Hill', [5]), aScan('Hill', [50], { id: 'mint', itemId: 'mint' })],
      {},
      { items: [anItem(), anItem({ id: 'mint', name: 'Mint' })] },
    );
    expect(evidenceOf(plan).map(({ itemId, rate }) => [itemId, rate.units])).toEqual([
      ['tea', 5],
      ['mint', 50],
    ]);
  });

  test('nothing seen is no evidence', () => {
    expect(evidenceFor(withScans([aScan('Hill', [null, null])]), 'tea')).toBeNull();
    expect(evidenceFor(aPlan(), 'tea')).toBeNull();
  });
});

test('scatter: 4 and 16 about 10 are chi square 7.2 of 1 degree; with ten held as counts 17.2 / 11', () => {
  const seen = evidenceFor(withScans([aScan('Hill', [4, 16])]), 'tea')?.counted.stores ?? [];
  expect(weeksScatter(seen)).toBeCloseTo(17.2 / 11, 12);
});

describe('ranges', () => {
  const eight = [30, 34, 36, 36, 38, 40, 36, 38].map((units, at) =>
    aScan(
      `Store ${at}`,
      Array.from({ length: 6 }, (_, week) => Math.floor((units + week) / 6)),
    ),
  );
  const evidence = evidenceFor(withScans(eight), 'tea');
  if (evidence === null) throw new Error('no evidence');

  test('288 units in 48 store weeks: 6.0, as the worked figure says', () => {
    expect(evidence.rate).toMatchObject({ stores: 8, storeWeeks: 48, units: 288 });
    expect(evidence.rate.mean).toBeCloseTo(6, 1);
    expect(evidence.rate.ofMean.low80).toBeCloseTo(5.5, 1);
    expect(evidence.rate.ofMean.high80).toBeCloseTo(6.6, 1);
  });

  test('one new store is less certain than ten, ten than all stores', () => {
    const width = ({ low80, high80 }: { low80: number; high80: number }) => high80 - low80;
    const [one, ten] = [1, 10].map((count) => width(rangeOfNewStores(evidence, count)));
    expect(one).toBeGreaterThan(1.3 * (ten ?? 0));
    expect(ten).toBeGreaterThan(width(evidence.rate.ofMean));
  });

  test('half the range takes about four times the stores, and weeks alone never do it where stores differ', () => {
    const halving = halvingOf(evidence);
    expect(halving.stores).toBeGreaterThanOrEqual(12);
    expect(halving.stores).toBeLessThanOrEqual(32);
    const apart = evidenceFor(
      withScans([2, 14, 5, 9].map((units, at) => aScan(`S${at}`, [units, units]))),
      'tea',
    );
    expect(apart && halvingOf(apart).weeks).toBeNull();
  });
});

describe('warnings', () => {
  /** Every second one is of the plan's chain, unless said otherwise. */
  const many = (count: number, units: (number | null)[], changes: Partial<Scan> = {}): Scan[] =>
    Array.from({ length: count }, (_, at) =>
      aScan(`Store ${at}`, units, { accountId: at % 2 === 0 ? 'corner' : null, ...changes }),
    );

  test('six stores, some of the plan’s chain, steady: none', () => {
    expect(codes(withScans(many(6, [6, 5, 7, 6])))).toEqual([]);
  });

  test.each<[string, Scan[], Partial<Evidence>, string[]]>([
    ['four stores', many(4, [6, 5, 7, 6]), {}, ['fewStores']],
    ['all of one chain', many(6, [6, 5, 7, 6], { accountId: 'corner' }), {}, ['oneChain']],
    ['none of a chain of the plan', many(6, [6, 5, 7, 6], { accountId: null }), {}, ['noChainOfPlan']],
    ['only display weeks', many(6, [6, 5, 7], { displayWeeks: [0, 1, 2] }), {}, ['dealWeeksOnly']],
    ['only opening weeks', many(6, [6, 5, 7], { opened: true }), {}, ['openingWeeksOnly']],
    ['falling by a tenth a week', many(6, [20, 18, 16, 15, 13, 12]), {}, ['falling']],
    ['weeks of 0 and 20', many(6, [20, 0, 20, 0, 0, 20]), {}, ['weeksScatter']],
    [
      'three stores against a firm prior',
      many(3, [4, 9]),
      { priors: [{ itemId: 'tea', unitsPerStoreWeek: '6', spread: '0.1', source: '' }] },
      ['fewStores', 'priorDecides'],
    ],
  ])('%s', (_, scans, changes, expected) => {
    expect(codes(withScans(scans, changes))).toEqual(expected);
  });

  test('stores of no chain say enough where no chain is planned', () => {
    const plan = withScans(many(6, [6, 5, 7, 6], { accountId: null }), {}, { accounts: [] });
    expect(codes(plan)).toEqual([]);
  });

  test('they name the chain, and say the fall', () => {
    const plan = withScans(
      many(6, [20, 18, 16, 15, 13, 12], { accountId: 'corner' }),
      {},
      {
        accounts: [anAccount()],
      },
    );
    const evidence = evidenceFor(plan, 'tea');
    const said =
      evidence === null ? [] : evidenceWarnings(plan, evidence, say).map(({ sentence }) => sentence);
    expect(said[0]).toBe('All stores are of Corner: shoppers of other chains may buy more, or less.');
    // From 20 to 12 in five weeks: 0.9 a week, a third in four.
    expect(said[1]).toMatch(/^Sales fall by 3[345] % in 4 weeks \(80 % range 2\d % to 4\d %\): the mean is/);
  });
});
