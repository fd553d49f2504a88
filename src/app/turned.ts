// Every start, and every page that comes back, asks first whether the device is turned to the other side of a table.
// While it is, nothing of ours is drawn: the page is emptied and gives way to their-side.html.
// Worked example: with the flag set, Back from their side loads index.html, which draws nothing and goes there again.
import { flagged, hearTurn, isTurned } from '../storage/turned.ts';

/** Says nothing of any plan. */
export const PLAIN_TITLE = 'Firstfill';

/** Why this page is covered: it is turning, it is hidden, or it just came out of the browser's cache. */
type Cover = 'turning' | 'hidden' | 'cached';
const covers = new Set<Cover>();

/** Paper over everything: nothing is painted, spoken or printed while there is a reason. */
export function cover(why: Cover, covered: boolean): void {
  if (covered) covers.add(why);
  else covers.delete(why);
  document.body.hidden = covers.size > 0;
}

let isLeaving = false;

/** Empties this page for good and goes to their side in its place in the history. */
export function giveWay(): void {
  if (isLeaving) return; // this tab hears its own news too, and a second navigation would end the first
  isLeaving = true;
  cover('turning', true);
  document.title = PLAIN_TITLE;
  document.body.replaceChildren();
  location.replace(`${import.meta.env.BASE_URL}their-side.html`);
}

/**
 * Resolves to true when this page has given way and must draw nothing. Until then it also follows the other tabs and the
 * browser's own cache of pages; `flush` writes what is not yet kept, since a tab that gives way is gone.
 */
export async function gaveWay(flush: () => Promise<void>): Promise<boolean> {
  if (flagged() === true) {
    giveWay();
    return true;
  }
  hearTurn((news) => {
    if (news === 'turned') void leaveInOrder(flush);
  });
  addEventListener('pageshow', ({ persisted }) => {
    if (persisted) void lookAgain();
  });
  const turned = await isTurned();
  if (turned) giveWay();
  return turned;
}

async function leaveInOrder(flush: () => Promise<void>): Promise<void> {
  if (isLeaving) return;
  cover('turning', true);
  document.body.replaceChildren();
  await Promise.race([flush(), new Promise((done) => setTimeout(done, FLUSH_MOST_MS))]);
  giveWay();
}

/** Writing takes a few milliseconds; a store that hangs must not keep this tab from turning. */
const FLUSH_MOST_MS = 1000;

/** A page out of the browser's cache is as it was left: perhaps before the turn, perhaps emptied by one that is over. */
async function lookAgain(): Promise<void> {
  const wasEmptied = document.body.childElementCount === 0;
  isLeaving = false;
  cover('cached', true);
  if (await isTurned()) giveWay();
  else if (wasEmptied) location.reload();
  else cover('cached', false);
}
