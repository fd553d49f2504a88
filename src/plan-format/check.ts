// One gate for everything that wants to be a plan of today's format, from a file, the store or a keystroke: first the
// length of its lists, then its shape (the schema), then what fields mean together (the rules). Every problem is
// reported, at most 50.
// Worked example: a plan with a margin of 1.2 and a wave in week 0 behind a transit week has two problems only after
// the margin is mended, since rules read plans of the right shape alone.
import * as z from 'zod/mini';
import { type Plan, planSchema } from '../domain/plan/index.ts';
import { pathOfKeys } from '../domain/plan/path.ts';
import { checkRules } from '../domain/plan/rules.ts';
import { type Outcome, type Problem, trouble } from '../domain/problems.ts';
import { problemsOf } from './issues.ts';
import { pathText } from './path-text.ts';

export const PROBLEMS_MOST = 50;

/** Longest list taken in, far above any plan of a person: with more, looking for one id among all takes minutes. */
export const PLACES_MOST = 5000;

/** The plan with its amounts as decimal text, or why it is none. */
export function checkPlan(raw: unknown): Outcome<Plan> {
  const long = longLists(raw);
  if (long.length > 0) return capped(long);
  const shape = z.safeParse(planSchema, raw);
  const problems = shape.success ? checkRules(shape.data) : problemsOf(raw, shape.error.issues);
  if (problems.length > 0) return capped(problems);
  if (!shape.success) throw new Error('the schema refused a plan without saying why');
  return { ok: true, value: shape.data };
}

export function capped<T>(problems: readonly Problem[]): Outcome<T> {
  return trouble(...problems.slice(0, PROBLEMS_MOST));
}

/** Lists too long to look at, wherever they are. The walk keeps its own stack, since what comes may be nested deeply. */
function longLists(raw: unknown): Problem[] {
  const found: Problem[] = [];
  const left: { value: unknown; keys: readonly string[] }[] = [{ value: raw, keys: [] }];
  for (let next = left.pop(); next !== undefined && found.length < PROBLEMS_MOST; next = left.pop()) {
    const { value, keys } = next;
    if (typeof value !== 'object' || value === null) continue;
    if (Array.isArray(value) && value.length > PLACES_MOST) {
      const path = pathText(pathOfKeys(raw, keys));
      const expected = `a list of at most ${PLACES_MOST}`;
      found.push({ code: 'field-invalid', path, got: `a list of ${value.length}`, expected });
      continue;
    }
    for (const [key, each] of Object.entries(value)) {
      if (typeof each === 'object') left.push({ value: each, keys: [...keys, key] });
    }
  }
  return found;
}
