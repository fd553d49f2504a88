// The one place where an edit becomes the plan: check the whole plan, compute, and only then push undo, raise the
// revision, hand it to be saved and show it - all before the call returns, so the same frame shows the result. An edit
// that fails changes nothing: its text and its problems wait in `pending`, beside the last good plan and results.
// Worked example: a wave in week 0 is refused behind one transit week and waits; when transit is set to 0, the waiting
// edit is tried again and accepted.
import type { Plan } from '../domain/plan/index.ts';
import { hasAt } from '../domain/plan/path.ts';
import type { Outcome } from '../domain/problems.ts';
import { checkPlan } from '../plan-format/index.ts';
import { type Computed, computeOf } from './computing.ts';
import type { Core } from './core.ts';
import { save } from './saving.ts';
import { shared } from './share.ts';
import { type Pending, together } from './state.ts';
import { stepped } from './undo.ts';

export interface Edit {
  /** The field or place the edit is about: its problems are shown there. */
  at: string;
  text: string | null;
  kind: string | null;
  apply: (plan: Plan) => Outcome<Plan>;
}

/** Tries an edit; true when it was accepted. */
export function attempt(core: Core, edit: Edit): boolean {
  return together(() => {
    const before = core.state.plan.value;
    if (before === null) return false;
    const next = edit.apply(before);
    const judged = next.ok ? judge(core, before, next.value) : next;
    if (!judged.ok) {
      setPending(core, edit.at, { ...edit, problems: judged.problems });
      return false;
    }
    dropPending(core, edit.at);
    if (judged.value.plan !== before) {
      accept(core, judged.value, edit.at);
      retryPending(core, edit.at);
    }
    return true;
  });
}

/** Shows `plan` in place of the open one as the result of undo, redo or another tab; it was checked before. */
export function replacePlan(core: Core, plan: Plan, revision: number): void {
  const { state } = core;
  state.plan.value = plan;
  state.revision.value = revision;
  const computed = computeOf(core, plan);
  state.planProblems.value = computed.problems;
  if (computed.results !== null) state.results.value = { results: computed.results, revision };
}

interface Judged {
  plan: Plan;
  computed: Computed;
}

function judge(core: Core, before: Plan, next: Plan): Outcome<Judged> {
  const checked = checkPlan(next);
  if (!checked.ok) return checked;
  const plan = shared(before, checked.value);
  if (plan === before) return { ok: true, value: { plan, computed: { results: null, problems: [] } } };
  // What is said across a table changes no result; what was computed for it stands, and so do its leans.
  const shown = core.state.results.value;
  if (shown !== null && isComputed(core) && isSameButTalks(before, plan)) {
    return { ok: true, value: { plan, computed: { results: shown.results, problems: [] } } };
  }
  const computed = computeOf(core, plan);
  // A plan that can't be computed may be mended step by step; one that can is not left for one that can't.
  if (computed.results === null && isComputed(core)) return { ok: false, problems: computed.problems };
  return { ok: true, value: { plan, computed } };
}

/** Whether two plans that share what is the same differ in nothing but the talks with their chains. */
function isSameButTalks(before: Plan, plan: Plan): boolean {
  const same = <T extends object>(one: T, other: T, but: string): boolean =>
    Object.entries(one).every(([key, value]) => key === but || value === other[key as keyof T]);
  return (
    same(before, plan, 'accounts') &&
    before.accounts.length === plan.accounts.length &&
    before.accounts.every((account, index) => same(account, plan.accounts[index] ?? account, 'table'))
  );
}

/** Whether what is shown was computed from the plan as it stands. */
function isComputed({ state }: Core): boolean {
  return state.results.value !== null && state.results.value.revision === state.revision.value;
}

function accept(core: Core, { plan, computed }: Judged, at: string): void {
  const { state } = core;
  const before = state.plan.value;
  const revision = state.revision.value + 1;
  if (before !== null) state.steps.value = stepped(state.steps.value, before, at);
  state.plan.value = plan;
  state.revision.value = revision;
  state.planProblems.value = computed.problems;
  if (computed.results !== null) state.results.value = { results: computed.results, revision };
  save(core, plan, revision);
}

/** Refused edits get another chance, as part of the same undo step. */
function retryPending(core: Core, at: string): void {
  const { state } = core;
  for (const [path, pending] of state.pending.value) {
    const before = state.plan.value;
    if (before === null) return;
    if (pending.text === null || !hasAt(before, path)) {
      dropPending(core, path); // nothing was typed, or the field is gone
      continue;
    }
    const next = pending.apply(before);
    const judged = next.ok ? judge(core, before, next.value) : next;
    if (!judged.ok) {
      setPending(core, path, { ...pending, problems: judged.problems });
      continue;
    }
    dropPending(core, path);
    if (judged.value.plan !== before) accept(core, judged.value, at);
  }
}

function setPending(core: Core, path: string, { text, kind, problems, apply }: Pending): void {
  core.state.pending.value = new Map(core.state.pending.value).set(path, { text, kind, problems, apply });
}

export function dropPending(core: Core, path: string): void {
  if (!core.state.pending.value.has(path)) return;
  const left = new Map(core.state.pending.value);
  left.delete(path);
  core.state.pending.value = left;
}
