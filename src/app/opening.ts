// Opening a plan: what was held, kept or comes as an example is shown with its results; the plan that was open is left
// with its undo and its refused texts, to be found again. A later opening makes the answer to an earlier one void.
// Worked example: "12o" stands refused in a door count; after another plan was opened and left, it stands there still.
import type { Plan } from '../domain/plan/index.ts';
import { hasAt } from '../domain/plan/path.ts';
import { isRefused, type Reading, refused } from '../plan-format/index.ts';
import { loadPlan, readMeta } from '../storage/index.ts';
import { judgeWaiting, replacePlan } from './commit.ts';
import type { Core } from './core.ts';
import { exampleOf } from './examples.ts';
import { gateOf } from './gate.ts';
import { notifyRefusal } from './notices.ts';
import { shared } from './share.ts';
import { together } from './state.ts';
import { isTypingKind, type Typing, typeInto } from './typing.ts';
import { NO_STEPS } from './undo.ts';

/** True when the plan is open now. */
export async function openPlan(core: Core, id: string): Promise<boolean> {
  const { state } = core;
  core.openings += 1;
  const opening = core.openings;
  if (state.plan.value?.id === id) return true;
  const found = await findPlan(core, id);
  const typed = core.left.has(id) ? [] : await typedBefore(core, id);
  if (opening !== core.openings) return false;
  if (!found.ok) {
    if (isRefused(found)) notifyRefusal(state.notices, found.refusal);
    return false;
  }
  show(core, found.value.plan, found.value.revision);
  for (const { path, text, kind } of typed) {
    if (hasAt(state.plan.value, path)) typeInto(core, { path, text, kind });
  }
  return true;
}

/** Shows a plan in place of the open one, which is left as it is. */
export function show(core: Core, plan: Plan, revision: number): void {
  const { state, left } = core;
  together(() => {
    leave(core);
    const before = left.get(plan.id);
    state.results.value = null;
    state.steps.value = before?.steps ?? NO_STEPS;
    state.pending.value = before?.pending ?? new Map();
    replacePlan(core, shared(undefined, plan), revision);
    judgeWaiting(core);
  });
}

/** No plan is open afterwards; undo and refused texts of the one that was are remembered. */
export function leave(core: Core): void {
  const { state, left } = core;
  const plan = state.plan.value;
  if (plan === null) return;
  left.set(plan.id, { steps: state.steps.value, pending: state.pending.value });
  together(() => {
    state.plan.value = null;
    state.results.value = null;
    state.steps.value = NO_STEPS;
    state.pending.value = new Map();
    state.planProblems.value = [];
  });
}

async function findPlan(core: Core, id: string): Promise<Reading<{ plan: Plan; revision: number }>> {
  const own = core.held.get(id);
  if (own) return { ok: true, value: own };
  const kept = core.store === null ? null : await loadPlan(core.store, id, () => gateOf(core));
  if (kept?.ok) {
    const { plan, revision, original } = kept.value;
    core.seen.set(id, revision);
    if (original !== null) core.originals.set(id, original);
    return { ok: true, value: { plan, revision } };
  }
  const isMissing = kept === null || (isRefused(kept) && kept.refusal.code === 'not-found');
  const example = isMissing ? exampleOf(core.deps.examples, id) : null;
  if (example) return { ok: true, value: { plan: example, revision: 0 } };
  return kept ?? refused('not-found', 'There is no such plan on this device.', null);
}

/** Refused texts that were kept when the page went away. */
async function typedBefore(core: Core, id: string): Promise<Typing[]> {
  const kept = core.store === null ? null : await readMeta(core.store, `typed/${id}`);
  if (!kept?.ok || !Array.isArray(kept.value)) return [];
  return kept.value.flatMap((each: unknown) => {
    if (typeof each !== 'object' || each === null) return [];
    const { path, text, kind } = each as Record<string, unknown>;
    const isText = typeof path === 'string' && typeof text === 'string';
    return isText && isTypingKind(kind) ? [{ path, text, kind }] : [];
  });
}
