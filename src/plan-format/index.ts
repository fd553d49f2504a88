// The door of this room that the first screen waits for: what a plan file is called and how one is written, what a refusal
// is. Judging what comes in stands behind two more doors, fetched later: gate.ts, and for a file's text text.ts.
// Worked example: planFile(plan) is the file of a plan; gate.ts's planOfFile(JSON.parse(text)) gives the plan back, or
// says why not.

export type { Plan } from '../domain/plan/index.ts';
export type { Outcome, Problem } from '../domain/problems.ts';
export {
  FILE_CHARACTERS_MOST,
  FORMAT_NAME,
  planFile,
  planOfEnvelope,
  planText,
  rawPlanFile,
} from './envelope.ts';
export { FORMAT_VERSION, MIGRATIONS, type Migration, numberingFault } from './migrations/index.ts';
export type { Format, ReadPlan } from './parse.ts';
export {
  isRefused,
  type PlanFile,
  type Reading,
  type Refusal,
  type RefusalCode,
  type Refused,
  refused,
} from './refusal.ts';

/** What gate.ts gives. */
export type Gate = typeof import('./gate.ts');
