/**
 * What a meeting does to a plan: the draft, the terms in play, the log, limits and order change no result and are undone
 * one by one; taking an offer over is the one command that does. And what follows a step: each answer names its draft.
 */
import * as fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import {
  bringIntoPlay,
  draftOf,
  IN_PLAY_MOST,
  inPlayOf,
  moveInOrder,
  orderOf,
  setAims,
  setDraft,
  setLimit,
  setTerm,
  stamp,
  tableOf,
  takeIntoPlan,
  takeOutOfPlay,
} from '../../src/app/commands/talks.ts';
import { makeTalksWork } from '../../src/app/talks-work.ts';
import type { Computer } from '../../src/compute/computer.ts';
import { jobAnswer } from '../../src/compute/jobs.ts';
import type { Job } from '../../src/compute/protocol.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Account, Plan } from '../../src/domain/plan/index.ts';
import { type Outcome, sentence } from '../../src/domain/problems.ts';
import { figuresFor, termsOf, withTerms } from '../../src/domain/talks/index.ts';
import { checkPlan } from '../../src/plan-format/gate.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { movesBetween } from '../../src/screens/talks/moves.ts';
import { freshDatabase } from '../storage/store.ts';
import { anAccount, aPlan } from '../support/builders.ts';
import { around, doorsOf, settled, withPlan } from './harness.ts';

const at = { accountId: 'corner' };
const plan = aPlan({
  accounts: [anAccount({ slotting: { amount: '250', per: 'door', settled: 'atOpening' } })],
});

/** The plan a command makes, which has to be sound too. */
function sound(outcome: Outcome<Plan>): Plan {
  const checked = outcome.ok ? checkPlan(outcome.value) : outcome;
  if (!checked.ok) throw new Error(checked.problems.map(sentence).join(' '));
  return checked.value;
}

function account(of: Plan): Account {
  const found = of.accounts.find(({ id }) => id === 'corner');
  if (!found) throw new Error('no account');
  return found;
}

describe('the draft', () => {
  test('holds what differs from the plan, and brings its term onto the screen', () => {
    const asked = sound(setTerm(plan, { ...at, term: 'margin', value: 0.42 }));
    expect(tableOf(account(asked)).draft).toEqual([{ term: 'margin', value: '0.42' }]);
    const shelf = sound(setTerm(asked, { ...at, term: 'spoils', value: 0.01 }));
    expect(draftOf(shelf, 'corner')).toEqual({ margin: 0.42, spoils: 0.01 });
    expect(inPlayOf(shelf, account(shelf))).toContain('spoils');
    const back = sound(setTerm(shelf, { ...at, term: 'margin', value: 0.4 }));
    expect(draftOf(back, 'corner')).toEqual({ spoils: 0.01 });
  });

  test('refuses a value the term can’t have, in words, and changes nothing', () => {
    const outcome = setTerm(plan, { ...at, term: 'paymentDays', value: 30.5 });
    expect(!outcome.ok && outcome.problems[0]?.expected).toContain('a whole number of days');
    expect(account(plan).table).toBeNull();
  });

  test('changes no result of the plan', () => {
    const asked = sound(setTerm(plan, { ...at, term: 'slotting', value: 900 }));
    const [before, after] = [plan, asked].map((each) => evaluate(each, sayFor));
    if (!before?.ok || !after?.ok) throw new Error('no results');
    expect(JSON.stringify(after.value.deals)).toBe(JSON.stringify(before.value.deals));
    expect(after.value.reading).toEqual(before.value.reading);
  });
});

describe('terms in play', () => {
  test('are five at most; one as the plan has it makes room, a drafted one stays', () => {
    const names = termsOf(plan, 'corner').map(({ name }) => name);
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...names), { maxLength: 12 }), (terms) => {
        let now = sound(setTerm(plan, { ...at, term: 'margin', value: 0.43 }));
        for (const term of terms) {
          now = sound(bringIntoPlay(now, { ...at, term }));
          const inPlay = inPlayOf(now, account(now));
          expect(inPlay).toContain(term);
          expect(inPlay).toContain('margin');
          expect(inPlay.length).toBeLessThanOrEqual(IN_PLAY_MOST);
          expect(new Set(inPlay).size).toBe(inPlay.length);
        }
      }),
    );
  });

  test('the last one stays on the screen', () => {
    let now = plan;
    for (const term of termsOf(plan, 'corner')) {
      const taken = takeOutOfPlay(now, { ...at, term: term.name });
      if (taken.ok) now = taken.value;
    }
    expect(inPlayOf(now, account(now)).length).toBeGreaterThan(0);
  });
});

describe('before the meeting', () => {
  test('aims, limits and order are kept', () => {
    const aims = { objective: { by: 'payback' as const }, targetAmount: '30', walkAwayAmount: '45' };
    let now = sound(setAims(plan, { ...at, aims }));
    now = sound(setLimit(now, { ...at, term: 'slotting', value: 300 }));
    now = sound(moveInOrder(now, { ...at, term: 'slotting', by: -1 }));
    expect(tableOf(account(now))).toMatchObject({ ...aims, limits: [{ term: 'slotting', value: '300' }] });
    const before = orderOf(plan, account(plan));
    const place = before.indexOf('slotting');
    expect(orderOf(now, account(now)).indexOf('slotting')).toBe(place - 1);
    expect([...orderOf(now, account(now))].sort()).toEqual([...before].sort());
    now = sound(setLimit(now, { ...at, term: 'slotting', value: null }));
    expect(tableOf(account(now)).limits).toEqual([]);
  });

  test('a limit the term can’t have is refused', () => {
    const outcome = setLimit(plan, { ...at, term: 'slotting', value: -1 });
    expect(!outcome.ok && outcome.problems[0]?.code).toBe('field-invalid');
  });
});

describe('what was said', () => {
  const asked = sound(setDraft(plan, { ...at, terms: { margin: 0.44, slotting: 400 } }));
  const said = sound(stamp(asked, { ...at, said: 'ask', id: 'o1', atSeconds: 1_000 }));
  const offered = sound(setDraft(said, { ...at, terms: { margin: 0.41, slotting: 150 } }));
  const agreed = sound(stamp(offered, { ...at, said: 'agreed', id: 'o2', atSeconds: 1_060 }));

  test('keeps the whole draft with speaker and time', () => {
    expect(tableOf(account(agreed)).log).toEqual([
      {
        id: 'o1',
        said: 'ask',
        atSeconds: 1_000,
        terms: [
          { term: 'margin', value: '0.44' },
          { term: 'slotting', value: '400' },
        ],
      },
      {
        id: 'o2',
        said: 'agreed',
        atSeconds: 1_060,
        terms: [
          { term: 'margin', value: '0.41' },
          { term: 'slotting', value: '150' },
        ],
      },
    ]);
  });

  test('taken into the plan, it is the account’s own, and the table is clear', () => {
    const taken = sound(takeIntoPlan(agreed, { ...at, terms: { margin: 0.41, slotting: 150 } }));
    expect(draftOf(taken, 'corner')).toEqual({});
    expect(account(taken).slotting?.amount).toBe('150');
    const values = new Map(termsOf(taken, 'corner').map(({ name, value }) => [name, value]));
    expect(values.get('margin')).toBeCloseTo(0.41, 9);
    expect(tableOf(account(taken)).log.map(({ id }) => id)).toEqual(['o1', 'o2']);
  });

  test('moves add up to what the model says of both offers', () => {
    const money = (terms: Record<string, number>): number => {
      const offer = withTerms(plan, 'corner', terms);
      const figures = offer.ok
        ? figuresFor({ ...at, plan: offer.value, objective: { by: 'firstYear' }, reviewWeeks: 26 })
        : offer;
      if (!figures.ok) throw new Error('no figures');
      return figures.value.firstYear;
    };
    const value = fc.record({
      margin: fc.integer({ min: 300, max: 450 }).map((points) => points / 1000),
      slotting: fc.integer({ min: 0, max: 400 }),
      paymentDays: fc.integer({ min: 0, max: 90 }),
    });
    fc.assert(
      fc.property(value, value, (from, to) => {
        const { moves, total } = movesBetween({ ...at, plan, objective: { by: 'firstYear' }, from, to });
        expect(total).toBeCloseTo(money(to) - money(from), 4);
        expect(moves.reduce((sum, { worth }) => sum + (worth ?? Number.NaN), 0)).toBeCloseTo(total ?? 0, 4);
      }),
      { numRuns: 30 },
    );
  });
});

describe('in a session', () => {
  beforeEach(() => freshDatabase());

  test('steps at the table compute nothing of the plan again, one hold is one undo, and all of it is saved', async () => {
    const own = around();
    const session = await withPlan(own);
    const id = session.plan.value?.accounts[0]?.id ?? '';
    const shown = session.results.value?.results;
    const evaluated = own.evaluated;
    const asked = own.asked.length;
    const step = (value: number): boolean =>
      session.run(setTerm, { accountId: id, term: 'paymentDays', value }, 'talks/paymentDays');
    for (const value of [35, 40, 45]) expect(step(value)).toBe(true);
    session.endStep();
    session.run(stamp, { accountId: id, said: 'ask', id: 'o1', atSeconds: 5 }, 'talks/log');
    session.endStep();
    expect(session.results.value?.results).toBe(shown);
    expect(session.stale.value).toBe(false);
    expect([own.evaluated, own.asked.length]).toEqual([evaluated, asked]);
    await settled(session);
    expect(session.saving.value).toBe('saved');
    session.undo();
    expect(session.plan.value?.accounts[0]?.table).toMatchObject({ log: [], draft: [{ value: '45' }] });
    session.undo();
    expect(session.plan.value?.accounts[0]?.table).toBeNull();
    session.redo();
    const doors = session.plan.value?.accounts
      .flatMap(({ waves }) => waves)
      .reduce((sum, w) => sum + w.doors, 0);
    expect(doorsOf(session)).toBe(doors);
  });

  test('an edit of a term of the plan is computed as ever', async () => {
    const own = around();
    const session = await withPlan(own);
    const evaluated = own.evaluated;
    session.typeInto('accounts/corner/terms/latenessDays', '7', 'whole');
    expect(own.evaluated).toBe(evaluated + 1);
  });
});

describe('what follows a step', () => {
  test('answers name the draft they are for; while one is under way only the newest waits', async () => {
    const asked: { job: Job; answer: () => void }[] = [];
    const computer = (): Computer => ({
      run: (job) => {
        let answer = (): void => undefined;
        const later = new Promise((resolve) => {
          answer = () => {
            const outcome = jobAnswer(job);
            resolve(outcome.ok ? { ok: true, value: outcome.value } : { ok: false, trouble: 'no' });
          };
        });
        asked.push({ job, answer });
        return { answer: later as never, cancel: () => undefined };
      },
      stop: () => undefined,
    });
    const work = makeTalksWork(computer);
    const question = (key: string, days: number) => {
      const drafted = withTerms(plan, 'corner', { paymentDays: days });
      if (!drafted.ok) throw new Error('no draft');
      return { key, plan: drafted.value, counters: null };
    };
    for (const [index, days] of [35, 40, 45, 50].entries()) work.ask(question(`${index}`, days));
    expect(asked).toHaveLength(1);
    asked[0]?.answer();
    await new Promise((done) => setTimeout(done));
    expect(work.cash.value?.key).toBe('0');
    asked[1]?.answer();
    await new Promise((done) => setTimeout(done));
    expect(work.cash.value?.key).toBe('3');
    expect(asked).toHaveLength(2);
    const whole = evaluate(question('3', 50).plan, sayFor);
    expect(whole.ok && whole.value.reading.cashNeed).toBe(work.cash.value?.value?.amount);
  });
});
