/** Edits of what has to be ready: sets taken in as one step, gates taken out with their order healed, openings moved; refused where they can't be. */
import { beforeEach, describe, expect, test } from 'vitest';
import { noteAt } from '../../src/app/commands/field.ts';
import { addGate, addStarters, openLater, removeGate } from '../../src/app/commands/readiness.ts';
import type { Gate, Plan } from '../../src/domain/plan/index.ts';
import { suggestedGates } from '../../src/domain/readiness/index.ts';
import { checkPlan } from '../../src/plan-format/gate.ts';
import { examplePlan, freshDatabase } from '../storage/store.ts';
import { aGate } from '../support/gates.ts';
import { around, settled, withPlan } from './harness.ts';

beforeEach(freshDatabase);

function bare(): Plan {
  const plan = examplePlan('small');
  return { ...plan, readiness: { ...plan.readiness, gates: [] } };
}

function proposed(plan: Plan): Gate[] {
  const channels = Object.fromEntries(plan.accounts.map(({ id }) => [id, 'grocery' as const]));
  return suggestedGates(plan, { channels, productKinds: ['food'] }).map(({ gate }) => gate);
}

describe('commands', () => {
  test('a set taken in is sound, its lead times are marked as practice, and it is not proposed again', () => {
    const plan = bare();
    const gates = proposed(plan);
    const taken = addStarters(plan, { gates });
    if (!taken.ok) throw new Error('refused');
    expect(checkPlan(taken.value).ok).toBe(true);
    expect(gates.length).toBeGreaterThan(10);
    for (const { id } of gates) {
      expect(noteAt(taken.value, `readiness/gates/${id}/leadDays`)?.kind).toBe('practice');
    }
    expect(proposed(taken.value)).toEqual([]);
  });

  test('of a set taken in part, nothing waits for what was left', () => {
    const plan = bare();
    const [first, ...others] = proposed(plan);
    const taken = addStarters(plan, { gates: others });
    if (!taken.ok || first === undefined) throw new Error('refused');
    expect(checkPlan(taken.value).ok).toBe(true);
    expect(taken.value.readiness.gates.flatMap(({ after }) => after)).not.toContain(first.id);
  });

  test('what waited for a gate taken out waits for what that one waited for; its notes go with it', () => {
    const taken = addStarters(bare(), { gates: proposed(bare()) });
    if (!taken.ok) throw new Error('refused');
    const out = removeGate(taken.value, { gateId: 'artwork' });
    if (!out.ok) throw new Error('refused');
    expect(checkPlan(out.value).ok).toBe(true);
    expect(out.value.readiness.gates.find(({ id }) => id === 'barcodes')?.after).toEqual(['numbers']);
    expect(noteAt(out.value, 'readiness/gates/artwork/leadDays')).toBeNull();
  });

  test('an opening goes later by its weeks, and by no more than the plan has', () => {
    const plan = bare();
    const [account] = plan.accounts;
    const [wave] = account?.waves ?? [];
    if (account === undefined || wave === undefined) throw new Error('no opening');
    const at = { accountId: account.id, waveId: wave.id };
    const later = openLater(plan, { moved: [{ ...at, weeks: 2 }] });
    expect(later.ok && later.value.accounts[0]?.waves[0]?.openWeek).toBe(wave.openWeek + 2);
    const beyond = openLater(plan, { moved: [{ ...at, weeks: plan.horizonWeeks }] });
    expect(beyond.ok && checkPlan(beyond.value).ok).toBe(false);
  });
});

test('in the session: added, worked on, refused in a sentence, undone step by step', async () => {
  const session = await withPlan(around());
  const gate = aGate('labels', 5, {
    name: 'Labels',
    leadDays: { optimistic: 2, likely: 5, pessimistic: 9 },
  });
  const now = () => session.plan.value?.readiness.gates.find(({ id }) => id === 'labels');
  expect(session.run(addGate, { gate }, 'readiness/gates')).toBe(true);
  session.endStep();
  expect(session.typeInto('readiness/gates/labels/leadDays/likely', '12', 'whole')).toBe(false);
  expect(session.problems.value.get('readiness/gates/labels/leadDays/likely')?.[0]?.expected).toBe(
    '9 days when it goes badly to be no fewer than the most likely 12',
  );
  expect(now()?.leadDays.likely).toBe(5);
  session.undo();
  session.setField('readiness/gates/labels/state', { is: 'underWay', daysLeft: 3 });
  session.endStep();
  expect(now()?.state).toEqual({ is: 'underWay', daysLeft: 3 });
  session.undo();
  expect(now()?.state).toEqual({ is: 'notStarted' });
  session.undo();
  expect(now()).toBeUndefined();
  await settled(session);
});

test('a wrong check digit stays as it was typed, and the right one is said', async () => {
  const session = await withPlan(around());
  const [item] = session.plan.value?.items ?? [];
  const path = `items/${item?.id}/numbers`;
  session.setField(path, { unit: null, inner: null, case: null, companyPrefix: null });
  session.endStep();
  // GS1's own example of a check digit: 629104150021 is followed by 3.
  expect(session.typeInto(`${path}/unit`, '6291041500214', 'text')).toBe(false);
  expect(session.typed.value.get(`${path}/unit`)).toBe('6291041500214');
  expect(session.problems.value.get(`${path}/unit`)?.[0]?.expected).toBe(
    '3 as the last digit, which checks the ones before it',
  );
  expect(session.typeInto(`${path}/unit`, '6291041500213', 'text')).toBe(true);
  expect(session.typeInto(`${path}/unit`, '', 'text')).toBe(true);
  expect(session.plan.value?.items[0]?.numbers?.unit).toBeNull();
});
