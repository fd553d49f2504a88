/**
 * Two tabs on one store: what one saves the other shows, what both change is kept twice, and a tab that hears of a newer
 * app stops writing.
 */
import { beforeEach, describe, expect, test } from 'vitest';
import type { Session } from '../../src/app/session.ts';
import { FORMAT_VERSION } from '../../src/plan-format/index.ts';
import { fillDisk, freshDatabase, getRaw } from '../storage/store.ts';
import { type Around, around, doorsOf, makeDevice, settled, started, withPlan } from './harness.ts';

const DOORS = 'accounts/corner/waves/first/doors';

let device: ReturnType<typeof makeDevice>;
let mine: Around;
let here: Session;
let there: Session;

beforeEach(async () => {
  freshDatabase();
  device = makeDevice();
  mine = around(device.tab());
  here = await withPlan(mine);
  there = await started(around(device.tab(), '#/p/small/front'));
  await settled(there);
});

async function bothSettled(): Promise<void> {
  await settled(here);
  await settled(there);
}

test('an edit in one tab is shown in the other, and undone there like an edit', async () => {
  expect(there.plan.value?.id).toBe('small');
  here.typeInto(DOORS, '70', 'whole');
  await bothSettled();
  expect(doorsOf(there)).toBe(70);
  expect(there.revision.value).toBe(2);
  there.undo();
  await bothSettled();
  expect([doorsOf(here), doorsOf(there)]).toEqual([60, 60]);
  expect(here.plans.value).toEqual(there.plans.value);
});

test('edits in turn go on from each other, without a copy', async () => {
  for (const [tab, doors] of [
    [here, '70'],
    [there, '80'],
    [here, '90'],
  ] as const) {
    tab.typeInto(DOORS, doors, 'whole');
    await bothSettled();
  }
  expect([doorsOf(here), doorsOf(there)]).toEqual([90, 90]);
  expect(here.plans.value).toHaveLength(1);
});

test('edits in both at once are both kept: the later tab goes on as a plan of its own', async () => {
  here.typeInto(DOORS, '70', 'whole');
  there.typeInto(DOORS, '80', 'whole');
  await bothSettled();
  expect(here.plans.value.map(({ name }) => name).sort()).toEqual([
    'One tea, one chain',
    'One tea, one chain (this tab)',
  ]);
  expect(doorsOf(here)).toBe(70);
  expect(doorsOf(there)).toBe(80);
  expect(there.plan.value?.id).toBe('new-1');
  expect(there.route.value).toEqual({ view: 'front', planId: 'new-1', sheet: null });
  expect(there.notices.value.at(-1)?.sentence).toContain('was changed in another tab too.');
  expect(there.saving.value).toBe('saved');
  expect(there.stale.value).toBe(false);
  expect(await getRaw('small')).toMatchObject({ revision: 2, name: 'One tea, one chain' });
  expect(await getRaw('new-1')).toMatchObject({ name: 'One tea, one chain (this tab)' });
  there.typeInto(DOORS, '81', 'whole');
  await bothSettled();
  expect(doorsOf(here)).toBe(70);
});

test('a tab with an edit that could not be saved does not take the other version in its place', async () => {
  const free = fillDisk('at once');
  there.typeInto(DOORS, '80', 'whole');
  await settled(there);
  free();
  here.typeInto(DOORS, '70', 'whole');
  await bothSettled();
  expect(doorsOf(there)).toBe(80);
  await there.saveAgain();
  await bothSettled();
  expect(there.plans.value).toHaveLength(2);
  expect([doorsOf(here), doorsOf(there)]).toEqual([70, 80]);
});

test('a refused text stays while the other tab edits', async () => {
  there.typeInto('business/openingCashAmount', 'lots', 'amount');
  here.typeInto(DOORS, '70', 'whole');
  await bothSettled();
  expect(doorsOf(there)).toBe(70);
  expect(there.typed.value.get('business/openingCashAmount')).toBe('lots');
});

test('a plan deleted in another tab is left, and said', async () => {
  await here.deletePlan('small');
  await bothSettled();
  expect(there.plan.value).toBeNull();
  expect(there.route.value.view).toBe('plans');
  expect(there.plans.value).toEqual([]);
  expect(there.notices.value.at(-1)?.sentence).toBe('"One tea, one chain" was deleted in another tab.');
  here.notices.value.find(({ kind }) => kind === 'undo')?.action?.run();
  await bothSettled();
  expect(there.plans.value).toHaveLength(1);
});

describe('a tab that hears of a newer format', () => {
  test('stops writing, says so, and keeps its edits in memory', async () => {
    device.tell({ kind: 'opened', format: FORMAT_VERSION + 1 });
    expect(here.storage.value?.code).toBe('store-closed');
    expect(here.notices.value.at(-1)?.sentence).toContain('newer version of this app');
    here.typeInto(DOORS, '70', 'whole');
    await settled(here);
    expect(doorsOf(here)).toBe(70);
    expect(here.saving.value).toBe('unsaved');
    expect(await getRaw('small')).toMatchObject({ revision: 1 });
    expect(await here.deletePlan('small')).toBe(false);
    expect(await here.exportPlan('small')).toBe(true);
    expect(mine.downloads).toHaveLength(1);
  });
});
