// The one database of the app: 'firstfill', two stores. Its version changes only when stores or indexes change; what a
// plan looks like has a version of its own, inside each plan. Opening answers with a store or a refusal, never hangs on
// another tab, and gives way to a newer one.
// Worked example: while an older tab keeps the database open, openStore answers 'store-blocked' and, should the old tab
// close later, lets go of what it then gets.
import { type DBSchema, type IDBPDatabase, type OpenDBCallbacks, openDB } from 'idb';
import { type Reading, type Refusal, type Refused, refused } from '../plan-format/index.ts';

export const DATABASE_NAME = 'firstfill';
export const DATABASE_VERSION = 1;

/** A plan as it is kept. `plan` is whatever was saved, of its own format version: it is read by plan-format alone. */
export interface PlanRecord {
  id: string;
  name: string;
  /** Milliseconds since 1970, by the clock that was passed in. */
  updatedAt: number;
  /** Goes up by one with every accepted edit. */
  revision: number;
  plan: unknown;
  /** The plan as it was before its format was migrated, until the save after next; else null. */
  previous: unknown;
}

interface Tables extends DBSchema {
  plans: { key: string; value: PlanRecord };
  meta: { key: string; value: unknown };
}

export interface Store {
  database: IDBPDatabase<Tables>;
  /** Why nothing may be written any more (a newer tab took over, the browser closed the store), or null. */
  closedBy: () => Refusal | null;
  /** Stops all writing from now on; reading goes on where it can. */
  stopWriting: (refusal: Refusal) => void;
  close: () => void;
}

/** Opens the store, making it on the first start. `onClosed` is told once when it is taken away later. */
export function openStore(onClosed: (refusal: Refusal) => void): Promise<Reading<Store>> {
  return new Promise((resolve) => {
    let givenUp = false;
    let closedBy: Refusal | null = null;
    let database: IDBPDatabase<Tables> | null = null;
    const close = ({ refusal }: Refused): void => {
      database?.close();
      if (closedBy === null) onClosed(refusal);
      closedBy ??= refusal;
    };
    const stopWriting = (refusal: Refusal): void => {
      closedBy ??= refusal;
    };
    const blocked = (): void => {
      givenUp = true;
      resolve(BLOCKED);
    };
    openTables({ blocked, blocking: () => close(NEWER_TAB), terminated: () => close(TAKEN_AWAY) }).then(
      (opened) => {
        database = opened;
        if (givenUp) return opened.close();
        const store = {
          database: opened,
          closedBy: () => closedBy,
          stopWriting,
          close: () => opened.close(),
        };
        resolve({ ok: true, value: store });
      },
      (error: unknown) => resolve(openRefusal(error)),
    );
  });
}

/** Async, since some browsers throw at the mere mention of a storage that is switched off. */
async function openTables(events: Pick<OpenDBCallbacks<Tables>, 'blocked' | 'blocking' | 'terminated'>) {
  if (typeof indexedDB === 'undefined') throw new Error('no storage for pages');
  return await openDB<Tables>(DATABASE_NAME, DATABASE_VERSION, {
    ...events,
    upgrade: (database, oldVersion) => {
      if (oldVersion >= 1) return;
      database.createObjectStore('plans', { keyPath: 'id' });
      database.createObjectStore('meta');
    },
  });
}

const BLOCKED = refused(
  'store-blocked',
  'Another tab keeps an older version of this app open. Close the other tabs, then try again.',
  null,
);

const NEWER_TAB = refused(
  'store-closed',
  'A newer version of this app was opened in another tab. Reload this page to go on; what was saved is kept.',
  null,
);

const TAKEN_AWAY = refused(
  'store-closed',
  'The browser closed the storage of this app. Save open work as a file, then reload the page.',
  null,
);

function openRefusal(error: unknown): Reading<Store> {
  const name =
    error instanceof DOMException ? error.name : error instanceof Error ? error.message : String(error);
  if (name === 'VersionError') {
    return refused(
      'store-newer',
      'The plans on this device were kept by a newer version of this app. Reload the page to get it; nothing was changed.',
      null,
    );
  }
  return name === 'QuotaExceededError' ? FULL : unavailable(name);
}

/** Said whenever there is no room: the edit stays in memory. */
export const FULL = refused(
  'store-full',
  'This device has no room left for plans. Nothing was lost: save this plan as a file, then free some space.',
  null,
);

function unavailable(reason: string): Reading<Store> {
  return refused(
    'store-unavailable',
    `This device won't store plans here (${reason}), perhaps because of a private window. Save your plan as a file before you close.`,
    null,
  );
}
