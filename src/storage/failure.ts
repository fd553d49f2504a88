// What the store's exceptions mean to a person. Only names of the Indexed Database API and DOM standards are read.
// Worked example: a QuotaExceededError while saving is 'store-full', with the advice to save a file.
import { type Refused, refused } from '../plan-format/index.ts';
import { FULL, type Store } from './open.ts';

export function failure(doing: 'read' | 'save', error: unknown, store: Store): Refused {
  const name = nameOf(error);
  if (name === 'QuotaExceededError') return FULL;
  const closed = store.closedBy();
  if (closed) return { ok: false, refusal: closed };
  const words = doing === 'save' ? 'could not save' : 'could not read';
  const advice =
    doing === 'save' ? ' Nothing was lost: save this plan as a file.' : ' Reload the page to try again.';
  return refused('store-failed', `This device ${words} here (${name}).${advice}`, null);
}

/** The refusal that ended all writing, if there is one. */
export function stopped(store: Store): Refused | null {
  const refusal = store.closedBy();
  return refusal === null ? null : { ok: false, refusal };
}

function nameOf(error: unknown): string {
  if (typeof error === 'object' && error !== null && 'name' in error) return String(error.name);
  return 'unknown failure';
}
