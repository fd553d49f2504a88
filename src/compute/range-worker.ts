// The entry of a range's worker: requests in the order they come. Worked example: see range-jobs.ts, which does the work.
import { rangeWorker } from './range-jobs.ts';
import type { RangeRequest } from './range-protocol.ts';

declare const self: DedicatedWorkerGlobalScope;

const answer = rangeWorker((response, transfer) => self.postMessage(response, transfer));

self.onmessage = (event: MessageEvent<RangeRequest>) => answer(event.data);
