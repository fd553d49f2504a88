/**
 * Rival offers drawn beside the shown plan: only while a view follows, after a pause, slice by slice so that nothing else waits
 * long; an edit makes the rest of an older plan unasked, what was found stands marked older, and trouble is a sentence. The
 * worker is made up: it is told when to answer. Worked figure: 200 draws in slices of 80 are three slices, then the bases.
 */
import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { makeOfferDraws } from '../../src/app/offer-draws.ts';
import { RANGE_DRAWS, RANGE_SEED } from '../../src/app/range.ts';
import type { Session } from '../../src/app/session.ts';
import type { Job } from '../../src/compute/protocol.ts';
import type { DrawnOffers } from '../../src/domain/offers/types.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { DRAWS_USUAL, SEED_USUAL } from '../../src/domain/promise/range/index.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

type Told = { ok: true; value: unknown } | { ok: false; trouble: string } | null;

function around(offers: unknown[] = [{}]) {
  const asked: { job: Job; tell: (answer: Told) => Promise<void> }[] = [];
  const planNo = (no: number, id = 'spring') => ({ id, no, offers }) as unknown as Plan;
  const plan = signal<Plan | null>(planNo(1));
  const revision = signal(1);
  const results = signal({ revision: 1 });
  const compute = (job: Job) => ({
    answer: new Promise((resolve) => {
      const tell = async (answer: Told): Promise<void> => {
        resolve(answer);
        await vi.advanceTimersByTimeAsync(0);
      };
      asked.push({ job, tell });
    }),
    cancel: () => undefined,
  });
  const session = { plan, results, revision, compute } as unknown as Session;
  const work = makeOfferDraws(session);
  const edit = (no: number, id?: string) => {
    revision.value = no;
    plan.value = planNo(no, id);
    results.value = { revision: no };
  };
  return { asked, work, edit, plan, revision, view: () => work.view.value };
}

/** So many draws from one on; each sells its number, and one offer keeps as much. */
function draws(from: number, count: number): Told {
  const value = Array.from({ length: count }, (_, at): DrawnOffers => {
    const amount = from + at;
    return {
      draw: amount,
      found: { netSales: amount, lowestCash: 0, founder: [{ offerId: 'a', amount, lowestCash: 0 }] },
    };
  });
  return { ok: true, value };
}

const pause = () => vi.advanceTimersByTimeAsync(400);

test('draws and seed are those of the range on the page', () => {
  expect([DRAWS_USUAL, SEED_USUAL]).toEqual([RANGE_DRAWS, RANGE_SEED]);
});

test('nothing is drawn before a view follows, nor of a plan without offers', async () => {
  const idle = around();
  const empty = around([]);
  empty.work.follow();
  await pause();
  expect([...idle.asked, ...empty.asked]).toEqual([]);
});

test('slice by slice, one at a time, then the bases of P10, P50 and P90', async () => {
  const { asked, work, view } = around();
  work.follow();
  await pause();
  expect(asked.map(({ job }) => job)).toMatchObject([{ kind: 'offerDraws', from: 0 }]);
  expect(view()).toMatchObject({ found: null, running: 0 });
  await asked[0]?.tell(draws(0, 80));
  expect(view().running).toBe(80);
  await asked[1]?.tell(draws(80, 80));
  await asked[2]?.tell(draws(160, 40));
  expect(asked.map(({ job }) => job).slice(1)).toMatchObject([
    { kind: 'offerDraws', from: 80 },
    { kind: 'offerDraws', from: 160 },
    { kind: 'offerBases', draws: [19, 99, 179] },
  ]);
  await asked[3]?.tell({ ok: true, value: ['low', null, 'high'] });
  expect(view()).toMatchObject({
    running: null,
    older: false,
    trouble: '',
    found: {
      futures: { draws: 200, offers: [{ wins: 200 }] },
      bases: [
        { name: 'p10', basis: 'low' },
        { name: 'p90', basis: 'high' },
      ],
    },
  });
});

async function whole(): Promise<ReturnType<typeof around>> {
  const made = around();
  made.work.follow();
  await pause();
  await made.asked[0]?.tell(draws(0, 200));
  await made.asked[1]?.tell({ ok: true, value: [] });
  return made;
}

test('five edits within a second are drawn once, the last; what was found stands, marked older', async () => {
  const { asked, edit, view } = await whole();
  for (const no of [2, 3, 4, 5, 6]) {
    edit(no);
    await vi.advanceTimersByTimeAsync(150);
  }
  expect(asked).toHaveLength(2);
  expect(view()).toMatchObject({ older: true, running: null, found: { futures: { draws: 200 } } });
  await pause();
  expect(asked).toHaveLength(3);
  expect(asked[2]?.job).toMatchObject({ plan: { no: 6 } });
});

test('an edit under way leaves the rest of the older plan unasked, and its answer untold', async () => {
  const { asked, edit, work, view } = around();
  work.follow();
  await pause();
  edit(2);
  await asked[0]?.tell(draws(0, 80));
  expect(asked).toHaveLength(1);
  expect(view()).toMatchObject({ found: null, running: null });
  await pause();
  expect(asked[1]?.job).toMatchObject({ plan: { no: 2 }, from: 0 });
});

test('back to what was drawn before the newer is: nothing is asked, nothing is older', async () => {
  const { asked, edit, plan, revision, view } = await whole();
  const drawn = plan.value;
  edit(2);
  await pause();
  expect(asked).toHaveLength(3);
  revision.value = 3;
  plan.value = drawn;
  await asked[2]?.tell(draws(0, 200));
  await pause();
  expect(asked).toHaveLength(3);
  expect(view()).toMatchObject({ older: false, running: null });
});

test('a plan that can’t be computed is not drawn; when the view is left, the rest is not asked', async () => {
  const { asked, edit, work, revision, view } = around();
  const leave = work.follow();
  revision.value = 2;
  await pause();
  expect(asked).toEqual([]);
  edit(3);
  await pause();
  leave();
  await asked[0]?.tell(draws(0, 80));
  expect(asked).toHaveLength(1);
  expect(view().running).toBeNull();
});

test('trouble is a sentence, until the plan is another', async () => {
  const { asked, edit, work, view } = around();
  work.follow();
  await pause();
  await asked[0]?.tell({ ok: false, trouble: 'The worker stopped: no memory.' });
  expect(view()).toMatchObject({ found: null, running: null, trouble: 'The worker stopped: no memory.' });
  edit(2);
  expect(view().trouble).toBe('');
  edit(3, 'autumn');
  expect(view()).toMatchObject({ found: null, older: false });
});
