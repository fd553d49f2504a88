// What is kept while the page is turned to the other side of a table: the record that side may see, and where to go back
// to. A database of its own, so that the turned page never opens the plans; and one flag in localStorage besides, which
// a start can read before it draws anything. Where a browser refuses localStorage, the database alone says it.
// Worked example: keepTurn({ record, back: '#/p/spring/table', code: null, scheme: null }); from then on isTurned() is true
// in every tab, until dropTurn().
import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** Also the name of the flag, and of the channel on which tabs tell each other. */
const NAME = 'firstfill-their-side';

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
    return localStorage.getItem(NAME) !== null;
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
    return await within((database) => database.get('turns', 'now').then((turn) => turn ?? null));
  } catch {
    return null;
  }
}

/** Rejects when the device refuses; then nothing is turned. */
export async function keepTurn(turn: Turn): Promise<void> {
  await within((database) => database.put('turns', turn, 'now'));
  try {
    localStorage.setItem(NAME, 'turned');
  } catch {
    // The database says it, a moment later.
  }
}

/** Rejects when the device refuses; then it stays turned. */
export async function dropTurn(): Promise<void> {
  await within((database) => database.delete('turns', 'now'));
  try {
    localStorage.removeItem(NAME);
  } catch {
    // Never written, where it can't be removed.
  }
}

/** Tells the other tabs; those that hear nothing see the flag change. */
export function tellTurn(news: TurnNews): void {
  if (typeof BroadcastChannel === 'undefined') return;
  const channel = new BroadcastChannel(NAME);
  channel.postMessage(news);
  channel.close();
}

/** Hears when another tab turns or lets go, by whichever way comes first. */
export function hearTurn(hear: (news: TurnNews) => void): void {
  addEventListener('storage', ({ key, newValue }) => {
    if (key === NAME) hear(newValue === null ? 'released' : 'turned');
  });
  if (typeof BroadcastChannel === 'undefined') return;
  new BroadcastChannel(NAME).onmessage = ({ data }: MessageEvent<unknown>) => {
    if (data === 'turned' || data === 'released') hear(data);
  };
}

async function within<T>(act: (database: IDBPDatabase<Tables>) => Promise<T>): Promise<T> {
  if (typeof indexedDB === 'undefined') throw new Error('no storage for pages');
  const database = await openDB<Tables>(NAME, 1, {
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
