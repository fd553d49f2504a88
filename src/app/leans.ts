// Which guess each verdict leans on: many runs of the model, so a worker does them while typing goes on. An answer counts
// only for the results it was asked for; while newer ones are under way there is none. An edit that leaves the results as
// they are (an offer at the table) asks nothing.
// Worked example: three edits within a second ask twice, for the first and the third; the first answer is never shown.
import { computed, effect, type ReadonlySignal } from '@preact/signals';
import type { Plan } from '../domain/plan/index.ts';
import type { LeansOn, Results, VerdictName } from '../domain/results.ts';
import { makeSaver } from '../storage/index.ts';
import type { Core } from './core.ts';
import type { State } from './state.ts';

export type Leans = Record<VerdictName, LeansOn | null>;

/** What the shown results lean on; null until it is known. */
export function leansOf({ leansAt, plan, results }: State): ReadonlySignal<Leans | null> {
  return computed(() => {
    const at = leansAt.value;
    const isShown = at?.planId === plan.value?.id && at?.results === results.value?.results;
    return at !== null && isShown ? at.leans : null;
  });
}

/** Asks after every new result from now on, one question at a time, the newest next. */
export function followResults(core: Core): void {
  const { state, deps } = core;
  const asking = makeSaver<{ plan: Plan; results: Results }>(async ({ plan, results }) => {
    const answer = await deps.computer.run({ kind: 'leansOn', plan }).answer;
    if (answer?.ok) state.leansAt.value = { planId: plan.id, results, leans: answer.value };
  });
  let asked: Results | null = null;
  effect(() => {
    const plan = state.plan.value;
    const shown = state.results.value;
    if (plan !== null && shown !== null && shown.revision === state.revision.value) {
      if (shown.results === asked) return;
      asked = shown.results;
      asking.offer({ plan, results: shown.results });
    }
  });
}
