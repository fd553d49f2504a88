/**
 * Scans edited one by one, as the Promise view does it: a store more, weeks typed, emptied and flagged, a week more and one
 * less; every step sound, each one step to undo; and the sentences that stand beside them.
 */
import { describe, expect, test } from 'vitest';
import {
  addScan,
  addScanWeek,
  dropScanWeek,
  removeScan,
  setWeekOn,
} from '../../src/app/commands/evidence.ts';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { plainLook } from '../../src/domain/money/look.ts';
import type { Plan, Scan } from '../../src/domain/plan/index.ts';
import { NO_EVIDENCE } from '../../src/domain/plan/plainly.ts';
import type { Outcome } from '../../src/domain/problems.ts';
import { evidenceFor } from '../../src/domain/promise/evidence.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { checkPlan } from '../../src/plan-format/gate.ts';
import {
  basisWords,
  halvingWords,
  liftWords,
  plannedWords,
  trendWords,
} from '../../src/screens/promise/evidence-words.ts';
import { anAccount, anItem, aPlan } from '../support/builders.ts';

const scan: Scan = {
  id: 'hill',
  itemId: 'tea',
  accountId: null,
  store: 'Hill Street',
  firstDate: '2025-10-06',
  opened: false,
  units: [5, 7],
  displayWeeks: [1],
  priceWeeks: [],
};

function sound(outcome: Outcome<Plan>): Scan[] {
  if (!outcome.ok || !checkPlan(outcome.value).ok) throw new Error(JSON.stringify(outcome));
  return outcome.value.promise.scans;
}

describe('scans by command', () => {
  const plan = aPlan({ promise: { ...NO_EVIDENCE, scans: [scan] } });
  const scanId = 'hill';

  test('a store more, and out again', () => {
    const two = addScan(plan, { scan: { ...scan, id: 'mill', store: 'Mill Lane' } });
    expect(sound(two).map(({ store }) => store)).toEqual(['Hill Street', 'Mill Lane']);
    expect(two.ok && sound(removeScan(two.value, { scanId: 'mill' }))).toEqual([scan]);
  });

  test('a week more is not seen yet; one less takes its flags with it', () => {
    expect(sound(addScanWeek(plan, { scanId }))[0]?.units).toEqual([5, 7, null]);
    expect(sound(dropScanWeek(plan, { scanId }))[0]).toMatchObject({ units: [5], displayWeeks: [] });
  });

  test.each([
    ['both', [0, 1], [0]],
    ['price', [1], [0]],
    ['plain', [1], []],
  ] as const)('the first week %s', (on, displayWeeks, priceWeeks) => {
    expect(sound(setWeekOn(plan, { scanId, week: 0, on }))[0]).toMatchObject({ displayWeeks, priceWeeks });
  });

  test('a second store of the same name is refused, and nothing lost', () => {
    const two = addScan(plan, { scan: { ...scan, id: 'again', store: 'hill street' } });
    const checked = two.ok ? checkPlan(two.value) : two;
    expect(checked.ok ? [] : checked.problems.map(({ path }) => path)).toEqual(['promise/scans/again/store']);
  });
});

describe('what stands beside them', () => {
  const look = plainLook({ currency: 'USD', minorDigits: 2 });
  const say = { ...plainSay({ minorDigits: 2, startDay: 0, dateOf: isoDateOf }), look };
  const stores = Array.from({ length: 6 }, (_, at) => ({
    ...scan,
    id: `store-${at}`,
    store: `Store ${at}`,
    opened: true,
    units: [9, 3, 2, null, 4, 3, 5, 4],
    displayWeeks: [6],
  }));
  const item = anItem();
  const plan = aPlan({
    items: [item],
    accounts: [anAccount()],
    promise: { ...NO_EVIDENCE, openingWeeks: 1, scans: stores },
  });
  const evidence = evidenceFor(plan, 'tea');
  if (evidence === null) throw new Error('no evidence');

  test('what counts, what is left out and what was not seen', () => {
    // Of 8 weeks each: 1 opening, 1 display, 1 not seen; 3 + 2 + 4 + 3 + 4 = 16 units in 5 weeks.
    expect(basisWords(evidence, say)).toBe(
      '6 stores, 30 weeks, 96 units. Left out: 6 opening weeks, 6 on display or at a lower price. 6 weeks were not seen.',
    );
  });

  test('a plan that counts on 6 where the stores say about 3.2', () => {
    expect(plannedWords(plan, item, evidence, say)[0]).toMatch(
      /^Corner is planned with 6, far above the 2\.\d to 3\.\d of the stores\.$/,
    );
  });

  test('several chains on the same side are one sentence, each with what it counts on', () => {
    const chain = (id: string, name: string, unitsPerStoreWeek: string) => {
      const account = anAccount();
      const listings = account.listings.map((listing) => ({ ...listing, unitsPerStoreWeek }));
      return { ...account, id, name, listings };
    };
    const accounts = [chain('one', 'One', '6'), chain('two', 'Two', '3.2'), chain('three', 'Three', '7.5')];
    expect(plannedWords({ ...plan, accounts }, item, evidence, say)).toEqual([
      expect.stringMatching(
        /^Planned far above the 2\.\d to 3\.\d of the stores: One \(6\), Three \(7\.5\)\.$/,
      ),
    ]);
  });

  test('halving, lifts and trend in sentences', () => {
    expect(halvingWords({ stores: 19, weeks: null }, say)).toBe(
      'Half the range takes some 19 more stores like these; more weeks in the same stores can’t do it, since stores differ.',
    );
    expect(halvingWords({ stores: 19, weeks: 16 }, say)).toBe(
      'Half the range takes some 19 more stores like these; or 16 more weeks in each.',
    );
    const range = { factor: 1.5, low80: 1.004, high80: 2, low95: 0.9, high95: 2.2 };
    expect(liftWords({ on: 'display', stores: 3, weeks: 1, ...range }, say)).toEqual({
      label: 'On display',
      value: '50 % more',
      note: 'no change to 100 % more in 8 of 10 (1 week of 3 stores)',
    });
    expect(trendWords({ ...range, factor: 0.9, low80: 0.8, high80: 1.1, stores: 3, weeks: 9 }, say)).toBe(
      'In 4 weeks 10 % less, 20 % less to 10 % more in 8 of 10.',
    );
  });
});
