/**
 * The range beside the shown plan: asked for once, it follows every new result; what belongs to an earlier one is marked
 * older, and nothing comes after a stop. The pool is made up: it is told when to answer.
 */
import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { makeRangeWork, RANGE_DRAWS } from '../../src/app/range.ts';
import type { RangePool, RangeQuestion, RangeSoFar } from '../../src/compute/range-pool.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import type { ExactCheck, Range } from '../../src/domain/promise/range/index.ts';
import type { Results } from '../../src/domain/results.ts';

type Tell = (found: RangeSoFar | { trouble: string }) => void;

function around() {
  const asked: { question: RangeQuestion; tell: Tell }[] = [];
  const warmed: RangeQuestion[] = [];
  let stopped = 0;
  const pool: RangePool = {
    warmUp: (question) => warmed.push(question),
    ask: (question, tell) => asked.push({ question, tell }),
    stop: () => {
      stopped += 1;
    },
  };
  const resultsNo = (no: number) => ({ no }) as unknown as Results;
  const plan = signal<Plan | null>({ id: 'spring', no: 1 } as unknown as Plan);
  const results = signal<{ results: Results; revision: number } | null>({
    results: resultsNo(1),
    revision: 1,
  });
  const revision = signal(1);
  const work = makeRangeWork({ plan, results, revision }, () => pool);
  const edit = (no: number) => {
    plan.value = { id: 'spring', no } as unknown as Plan;
    revision.value = no;
    results.value = { results: resultsNo(no), revision: no };
  };
  return { asked, warmed, work, plan, edit, stops: () => stopped, view: () => work.view.value };
}

const rangeOf = (draws: number) => ({ draws }) as Range;
const check = { draws: 40 } as ExactCheck;
const soFar = (done: number, draws: number | null, exactCheck: ExactCheck | null = null): RangeSoFar => ({
  done,
  range: draws === null ? null : rangeOf(draws),
  exactCheck,
});

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

test('nothing is computed before it is asked for', () => {
  const { asked, edit, view } = around();
  edit(2);
  expect(asked).toEqual([]);
  expect(view().at).toBe('idle');
});

test('where it can be asked for, workers start in a while, unless the view is left before', () => {
  const { asked, warmed, work } = around();
  work.expect()();
  vi.advanceTimersByTime(10_000);
  expect(warmed).toEqual([]);
  work.expect();
  vi.advanceTimersByTime(10_000);
  expect(warmed).toMatchObject([{ plan: { id: 'spring' }, draws: RANGE_DRAWS, seed: 1 }]);
  expect(asked).toEqual([]);
});

test('it grows from the first draws to all of them, and is whole when it was checked', () => {
  const { asked, work, view } = around();
  work.ask();
  expect(asked).toHaveLength(1);
  expect(asked[0]?.question).toMatchObject({ draws: RANGE_DRAWS, seed: 1 });
  expect(view()).toMatchObject({ at: 'running', range: null, progress: 0 });
  asked[0]?.tell(soFar(500, 500));
  expect(view()).toMatchObject({ at: 'running', range: { draws: 500 }, progress: 0.05, older: false });
  asked[0]?.tell(soFar(RANGE_DRAWS, RANGE_DRAWS));
  expect(view().at).toBe('running');
  asked[0]?.tell(soFar(RANGE_DRAWS, RANGE_DRAWS, check));
  expect(view()).toMatchObject({ at: 'whole', range: { draws: RANGE_DRAWS }, exactCheck: { draws: 40 } });
});

test('an edit asks again; until the new one is read, the old range stands and is marked older', () => {
  const { asked, work, edit, view } = around();
  work.ask();
  asked[0]?.tell(soFar(RANGE_DRAWS, RANGE_DRAWS, check));
  edit(2);
  edit(3);
  // The page shows what was typed first; of two edits at once the last is asked for.
  expect(asked).toHaveLength(1);
  vi.advanceTimersByTime(1000);
  expect(asked).toHaveLength(2);
  expect(asked[1]?.question.plan).toMatchObject({ no: 3 });
  expect(view()).toMatchObject({ at: 'running', older: true, range: { draws: RANGE_DRAWS } });
  asked[1]?.tell(soFar(500, null));
  expect(view()).toMatchObject({ at: 'running', older: true, progress: 0.05 });
  asked[1]?.tell(soFar(500, 500));
  expect(view()).toMatchObject({ at: 'running', older: false, range: { draws: 500 } });
});

test('an edit that leaves the results as they are asks nothing', () => {
  const { asked, work, plan } = around();
  work.ask();
  plan.value = { id: 'spring', no: 1, note: 'said' } as unknown as Plan;
  expect(asked).toHaveLength(1);
});

test('after a stop edits ask nothing, and what is known stays', () => {
  const { asked, work, edit, view, stops } = around();
  work.ask();
  asked[0]?.tell(soFar(2500, 2500));
  work.stop();
  expect(stops()).toBeGreaterThan(0);
  expect(view()).toMatchObject({ at: 'idle', range: { draws: 2500 }, older: false });
  edit(2);
  vi.advanceTimersByTime(1000);
  expect(asked).toHaveLength(1);
  expect(view()).toMatchObject({ older: true });
});

test('a stop just after an edit asks nothing either', () => {
  const { asked, work, edit } = around();
  work.ask();
  edit(2);
  work.stop();
  vi.advanceTimersByTime(1000);
  expect(asked).toHaveLength(1);
});

test('trouble is a sentence, until the plan is another', () => {
  const { asked, work, edit, view } = around();
  work.ask();
  asked[0]?.tell({ trouble: 'The worker stopped: no memory.' });
  expect(view()).toMatchObject({ at: 'trouble', trouble: 'The worker stopped: no memory.', range: null });
  edit(2);
  expect(view().at).toBe('idle');
});

test('another plan ends the work', () => {
  const { asked, work, plan, view, stops } = around();
  work.ask();
  asked[0]?.tell(soFar(500, 500));
  plan.value = { id: 'autumn' } as unknown as Plan;
  expect(stops()).toBeGreaterThan(0);
  expect(view()).toMatchObject({ at: 'idle', range: null });
});
