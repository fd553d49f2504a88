/**
 * A session with everything around it made up: an address bar that remembers, a device that says what was downloaded, a
 * clock that stands still, ids in order, and several tabs on one store. The model is made up too: it counts doors, finds
 * no answer for a plan named so, and throws for another, so that the app is on trial and nothing else.
 */
import 'fake-indexeddb/auto';
import {
  createSession,
  type HistoryPort,
  type PlanFile,
  type Session,
  type SessionDeps,
} from '../../src/app/session.ts';
import type { Answer, Computer } from '../../src/compute/computer.ts';
import type { Answers } from '../../src/compute/protocol.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { fine, type Outcome, trouble } from '../../src/domain/problems.ts';
import type { Results } from '../../src/domain/results.ts';
import * as gate from '../../src/plan-format/gate.ts';
import { FORMAT_VERSION, planText } from '../../src/plan-format/index.ts';
import { type News, openStore, type Tabs } from '../../src/storage/index.ts';
import { examplePlan } from '../storage/store.ts';

export const UNCOMPUTABLE = 'has no answer';
export const BROKEN = 'breaks the model';

export interface Around {
  deps: SessionDeps;
  /** Addresses, the last one shown; the mark says whether it was pushed as a sheet. */
  entries: { hash: string; isSheet: boolean }[];
  downloads: PlanFile[];
  persistAsked: number;
  evaluated: number;
  activated: number;
  /** Leans asked for and not yet answered. */
  asked: ((leans: Answers['leansOn'] | null) => void)[];
  goOffline: () => void;
  goOnline: () => void;
  hide: () => void;
  newVersion: () => void;
  /** As if the person changed the address by hand. */
  visit: (hash: string) => void;
}

/** Tabs of one device: news goes to all but the teller, at once. */
export function makeDevice(): { tab: () => Tabs; tell: (news: News) => void } {
  const ears = new Map<object, (news: News) => void>();
  const tellOthers = (teller: object, news: News): void => {
    for (const [tab, hear] of ears) if (tab !== teller) hear(news);
  };
  return {
    tell: (news) => tellOthers({}, news),
    tab: () => {
      const self: Tabs = {
        tell: (telling) => tellOthers(self, { ...telling, format: FORMAT_VERSION }),
        listen: (hear) => ears.set(self, hear),
        close: () => ears.delete(self),
      };
      return self;
    },
  };
}

export function around(tabs: Tabs = makeDevice().tab(), hash = ''): Around {
  const calls = { online: () => {}, hide: () => {}, update: () => {}, address: () => {} };
  let isOnline = true;
  let time = 1_000_000;
  let ids = 0;
  const own: Around = {
    entries: [{ hash, isSheet: false }],
    downloads: [],
    persistAsked: 0,
    evaluated: 0,
    activated: 0,
    asked: [],
    goOffline: () => set(false),
    goOnline: () => set(true),
    hide: () => calls.hide(),
    newVersion: () => calls.update(),
    visit: (next) => {
      own.entries.push({ hash: next, isSheet: false });
      calls.address();
    },
    deps: undefined as never,
  };
  const set = (next: boolean): void => {
    isOnline = next;
    calls.online();
  };
  own.deps = {
    evaluate: (plan) => {
      own.evaluated += 1;
      return countDoors(plan);
    },
    computer: answering(own),
    examples: [example('example-a', 'Example A'), example('example-b', 'Example B')],
    partsOf: (value, shape) => new Intl.NumberFormat('en-US', shape).formatToParts(value),
    loadGate: () => Promise.resolve(gate),
    openStore,
    tabs,
    history: historyOf(own, (tell) => {
      calls.address = tell;
    }),
    device: {
      isOnline: () => isOnline,
      onOnlineChange: (tell) => {
        calls.online = tell;
      },
      onHide: (tell) => {
        calls.hide = tell;
      },
      download: (file) => own.downloads.push(file),
      share: null,
      askPersistent: () => {
        own.persistAsked += 1;
        return Promise.resolve(true);
      },
    },
    update: {
      onWaiting: (tell) => {
        calls.update = tell;
      },
      activate: () => {
        own.activated += 1;
      },
    },
    clock: () => ++time,
    newId: () => `new-${++ids}`,
  };
  return own;
}

export async function started(own: Around): Promise<Session> {
  const session = createSession(own.deps);
  await session.start();
  return session;
}

/** A started session with the small plan open and saved. */
export async function withPlan(own: Around): Promise<Session> {
  const session = await started(own);
  await session.addPlan(examplePlan('small'));
  session.go({ view: 'front', planId: 'small', sheet: null });
  await settled(session);
  return session;
}

/** Everything offered is written, and every answer that was on its way is there. */
export async function settled(session: Session): Promise<void> {
  for (let turn = 0; turn < 10; turn += 1) {
    await session.flush();
    await new Promise((resolve) => setTimeout(resolve));
  }
}

/** What the made-up model counts. */
export function doorsOf(session: Session): number | undefined {
  return (session.results.value?.results as { doors?: number } | undefined)?.doors;
}

function countDoors(plan: Plan): Outcome<Results> {
  if (plan.name === BROKEN) throw new Error('books do not balance');
  if (plan.name === UNCOMPUTABLE) {
    return trouble({
      code: 'rung-unsolvable',
      path: 'accounts/corner/listings/tea/list',
      got: '-1',
      expected: 'a list price',
    });
  }
  const doors = plan.accounts.flatMap(({ waves }) => waves).reduce((sum, wave) => sum + wave.doors, 0);
  const state = doors > 100 ? 'holds' : 'fails';
  const verdict = { state };
  return fine({
    doors,
    verdicts: { ladder: verdict, deal: verdict, cash: verdict, promise: verdict },
  } as unknown as Results);
}

function example(id: string, name: string): { id: string; text: string } {
  return { id, text: planText({ ...examplePlan('small'), id, name }) };
}

function answering(own: Around): Computer {
  return {
    run: () => {
      const answer = new Promise<Answer<'leansOn'> | null>((resolve) => {
        own.asked.push((leans) => resolve(leans && { ok: true, value: leans }));
      });
      return { answer: answer as never, cancel: () => {} };
    },
    stop: () => {},
  };
}

function historyOf(own: Around, listen: (tell: () => void) => void): HistoryPort {
  let tellAddress = (): void => {};
  const last = () => own.entries.at(-1) ?? { hash: '', isSheet: false };
  return {
    hash: () => last().hash,
    push: (hash, isSheet) => own.entries.push({ hash, isSheet }),
    replace: (hash) => own.entries.splice(-1, 1, { ...last(), hash }),
    back: () => {
      own.entries.pop();
      tellAddress();
    },
    isSheet: () => last().isSheet,
    listen: (tell) => {
      tellAddress = tell;
      listen(tell);
    },
  };
}
