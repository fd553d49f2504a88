// Results of a plan, or why there are none. The model throws only on a bug: that is caught here, once, and shown with the
// plan to keep, instead of a blank page.
// Worked example: a plan whose solved list price would be negative has no results and one problem, at that rung.
import type { Plan } from '../domain/plan/index.ts';
import type { Problem } from '../domain/problems.ts';
import type { Results } from '../domain/results.ts';
import { planFile } from '../plan-format/index.ts';
import type { Core } from './core.ts';

export interface Computed {
  results: Results | null;
  problems: readonly Problem[];
}

/** Results, or why there are none. A thrown assertion is shown once as a bug, with the plan to keep. */
export function computeOf(core: Core, plan: Plan): Computed {
  try {
    const outcome = core.deps.evaluate(plan);
    return outcome.ok
      ? { results: outcome.value, problems: [] }
      : { results: null, problems: outcome.problems };
  } catch (error) {
    reportBug(core, error, plan);
    return { results: null, problems: [] };
  }
}

export function reportBug(core: Core, error: unknown, plan: Plan | null): void {
  const message = error instanceof Error ? error.message : String(error);
  core.state.bug.value = { message, file: plan === null ? null : planFile(plan) };
}
