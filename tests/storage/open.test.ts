/**
 * Opening the store: on the first start, beside an older and a newer tab, with a store of a newer app, and where there is
 * none. What a page may expect of versionchange, blocked and VersionError is the W3C's Indexed Database API 3.0.
 */
import { openDB } from 'idb';
import { beforeEach, expect, test, vi } from 'vitest';
import type { Refusal } from '../../src/plan-format/index.ts';
import { DATABASE_NAME, DATABASE_VERSION, listPlans, openStore, savePlan } from '../../src/storage/index.ts';
import { examplePlan, freshDatabase, opened, refusalIn, valueIn } from './store.ts';

beforeEach(freshDatabase);

test('the first start makes two empty stores', async () => {
  const store = await opened();
  expect([...store.database.objectStoreNames]).toEqual(['meta', 'plans']);
  expect(valueIn(await listPlans(store))).toEqual([]);
  store.close();
});

test('a second tab of the same version opens beside the first', async () => {
  const first = await opened();
  const second = await opened();
  expect(first.closedBy()).toBeNull();
  expect(valueIn(await listPlans(second))).toEqual([]);
});

test('a newer tab is given way to, once, and nothing is written here any more', async () => {
  const closed: Refusal[] = [];
  const store = await opened((refusal) => closed.push(refusal));
  const newer = await openDB(DATABASE_NAME, DATABASE_VERSION + 1);
  expect(closed.map(({ code }) => code)).toEqual(['store-closed']);
  expect(closed[0]?.sentence).toContain('A newer version of this app was opened in another tab.');
  const plan = examplePlan('small');
  const saved = await savePlan(store, { plan, revision: 1, baseRevision: 0, updatedAt: 1, previous: null });
  expect(refusalIn(saved)).toEqual(closed[0]);
  expect(refusalIn(await listPlans(store)).code).toBe('store-closed');
  newer.close();
});

test('a store made by a newer app is refused by name', async () => {
  const newer = await openDB(DATABASE_NAME, DATABASE_VERSION + 1);
  newer.close();
  const refusal = refusalIn(await openStore(() => {}));
  expect(refusal.code).toBe('store-newer');
  expect(refusal.sentence).toContain('kept by a newer version of this app');
});

test('an upgrade that another tab blocks is refused, and let go of when it comes through later', async () => {
  const stubborn = await openDB(DATABASE_NAME, 1);
  const real = indexedDB.open.bind(indexedDB);
  const open = vi.spyOn(indexedDB, 'open').mockImplementation((name) => real(name, 2));
  const refusal = refusalIn(await openStore(() => {}));
  open.mockRestore();
  expect(refusal.code).toBe('store-blocked');
  expect(refusal.sentence).toContain('Close the other tabs');
  stubborn.close();
  // Let go of: another opening at a higher version is not held up by it.
  const later = await openDB(DATABASE_NAME, 3, { blocked: () => expect.unreachable('still held open') });
  later.close();
});

test('no IndexedDB at all is said with the reason and what to do', async () => {
  vi.stubGlobal('indexedDB', undefined);
  const refusal = refusalIn(await openStore(() => {}));
  vi.unstubAllGlobals();
  expect(refusal.code).toBe('store-unavailable');
  expect(refusal.sentence).toContain("This device won't store plans here");
  expect(refusal.sentence).toContain('Save your plan as a file');
});

test.each(['SecurityError', 'InvalidStateError', 'UnknownError'])(
  'a browser that answers %s is unavailable',
  async (name) => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('no', name);
    });
    const refusal = refusalIn(await openStore(() => {}));
    vi.restoreAllMocks();
    expect(refusal.code).toBe('store-unavailable');
    expect(refusal.sentence).toContain(name);
  },
);

test('a disk with no room for even the store is full', async () => {
  vi.spyOn(indexedDB, 'open').mockImplementation(() => {
    throw new DOMException('no room', 'QuotaExceededError');
  });
  const refusal = refusalIn(await openStore(() => {}));
  vi.restoreAllMocks();
  expect(refusal.code).toBe('store-full');
});
