// Small things beside the plans: which plan is open, the last address, unfinished drafts, the colour scheme. Any value
// that can be cloned; whoever reads one checks it.
// Worked example: writeMeta(store, 'current', 'spring') and, at the next start, readMeta(store, 'current') is 'spring'.
import type { Reading } from '../plan-format/index.ts';
import { failure, stopped } from './failure.ts';
import type { Store } from './open.ts';

/** What was kept under `key`; null when nothing was. */
export async function readMeta(store: Store, key: string): Promise<Reading<unknown>> {
  try {
    const value: unknown = await store.database.get('meta', key);
    return { ok: true, value: value ?? null };
  } catch (error) {
    return failure('read', error, store);
  }
}

/** Keeps `value` under `key`; null forgets it. */
export async function writeMeta(store: Store, key: string, value: unknown): Promise<Reading<null>> {
  const closed = stopped(store);
  if (closed) return closed;
  try {
    if (value === null) await store.database.delete('meta', key);
    else await store.database.put('meta', value, key);
    return { ok: true, value: null };
  } catch (error) {
    return failure('save', error, store);
  }
}
