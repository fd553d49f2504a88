/**
 * Plans in the store: what is saved comes back the same, a failed save changes nothing, a damaged or newer record hinders
 * no other and is handed out as a file, and two tabs can't overwrite each other.
 */
import { beforeEach, describe, expect, test } from 'vitest';
import * as judges from '../../src/plan-format/gate.ts';
import type { Plan } from '../../src/plan-format/index.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import {
  deletePlan,
  listPlans,
  loadPlan,
  readMeta,
  restorePlan,
  type Store,
  savePlan,
  writeMeta,
} from '../../src/storage/index.ts';
import { examplePlan, fillDisk, freshDatabase, getRaw, opened, putRaw, refusalIn, valueIn } from './store.ts';

let store: Store;
const plan = examplePlan('whole');
const gate = () => Promise.resolve({ ok: true as const, value: judges });

beforeEach(async () => {
  freshDatabase();
  store = await opened();
});

function save(of: Plan, revision: number, baseRevision: number) {
  return savePlan(store, { plan: of, revision, baseRevision, updatedAt: 1000 + revision, previous: null });
}

describe('saving and loading', () => {
  test('a plan comes back as it was saved', async () => {
    valueIn(await save(plan, 1, 0));
    expect(valueIn(await loadPlan(store, plan.id, gate))).toEqual({ plan, revision: 1, original: null });
  });

  test('the list has the last edited first, and its row follows each save', async () => {
    valueIn(await save(plan, 1, 0));
    valueIn(await save({ ...plan, id: 'other', name: 'Other' }, 5, 0));
    valueIn(await save({ ...plan, name: 'Renamed' }, 9, 1));
    expect(valueIn(await listPlans(store))).toEqual([
      { id: 'whole', name: 'Renamed', updatedAt: 1009, revision: 9 },
      { id: 'other', name: 'Other', updatedAt: 1005, revision: 5 },
    ]);
  });

  test('a plan that is not there is not found', async () => {
    expect(refusalIn(await loadPlan(store, 'nobody', gate)).code).toBe('not-found');
  });

  test('deleted and restored, it is the same record', async () => {
    valueIn(await save(plan, 3, 0));
    const before = await getRaw(plan.id);
    const record = valueIn(await deletePlan(store, plan.id));
    expect(valueIn(await listPlans(store))).toEqual([]);
    if (record === null) throw new Error('nothing was deleted');
    valueIn(await restorePlan(store, record));
    expect(await getRaw(plan.id)).toEqual(before);
  });

  test('restoring never overwrites a plan that is there again', async () => {
    valueIn(await save(plan, 3, 0));
    const record = valueIn(await deletePlan(store, plan.id));
    valueIn(await save({ ...plan, name: 'Newer' }, 1, 0));
    if (record === null) throw new Error('nothing was deleted');
    expect(refusalIn(await restorePlan(store, record)).code).toBe('store-failed');
    expect(valueIn(await listPlans(store))[0]?.name).toBe('Newer');
  });
});

describe.each(['at once', 'at the end'] as const)('a disk that is full %s', (when) => {
  test('refuses with the advice to save a file, and keeps what was there', async () => {
    valueIn(await save(plan, 1, 0));
    const before = await getRaw(plan.id);
    const free = fillDisk(when);
    const refusal = refusalIn(await save({ ...plan, name: 'Longer' }, 2, 1));
    free();
    expect(refusal.code).toBe('store-full');
    expect(refusal.sentence).toContain('Nothing was lost: save this plan as a file');
    expect(await getRaw(plan.id)).toEqual(before);
    valueIn(await save({ ...plan, name: 'Longer' }, 2, 1));
    expect(valueIn(await listPlans(store))[0]?.name).toBe('Longer');
  });
});

describe('two tabs', () => {
  test('the second to save on the same base is refused, and overwrites nothing', async () => {
    valueIn(await save(plan, 7, 0));
    valueIn(await save({ ...plan, name: 'Mine' }, 8, 7));
    const refusal = refusalIn(await save({ ...plan, name: 'Theirs' }, 8, 7));
    expect(refusal.code).toBe('changed-elsewhere');
    expect(valueIn(await loadPlan(store, plan.id, gate)).plan.name).toBe('Mine');
  });

  test('a plan deleted elsewhere is written anew rather than lost', async () => {
    valueIn(await save(plan, 7, 0));
    valueIn(await deletePlan(store, plan.id));
    valueIn(await save(plan, 8, 7));
    expect(valueIn(await loadPlan(store, plan.id, gate)).revision).toBe(8);
  });
});

describe('records that can not be read', () => {
  const damaged: readonly (readonly [what: string, record: Record<string, unknown>])[] = [
    ['has no plan', { id: 'bad', name: 'Bad', updatedAt: 5, revision: 1, plan: undefined, previous: null }],
    [
      'has a plan that is a text',
      { id: 'bad', name: 'Bad', updatedAt: 5, revision: 1, plan: 'oh', previous: null },
    ],
    ['lost a field of its plan', { id: 'bad', name: 'Bad', plan: { ...plan, items: undefined } }],
    ['lost everything but its id', { id: 'bad' }],
    ['has numbers that are none', { id: 'bad', name: 7, updatedAt: Number.NaN, revision: 'x', plan: {} }],
  ];

  test.each(damaged)('one that %s is listed, refused with a file, and left as it is', async (_, record) => {
    valueIn(await save(plan, 1, 0));
    await putRaw(record);
    const rows = valueIn(await listPlans(store));
    expect(rows.map(({ id }) => id).sort()).toEqual(['bad', 'whole']);
    for (const row of rows) {
      expect(row.name).not.toBe('');
      expect(Number.isFinite(row.updatedAt)).toBe(true);
    }
    const refusal = refusalIn(await loadPlan(store, 'bad', gate));
    expect(refusal.code).toBe('unreadable');
    expect(refusal.sentence).toMatch(
      /can't be read \(.+: got .+\)\. It was left as it is; keep it as a file\.$/,
    );
    expect(refusal.file?.text).toContain('firstfill-plan');
    expect(await getRaw('bad')).toEqual(record);
    expect(valueIn(await loadPlan(store, plan.id, gate)).plan).toEqual(plan);
  });

  test('one of a newer format is named, offered as a file that a newer app can import, and left as it is', async () => {
    const newer = { ...plan, id: 'newer', version: 4, hologram: true };
    await putRaw({ id: 'newer', name: 'Newer', updatedAt: 5, revision: 4, plan: newer, previous: null });
    const refusal = refusalIn(await loadPlan(store, 'newer', gate));
    expect(refusal.code).toBe('newer-format');
    expect(refusal.sentence).toContain('is of format version 4; this app reads versions up to 3');
    expect(JSON.parse(refusal.file?.text ?? '')).toEqual({ format: 'firstfill-plan', plan: newer });
    expect(await getRaw('newer')).toMatchObject({ plan: newer });
  });
});

test('the plan before its migration is kept by one save, and gone with the next', async () => {
  const original = { version: 0, name: 'as it was' };
  const first = { plan, revision: 1, baseRevision: 0, updatedAt: 1, previous: original };
  valueIn(await savePlan(store, first));
  expect(await getRaw(plan.id)).toMatchObject({ previous: original });
  valueIn(await savePlan(store, { ...first, revision: 2, baseRevision: 1, previous: null }));
  expect(await getRaw(plan.id)).toMatchObject({ previous: null });
});

test('small things are kept under their names, and forgotten', async () => {
  expect(valueIn(await readMeta(store, 'draft/seven'))).toBeNull();
  valueIn(await writeMeta(store, 'draft/seven', { shelfPrice: '4.99' }));
  expect(valueIn(await readMeta(store, 'draft/seven'))).toEqual({ shelfPrice: '4.99' });
  valueIn(await writeMeta(store, 'draft/seven', null));
  expect(valueIn(await readMeta(store, 'draft/seven'))).toBeNull();
});

test('export and import give the same plan', async () => {
  valueIn(await save(plan, 1, 0));
  const { planText } = await import('../../src/plan-format/index.ts');
  const { plan: kept } = valueIn(await loadPlan(store, plan.id, gate));
  expect(parsePlanText(planText(kept))).toEqual({ ok: true, value: plan });
});
