// The page's side of a range: deals chunks of draws out to a few workers, has the first of them read what there is early
// on and at the end, and some draws run exactly. Draw n is the same wherever it is run, so the range is the same for any
// number of workers. What was stopped, or asked before a newer question, is never answered.
// Worked example: 10,000 draws are 20 chunks of 500; the range is read after 500, after 2,500 and after all of them.
import type { Plan } from '../domain/plan/index.ts';
import type { ExactCheck, Range } from '../domain/promise/range/index.ts';
import { buffersOf, type RangePort, type RangeResponse } from './range-protocol.ts';

export interface RangeQuestion {
  plan: Plan;
  draws: number;
  seed: number;
}

/** What was found so far; each call knows more than the one before. */
export interface RangeSoFar {
  /** Draws run, 0 to those asked for. */
  done: number;
  /** Of the draws it names, which may be fewer. */
  range: Range | null;
  exactCheck: ExactCheck | null;
}

export interface RangePool {
  /** Starts the workers on a plan that may soon be asked about, so that the first answer needn't wait for that. */
  warmUp: (question: RangeQuestion) => void;
  /** Asks anew, in place of what was asked before; `tell` is called until all is known, or there is trouble. */
  ask: (question: RangeQuestion, tell: (found: RangeSoFar | { trouble: string }) => void) => void;
  /** Ends the workers; nothing more is told of what was asked. */
  stop: () => void;
}

const CHUNK = 500;
/** Chunks after which the range is read before it is whole. */
const READ_AFTER = [1, 5];

/** Workers to use where so many can run side by side (undefined: not known): 2 where there are two, the page itself does little. */
export function workersFor(cores: number | undefined): number {
  return Math.max(1, Math.min(2, cores ?? 2));
}

interface Asked extends RangeQuestion, RangeSoFar {
  id: number;
  tell: (found: RangeSoFar | { trouble: string }) => void;
  /** First draw that nobody runs yet, and chunks that are kept. */
  next: number;
  keptChunks: number;
}

type Ran = RangeResponse & { kind: 'ran' };

interface Pool {
  newWorker: () => RangePort;
  count: number;
  workers: RangePort[];
  asked: Asked | null;
  lastId: number;
  /** What the workers were last made ready for. */
  last: { id: number; plan: Plan; seed: number } | null;
}

export function createRangePool(newWorker: () => RangePort, count: number): RangePool {
  const pool: Pool = { newWorker, count, workers: [], asked: null, lastId: 0, last: null };
  return {
    warmUp: (question) => warmUp(pool, question),
    ask: (question, tell) => ask(pool, question, tell),
    stop: () => stop(pool),
  };
}

/** Draws that nobody is told of: by then the browser has compiled most of what runs and reads them. */
const WARM_UP_DRAWS = 1000;

function warmUp(pool: Pool, question: RangeQuestion): void {
  if (pool.workers.length > 0) return;
  start(pool);
  const id = setUp(pool, question);
  for (const worker of pool.workers) {
    worker.postMessage({ kind: 'run', id, from: 0, until: WARM_UP_DRAWS, keep: true }, []);
    worker.postMessage({ kind: 'read', id, last: true }, []);
  }
}

function ask(pool: Pool, question: RangeQuestion, tell: Asked['tell']): void {
  if (pool.workers.length === 0) start(pool);
  const asked: Asked = { ...question, id: setUp(pool, question), tell, ...NOTHING_YET };
  pool.asked = asked;
  for (const worker of pool.workers) dealTo(pool, worker, asked);
  // One more, so that no worker waits for the page between them; but the first one, which reads first what it has.
  for (const worker of pool.workers.slice(1)) dealTo(pool, worker, asked);
}

/** Has every worker made ready; returns the number that this question goes by. */
function setUp(pool: Pool, { plan, seed }: RangeQuestion): number {
  const { last } = pool;
  const as = last?.plan === plan && last.seed === seed ? last.id : null;
  pool.lastId += 1;
  const id = pool.lastId;
  pool.last = { id, plan, seed };
  for (const worker of pool.workers) worker.postMessage({ kind: 'setUp', id, plan, seed, as }, []);
  return id;
}

const NOTHING_YET = { done: 0, range: null, exactCheck: null, next: 0, keptChunks: 0 };

function start(pool: Pool): void {
  pool.workers = Array.from({ length: pool.count }, () => {
    const worker = pool.newWorker();
    worker.onmessage = ({ data }) => hear(pool, worker, data);
    worker.onerror = ({ message }) => fail(pool, `The worker stopped: ${message}`);
    return worker;
  });
}

function stop(pool: Pool): void {
  pool.asked = null;
  for (const worker of pool.workers) worker.terminate();
  pool.workers = [];
  pool.last = null;
}

function fail(pool: Pool, trouble: string): void {
  const tell = pool.asked?.tell;
  stop(pool);
  tell?.({ trouble });
}

function dealTo({ workers }: Pool, worker: RangePort, asked: Asked): void {
  if (asked.next >= asked.draws) return;
  const { id, next: from } = asked;
  const until = Math.min(asked.draws, from + CHUNK);
  asked.next = until;
  worker.postMessage({ kind: 'run', id, from, until, keep: worker === workers[0] }, []);
}

function hear(pool: Pool, worker: RangePort, response: RangeResponse): void {
  const { asked } = pool;
  if (asked === null || response.id !== asked.id) return;
  if (response.kind === 'trouble') {
    fail(pool, response.trouble);
    return;
  }
  if (response.kind === 'ran') ran(pool, worker, asked, response);
  else if (response.kind === 'read') asked.range = response.range;
  else asked.exactCheck = response.check;
  const { done, range, exactCheck } = asked;
  asked.tell({ done, range, exactCheck });
}

function ran(pool: Pool, worker: RangePort, asked: Asked, { count, chunk }: Ran): void {
  const { id, draws } = asked;
  const [first] = pool.workers;
  asked.done += count;
  asked.keptChunks += 1;
  // Kept before it is read: a worker takes messages in their order.
  if (chunk !== null) first?.postMessage({ kind: 'keep', id, chunk }, buffersOf(chunk));
  const isWhole = asked.done === draws;
  if (isWhole || READ_AFTER.includes(asked.keptChunks))
    first?.postMessage({ kind: 'read', id, last: isWhole }, []);
  if (isWhole) pool.workers.at(-1)?.postMessage({ kind: 'check', id, draws }, []);
  dealTo(pool, worker, asked);
}

/** Of the browser: a module worker of our own origin, as the content security policy asks. */
export function browserRangeWorker(): RangePort {
  return new Worker(new URL('./range-worker.ts', import.meta.url), { type: 'module' });
}
