// Undo is a list of plans. Edits of one place in a row - the keystrokes of a word, one hold of a stepper - are one step
// until the step is closed or another place is edited.
// Worked figure: typing "350" into doors, leaving the field, and typing "60" into terms are two steps.
import type { Plan } from '../domain/plan/index.ts';

export const STEPS_MOST = 100;

export interface Steps {
  /** Plans to go back to, the latest last. */
  past: readonly Plan[];
  /** Plans to go forward to, the nearest last. */
  future: readonly Plan[];
  /** The place whose edits still join the last step, or null. */
  open: string | null;
}

export const NO_STEPS: Steps = { past: [], future: [], open: null };

/** After an edit at `at` replaced `before`. */
export function stepped(steps: Steps, before: Plan, at: string): Steps {
  const joins = steps.open === at && steps.past.length > 0 && steps.future.length === 0;
  const past = joins ? steps.past : [...steps.past, before].slice(-STEPS_MOST);
  return { past, future: [], open: at };
}

/** No later edit joins the last step. */
export function closed(steps: Steps): Steps {
  return steps.open === null ? steps : { ...steps, open: null };
}

export interface Turn {
  plan: Plan;
  steps: Steps;
}

/** One step back from `now`, or null when there is none. */
export function stepBack({ past, future }: Steps, now: Plan): Turn | null {
  const plan = past.at(-1);
  return plan ? { plan, steps: { past: past.slice(0, -1), future: [...future, now], open: null } } : null;
}

/** One step forward from `now`, or null when there is none. */
export function stepForward({ past, future }: Steps, now: Plan): Turn | null {
  const plan = future.at(-1);
  return plan ? { plan, steps: { past: [...past, now], future: future.slice(0, -1), open: null } } : null;
}
