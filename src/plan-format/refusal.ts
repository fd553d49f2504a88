// Trouble of the device or of the app's age, which nobody can mend by typing: returned, never thrown. A refusal names
// what happened in a sentence, says that nothing was changed, and offers what it could not take in as a file.
// (What a person can mend is a Problem, see the domain's problems.ts; a failed assertion is a Bug, and is thrown.)
import type { Outcome } from '../domain/problems.ts';

export type RefusalCode =
  | 'newer-format' // the plan was written by a newer app
  | 'unreadable' // a stored plan that no version of this app can have written
  | 'not-found' // no plan of that id
  | 'store-unavailable' // no IndexedDB here: private window, policy, damaged profile
  | 'store-blocked' // another tab keeps an older store open
  | 'store-newer' // the store was made by a newer app
  | 'store-closed' // closed under us: a newer tab upgrades, or the browser took it away
  | 'store-full' // no room left
  | 'store-failed' // any other failure of the store
  | 'changed-elsewhere' // another tab saved the plan in the meantime
  | 'file-unreadable' // a chosen file could not be read at all
  | 'part-missing'; // a part of the app could not be fetched

/** A file to hand to the person, as text. */
export interface PlanFile {
  name: string;
  text: string;
}

export interface Refusal {
  code: RefusalCode;
  /** One or two whole sentences. */
  sentence: string;
  /** What could not be taken in, to keep; null when there is nothing. */
  file: PlanFile | null;
}

export interface Refused {
  ok: false;
  refusal: Refusal;
}

/** A value, or problems to mend, or a refusal. */
export type Reading<T> = Outcome<T> | Refused;

export function refused(code: RefusalCode, sentence: string, file: PlanFile | null): Refused {
  return { ok: false, refusal: { code, sentence, file } };
}

export function isRefused<T>(reading: Reading<T>): reading is Refused {
  return 'refusal' in reading;
}
