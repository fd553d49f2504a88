// Turning the device around: what is unsaved is written, the record for the other side is kept, this page is emptied, and
// their-side.html takes its place. Paper covers everything from the first moment, so a mis-tap only hides.
// Worked example: turnAround({ session, record, code: '4711' }) at '#/p/spring/table'; after the key on their side was held
// for 1.2 s, or 4711 tapped, the app opens at '#/p/spring/table' again.

import { fine, type Outcome, trouble } from '../domain/problems.ts';
import type { TheirRecord } from '../domain/talks/their-record.ts';
import { type Reading, refused } from '../plan-format/index.ts';
import { keepTurn, tellTurn } from '../storage/their-side.ts';
import type { Session } from './session.ts';
import { cover, giveWay, PLAIN_TITLE } from './turned.ts';

/**
 * Goes to their side and comes back to the address it was called at. Refused, with the page as it was, when this device
 * keeps nothing: then an edit would be lost, or their side would have nothing to show. `code` as codeFrom() gives it.
 */
export async function turnAround({
  session,
  record,
  code,
}: {
  session: Pick<Session, 'flush' | 'saving'>;
  record: TheirRecord;
  code: string | null;
}): Promise<Reading<null>> {
  cover('turning', true);
  await session.flush();
  if (session.saving.value === 'unsaved') {
    cover('turning', false);
    return refused(
      'store-failed',
      'Not turned around: the last edits are not saved on this device, and would be lost. Save the plan as a file first.',
      null,
    );
  }
  const back = location.hash;
  const scheme = document.documentElement.dataset['scheme'] ?? null;
  try {
    await keepTurn({ record, back, code, scheme });
  } catch {
    cover('turning', false);
    const sentence =
      "Not turned around: this device won't keep what the other side would see. Nothing was lost.";
    return refused('store-unavailable', sentence, null);
  }
  tellTurn('turned');
  giveWay();
  return fine(null);
}

/** A code for coming back without holding a key: four digits, or null for none when nothing was typed. */
export function codeFrom(text: string): Outcome<string | null> {
  const typed = text.trim();
  if (typed === '') return fine(null);
  if (/^[0-9]{4}$/.test(typed)) return fine(typed);
  const expected = 'four digits, like 4711, or nothing';
  return trouble({ code: 'field-invalid', path: 'code', got: typed.slice(0, 80), expected });
}

/** What to say where a code is chosen. */
export const CODE_CAUTION =
  'It keeps a casual look away, no more: whoever has the device can find a way past it.';

/** Covers this page with plain paper whenever it is hidden, for the task switcher's picture. Ends with what it returns. */
export function coverWhenHidden(): () => void {
  let title = '';
  const follow = (): void => {
    const hidden = document.visibilityState === 'hidden';
    cover('hidden', hidden);
    if (hidden) {
      title = document.title;
      document.title = PLAIN_TITLE;
    } else if (title !== '' && document.title === PLAIN_TITLE) document.title = title;
  };
  document.addEventListener('visibilitychange', follow);
  return () => {
    document.removeEventListener('visibilitychange', follow);
    cover('hidden', false);
  };
}
