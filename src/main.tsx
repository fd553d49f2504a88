// Where the app is put together: the one file that sees every room. The session gets the model, the browser and the
// examples; the shell gets the session; the service worker says when a new version waits and is told when to take over.
// Worked example: a first start opens the store, finds no plan, and shows the first example's four verdicts.
import { render } from 'preact';
import type { Workbox } from 'workbox-window';
import { browserDeps } from './app/browser.ts';
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
  let worker: Workbox | null = null;
  const waiting: (() => void)[] = [];
  return {
    port: {
      onWaiting: (tell) => waiting.push(tell),
      activate: () => worker?.messageSkipWaiting(),
    },
    follow: async (session) => {
      try {
        const { Workbox } = await import('workbox-window');
        worker = new Workbox(`${import.meta.env.BASE_URL}sw.js`);
        worker.addEventListener('waiting', () => {
          for (const tell of waiting) tell();
        });
        reloadWhenReplaced(worker, session);
        lookNowAndThen(worker);
        await worker.register();
      } catch {
        // Without a service worker the app works as long as it is open, or there is a network.
      }
    },
  };
}

/** A new version took over, asked for here or in another tab: write everything first; what could not be written stays. */
function reloadWhenReplaced(worker: Workbox, session: Session): void {
  worker.addEventListener('controlling', (event) => {
    if (!event.isUpdate) return;
    void session.flush().then(() => {
      if (session.saving.value !== 'unsaved') location.reload();
    });
  });
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
