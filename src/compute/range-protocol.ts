// What travels between the page and the workers of a range: a plan to make ready, chunks of draws to run, chunks to keep
// and to read together, some draws to run exactly. Typed arrays are handed over, not copied.
// Worked example: chunk [500, 1000) is run by the second worker, passed on, and kept by the first, which reads all of them.
import type { Plan } from '../domain/plan/index.ts';
import type { Chunk, ExactCheck, Range } from '../domain/promise/range/index.ts';

export type RangeRequest =
  /** `as`: the question, if any, that had the same plan and seed: a worker that was made ready for it is so for this one. */
  | { kind: 'setUp'; id: number; plan: Plan; seed: number; as: number | null }
  /** Runs draws [from, until): keeps them itself, or gives them to be passed on. */
  | { kind: 'run'; id: number; from: number; until: number; keep: boolean }
  | { kind: 'keep'; id: number; chunk: Chunk }
  /** Reads all chunks kept so far; `last` lets go of them. */
  | { kind: 'read'; id: number; last: boolean }
  | { kind: 'check'; id: number; draws: number };

export type RangeResponse =
  | { kind: 'ran'; id: number; count: number; chunk: Chunk | null }
  | { kind: 'read'; id: number; range: Range }
  | { kind: 'checked'; id: number; check: ExactCheck }
  /** A sentence: the plan can't be computed, or a bug. */
  | { kind: 'trouble'; id: number; trouble: string };

/** What a worker must offer: the browser's, or a test's. */
export interface RangePort {
  postMessage: (request: RangeRequest, transfer: Transferable[]) => void;
  terminate: () => void;
  onmessage: ((event: MessageEvent<RangeResponse>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** The memory of a chunk, to be handed over. */
export function buffersOf({ cash, revenue, doors, lowest, need, causes }: Chunk): Transferable[] {
  return [cash, revenue, doors, lowest, need, causes].map(({ buffer }) => buffer as ArrayBuffer);
}
