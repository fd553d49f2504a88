/**
 * Whole plans and the start: the list, importing and exporting, deleting with undo, a store that is full, missing or
 * damaged, and what is there again after a reload.
 */
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { createSession, type Session } from '../../src/app/session.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { getAt } from '../../src/domain/plan/path.ts';
import { sentence } from '../../src/domain/problems.ts';
import { planText } from '../../src/plan-format/index.ts';
import { exampleText } from '../problems/plan-cases.ts';
import { examplePlan, fillDisk, freshDatabase, getRaw, putRaw } from '../storage/store.ts';
import { type Around, around, doorsOf, settled, started, withPlan } from './harness.ts';

const DOORS = 'accounts/corner/waves/first/doors';

let own: Around;

beforeEach(() => {
  freshDatabase();
  own = around();
});

function names(session: Session): string[] {
  return session.plans.value.map(({ name }) => name);
}

function file(text: string, name = 'plan.json'): File {
  return new File([text], name);
}

describe('the start', () => {
  test('the first one shows the first example, and writes no plan', async () => {
    const session = createSession(own.deps);
    expect(session.phase.value).toBe('starting');
    await session.start();
    expect(session.phase.value).toBe('ready');
    expect(own.entries.map(({ hash }) => hash)).toEqual(['#/p/example-a/front']);
    expect(session.plan.value?.name).toBe('Example A');
    expect(doorsOf(session)).toBe(60);
    await settled(session);
    expect(session.plans.value).toEqual([]);
    expect(await getRaw('example-a')).toBeUndefined();
  });

  test('an example is kept from its first edit on', async () => {
    const session = await started(own);
    session.typeInto(DOORS, '70', 'whole');
    await settled(session);
    const again = await started(around());
    expect(names(again)).toEqual(['Example A']);
    expect(doorsOf(again)).toBe(70);
    expect(again.examples().map(({ name }) => name)).toEqual(['Example A', 'Example B']);
  });

  test('a later one shows the address it was left at, without its sheet', async () => {
    const session = await withPlan(own);
    session.go({ view: 'cash', planId: 'small', sheet: null });
    session.openSheet('where');
    await settled(session);
    const later = around();
    const again = await started(later);
    expect(again.route.value).toEqual({ view: 'cash', planId: 'small', sheet: null });
    expect(later.entries.map(({ hash }) => hash)).toEqual(['#/p/small/cash']);
    expect(again.plan.value?.id).toBe('small');
  });

  test('an address in the bar goes before the last one', async () => {
    await settled(await withPlan(own));
    const again = await started(around(undefined, '#/p/example-b/promise?sheet=where'));
    expect(again.route.value).toEqual({ view: 'promise', planId: 'example-b', sheet: 'where' });
    expect(again.plan.value?.name).toBe('Example B');
  });

  test('an address that names nothing stays, to be said', async () => {
    const again = await started(around(undefined, '#/nowhere/at/all'));
    expect(again.route.value).toEqual({ view: 'lost', hash: '#/nowhere/at/all', sheet: null });
    expect(again.plan.value).toBeNull();
  });

  test('the address of a plan that is gone is refused in words', async () => {
    const again = await started(around(undefined, '#/p/gone/front'));
    expect(again.plan.value).toBeNull();
    expect(again.notices.value.map(({ sentence: said }) => said)).toEqual([
      'There is no such plan on this device.',
    ]);
  });

  test('nothing at all is written before it is over', async () => {
    const put = vi.spyOn(IDBObjectStore.prototype, 'put');
    const add = vi.spyOn(IDBObjectStore.prototype, 'add');
    const session = createSession(own.deps);
    let early = 0;
    const stop = session.phase.subscribe((phase) => {
      if (phase === 'ready') early = put.mock.calls.length + add.mock.calls.length;
    });
    await session.start();
    stop();
    expect(early).toBe(0);
    await settled(session);
    expect(put.mock.calls.length).toBeGreaterThan(0);
    vi.restoreAllMocks();
  });
});

describe('a reload', () => {
  test('keeps the plan, and the text that was not accepted', async () => {
    const session = await withPlan(own);
    session.typeInto(DOORS, '70', 'whole');
    session.typeInto('business/openingCashAmount', 'lots', 'amount');
    await settled(session);
    const again = await started(around());
    expect(doorsOf(again)).toBe(70);
    expect([...again.typed.value]).toEqual([['business/openingCashAmount', 'lots']]);
    expect(again.problems.value.get('business/openingCashAmount')?.[0]?.got).toBe('"lots"');
    again.typeInto('business/openingCashAmount', '5', 'amount');
    await settled(again);
    expect((await started(around())).typed.value.size).toBe(0);
  });

  test('keeps drafts', async () => {
    const session = await started(own);
    expect(await session.readDraft('seven')).toBeNull();
    expect(await session.writeDraft('seven', { shelfPrice: '4.99' })).toBe(true);
    expect(await (await started(around())).readDraft('seven')).toEqual({ shelfPrice: '4.99' });
  });

  test('right after an edit that hid the page loses nothing: what waits is started at once', async () => {
    const session = await withPlan(own);
    const transaction = vi.spyOn(IDBDatabase.prototype, 'transaction');
    const saves = () =>
      transaction.mock.calls.filter(([name, mode]) => name === 'plans' && mode === 'readwrite');
    for (const doors of [61, 62, 63]) session.setField(DOORS, doors);
    expect(saves()).toHaveLength(1);
    own.hide();
    expect(saves()).toHaveLength(2);
    vi.restoreAllMocks();
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(getAt(((await getRaw('small')) as { plan: unknown }).plan, DOORS)).toBe(63);
  });
});

describe('import and export', () => {
  test('an exported plan imported again is the same, under another id beside the first', async () => {
    const session = await withPlan(own);
    session.typeInto(DOORS, '70', 'whole');
    expect(await session.exportPlan('small')).toBe(true);
    const [download] = own.downloads;
    expect(download?.name).toBe('One-tea-one-chain.firstfill.json');
    expect(await session.importFile(file(download?.text ?? ''))).toBe(true);
    await settled(session);
    const exported = JSON.parse(download?.text ?? '').plan as Plan;
    expect(session.plan.value).toEqual({ ...exported, id: 'new-1' });
    expect(session.plan.value && planText({ ...session.plan.value, id: 'small' })).toBe(download?.text);
    expect(session.plans.value.map((row) => row.id).sort()).toEqual(['new-1', 'small']);
    expect(doorsOf(session)).toBe(70);
  });

  test('a plan whose id is free keeps it', async () => {
    const session = await started(own);
    expect(await session.importFile(file(exampleText('whole')))).toBe(true);
    expect(session.plan.value?.id).toBe('whole');
  });

  test('a broken file leaves everything as it was, and says all that is wrong', async () => {
    const session = await withPlan(own);
    const broken = exampleText('small')
      .replace('"horizonWeeks": 52', '"horizonWeeks": 0')
      .replace('"USD"', '"usd"');
    expect(await session.importFile(file(broken, 'mine.json'))).toBe(false);
    const trouble = session.importTrouble.value;
    expect(trouble?.fileName).toBe('mine.json');
    expect(trouble?.problems.map(sentence)).toEqual([
      'currency: got "usd"; expected a currency code of ISO 4217, like "USD".',
      'horizonWeeks: got 0; expected a whole number of weeks from 4 to 260.',
    ]);
    expect(session.plan.value?.id).toBe('small');
    expect(names(session)).toEqual(['One tea, one chain']);
    session.clearImportTrouble();
    expect(session.importTrouble.value).toBeNull();
  });

  test('a file of a newer format is a notice that names it', async () => {
    const session = await started(own);
    expect(
      await session.importFile(file('{"format": "firstfill-plan", "plan": {"version": 4, "name": "Soon"}}')),
    ).toBe(false);
    expect(session.notices.value[0]?.sentence).toContain('The plan "Soon" is of format version 4');
  });

  test('a plan that does not pass the checks is not added', async () => {
    const session = await started(own);
    expect(await session.addPlan({ ...examplePlan('small'), horizonWeeks: 3 })).toBe(false);
    expect(session.importTrouble.value?.problems[0]?.path).toBe('horizonWeeks');
  });
});

describe('plans of the list', () => {
  test('a duplicate is another plan: what is typed into it is not typed into the first', async () => {
    const session = await withPlan(own);
    expect(await session.duplicatePlan('small', 'Cheaper')).toBe(true);
    expect(session.plan.value).toMatchObject({ id: 'new-1', name: 'Cheaper' });
    session.typeInto(DOORS, '10', 'whole');
    await settled(session);
    await session.openPlan('small');
    expect(doorsOf(session)).toBe(60);
  });

  test('renaming is an edit, with its undo', async () => {
    const session = await withPlan(own);
    expect(await session.renamePlan('small', 'Spring')).toBe(true);
    await settled(session);
    expect(names(session)).toEqual(['Spring']);
    session.undo();
    await settled(session);
    expect(names(session)).toEqual(['One tea, one chain']);
    expect(await session.renamePlan('small', '')).toBe(false);
    expect(session.problems.value.get('name')?.[0]?.expected).toBe(
      'a name of 1 to 120 characters, not only blanks',
    );
  });

  test('deleted, it is gone here and in the store; undone, it is back with its undo', async () => {
    const session = await withPlan(own);
    session.typeInto(DOORS, '70', 'whole');
    expect(await session.deletePlan('small')).toBe(true);
    expect(session.plan.value).toBeNull();
    expect(names(session)).toEqual([]);
    expect(session.route.value.view).toBe('plans');
    expect(await getRaw('small')).toBeUndefined();
    const [notice] = session.notices.value;
    expect(notice).toMatchObject({ kind: 'undo', sentence: '"One tea, one chain" was deleted.' });
    notice?.action?.run();
    await settled(session);
    expect(session.notices.value).toEqual([]);
    expect(names(session)).toEqual(['One tea, one chain']);
    await session.openPlan('small');
    expect(doorsOf(session)).toBe(70);
    session.undo();
    expect(doorsOf(session)).toBe(60);
  });

  test('a plan that was left keeps its undo and its refused texts', async () => {
    const session = await withPlan(own);
    session.typeInto(DOORS, '70', 'whole');
    session.typeInto('name', '', 'text');
    session.go({ view: 'front', planId: 'example-b', sheet: null });
    await settled(session);
    expect(session.plan.value?.name).toBe('Example B');
    expect([session.canUndo.value, session.typed.value.size]).toEqual([false, 0]);
    session.go({ view: 'front', planId: 'small', sheet: null });
    await settled(session);
    expect([...session.typed.value]).toEqual([['name', '']]);
    session.undo();
    session.undo();
    expect(doorsOf(session)).toBe(60);
  });

  test('of two openings in a row the later one counts', async () => {
    const session = await withPlan(own);
    await session.addPlan({ ...examplePlan('whole') });
    await settled(session);
    const first = session.openPlan('small');
    const second = session.openPlan('example-a');
    expect(await Promise.all([first, second])).toEqual([false, true]);
    expect(session.plan.value?.id).toBe('example-a');
  });

  test('each has its four marks, and one that can not be read says so', async () => {
    const session = await withPlan(own);
    session.typeInto(DOORS, '350', 'whole');
    await settled(session);
    await putRaw({ id: 'bad', name: 'Bad', updatedAt: 1, revision: 1, plan: { version: 1 } });
    const again = await started(around());
    await again.computeMarks();
    expect(names(again)).toEqual(['One tea, one chain', 'Bad']);
    expect(again.marks.value.get('small')).toEqual({
      ladder: 'holds',
      deal: 'holds',
      cash: 'holds',
      promise: 'holds',
    });
    expect(again.marks.value.get('example-a')).toMatchObject({ cash: 'fails' });
    expect(again.marks.value.get('bad')).toBe('unreadable');
  });

  test('one that can not be read is refused with its file, and can be exported as it is', async () => {
    const session = await started(own);
    await putRaw({ id: 'bad', name: 'Bad', updatedAt: 1, revision: 1, plan: { version: 1, mine: true } });
    expect(await session.openPlan('bad')).toBe(false);
    expect(session.notices.value[0]).toMatchObject({ kind: 'refusal' });
    expect(session.notices.value[0]?.sentence).toContain('The plan "Bad" can\'t be read');
    expect(await session.exportPlan('bad')).toBe(true);
    expect(JSON.parse(own.downloads[0]?.text ?? '')).toEqual({
      format: 'firstfill-plan',
      plan: { version: 1, mine: true },
    });
  });
});

describe('a device with no room', () => {
  test('edits go on in memory, the plan is offered as a file, and the next save that works has them', async () => {
    const session = await withPlan(own);
    const free = fillDisk('at the end');
    session.typeInto(DOORS, '70', 'whole');
    await settled(session);
    expect(doorsOf(session)).toBe(70);
    expect(session.saving.value).toBe('unsaved');
    const notice = session.notices.value.find(({ kind }) => kind === 'refusal');
    expect(notice?.sentence).toContain('This device has no room left for plans.');
    expect(getAt(JSON.parse(notice?.file?.text ?? '').plan, DOORS)).toBe(70);
    await session.openPlan('example-b');
    await session.openPlan('small');
    expect(doorsOf(session)).toBe(70);
    free();
    await session.saveAgain();
    expect(session.saving.value).toBe('saved');
    expect(session.notices.value.filter(({ kind }) => kind === 'refusal')).toEqual([]);
    expect((await getRaw('small')) as object).toMatchObject({ revision: 2 });
  });
});

describe('a device that keeps nothing', () => {
  test('says so, and works in memory; when the store opens after all, what was done is saved', async () => {
    const { openStore } = own.deps;
    const sentence = "This device won't store plans here.";
    own.deps.openStore = () =>
      Promise.resolve({ ok: false, refusal: { code: 'store-unavailable', sentence, file: null } });
    const session = await started(own);
    expect(session.storage.value?.code).toBe('store-unavailable');
    expect(session.notices.value[0]).toMatchObject({ kind: 'refusal', sentence });
    await session.addPlan(examplePlan('small'));
    session.typeInto(DOORS, '70', 'whole');
    await session.addPlan(examplePlan('whole'));
    await session.openPlan('small');
    expect(doorsOf(session)).toBe(70);
    expect(session.saving.value).toBe('unsaved');
    expect(names(session)).toEqual(['Every part filled', 'One tea, one chain']);
    expect(await session.exportPlan('small')).toBe(true);
    expect(await session.writeDraft('seven', {})).toBe(false);
    own.deps.openStore = openStore;
    expect(await session.openStoreAgain()).toBe(true);
    expect(session.storage.value).toBeNull();
    expect(session.saving.value).toBe('saved');
    expect((await getRaw('small')) as object).toMatchObject({ revision: 2 });
  });

  test('a plan deleted in memory can be undone', async () => {
    own.deps.openStore = () =>
      Promise.resolve({ ok: false, refusal: { code: 'store-unavailable', sentence: 'No.', file: null } });
    const session = await started(own);
    await session.addPlan(examplePlan('small'));
    await session.deletePlan('small');
    expect(names(session)).toEqual([]);
    session.notices.value.find(({ kind }) => kind === 'undo')?.action?.run();
    await settled(session);
    expect(names(session)).toEqual(['One tea, one chain']);
    await session.openPlan('small');
    expect(doorsOf(session)).toBe(60);
  });
});

describe('notices', () => {
  test('offline is said while it lasts', async () => {
    const session = await started(own);
    expect(session.notices.value).toEqual([]);
    own.goOffline();
    own.goOffline();
    expect(session.notices.value.map(({ sentence: said }) => said)).toEqual(['Offline. Everything works.']);
    own.goOnline();
    expect(session.notices.value).toEqual([]);
  });

  test('a new version waits, and is let in after everything is written', async () => {
    const session = await withPlan(own);
    own.newVersion();
    expect(session.update.waiting.value).toBe(true);
    expect(own.activated).toBe(0);
    session.typeInto(DOORS, '70', 'whole');
    const applied = session.update.apply();
    expect(own.activated).toBe(0);
    await applied;
    expect(own.activated).toBe(1);
    expect((await getRaw('small')) as object).toMatchObject({ revision: 2 });
  });

  test('one can be dismissed', async () => {
    const session = await started(own);
    own.goOffline();
    session.dismiss(session.notices.value[0]?.id ?? '');
    expect(session.notices.value).toEqual([]);
  });
});
