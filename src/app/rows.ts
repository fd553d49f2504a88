// The list of plans: what the store has, and what is only held because the store refused it. With each row go four marks,
// computed when the list is looked at, so that they never differ from what opening the plan shows.
// Worked example: a plan that can't be read has the mark 'unreadable' and its row; opening it offers it as a file.
import type { Plan } from '../domain/plan/index.ts';
import type { VerdictName } from '../domain/results.ts';
import { isRefused } from '../plan-format/index.ts';
import { listPlans, loadPlan, type PlanRow } from '../storage/index.ts';
import { computeOf } from './computing.ts';
import type { Core } from './core.ts';
import { examplePlans } from './examples.ts';
import { gateOf, gateOrSay } from './gate.ts';
import { notifyRefusal } from './notices.ts';
import type { Marks } from './state.ts';

/** Puts a row into the list, the last edited first. */
export function showRow({ state }: Core, row: PlanRow): void {
  state.plans.value = sorted([row, ...state.plans.value.filter(({ id }) => id !== row.id)]);
}

/** Reads the list anew from the store; what is held goes before what is kept. */
export async function refreshRows(core: Core): Promise<void> {
  const { store, state, held } = core;
  if (store === null) return;
  const kept = await listPlans(store);
  if (!kept.ok) {
    if (isRefused(kept)) notifyRefusal(state.notices, kept.refusal);
    return;
  }
  const own = [...held.values()].map(({ plan: { id, name }, revision, updatedAt }) => ({
    id,
    name,
    revision,
    updatedAt,
  }));
  state.plans.value = sorted([...own, ...kept.value.filter(({ id }) => !held.has(id))]);
}

/** Fills the marks of every row and example that has none for its revision, one plan after the other. */
export async function computeMarks(core: Core): Promise<void> {
  for (const plan of examplePlans(core.deps.examples)) setMarks(core, plan.id, plan);
  if (core.state.plans.value.length === 0 || (await gateOrSay(core)) === null) return;
  for (const { id } of core.state.plans.value) setMarks(core, id, await anyPlan(core, id));
}

/** A plan by its id: the open one, one that is held, or one from the store; null where there is none that can be read. */
export async function anyPlan(core: Core, id: string): Promise<Plan | null> {
  const { state, held, store } = core;
  if (state.plan.value?.id === id) return state.plan.value;
  const own = held.get(id);
  if (own) return own.plan;
  const kept = store === null ? null : await loadPlan(store, id, () => gateOf(core));
  return kept?.ok ? kept.value.plan : null;
}

function setMarks(core: Core, id: string, plan: Plan | null): void {
  core.state.marks.value = new Map(core.state.marks.value).set(
    id,
    plan === null ? 'unreadable' : marksOf(core, plan),
  );
}

function marksOf(core: Core, plan: Plan): Marks {
  const { results } = computeOf(core, plan);
  const state = (name: VerdictName) => results?.verdicts[name].state ?? 'unknown';
  return { ladder: state('ladder'), deal: state('deal'), cash: state('cash'), promise: state('promise') };
}

function sorted(rows: readonly PlanRow[]): PlanRow[] {
  return [...rows].sort((a, b) => b.updatedAt - a.updatedAt || (a.id < b.id ? -1 : 1));
}
