// One gate for everything that wants to be a plan of today's format, from a file, the store or a keystroke: first the
// shape (the schema), then what fields mean together (the rules). Every problem is reported, at most 50.
// Worked example: a plan with a margin of 1.2 and a wave in week 0 behind a transit week has two problems only after
// the margin is mended, since rules read plans of the right shape alone.
import * as z from 'zod/mini';
import { type Plan, planSchema } from '../domain/plan/index.ts';
import { checkRules } from '../domain/plan/rules.ts';
import { type Outcome, type Problem, trouble } from '../domain/problems.ts';
import { problemsOf } from './issues.ts';

export const PROBLEMS_MOST = 50;

/** The plan with its amounts as decimal text, or why it is none. */
export function checkPlan(raw: unknown): Outcome<Plan> {
  const shape = z.safeParse(planSchema, raw);
  const problems = shape.success ? checkRules(shape.data) : problemsOf(raw, shape.error.issues);
  if (problems.length > 0) return capped(problems);
  if (!shape.success) throw new Error('the schema refused a plan without saying why');
  return { ok: true, value: shape.data };
}

export function capped<T>(problems: readonly Problem[]): Outcome<T> {
  return trouble(...problems.slice(0, PROBLEMS_MOST));
}
