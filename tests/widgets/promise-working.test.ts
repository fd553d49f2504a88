// @vitest-environment happy-dom
/**
 * Where the figures of Promise come from: what is said to have gone into each row of what would have to be true comes to the
 * row, done here once more by hand; each line leads on to a figure that the plan has; and of the range, the same figure
 * stands in its sheet as on the page.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { explain } from '../../src/domain/explain/index.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { claimWork } from '../../src/domain/promise/claim-work.ts';
import type { HasToBe, HaveToBe } from '../../src/domain/promise/have-to-be-true.ts';
import { rangeOf } from '../../src/domain/promise/range/index.ts';
import type { Results } from '../../src/domain/results.ts';
import { mustRows } from '../../src/screens/promise/must-words.ts';
import { mustWorked } from '../../src/screens/promise/must-working.ts';
import { placedOf } from '../../src/screens/promise/placed.ts';
import { rangeWorked } from '../../src/screens/promise/range-sheet.tsx';
import { needRows } from '../../src/screens/promise/range-words.ts';
import { screenSay } from '../../src/screens/shared/screen-say.ts';
import { demos, resultsOf } from '../support/app-driver.ts';

const say = screenSay({ currency: 'USD', startDay: 0 });
let plan: Plan;
let results: Results;

beforeAll(async () => {
  const found = (await demos()).find((each) => each.plan.id === 'demo-pays-but-runs-dry');
  if (!found) throw new Error('The example is gone.');
  ({ plan, results } = found);
});

function rowsOf(of: Plan): Map<HasToBe, HaveToBe> {
  const { having } = claimWork(of, resultsOf(of));
  return new Map((having?.rows ?? []).map((row) => [row.what, row]));
}

function fromOf(row: HaveToBe | undefined): { row: HaveToBe; from: NonNullable<HaveToBe['from']> } {
  if (!row?.from) throw new Error('The row says nothing of where it comes from.');
  return { row, from: row.from };
}

describe('what would have to be true', () => {
  test('170 doors by week 17, the first in week 10: 170 ÷ 8 a week', () => {
    const { row, from } = fromOf(rowsOf(plan).get('doorsAWeek'));
    expect(from).toMatchObject({ by: 'pace', doors: 170, running: 0, weeks: 8, firstWeek: 10 });
    expect(row.needed).toBeCloseTo(170 / 8, 9);
    const said = mustWorked({ plan, results, say }, row);
    expect(said?.formula).toContain('(170 − 0) ÷ 8 weeks = 21.3');
    expect(said?.value).toBe('21.3');
  });

  test('cash to open with less the lowest of the run is the cash that is needed', () => {
    const { row, from } = fromOf(rowsOf(plan).get('cash'));
    if (from.by !== 'hole') throw new Error(from.by);
    expect(from.opening).toBe(6_000_000);
    expect(row.needed).toBe(from.opening - from.lowest);
    expect(mustWorked({ plan, results, say }, row)?.formula).toContain(
      `60,000 − (${say.money(from.lowest)}) = `,
    );
  });

  test('a lid times its share, rounded up, is the capacity', () => {
    const { row, from } = fromOf(rowsOf(plan).get('capacity'));
    if (from.by !== 'lid') throw new Error(from.by);
    expect(row.needed).toBe(Math.ceil((from.times ?? 0) * (row.shown ?? 0)));
  });

  test('rates that pay back, weighed by doors, are the rate; of units, the rate is the evidence’s so many times', () => {
    const { row, from } = fromOf(rowsOf(plan).get('rateOfSale'));
    if (from.by !== 'breakEven') throw new Error(from.by);
    const doors = from.accounts.reduce((sum, each) => sum + each.doors, 0);
    const weighed = from.accounts.reduce((sum, each) => sum + (each.rate ?? 0) * each.doors, 0);
    expect(row.needed).toBeCloseTo(weighed / doors, 9);

    const claim = { of: 'units', amount: '40000', byDate: '2027-06-28', who: '' } as const;
    const units = fromOf(rowsOf({ ...plan, promise: { ...plan.promise, claim } }).get('rateOfSale'));
    if (units.from.by !== 'rate') throw new Error(units.from.by);
    expect(units.row.needed).toBeCloseTo((units.from.times ?? 0) * (units.row.shown ?? 0), 9);
  });

  test('where no number of doors does it, doors bind, and what hangs on them is not said to be tried', () => {
    const claim = { of: 'doors', amount: '99999999', byDate: '2026-06-29', who: '' } as const;
    const far = { ...plan, promise: { ...plan.promise, claim } };
    const { having } = claimWork(far, resultsOf(far));
    if (!having) throw new Error('nothing worked out');
    expect(having.binding).toBe('doorsAWeek');
    const said = mustRows(far, having, say).map(({ id, needed, state }) => [id, needed, state]);
    expect(said).toEqual([
      ['rateOfSale', 'not tried', ''],
      ['doorsAWeek', 'nothing tried is enough', 'not enough'],
      ['capacity', 'not tried', ''],
      ['cash', 'not tried', ''],
    ]);
  });

  test.each([
    ['99999999', 'No future that the evidence supports reaches the claim.'],
    ['0', 'Every future that the evidence supports reaches the claim.'],
    ['170', 'The claim lies above 55\u00a0% of futures.'],
  ])('a claim of %s doors, placed in words', (amount, sentence) => {
    const claim = { of: 'doors', amount, byDate: '2026-06-29', who: '' } as const;
    const placed = placedOf({ ...plan, promise: { ...plan.promise, claim } }, results, say);
    expect(placed.why === null && placed.sentences[0]).toBe(sentence);
  });

  test('every line that leads on leads to a figure of the plan', () => {
    const keys = [...rowsOf(plan).values()]
      .flatMap((row) => mustWorked({ plan, results, say }, row)?.lines ?? [])
      .flatMap(({ explains }) => (explains === null ? [] : [explains]));
    expect(keys.length).toBeGreaterThan(1);
    for (const key of keys) expect(explain({ plan, results, key, say }), JSON.stringify(key)).not.toBeNull();
  });
});

test('of the range the sheet says the figure of the page, out of how many draws, and what is judgement', () => {
  const range = rangeOf({ plan, results, seed: 1 }, 200);
  for (const { id, text } of needRows(range, say)) {
    const said = rangeWorked({ plan, results, range }, id, say);
    expect(said?.value).toBe(text);
    expect(said?.formula).toContain('of 200 draws');
  }
  const { lines } = rangeWorked({ plan, results, range }, 'cashOut', say) ?? { lines: [] };
  const goods = lines.find(({ path }) => path === 'promise/spreads/goodsRate');
  expect(goods).toMatchObject({ value: '5\u00a0%', basis: { kind: 'guess' } });
  const spreads = { ...plan.promise.spreads, goodsRate: '0.2' };
  const typed = { ...plan, promise: { ...plan.promise, spreads } };
  const own = rangeWorked({ plan: typed, results, range }, 'cashOut', say)?.lines;
  expect(own?.find(({ path }) => path === 'promise/spreads/goodsRate')).toMatchObject({
    value: '20\u00a0%',
    basis: null,
  });
  expect(rangeWorked({ plan, results, range }, 'p81', say)).toBeNull();
});
