// Light or dark paper: as the device has it, or as the person says. Kept with the drafts, so it holds from start to start.
// Worked example: setScheme(session, 'dark') puts data-scheme="dark" on the page at once.
import type { Session } from '../../app/session.ts';

export type Scheme = 'device' | 'light' | 'dark';

/** What is in force; a plain holder, since the page itself shows it. */
export const schemeOf: { value: Scheme } = { value: 'device' };

export function setScheme(session: Session, value: string): void {
  apply(value);
  void session.writeDraft('scheme', schemeOf.value);
}

/** At the start, once the store is open. */
export async function restoreScheme(session: Session): Promise<void> {
  apply(await session.readDraft('scheme'));
}

function apply(value: unknown): void {
  schemeOf.value = value === 'light' || value === 'dark' ? value : 'device';
  const root = document.documentElement;
  if (schemeOf.value === 'device') delete root.dataset['scheme'];
  else root.dataset['scheme'] = schemeOf.value;
}
