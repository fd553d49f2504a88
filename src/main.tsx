// Where the app is put together: the one file that sees every room. The session gets the model, the browser and the
// examples; the shell gets the session; the service worker says when a new version waits and is told when to take over.
// Worked example: a first start opens the store, finds no plan, and shows the first example's four verdicts.
import { render } from 'preact';
import type { Workbox } from 'workbox-window';
import { browserDeps, loadGate } from './app/browser.ts';
import { createSession, type Example, type Session, type UpdatePort } from './app/session.ts';
import { gaveWay } from './app/turned.ts';
import { evaluate } from './domain/evaluate.ts';
import { restoreScheme } from './screens/shared/scheme.ts';
import { browserLocale } from './screens/shared/screen-say.ts';
import { sayFor } from './screens/shared/use-say.ts';
import { Shell } from './screens/shell/index.tsx';
import './widgets/styles/index.css';

void run();

async function run(): Promise<void> {
  const page = document.getElementById('app');
  if (page === null) throw new Error('index.html has no place for the app');
  loadGate().catch(() => undefined); // on its way while the first screen is made; who needs it asks again
  let session: Session | null = null;
  const asked = gaveWay(async () => session?.flush());
  const [examples, isGone] = await Promise.all([loadExamples(), asked]);
  if (isGone) return;
  const updates = makeUpdates();
  session = createSession(
    browserDeps({
      evaluate: (plan) => evaluate(plan, sayFor),
      examples,
      update: updates.port,
      locale: browserLocale(),
    }),
  );
  catchFaults(session);
  render(<Shell session={session} />, page);
  try {
    await session.start();
    await restoreScheme(session);
  } catch (error) {
    session.reportBug(error);
  }
  if (import.meta.env.PROD && 'serviceWorker' in navigator) await updates.follow(session);
}

/** The examples as files; one that can't be fetched is left out: it is none of the person's own. */
async function loadExamples(): Promise<Example[]> {
  const { DEMOS } = await import('../demo-catalog/index.ts');
  const loaded = await Promise.all(
    DEMOS.map(({ id, load }) =>
      load().then(
        (file): Example[] => [{ id, text: JSON.stringify(file) }],
        () => [],
      ),
    ),
  );
  return loaded.flat();
}

const HOUR_MS = 3_600_000;

/** The service worker: fetched after the first screen, so the session is given a port that it is put behind later. */
function makeUpdates(): { port: UpdatePort; follow: (session: Session) => Promise<void> } {
  let letIn: () => void = () => undefined;
  const waiting: (() => void)[] = [];
  return {
    port: {
      onWaiting: (tell) => waiting.push(tell),
      activate: () => letIn(),
    },
    follow: async (session) => {
      try {
        const { Workbox } = await import('workbox-window');
        const worker = new Workbox(`${import.meta.env.BASE_URL}sw.js`);
        worker.addEventListener('waiting', () => {
          for (const tell of waiting) tell();
        });
        letIn = () => void askToTakeOver(worker, session);
        reloadWhenReplaced(worker, session);
        lookNowAndThen(worker);
        await worker.register();
      } catch {
        // Without a service worker the app works as long as it is open, or there is a network.
      }
    },
  };
}

const ASKED_TIMES = 5;
const ASKED_EVERY_MS = 1000;

/**
 * Asks the waiting version to take over. A browser holds it back while the old one still answers something for this
 * page: it is asked again, and at last the page is opened anew, so that nothing of the old one is left to wait for.
 */
async function askToTakeOver(worker: Workbox, session: Session): Promise<void> {
  for (let asked = 0; asked < ASKED_TIMES; asked++) {
    worker.messageSkipWaiting();
    await new Promise((done) => setTimeout(done, ASKED_EVERY_MS));
  }
  await reloadOnceKept(session);
}

/** A new version took over, asked for here or in another tab. */
function reloadWhenReplaced(worker: Workbox, session: Session): void {
  worker.addEventListener('controlling', (event) => {
    if (event.isUpdate) void reloadOnceKept(session);
  });
}

/** More than one thing asks for it; a second navigation would end the first. */
let isReloading = false;

/** Writes everything first; with what could not be written the page stays. */
async function reloadOnceKept(session: Session): Promise<void> {
  await session.flush();
  if (isReloading || session.saving.value === 'unsaved') return;
  isReloading = true;
  location.reload();
}

/** Looks for a new version when the app is come back to, once an hour at most. */
function lookNowAndThen(worker: Workbox): void {
  let lookedAt = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - lookedAt < HOUR_MS) return;
    lookedAt = Date.now();
    worker.update().catch(() => undefined); // no network: the next time will do
  });
}

/** What nothing else caught is a fault of the app: shown, with the plan as a file. */
function catchFaults(session: Session): void {
  addEventListener('error', ({ error }) => {
    if (error instanceof Error) session.reportBug(error);
  });
  addEventListener('unhandledrejection', ({ reason }) => {
    if (reason instanceof Error) session.reportBug(reason);
  });
}
