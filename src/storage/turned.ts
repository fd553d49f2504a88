// Whether the page is turned to the other side of a table, and what is kept while it is: the record that side may see and
// where to go back to. A database of its own, so that the turned page never opens the plans; and one flag in localStorage
// besides, which a start reads before it draws anything. Where a browser refuses localStorage, the database alone says it.
// Only what every start needs stands here; turning and letting go are in their-side.ts.
// Worked example: after keepTurn({ record, back: '#/p/spring/table', ... }) isTurned() is true in every tab.
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** Also the name of the flag, and of the channel on which tabs tell each other. */
export const TURN_NAME = 'firstfill-their-side';

export interface Turn {
  /** What the other side may see; whoever shows it checks it. */
  record: unknown;
  /** The address to go back to: "#/..." */
  back: string;
  /** Four digits that let go of it without holding a key, or null. Kept as typed: it keeps a casual look away, no more. */
  code: string | null;
  /** The colour scheme the person chose, or null for the device's own. */
  scheme: string | null;
}

/** What one tab tells the others. */
export type TurnNews = 'turned' | 'released';

interface Tables extends DBSchema {
  turns: { key: 'now'; value: Turn };
}

/** True or false by the flag alone, at once; null where this browser refuses to say. */
export function flagged(): boolean | null {
  try {
    return localStorage.getItem(TURN_NAME) !== null;
  } catch {
    return null;
  }
}

/** By the flag or the database. A browser that keeps nothing can't have been turned. */
export async function isTurned(): Promise<boolean> {
  return flagged() === true || (await readTurn()) !== null;
}

/** What is kept, or null: nothing, or nothing that can be read. */
export async function readTurn(): Promise<Turn | null> {
  try {
    return await withinTurns((database) => database.get('turns', 'now').then((turn) => turn ?? null));
  } catch {
    return null;
  }
}

/** Hears when another tab turns or lets go, by whichever way comes first. */
export function hearTurn(hear: (news: TurnNews) => void): void {
  addEventListener('storage', ({ key, newValue }) => {
    if (key === TURN_NAME) hear(newValue === null ? 'released' : 'turned');
  });
  if (typeof BroadcastChannel === 'undefined') return;
  new BroadcastChannel(TURN_NAME).onmessage = ({ data }: MessageEvent<unknown>) => {
    if (data === 'turned' || data === 'released') hear(data);
  };
}

/** Acts on the database, and lets go of it. Rejects where the device refuses. */
export async function withinTurns<T>(act: (database: IDBPDatabase<Tables>) => Promise<T>): Promise<T> {
  if (typeof indexedDB === 'undefined') throw new Error('no storage for pages');
  const database = await openDB<Tables>(TURN_NAME, 1, {
    upgrade: (made) => {
      made.createObjectStore('turns');
    },
  });
  try {
    return await act(database);
  } finally {
    database.close();
  }
}
