// @vitest-environment happy-dom
/**
 * Words of the Promise view: the guess a verdict leans on keeps a name's capital and says a chance in percent, correlations
 * and rates keep their decimals, what is said of several products alike is said once, and what would have to be true says
 * whether its figure was seen or planned.
 */
import { describe, expect, test } from 'vitest';
import type { Scan } from '../../src/domain/plan/index.ts';
import { NO_EVIDENCE } from '../../src/domain/plan/plainly.ts';
import type { HavingToBe } from '../../src/domain/promise/have-to-be-true.ts';
import { placeWords } from '../../src/screens/money/axis-words.ts';
import { besideWords, scanText } from '../../src/screens/promise/evidence-words.ts';
import { indexWords } from '../../src/screens/promise/leaning.tsx';
import { mustRows } from '../../src/screens/promise/must-words.ts';
import { correlationText } from '../../src/screens/promise/range-words.ts';
import { aheadWarnings, salesWarnings } from '../../src/screens/promise/warnings.tsx';
import { rateText } from '../../src/screens/promise/words.ts';
import { screenSay } from '../../src/screens/shared/screen-say.ts';
import { leansOnWords } from '../../src/screens/shared/verdict-words.ts';
import { anAccount, anItem, aPlan } from '../support/builders.ts';

const say = screenSay({ currency: 'USD', startDay: 0 });

describe('the guess a verdict leans on', () => {
  const leans = { verdict: 'promise', flips: true, stateThere: 'tight' } as const;

  test('of an account it opens with the name, and its chance is in percent', () => {
    const label = 'Corner, in talks, comes with a chance of 25 %';
    expect(
      leansOnWords({ ...leans, path: 'accounts/corner/standing/chance', label, end: '0.4' }, 'USD'),
    ).toBe('Leans on a guess: Corner, in talks, comes with a chance of 25 %. At 40\u00a0% it gets tight.');
  });

  test('an end in thousands is grouped as any other figure', () => {
    const path = 'accounts/corner/waves/w/doors';
    const label = 'It opens 2,500 doors';
    expect(leansOnWords({ ...leans, path, label, end: '5000' }, 'USD')).toBe(
      'Leans on a guess: it opens 2,500 doors. At 5,000 it gets tight.',
    );
  });

  test('any other goes on in the sentence', () => {
    const path = 'promise/spreads/sharedRate';
    expect(
      leansOnWords({ ...leans, path, label: 'Accounts share part of their fate', end: '0.6' }, 'USD'),
    ).toBe('Leans on a guess: accounts share part of their fate. At 60\u00a0% it gets tight.');
  });
});

test('a correlation has two decimals, a rate of sale one, whatever they end in', () => {
  const driver = {
    cause: 'doors',
    account: null,
    correlation: -0.8,
    limits: { low: -0.813, high: -0.8 },
  } as const;
  expect(correlationText(driver, say)).toBe('−0.80 (−0.81 to −0.80)');
  expect([rateText(1, say), rateText(3.25, say), rateText(0, say)]).toEqual(['1.0', '3.3', '0.0']);
});

test('one of anything is one', () => {
  const scan = (units: (number | null)[]) => scanText({ units }, say);
  expect([scan([null]), scan([1]), scan([1, 1])]).toEqual([
    '1 week · 0 units',
    '1 week · 1 unit',
    '2 weeks · 2 units',
  ]);
  expect(placeWords('units', { at: 1.2, units: null }, say)).toBe('1 unit');
  expect(placeWords('growth', { at: 1, units: 1 }, say)).toBe('the planned sales (1 unit)');
  expect(placeWords('growth', { at: 1.49, units: 42_858 }, say)).toBe(
    '1.49 times the planned sales (42,858 units)',
  );
});

test('what hangs on one customer is written in the reader’s own numbers', () => {
  const german = { ...say, count: (value: number) => value.toLocaleString('de-DE') };
  expect(indexWords(10_000, 'high', german)).toBe(
    'Shares of revenue, squared and added: 10.000 of 10.000, highly concentrated (above 1.800) by the bands of the US competition authorities (2023), which are for markets.',
  );
  expect(indexWords(1200, 'moderate', say)).toContain(
    '1,200 of 10,000, moderately concentrated (1,000 to 1,800)',
  );
});

test('what speaks for a plan beside scans, on paper', () => {
  const promise = {
    ...NO_EVIDENCE,
    runRate: { asOf: '2026-02-23', doors: 8, unitsPerWeek: '33', revenueAmountPerWeek: null },
    reorders: [{ id: 'one', itemId: 'tea', accountId: null, date: '2025-12-08', units: 216 }],
    priors: [{ itemId: 'tea', unitsPerStoreWeek: '5', spread: '0.5', source: '' }],
  };
  const date = (isoDate: string) => `day ${isoDate}`;
  expect(besideWords(aPlan({ items: [anItem({ name: 'Tea' })], promise }), { ...say, date })).toEqual([
    'On day 2026-02-23: 8 doors open, 33 units a week.',
    'Ordered again: 216 units on day 2025-12-08.',
    'Held before any scan of Tea: 5 a store a week (no source given).',
  ]);
  expect(besideWords(aPlan({ promise: NO_EVIDENCE }), say)).toEqual([]);
});

describe('scans', () => {
  const items = [anItem({ id: 'tea', name: 'Tea' }), anItem({ id: 'mint', name: 'Mint' })];
  const [listing] = anAccount().listings;
  const account = anAccount({
    listings: items.map(({ id }) => ({ ...(listing as NonNullable<typeof listing>), itemId: id })),
  });
  const scans = items.flatMap(({ id: itemId }) =>
    [0, 1].map(
      (at): Scan => ({
        id: `${itemId}-${at}`,
        itemId,
        accountId: at === 0 ? 'corner' : null,
        store: `Store ${at}`,
        firstDate: '2025-10-06',
        opened: false,
        units: [5, 6, 5],
        displayWeeks: [],
        priceWeeks: [],
      }),
    ),
  );
  const plan = aPlan({ items, accounts: [account], promise: { ...NO_EVIDENCE, scans } });

  test('of two products alike have one warning with both names', () => {
    expect(salesWarnings(plan, say)).toEqual([
      'Tea; Mint: 2 stores are too few to tell how stores differ: the range leans on how they usually do.',
    ]);
  });

  test('weeks that have not begun are said, a week of today or one not seen is not', () => {
    const [first] = scans;
    if (first === undefined) throw new Error('no scan');
    const of = (...each: Partial<Scan>[]) => {
      const dated = each.map((changes, at) => ({ ...first, id: `s${at}`, store: `Store ${at}`, ...changes }));
      return { ...plan, promise: { ...plan.promise, scans: dated } };
    };
    const weeks = (firstDate: string, units: (number | null)[]) => ({ firstDate, units });
    const today = '2026-03-16';
    expect(aheadWarnings(of(weeks('2026-03-02', [4, 5, 6])), today, say)).toEqual([]);
    expect(aheadWarnings(of(weeks('2026-03-02', [4, 5, 6, null])), today, say)).toEqual([]);
    const late = weeks('2026-03-02', [4, 5, 6, 7]);
    const [one] = aheadWarnings(of(weeks('2026-03-02', [4]), late), today, say);
    expect(one).toContain('as typed: Store 1, from Mar 23, 2026. Check the first day.');
    const [many] = aheadWarnings(of(late, late, late, late, late), today, say);
    expect(many).toContain('Store 2, from Mar 23, 2026; and 2 more.');
  });

  test('a rate without a range of its own is said to be seen, unless a typed spread overrules the scans', () => {
    const row = { what: 'rateOfSale', needed: 6, shown: 5, low80: null, high80: null, from: null } as const;
    const having: HavingToBe = { rows: [{ ...row, isEnough: false, because: 'reaches' }], binding: null };
    const seen = (of: typeof plan) => mustRows(of, having, say)[0]?.seen;
    expect(seen(plan)).toBe('As seen, as planned where nothing was: 5.0');
    const spreads = { ...plan.promise.spreads, rateOfSaleRate: '0.2' };
    expect(seen({ ...plan, promise: { ...plan.promise, spreads } })).toBe('As planned: 5.0');
    expect(seen({ ...plan, promise: { ...plan.promise, scans: [] } })).toBe('As planned: 5.0');
  });
});
