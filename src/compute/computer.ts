// The page's side of long work: a worker started when first needed, jobs told apart by number, and cancelling by ending
// the worker (a running job can't be interrupted otherwise). Worked example: computer.run(job) gives { answer, cancel }.
import type { Answers, Job, Request, Response } from './protocol.ts';

export interface Running<Kind extends keyof Answers> {
  /** The answer, or a sentence saying why there is none; null when it was cancelled. */
  answer: Promise<Answer<Kind> | null>;
  cancel: () => void;
}
export type Answer<Kind extends keyof Answers> =
  | { ok: true; value: Answers[Kind] }
  | { ok: false; trouble: string };

export interface Computer {
  run: <J extends Job>(job: J) => Running<J['kind']>;
  stop: () => void;
}

/** What a worker must offer: the browser's, or a test's. */
export interface WorkerPort {
  postMessage: (request: Request) => void;
  terminate: () => void;
  onmessage: ((event: MessageEvent<Response>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

type Settle = (response: Response | null) => void;

export function createComputer(newWorker: () => WorkerPort): Computer {
  let worker: WorkerPort | null = null;
  let lastId = 0;
  const waiting = new Map<number, { job: Job; settle: Settle }>();

  const started = (): WorkerPort => {
    if (worker) return worker;
    const fresh = newWorker();
    fresh.onmessage = ({ data }) => settle(data.id, data);
    fresh.onerror = (event) => failAll(event.message);
    worker = fresh;
    return fresh;
  };
  const settle = (id: number, response: Response | null) => {
    const entry = waiting.get(id);
    waiting.delete(id);
    entry?.settle(response);
  };
  const failAll = (message: string) => {
    for (const id of [...waiting.keys()])
      settle(id, { id, ok: false, trouble: `The worker stopped: ${message}` });
    worker = null;
  };
  /** Ends the running worker and gives what else was waiting to a new one. */
  const cancel = (id: number) => {
    if (!waiting.has(id)) return;
    settle(id, null);
    worker?.terminate();
    worker = null;
    for (const [other, { job }] of waiting) started().postMessage({ id: other, job });
  };
  return {
    run: (job) => {
      const id = ++lastId;
      const answer = new Promise<Response | null>((resolve) => {
        waiting.set(id, { job, settle: resolve });
      });
      started().postMessage({ id, job });
      // The job's kind decides the answer's type; the worker keeps to it (jobs.ts).
      return { answer: answer.then(asAnswer) as never, cancel: () => cancel(id) };
    },
    stop: () => {
      for (const id of [...waiting.keys()]) settle(id, null);
      worker?.terminate();
      worker = null;
    },
  };
}

function asAnswer(response: Response | null): Answer<keyof Answers> | null {
  if (response === null) return null;
  return response.ok ? { ok: true, value: response.answer } : { ok: false, trouble: response.trouble };
}

/** The browser's worker; a module worker of our own origin, as the content security policy asks. */
export function browserWorker(): WorkerPort {
  return new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
}
