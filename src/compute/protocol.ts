// What travels between the page and the worker: a job with its plan, and its answer. Plain data both ways, so that
// structured clone carries it; this file alone is imported on both sides.
import type { Plan } from '../domain/plan/index.ts';
import type { LeansOn, VerdictName } from '../domain/results.ts';
import type { LeastOpeningCash, MostDoors } from '../domain/rollout/solve.ts';

/** Work that takes many runs of the model. */
export type Job =
  | { kind: 'leansOn'; plan: Plan }
  | { kind: 'mostDoors'; plan: Plan; accountId: string }
  | { kind: 'leastOpeningCash'; plan: Plan };

export interface Answers {
  leansOn: Record<VerdictName, LeansOn | null>;
  mostDoors: MostDoors | null;
  leastOpeningCash: LeastOpeningCash;
}

export interface Request {
  id: number;
  job: Job;
}

/** `trouble` is a sentence: the plan can't be computed, or a bug; the page shows it where the answer would stand. */
export type Response =
  | { id: number; ok: true; answer: Answers[keyof Answers] }
  | { id: number; ok: false; trouble: string };
