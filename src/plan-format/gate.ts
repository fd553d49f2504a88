// The second door of this room: what judges a plan. Raw values come in and leave as plans, problems or refusals; nothing
// else in the app reads a raw plan. The schemas and the library they are written with are as much as the whole first
// screen, which needs neither: so this is fetched beside it, and whoever needs it waits.
// Worked example: checkPlan(plan) gives { ok: true, value: plan }, or every problem with it.

export { accepts } from '../domain/plan/schema-at.ts';
export { checkPlan, PROBLEMS_MOST } from './check.ts';
export { planOfFile, RELEASED, readKept, readPlan } from './parse.ts';
