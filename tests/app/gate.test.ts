/**
 * What judges plans comes after the first screen (src/app/gate.ts). Until it is there an example is shown with its
 * results, own plans wait, and no edit made early is lost, whatever it was made with; where it can't be had that is said.
 */
import { beforeEach, describe, expect, test } from 'vitest';
import { addPlace, removePlace } from '../../src/app/commands/field.ts';
import { createSession, type Session } from '../../src/app/session.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { getAt } from '../../src/domain/plan/path.ts';
import { fine } from '../../src/domain/problems.ts';
import * as gate from '../../src/plan-format/gate.ts';
import { exampleText } from '../problems/plan-cases.ts';
import { examplePlan, freshDatabase, getRaw } from '../storage/store.ts';
import { type Around, around, doorsOf, settled, started, withPlan } from './harness.ts';

const DOORS = 'accounts/corner/waves/first/doors';
const DAYS = 'accounts/corner/terms/paymentDays';

let own: Around;
/** Lets everything that waits for the gate have it. */
let open: () => void;

beforeEach(() => {
  freshDatabase();
  own = slow(around());
});

function slow(made: Around): Around {
  const coming = new Promise<typeof gate>((resolve) => {
    open = () => resolve(gate);
  });
  made.deps.loadGate = () => coming;
  return made;
}

async function opened(session: Session): Promise<void> {
  open();
  await settled(session);
}

function doubled(plan: Plan, _: null): ReturnType<typeof addPlace> {
  const [account] = plan.accounts;
  const [wave] = account?.waves ?? [];
  if (!account || !wave) throw new Error('the example has no wave');
  return fine({
    ...plan,
    accounts: [{ ...account, waves: [{ ...wave, doors: wave.doors * 2 }] }, ...plan.accounts.slice(1)],
  });
}

describe('before what judges plans is there', () => {
  test('a first start shows the example and its results', async () => {
    const session = await started(own);
    expect([session.phase.value, session.plan.value?.name, doorsOf(session)]).toEqual([
      'ready',
      'Example A',
      60,
    ]);
    expect(session.stale.value).toBe(false);
  });

  test('what is typed stays, is marked, and counts once it can be judged: one step to undo', async () => {
    const session = await started(own);
    expect(session.typeInto(DOORS, '7', 'whole')).toBe(false);
    session.typeInto(DOORS, '70', 'whole');
    expect(session.typed.value.get(DOORS)).toBe('70');
    expect(session.problems.value.get(DOORS)).toEqual([]);
    expect([session.stale.value, doorsOf(session)]).toEqual([true, 60]);
    await opened(session);
    expect([session.stale.value, doorsOf(session), session.typed.value.size]).toEqual([false, 70, 0]);
    expect((await getRaw('example-a')) as unknown).toMatchObject({ revision: 1 });
    session.undo();
    expect([doorsOf(session), session.canUndo.value]).toEqual([60, false]);
  });

  test('what is no number is refused then, in its field', async () => {
    const session = await started(own);
    session.typeInto(DAYS, 'soon', 'whole');
    await opened(session);
    expect(session.problems.value.get(DAYS)?.[0]?.got).toBe('"soon"');
    expect([session.typed.value.get(DAYS), getAt(session.plan.value, DAYS)]).toEqual(['soon', 30]);
  });

  test('edits are made in their order, a control pressed twice counts twice, beside a text that is refused', async () => {
    const session = await started(own);
    session.typeInto(DAYS, 'soon', 'whole');
    session.typeInto(DOORS, '40', 'whole');
    session.run(doubled, null, 'accounts');
    session.run(doubled, null, 'accounts');
    session.setField('lesson', 'Early');
    expect(session.stale.value).toBe(true);
    await opened(session);
    expect([doorsOf(session), session.plan.value?.lesson]).toEqual([160, 'Early']);
    expect([...session.typed.value.keys()]).toEqual([DAYS]);
  });

  test('an edit of a place that an earlier one took away is void, and no fault', async () => {
    const session = await started(own);
    const waves = 'accounts/corner/waves';
    session.run(
      (plan: Plan, place: unknown) => addPlace(plan, { listPath: waves, index: 0, place }),
      { id: 'second', openWeek: 9, doors: 5, doorsPerWeek: 5 },
      waves,
    );
    session.run(removePlace, { path: `${waves}/first` }, `${waves}/first`);
    session.run(removePlace, { path: `${waves}/first` }, `${waves}/first`);
    session.typeInto(DOORS, '70', 'whole');
    await opened(session);
    expect([doorsOf(session), session.typed.value.size, session.bug.value]).toEqual([5, 0, null]);
  });

  test('an edit waits while another example is looked at', async () => {
    const session = await started(own);
    session.typeInto(DOORS, '70', 'whole');
    await session.openPlan('example-b');
    await opened(session);
    expect([session.plan.value?.id, doorsOf(session)]).toEqual(['example-b', 60]);
    await session.openPlan('example-a');
    expect(doorsOf(session)).toBe(70);
  });

  test('a text is still there when the page goes away before it was judged', async () => {
    const session = await started(own);
    session.typeInto(DOORS, '70', 'whole');
    await settled(session);
    expect(doorsOf(await started(around()))).toBe(70);
  });

  test('undo takes a waiting edit back', async () => {
    const session = await started(own);
    session.typeInto(DOORS, '70', 'whole');
    session.undo();
    await opened(session);
    expect([doorsOf(session), session.plans.value.length]).toEqual([60, 0]);
  });

  test('an own plan, a new one and a file wait for it', async () => {
    await settled(await withPlan(around()));
    const session = createSession(slow(own).deps);
    const start = session.start();
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect([session.phase.value, session.plan.value]).toEqual(['starting', null]);
    open();
    await start;
    expect(session.plan.value?.id).toBe('small');

    const other = await started(slow(around(undefined, '#/plans')));
    const adding = other.addPlan({ ...examplePlan('whole'), id: 'new' });
    const importing = other.importFile(new File([exampleText('whole')], 'plan.json'));
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(other.plans.value.map(({ id }) => id)).toEqual(['small']);
    open();
    expect([await adding, await importing]).toEqual([true, true]);
    expect(other.plans.value).toHaveLength(3);
  });
});

describe('where what judges plans can’t be had', () => {
  test('that is said, texts stay, and a later edit asks again', async () => {
    let isThere = false;
    own.deps.loadGate = () => (isThere ? Promise.resolve(gate) : Promise.reject(new Error('no network')));
    const session = await started(own);
    expect(session.notices.value).toEqual([]);
    session.typeInto(DOORS, '70', 'whole');
    await settled(session);
    expect(session.notices.value.map(({ sentence }) => sentence)).toEqual([
      'The part of this app that reads and checks plans could not be fetched. Nothing was changed: load the page again, with a network.',
    ]);
    expect([session.typed.value.get(DOORS), doorsOf(session)]).toEqual(['70', 60]);
    expect(await session.addPlan(examplePlan('small'))).toBe(false);
    isThere = true;
    session.typeInto(DOORS, '80', 'whole');
    await settled(session);
    expect([doorsOf(session), session.notices.value]).toEqual([80, []]);
  });

  test('an own plan is refused with that sentence, and is kept as it was', async () => {
    await settled(await withPlan(around()));
    const kept = await getRaw('small');
    own.deps.loadGate = () => Promise.reject(new Error('no network'));
    const session = await started(own);
    expect([session.plan.value, session.notices.value.map(({ id }) => id)]).toEqual([
      null,
      ['refusal part-missing'],
    ]);
    await session.computeMarks();
    expect(session.marks.value.get('small')).toBeUndefined();
    expect(await getRaw('small')).toEqual(kept);
  });
});
