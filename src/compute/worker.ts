// The worker's entry: one job at a time, in the order they come. It knows nothing of pages or storage.
import { sentence } from '../domain/problems.ts';
import { jobAnswer } from './jobs.ts';
import type { Request, Response } from './protocol.ts';

declare const self: DedicatedWorkerGlobalScope;

self.onmessage = (event: MessageEvent<Request>) => {
  self.postMessage(responseTo(event.data));
};

function responseTo({ id, job }: Request): Response {
  try {
    const outcome = jobAnswer(job);
    if (outcome.ok) return { id, ok: true, answer: outcome.value };
    return { id, ok: false, trouble: outcome.problems.map(sentence).join(' ') };
  } catch (error) {
    return {
      id,
      ok: false,
      trouble: `A fault in the app: ${error instanceof Error ? error.message : String(error)}`,
    };
  }
}
