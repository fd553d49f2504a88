// The worker's side of a range, without a worker around it, so that tests and the worker run the same code. It knows one
// plan at a time: what is asked of an earlier one is left unanswered.
// Worked example: setUp 7, then run 7 [0, 500) and read 7 answer a range of 500 draws; run 6 after that answers nothing.
import { isoDateOf } from '../domain/calendar.ts';
import { evaluate, type SayFor } from '../domain/evaluate.ts';
import { sentence } from '../domain/problems.ts';
import {
  type Chunk,
  checkExactly,
  mergeChunks,
  type RangeSetup,
  runChunk,
  setUpRange,
} from '../domain/promise/range/index.ts';
import { isTooLarge } from '../domain/rollout/exact.ts';
import { plainSay } from '../domain/verdicts/say.ts';
import { buffersOf, type RangeRequest, type RangeResponse } from './range-protocol.ts';

type Post = (response: RangeResponse, transfer: Transferable[]) => void;

/** Sentences made here are never shown; the page has its own words. */
const sayFor: SayFor = ({ minorDigits, startDay }) => plainSay({ minorDigits, startDay, dateOf: isoDateOf });

export function rangeWorker(post: Post): (request: RangeRequest) => void {
  let ready: { id: number; setup: RangeSetup } | null = null;
  let kept: Chunk[] = [];

  const setUp = ({ id, plan, seed, as }: RangeRequest & { kind: 'setUp' }): void => {
    kept = [];
    if (ready !== null && ready.id === as) {
      ready = { id, setup: ready.setup };
      return;
    }
    ready = null;
    const results = evaluate(plan, sayFor);
    if (results.ok) ready = { id, setup: setUpRange({ plan, results: results.value, seed }) };
    else post({ kind: 'trouble', id, trouble: results.problems.map(sentence).join(' ') }, []);
  };
  const run = (setup: RangeSetup, request: RangeRequest & { kind: 'run' }): void => {
    const { id, from, until, keep } = request;
    const chunk = runChunk(setup, from, until);
    if (keep) kept.push(chunk);
    const transfer = keep ? [] : buffersOf(chunk);
    post({ kind: 'ran', id, count: chunk.count, chunk: keep ? null : chunk }, transfer);
  };
  const answer = (request: RangeRequest): void => {
    if (request.kind === 'setUp') {
      setUp(request);
      return;
    }
    if (ready?.id !== request.id) return;
    const { id, setup } = ready;
    if (request.kind === 'run') run(setup, request);
    else if (request.kind === 'keep') kept.push(request.chunk);
    else if (request.kind === 'check')
      post({ kind: 'checked', id, check: checkExactly(setup, request.draws) }, []);
    else {
      post({ kind: 'read', id, range: mergeChunks(kept, setup.coarse.weeks) }, []);
      if (request.last) kept = [];
    }
  };
  return (request) => {
    try {
      answer(request);
    } catch (error) {
      post({ kind: 'trouble', id: request.id, trouble: troubleOf(error) }, []);
    }
  };
}

/** Promise calls its spreads so. */
const DRAWN_TOO_LARGE =
  'The range can’t be drawn: with spreads this wide some draws’ amounts are too large to add up exactly. Expected narrower ' +
  'ones under “How far things may come out otherwise”.';

function troubleOf(error: unknown): string {
  if (isTooLarge(error)) return DRAWN_TOO_LARGE;
  return `A fault in the app: ${error instanceof Error ? error.message : String(error)}`;
}
