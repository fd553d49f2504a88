// The browser's side of what a session needs: the store, other tabs, the address, the device. The one file of this folder
// that touches the page; main.tsx passes what it makes into createSession.
// Worked example: createSession(browserDeps({ evaluate, examples, update }))
import { createComputer } from '../compute/computer.ts';
import type { Gate } from '../plan-format/index.ts';
import { askPersistent, downloadFile, fileSharing, openStore, openTabs } from '../storage/index.ts';
import type { Device, SessionDeps } from './core.ts';
import type { HistoryPort } from './navigation.ts';

export function browserDeps(
  own: Pick<SessionDeps, 'evaluate' | 'examples' | 'update'> & { locale: string },
): SessionDeps {
  return {
    evaluate: own.evaluate,
    examples: own.examples,
    update: own.update,
    computer: createComputer(newWorker),
    partsOf: (value, shape) => new Intl.NumberFormat(own.locale, shape).formatToParts(value),
    loadGate,
    openStore,
    tabs: openTabs(),
    history: browserHistory(),
    device: browserDevice(),
    clock: () => Date.now(),
    newId,
  };
}

/** What judges plans is a script of its own. main.tsx asks for it at once; the browser fetches it one time for all. */
export function loadGate(): Promise<Gate> {
  return import('../plan-format/gate.ts');
}

function newWorker(): Worker {
  return new Worker(new URL('../compute/worker.ts', import.meta.url), { type: 'module' });
}

/** 80 random bits as letters and digits: "p" and 20 hexadecimal digits. */
function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(10));
  return `p${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}

function browserHistory(): HistoryPort {
  return {
    hash: () => location.hash,
    push: (hash, isSheet) => history.pushState({ isSheet }, '', hash),
    replace: (hash) => history.replaceState(history.state, '', hash),
    back: () => history.back(),
    isSheet: () => isSheetState(history.state),
    listen: (tell) => {
      addEventListener('popstate', tell);
      addEventListener('hashchange', tell);
    },
  };
}

function isSheetState(state: unknown): boolean {
  return typeof state === 'object' && state !== null && 'isSheet' in state && state.isSheet === true;
}

function browserDevice(): Device {
  return {
    isOnline: () => navigator.onLine,
    onOnlineChange: (tell) => {
      addEventListener('online', tell);
      addEventListener('offline', tell);
    },
    onHide: (tell) => {
      document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && tell());
      addEventListener('pagehide', tell);
    },
    download: downloadFile,
    share: fileSharing(),
    askPersistent,
  };
}
