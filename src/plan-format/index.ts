// The door of this room: what a saved plan looks like, and used to. Files and stored plans come in here as text or raw
// values and leave as plans, problems or refusals; nothing else in the app reads a raw plan.
// Worked example: planOfFile(json) gives { ok: true, value: plan } or says why not; planFile(plan) gives it back. The
// text of a file comes in at text.ts.

export type { Plan } from '../domain/plan/index.ts';
export type { Outcome, Problem } from '../domain/problems.ts';
export { checkPlan, PROBLEMS_MOST } from './check.ts';
export { FORMAT_NAME, planFile, planText, rawPlanFile } from './envelope.ts';
export { FORMAT_VERSION, MIGRATIONS, type Migration, numberingFault } from './migrations/index.ts';
export {
  FILE_CHARACTERS_MOST,
  type Format,
  planOfFile,
  RELEASED,
  type ReadPlan,
  readPlan,
} from './parse.ts';
export {
  isRefused,
  type PlanFile,
  type Reading,
  type Refusal,
  type RefusalCode,
  type Refused,
  refused,
} from './refusal.ts';
