// Turning the page to the other side of a table, and letting go of it: the database first, then the flag, so that no tab
// sees the flag before there is something to show. What is kept is described in turned.ts.
// Worked example: keepTurn({ record, back: '#/p/spring/table', code: null, scheme: null }), then dropTurn().
import { TURN_NAME, type Turn, type TurnNews, withinTurns } from './turned.ts';

/** Rejects when the device refuses; then nothing is turned. */
export async function keepTurn(turn: Turn): Promise<void> {
  await withinTurns((database) => database.put('turns', turn, 'now'));
  try {
    localStorage.setItem(TURN_NAME, 'turned');
  } catch {
    // The database says it, a moment later.
  }
}

/** Rejects when the device refuses; then it stays turned. */
export async function dropTurn(): Promise<void> {
  await withinTurns((database) => database.delete('turns', 'now'));
  try {
    localStorage.removeItem(TURN_NAME);
  } catch {
    // Never written, where it can't be removed.
  }
}

/** Tells the other tabs; those that hear nothing see the flag change. */
export function tellTurn(news: TurnNews): void {
  if (typeof BroadcastChannel === 'undefined') return;
  const channel = new BroadcastChannel(TURN_NAME);
  channel.postMessage(news);
  channel.close();
}
