/**
 * A fresh in-memory IndexedDB for each test (fake-indexeddb, an independent implementation of the W3C standard), and what
 * tests need to upset it: a full disk, a second tab, a damaged record.
 */
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import type { Plan, Reading, Refusal } from '../../src/plan-format/index.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { DATABASE_NAME, openStore, type Store } from '../../src/storage/index.ts';
import { exampleText } from '../problems/plan-cases.ts';

export function freshDatabase(): void {
  globalThis.indexedDB = new IDBFactory();
}

export async function opened(onClosed: (refusal: Refusal) => void = () => {}): Promise<Store> {
  return valueIn(await openStore(onClosed));
}

/** The value of an answer that has to be one. */
export function valueIn<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new Error(JSON.stringify(reading));
  return reading.value;
}

/** The refusal of an answer that has to be one. */
export function refusalIn<T>(reading: Reading<T>): Refusal {
  if (reading.ok || !('refusal' in reading)) throw new Error(`no refusal: ${JSON.stringify(reading)}`);
  return reading.refusal;
}

export function examplePlan(name: 'small' | 'whole'): Plan {
  return valueIn(parsePlanText(exampleText(name)));
}

/** Writes a record past all checks, as a damaged disk or another app version would. */
export async function putRaw(record: unknown): Promise<void> {
  const database = await openDB(DATABASE_NAME);
  await database.put('plans', record);
  database.close();
}

export async function getRaw(id: string): Promise<unknown> {
  const database = await openDB(DATABASE_NAME);
  const record: unknown = await database.get('plans', id);
  database.close();
  return record;
}

/** Until the returned function is called, every write fails for lack of room: at once, or when the transaction ends. */
export function fillDisk(when: 'at once' | 'at the end'): () => void {
  const prototype = IDBObjectStore.prototype;
  const put = prototype.put;
  prototype.put = function (this: IDBObjectStore, ...args: [unknown]) {
    if (when === 'at once') throw new DOMException('no room', 'QuotaExceededError');
    const request = put.apply(this, args);
    // Its own way to end a transaction with an error of a given name.
    (this.transaction as unknown as { _abort: (name: string) => void })._abort('QuotaExceededError');
    return request;
  };
  return () => {
    prototype.put = put;
  };
}
