// The one place where an edit becomes the plan: check the whole plan, compute, and only then push undo, raise the
// revision, hand it to be saved and show it - all before the call returns, so the same frame shows the result. An edit
// that fails changes nothing: its text and its problems wait in `pending`, beside the last good plan and results.
// What judges a plan may still be on its way (gate.ts): an edit made before it is there waits in `pending` too.
// Worked example: a wave in week 0 is refused behind one transit week and waits; when transit is set to 0, the waiting
// edit is tried again and accepted.
import type { Plan } from '../domain/plan/index.ts';
import { hasAt } from '../domain/plan/path.ts';
import type { Outcome } from '../domain/problems.ts';
import type { Gate } from '../plan-format/index.ts';
import { type Computed, computeOf } from './computing.ts';
import type { Core } from './core.ts';
import { gateOrSay } from './gate.ts';
import { save } from './saving.ts';
import { shared } from './share.ts';
import { type Pending, together } from './state.ts';
import { stepped } from './undo.ts';

export interface Edit {
  /** The field or place the edit is about: its problems are shown there. */
  at: string;
  text: string | null;
  kind: string | null;
  apply: (plan: Plan, gate: Gate) => Outcome<Plan>;
}

/** Tries an edit; true when it was accepted. */
export function attempt(core: Core, edit: Edit): boolean {
  return together(() => {
    const before = core.state.plan.value;
    const { gate } = core;
    if (before === null) return false;
    if (gate === null) return wait(core, edit);
    const judged = judge({ core, gate, before, edit });
    if (!judged.ok) {
      setPending(core, edit.at, { ...edit, problems: judged.problems, waits: false });
      return false;
    }
    dropPending(core, edit.at);
    if (judged.value.plan !== before) {
      accept(core, judged.value, edit.at);
      retryPending(core, gate, edit.at);
    }
    return true;
  });
}

/** Keeps an edit until it can be judged. A text takes an earlier one's place; what a control did is done after it. */
function wait(core: Core, edit: Edit): false {
  const earlier = core.state.pending.value.get(edit.at);
  const follows = edit.text === null && earlier?.waits === true && earlier.text === null;
  const apply: Edit['apply'] = (plan, gate) => {
    const first = follows ? earlier.apply(plan, gate) : { ok: true as const, value: plan };
    // What the first took away can't be taken away again.
    const isGone = first.ok && hasAt(plan, edit.at) && !hasAt(first.value, edit.at);
    return first.ok && !isGone ? edit.apply(first.value, gate) : first;
  };
  setPending(core, edit.at, { ...edit, apply, problems: [], waits: true });
  void gateOrSay(core).then(() => judgeWaiting(core));
  return false;
}

/** Judges the edits of the open plan that wait, in the order they were made, where they can be by now. */
export function judgeWaiting(core: Core): void {
  if (core.gate === null) return;
  together(() => {
    for (const [at, edit] of core.state.pending.value) {
      if (!edit.waits) continue;
      // Its field may be gone by an edit that waited before it: then nothing is left to be done.
      if (edit.text !== null && !hasAt(core.state.plan.value, at)) dropPending(core, at);
      else attempt(core, { ...edit, at });
    }
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

interface Judging {
  core: Core;
  gate: Gate;
  before: Plan;
  edit: Pick<Edit, 'apply'>;
}

interface Judged {
  plan: Plan;
  computed: Computed;
}

function judge({ core, gate, before, edit }: Judging): Outcome<Judged> {
  const next = edit.apply(before, gate);
  const checked = next.ok ? gate.checkPlan(next.value) : next;
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
function retryPending(core: Core, gate: Gate, at: string): void {
  const { state } = core;
  for (const [path, pending] of state.pending.value) {
    const before = state.plan.value;
    if (before === null) return;
    if (pending.waits) continue; // judged in its own turn
    if (pending.text === null || !hasAt(before, path)) {
      dropPending(core, path); // nothing was typed, or the field is gone
      continue;
    }
    const judged = judge({ core, gate, before, edit: pending });
    if (!judged.ok) {
      setPending(core, path, { ...pending, problems: judged.problems });
      continue;
    }
    dropPending(core, path);
    if (judged.value.plan !== before) accept(core, judged.value, at);
  }
}

function setPending(core: Core, path: string, { text, kind, problems, apply, waits }: Pending): void {
  const pending = { text, kind, problems, apply, waits };
  core.state.pending.value = new Map(core.state.pending.value).set(path, pending);
}

export function dropPending(core: Core, path: string): void {
  if (!core.state.pending.value.has(path)) return;
  const left = new Map(core.state.pending.value);
  left.delete(path);
  core.state.pending.value = left;
}
