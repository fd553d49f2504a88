// Plans in the store: list, load, save, delete, restore. Each is one transaction, so it happened whole or not at all.
// A record that can't be read hinders no other: the list still works, and what was kept is offered as a file.
// Worked example: two tabs open revision 7; the first saves 8; the second, saving its own 8 on the base of 7, is
// refused with 'changed-elsewhere', and nothing of the first tab's is overwritten.
import { type Gate, isRefused, type Plan, type Reading, rawPlanFile, refused } from '../plan-format/index.ts';
import { failure, stopped } from './failure.ts';
import type { PlanRecord, Store } from './open.ts';

/** A line of the list of plans. */
export interface PlanRow {
  id: string;
  name: string;
  updatedAt: number;
  revision: number;
}

export interface LoadedPlan {
  plan: Plan;
  revision: number;
  /** The plan as kept, when it had to be migrated: hand it to the next save, which keeps it once. */
  original: unknown;
}

export interface PlanToSave {
  plan: Plan;
  revision: number;
  /** The revision this one grew from, as this tab last saw it in the store; 0 for a plan that is new here. */
  baseRevision: number;
  updatedAt: number;
  previous: unknown;
}

/** Every plan kept, the last edited first. */
export async function listPlans(store: Store): Promise<Reading<PlanRow[]>> {
  try {
    const records: unknown[] = await store.database.getAll('plans');
    const rows = records.map(rowOf).sort((a, b) => b.updatedAt - a.updatedAt || (a.id < b.id ? -1 : 1));
    return { ok: true, value: rows };
  } catch (error) {
    return failure('read', error, store);
  }
}

/**
 * A plan, migrated where it is of an older format. What is kept is not touched by reading. `gate` is asked for what
 * judges it once there is something to judge.
 */
export async function loadPlan(
  store: Store,
  id: string,
  gate: () => Promise<Reading<Pick<Gate, 'readKept'>>>,
): Promise<Reading<LoadedPlan>> {
  let record: PlanRecord | undefined;
  try {
    record = await store.database.get('plans', id);
  } catch (error) {
    return failure('read', error, store);
  }
  if (record === undefined) return refused('not-found', 'There is no such plan on this device.', null);
  const judge = await gate();
  if (!judge.ok) return judge;
  const { name, revision } = rowOf(record);
  const file = rawPlanFile(record.plan, name);
  const read = judge.value.readKept(record.plan);
  if (isRefused(read)) return { ok: false, refusal: { ...read.refusal, file } };
  if (!read.ok) {
    const [first] = read.problems;
    const what = first ? ` (${first.path === '' ? 'the plan' : first.path}: got ${first.got})` : '';
    const sentence = `The plan "${name}" can't be read${what}. It was left as it is; keep it as a file.`;
    return refused('unreadable', sentence, file);
  }
  const original = read.value.migratedFrom === null ? null : record.plan;
  return { ok: true, value: { plan: read.value.plan, revision, original } };
}

/** One save, whole or not at all. */
export async function savePlan(store: Store, save: PlanToSave): Promise<Reading<PlanRow>> {
  const closed = stopped(store);
  if (closed) return closed;
  const { plan, revision, updatedAt, previous } = save;
  const record: PlanRecord = { id: plan.id, name: plan.name, updatedAt, revision, plan, previous };
  try {
    const transaction = store.database.transaction('plans', 'readwrite');
    const done = transaction.done.then(
      () => null,
      (error: unknown) => error ?? new Error('the save was aborted'),
    );
    const kept = await transaction.store.get(plan.id);
    if (kept !== undefined && rowOf(kept).revision > save.baseRevision) {
      await done;
      return refused(
        'changed-elsewhere',
        `"${plan.name}" was changed in another tab in the meantime. Both versions are kept.`,
        null,
      );
    }
    transaction.store.put(record).catch(() => {}); // its failure aborts the transaction, which says so below
    const error = await done;
    return error === null ? { ok: true, value: rowOf(record) } : failure('save', error, store);
  } catch (error) {
    return failure('save', error, store);
  }
}

/** Takes a plan out and gives back what was kept, for an undo. Null when there was none. */
export async function deletePlan(store: Store, id: string): Promise<Reading<PlanRecord | null>> {
  const closed = stopped(store);
  if (closed) return closed;
  try {
    const transaction = store.database.transaction('plans', 'readwrite');
    const record = await transaction.store.get(id);
    await transaction.store.delete(id);
    await transaction.done;
    return { ok: true, value: record ?? null };
  } catch (error) {
    return failure('save', error, store);
  }
}

/** Puts back what deletePlan gave, untouched, unless a plan of that id is there again. */
export async function restorePlan(store: Store, record: PlanRecord): Promise<Reading<PlanRow>> {
  const closed = stopped(store);
  if (closed) return closed;
  try {
    await store.database.add('plans', record);
    return { ok: true, value: rowOf(record) };
  } catch (error) {
    return failure('save', error, store);
  }
}

/** Reads a record that may be damaged: every part that isn't what it should be gets a plain stand-in. */
function rowOf(record: unknown): PlanRow {
  const { id, name, updatedAt, revision } = record as Record<string, unknown>;
  return {
    id: String(id),
    name: typeof name === 'string' && name !== '' ? name : 'Plan without a name',
    updatedAt: typeof updatedAt === 'number' && Number.isFinite(updatedAt) ? updatedAt : 0,
    revision: typeof revision === 'number' && Number.isInteger(revision) ? revision : 0,
  };
}
