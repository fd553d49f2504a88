// The range beside the plan that is shown: computed when asked for, then after every new result again until it is stopped.
// An answer counts only for the results it was asked for; while newer ones are under way the last one stands, marked older.
// Worked example: rangeFor(session).ask(), then three edits in a second: the range of the third is the one that stays.
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { browserRangeWorker, createRangePool, type RangePool, workersFor } from '../compute/range-pool.ts';
import type { ExactCheck, Range } from '../domain/promise/range/index.ts';
import { DRAWS_USUAL, SEED_USUAL } from '../domain/promise/range/usual.ts';
import type { Results } from '../domain/results.ts';
import type { Session } from './session.ts';

export type { Driver, ExactCheck, Fan, Range } from '../domain/promise/range/index.ts';

/** Draws of the app, and the seed: `reckon --range 10000 --seed 1` prints the same. */
export const RANGE_DRAWS = DRAWS_USUAL;
export const RANGE_SEED = SEED_USUAL;

/** Milliseconds: what the page shows at first is not held up by workers that start. */
const SHOWN_FIRST = 400;
const PAINTED_FIRST = 50;

export interface RangeView {
  /** idle: not asked for, or stopped before anything was known. */
  at: 'idle' | 'running' | 'whole' | 'trouble';
  /** Share of the draws that were run, 0 to 1. */
  progress: number;
  /** The newest there is, which may be of fewer draws; null before any. */
  range: Range | null;
  /** Null until the whole range was checked. */
  exactCheck: ExactCheck | null;
  /** Of results that are no longer shown. */
  older: boolean;
  /** A sentence, where `at` is trouble. */
  trouble: string;
}

export interface RangeWork {
  view: ReadonlySignal<RangeView>;
  /** Starts the workers in a while: to be called where it can be asked for. Call what it returns when it no longer can be. */
  expect: () => () => void;
  /** Computes the range of what is shown, and of every result after it, until stop(). */
  ask: () => void;
  /** Ends the work; what is known stays for as long as it fits the results. */
  stop: () => void;
}

type Watched = Pick<Session, 'plan' | 'results' | 'revision'>;

interface Found {
  planId: string;
  results: Results;
  progress: number;
  range: Range | null;
  exactCheck: ExactCheck | null;
  trouble: string;
}

const works = new WeakMap<Watched, RangeWork>();

/** The one range of a session, whichever views show it. */
export function rangeFor(session: Watched): RangeWork {
  const known = works.get(session);
  if (known) return known;
  const made = makeRangeWork(session, () =>
    createRangePool(browserRangeWorker, workersFor(navigator.hardwareConcurrency)),
  );
  works.set(session, made);
  return made;
}

export function makeRangeWork({ plan, results, revision }: Watched, newPool: () => RangePool): RangeWork {
  const wanted = signal<string | null>(null);
  const found = signal<Found | null>(null);
  const pool = newPool();
  let askedOf: Results | null = null;
  let soon: ReturnType<typeof setTimeout> | undefined;

  const stop = (): void => {
    clearTimeout(soon);
    wanted.value = null;
    askedOf = null;
    pool.stop();
  };
  const start = (planId: string, of: Results): void => {
    const now = plan.peek();
    if (now === null || wanted.peek() !== planId) return;
    pool.ask({ plan: now, draws: RANGE_DRAWS, seed: RANGE_SEED }, (told) => {
      const before = found.peek();
      const kept = before?.planId === planId ? before : null;
      if ('trouble' in told) {
        found.value = {
          planId,
          results: of,
          progress: 0,
          range: null,
          exactCheck: null,
          trouble: told.trouble,
        };
        wanted.value = null;
        askedOf = null;
        return;
      }
      const progress = told.done / RANGE_DRAWS;
      // Until the first draws of a newer plan are read, the older range stays in sight.
      if (told.range === null && kept !== null && kept.results !== of) found.value = { ...kept, progress };
      else found.value = { planId, results: of, ...told, progress, trouble: '' };
    });
  };
  effect(() => {
    const shown = results.value;
    const open = plan.value?.id ?? null;
    const isNew = shown !== null && shown.revision === revision.value && shown.results !== askedOf;
    if (wanted.value === null) return;
    if (open !== wanted.value) stop();
    else if (isNew) {
      clearTimeout(soon);
      // The first is waited for; the next ones let the page show what was typed, before workers take every core.
      if (askedOf === null) start(open, shown.results);
      else soon = setTimeout(() => start(open, shown.results), PAINTED_FIRST);
      askedOf = shown.results;
    }
  });
  return {
    view: computed(() => viewOf(found.value, wanted.value !== null, plan.value?.id, results.value?.results)),
    expect: () => {
      const timer = setTimeout(() => {
        const now = plan.peek();
        if (now !== null) pool.warmUp({ plan: now, draws: RANGE_DRAWS, seed: RANGE_SEED });
      }, SHOWN_FIRST);
      return () => clearTimeout(timer);
    },
    ask: () => {
      wanted.value = plan.peek()?.id ?? null;
    },
    stop,
  };
}

const IDLE: RangeView = {
  at: 'idle',
  progress: 0,
  range: null,
  exactCheck: null,
  older: false,
  trouble: '',
};

function viewOf(
  found: Found | null,
  isWanted: boolean,
  planId: string | undefined,
  shown: Results | undefined,
): RangeView {
  if (found === null || found.planId !== planId) return isWanted ? { ...IDLE, at: 'running' } : IDLE;
  const { progress, range, exactCheck, trouble } = found;
  const older = found.results !== shown;
  if (trouble !== '') return older ? IDLE : { ...IDLE, at: 'trouble', trouble };
  const isWhole = !older && exactCheck !== null && range !== null && range.draws === RANGE_DRAWS;
  if (!isWanted && range === null) return IDLE;
  const at = isWhole ? 'whole' : isWanted ? 'running' : 'idle';
  return { at, progress, range, exactCheck, older, trouble };
}
