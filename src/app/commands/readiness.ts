// Commands about what has to be ready: gates added, taken over from a starter set, taken out; openings moved to when they
// can be. Worked example: labels after artwork after numbers; removeGate(artwork) leaves labels after numbers.
import type { BasisNote, Gate, Plan } from '../../domain/plan/index.ts';
import type { Outcome } from '../../domain/problems.ts';
import { withoutGate } from '../../domain/readiness/leave-out.ts';
import { append, removePlace, setFields, withNotes } from './field.ts';

const GATES = 'readiness/gates';

export function addGate(plan: Plan, { gate }: { gate: Gate }): Outcome<Plan> {
  return append(plan, GATES, gate);
}

/** Gates out of starter sets, as one edit; their lead times are marked as practice. What one waits for and isn't there is left out. */
export function addStarters(plan: Plan, { gates }: { gates: readonly Gate[] }): Outcome<Plan> {
  const known = new Set([...plan.readiness.gates, ...gates].map(({ id }) => id));
  const taken = gates.map((gate) => ({ ...gate, after: gate.after.filter((id) => known.has(id)) }));
  const readiness = { ...plan.readiness, gates: [...plan.readiness.gates, ...taken] };
  return { ok: true, value: withNotes({ ...plan, readiness }, taken.map(practiceNote)) };
}

function practiceNote({ id }: Gate): BasisNote {
  return {
    path: `${GATES}/${id}/leadDays`,
    kind: 'practice',
    source: 'Common practice, no source: ask whoever does it',
    low: null,
    high: null,
  };
}

/** What waited for it waits for what it waited for. */
export function removeGate(plan: Plan, { gateId }: { gateId: string }): Outcome<Plan> {
  const removed = removePlace(plan, { path: `${GATES}/${gateId}` });
  if (!removed.ok) return removed;
  const { readiness } = withoutGate(plan, gateId);
  return { ok: true, value: { ...removed.value, readiness } };
}

export interface LaterOpening {
  accountId: string;
  waveId: string;
  weeks: number;
}

/** Openings moved to a later week, as one edit. */
export function openLater(plan: Plan, { moved }: { moved: readonly LaterOpening[] }): Outcome<Plan> {
  const changes = moved.flatMap(({ accountId, waveId, weeks }) => {
    const account = plan.accounts.find(({ id }) => id === accountId);
    const wave = account?.waves.find(({ id }) => id === waveId);
    if (wave === undefined) return [];
    return [{ path: `accounts/${accountId}/waves/${waveId}/openWeek`, value: wave.openWeek + weeks }];
  });
  return setFields(plan, { changes });
}
