/**
 * Editing: a typed value is a new plan, new results and a save before the call returns; one that is refused changes
 * nothing, keeps its text and says why; everything can be undone.
 */
import { beforeEach, describe, expect, test } from 'vitest';
import { addWave } from '../../src/app/commands/accounts.ts';
import { renamePlan } from '../../src/app/commands/plans.ts';
import type { Session } from '../../src/app/session.ts';
import { STEPS_MOST } from '../../src/app/undo.ts';
import { getAt } from '../../src/domain/plan/path.ts';
import { sentence } from '../../src/domain/problems.ts';
import { freshDatabase } from '../storage/store.ts';
import { type Around, around, BROKEN, doorsOf, settled, UNCOMPUTABLE, withPlan } from './harness.ts';

const DOORS = 'accounts/corner/waves/first/doors';
const MARGIN = 'accounts/corner/hands/shop/rule/rate';
const OPENING = 'accounts/corner/waves/first/openWeek';
const TRANSIT = 'accounts/corner/terms/transitWeeks';
const LATE = 'accounts/corner/terms/latenessDays';

let own: Around;
let session: Session;

beforeEach(async () => {
  freshDatabase();
  own = around();
  session = await withPlan(own);
});

function at(path: string): unknown {
  return getAt(session.plan.value, path);
}

function saidAt(path: string): string[] {
  return (session.problems.value.get(path) ?? []).map(sentence);
}

describe('an accepted edit', () => {
  test('shows its result before the call returns, and is saved', async () => {
    expect(doorsOf(session)).toBe(60);
    expect(session.typeInto(DOORS, '350', 'whole')).toBe(true);
    expect(at(DOORS)).toBe(350);
    expect(doorsOf(session)).toBe(350);
    expect(session.revision.value).toBe(2);
    expect(session.results.value?.revision).toBe(2);
    expect(session.saving.value).toBe('saving');
    await settled(session);
    expect(session.saving.value).toBe('saved');
    expect(session.plans.value[0]).toMatchObject({ id: 'small', revision: 2 });
  });

  test.each([
    ['business/openingCashAmount', '36k', 'amount', '36000'],
    ['business/openingCashAmount', '$1,200.50', 'amount', '1200.50'],
    ['accounts/corner/listings/tea/shelf/amount', '3,40', 'amount', '3.40'],
    [MARGIN, '33 %', 'percent', '0.33'],
    [MARGIN, '33', 'percent', '0.33'],
    ['accounts/corner/listings/tea/unitsPerStoreWeek', '4.5', 'rateOfSale', '4.5'],
    [TRANSIT, '2', 'whole', 2],
    ['name', '  Spring tea ', 'text', 'Spring tea'],
    ['startDate', '2026-05-04', 'date', '2026-05-04'],
    ['business/openingCashAmount', '', 'amount', null],
  ] as const)('%s typed as %j (%s) is kept as %j', (path, text, kind, kept) => {
    expect(session.typeInto(path, text, kind)).toBe(true);
    expect(at(path)).toBe(kept);
  });

  test('that changes nothing is no edit: no revision, no undo, no save', () => {
    const { value } = session.plan;
    expect(session.typeInto(DOORS, '60', 'whole')).toBe(true);
    expect(session.plan.value).toBe(value);
    expect(session.revision.value).toBe(1);
    expect(session.canUndo.value).toBe(false);
  });

  test('drops the basis note of its field: it is typed now', () => {
    expect(session.plan.value?.basis.map(({ path }) => path)).toContain(LATE);
    session.typeInto(LATE, '10', 'whole');
    expect(session.plan.value?.basis.map(({ path }) => path)).toEqual(['items/tea/caseUnits']);
    session.undo();
    expect(session.plan.value?.basis.map(({ path }) => path)).toContain(LATE);
  });

  test('shares with the plan before what it did not change, and can not be changed in place', () => {
    const before = session.plan.value;
    session.typeInto(DOORS, '61', 'whole');
    expect(session.plan.value?.items).toBe(before?.items);
    expect(session.plan.value?.accounts).not.toBe(before?.accounts);
    expect(() => Object.assign(session.plan.value?.accounts[0]?.waves[0] ?? {}, { doors: 1 })).toThrow(
      TypeError,
    );
  });

  test('asks for lasting storage once', async () => {
    expect(own.persistAsked).toBe(1);
    session.typeInto(DOORS, '61', 'whole');
    await settled(session);
    expect(own.persistAsked).toBe(1);
  });
});

describe('a refused edit', () => {
  test('keeps its text, says why, and leaves plan and results, marked', () => {
    expect(session.typeInto(MARGIN, '120', 'percent')).toBe(false);
    expect(session.typed.value.get(MARGIN)).toBe('120');
    expect(saidAt(MARGIN)).toEqual([
      `${MARGIN}: got "1.2"; expected a share from 0 to below 1 (below 100 %) with at most 6 decimals; 42 % is "0.42".`,
    ]);
    expect(at(MARGIN)).toBe('0.42');
    expect(doorsOf(session)).toBe(60);
    expect(session.stale.value).toBe(true);
    expect(session.revision.value).toBe(1);
  });

  test.each([
    [DOORS, '0', 'whole', 'got 0; expected a whole number of doors from 1 to 100000.'],
    [DOORS, 'many', 'whole', 'got "many"; expected a whole number, like 60 or 1200.'],
    [DOORS, '', 'whole', 'got nothing; expected a whole number, like 60 or 1200.'],
    ['name', '', 'text', 'got ""; expected a name of 1 to 120 characters, not only blanks.'],
    [
      'business/openingCashAmount',
      'lots',
      'amount',
      'got "lots"; expected an amount, like 3.40, 36000 or 36k.',
    ],
    [
      'startDate',
      '2026-02-30',
      'date',
      'got "2026-02-30"; expected a date that exists, written YYYY-MM-DD, from 1990 to 2199, like "2026-03-02".',
    ],
  ] as const)('%s typed as %j says what was expected', (path, text, kind, says) => {
    expect(session.typeInto(path, text, kind)).toBe(false);
    expect(session.typed.value.get(path)).toBe(text);
    expect(saidAt(path)).toEqual([`${path}: ${says}`]);
  });

  test('that breaks a rule elsewhere is explained where it was typed', () => {
    expect(session.typeInto(TRANSIT, '20', 'whole')).toBe(false);
    expect(session.typed.value.get(TRANSIT)).toBe('20');
    expect(saidAt(TRANSIT)).toEqual([
      `${OPENING}: got week 12, and a delivery takes 20 weeks; expected a week from 20 to 51.`,
    ]);
  });

  test('is over when the field gets a good value, or is forgotten', () => {
    session.typeInto(DOORS, '0', 'whole');
    session.typeInto(DOORS, '05', 'whole');
    expect(at(DOORS)).toBe(5);
    expect(session.stale.value).toBe(false);
    session.typeInto(DOORS, '', 'whole');
    session.forget(DOORS);
    expect(session.typed.value.size).toBe(0);
    expect(session.problems.value.size).toBe(0);
    expect(at(DOORS)).toBe(5);
  });

  test('is tried again after another edit made room for it, as one step of undo', () => {
    expect(session.typeInto(OPENING, '0', 'whole')).toBe(false);
    expect(session.typeInto(TRANSIT, '0', 'whole')).toBe(true);
    expect(at(OPENING)).toBe(0);
    expect(session.typed.value.size).toBe(0);
    session.undo();
    expect([at(OPENING), at(TRANSIT)]).toEqual([12, 1]);
  });

  test('without text (a switch, a command) says why, and is gone with the next accepted edit', () => {
    const wave = { id: 'early', openWeek: 0, doors: 5, doorsPerWeek: 5 };
    expect(session.run(addWave, { accountId: 'corner', wave }, 'accounts/corner/waves')).toBe(false);
    expect(saidAt('accounts/corner/waves')[0]).toContain('got week 0, and a delivery takes 1 week');
    expect(session.typed.value.size).toBe(0);
    expect(session.stale.value).toBe(false);
    session.typeInto(DOORS, '61', 'whole');
    expect(session.problems.value.size).toBe(0);
  });

  test('of a field that was then removed goes with it', () => {
    session.run(
      addWave,
      { accountId: 'corner', wave: { id: 'b', openWeek: 20, doors: 5, doorsPerWeek: 5 } },
      'accounts/corner/waves',
    );
    session.typeInto('accounts/corner/waves/b/doors', 'x', 'whole');
    session.setField('accounts/corner/waves', [{ id: 'first', openWeek: 12, doors: 60, doorsPerWeek: 8 }]);
    expect(session.typed.value.size).toBe(0);
  });
});

describe('a plan that can not be computed', () => {
  test('is not entered from one that can', () => {
    expect(session.run(renamePlan, { name: UNCOMPUTABLE }, 'name')).toBe(false);
    expect(session.plan.value?.name).toBe('One tea, one chain');
    expect(session.problems.value.get('name')?.[0]?.code).toBe('rung-unsolvable');
  });

  test('once open, is mended step by step: edits are accepted and saved, results wait', async () => {
    await session.addPlan({
      ...(session.plan.value as never as object),
      id: 'stuck',
      name: UNCOMPUTABLE,
    } as never);
    expect(session.plan.value?.id).toBe('stuck');
    expect(session.results.value).toBeNull();
    expect(session.stale.value).toBe(true);
    expect([...session.problems.value.keys()]).toEqual(['accounts/corner/listings/tea/list']);
    expect(session.typeInto(DOORS, '70', 'whole')).toBe(true);
    expect(session.results.value).toBeNull();
    expect(session.typeInto('name', 'Mended', 'text')).toBe(true);
    expect(doorsOf(session)).toBe(70);
    expect(session.stale.value).toBe(false);
    await settled(session);
    expect(session.saving.value).toBe('saved');
  });
});

describe('a bug in the model', () => {
  test('is shown with the plan to keep; the last good plan stays', () => {
    expect(session.typeInto('name', BROKEN, 'text')).toBe(false);
    expect(session.bug.value?.message).toBe('books do not balance');
    expect(JSON.parse(session.bug.value?.file?.text ?? '')).toMatchObject({ plan: { name: BROKEN } });
    expect(session.plan.value?.name).toBe('One tea, one chain');
    expect(session.typed.value.get('name')).toBe(BROKEN);
  });
});

describe('undo', () => {
  test('goes back and forth, and a new edit ends the way forth', () => {
    session.typeInto(DOORS, '70', 'whole');
    session.typeInto(LATE, '5', 'whole');
    session.undo();
    expect([at(DOORS), at(LATE)]).toEqual([70, 10]);
    session.undo();
    expect(at(DOORS)).toBe(60);
    expect(doorsOf(session)).toBe(60);
    expect(session.canUndo.value).toBe(false);
    session.redo();
    expect(at(DOORS)).toBe(70);
    session.typeInto(LATE, '6', 'whole');
    expect(session.canRedo.value).toBe(false);
  });

  test('takes a run of edits of one field as one step, until the field is left', () => {
    for (const text of ['3', '35', '350']) session.typeInto(DOORS, text, 'whole');
    session.endStep();
    session.typeInto(DOORS, '351', 'whole');
    session.undo();
    expect(at(DOORS)).toBe(350);
    session.undo();
    expect(at(DOORS)).toBe(60);
  });

  test('raises the revision and is saved like any edit', async () => {
    session.typeInto(DOORS, '70', 'whole');
    session.undo();
    expect(session.revision.value).toBe(3);
    expect(session.results.value?.revision).toBe(3);
    await settled(session);
    expect(session.plans.value[0]).toMatchObject({ revision: 3 });
  });

  test('drops refused texts first', () => {
    session.typeInto(DOORS, '70', 'whole');
    session.typeInto(LATE, 'x', 'whole');
    session.undo();
    expect([session.typed.value.size, at(DOORS)]).toEqual([0, 70]);
    session.undo();
    expect(at(DOORS)).toBe(60);
  });

  test(`remembers ${STEPS_MOST} steps`, () => {
    for (let doors = 100; doors < 100 + STEPS_MOST + 20; doors += 1) {
      session.setField(DOORS, doors);
      session.endStep();
    }
    let steps = 0;
    while (session.canUndo.value) {
      session.undo();
      steps += 1;
    }
    expect(steps).toBe(STEPS_MOST);
    expect(at(DOORS)).toBe(119);
  });
});

test('a path that names no field is a bug, thrown', () => {
  expect(() => session.setField('accounts/corner/display/weeks', 4)).toThrow('no field');
});

test('reads back what a text could mean besides', () => {
  expect(session.readTyped('1,200', 'amount')).toEqual({ ok: true, text: '1200', couldBe: '1.200' });
  expect(session.look.value?.currency).toBe('USD');
  expect(session.lookFor('EUR').currency).toBe('EUR');
});

test('what verdicts lean on is shown for the revision it was asked for only', async () => {
  await settled(session);
  expect(session.leans.value).toBeNull();
  const leans = { ladder: null, deal: null, cash: null, promise: null };
  session.typeInto(DOORS, '61', 'whole');
  session.typeInto(DOORS, '62', 'whole');
  // The example of the first start and revision 1 were asked for before; each answer lets the newest question out.
  while (session.leans.value === null && own.asked.length > 0) {
    const before = session.revision.value;
    own.asked.shift()?.(leans);
    await settled(session);
    expect(session.revision.value).toBe(before);
  }
  expect(session.leans.value).toBe(leans);
  session.typeInto(DOORS, '63', 'whole');
  expect(session.leans.value).toBeNull();
});
