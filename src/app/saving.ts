// Keeping every accepted edit: one saver a plan, so that the newest state is written and no plan waits behind another.
// What the store doesn't have yet is held here, and stays held when the store refuses it: edits are in memory, the plan
// can be saved as a file, and every later edit tries again.
// Worked example: with the store full, revision 9 is held, `saving` is "unsaved", and a notice offers the plan as a file.
import type { Plan } from '../domain/plan/index.ts';
import { isRefused, planFile } from '../plan-format/index.ts';
import { makeSaver, type Saver, savePlan } from '../storage/index.ts';
import { duplicatePlan } from './commands/plans.ts';
import type { Core } from './core.ts';
import { dismiss, notifyInfo, notifyRefusal } from './notices.ts';
import { hashOf, planIdOf } from './route.ts';
import { refreshRows, showRow } from './rows.ts';
import { together } from './state.ts';

export interface PlanSave {
  plan: Plan;
  revision: number;
  updatedAt: number;
}

/** Holds a state of a plan and has it written. */
export function save(core: Core, plan: Plan, revision: number): void {
  const next = { plan, revision, updatedAt: core.deps.clock() };
  core.held.set(plan.id, next);
  showRow(core, { id: plan.id, name: plan.name, updatedAt: next.updatedAt, revision });
  if (core.store === null) {
    core.state.saving.value = 'unsaved';
    return;
  }
  core.state.saving.value = 'saving';
  saverOf(core, plan.id).offer(next);
}

/** Everything offered so far is written or refused when this resolves. */
export async function flush(core: Core): Promise<void> {
  await Promise.all([...core.savers.values()].map((saver) => saver.flush()));
}

/** Tries again to write everything that is only held. */
export async function saveAgain(core: Core): Promise<void> {
  for (const { plan, revision } of [...core.held.values()]) save(core, plan, revision);
  await flush(core);
}

/** Whether the store has all there is of a plan. */
export function isKept(core: Core, id: string): boolean {
  return !core.held.has(id) && (core.savers.get(id)?.isIdle() ?? true);
}

function saverOf(core: Core, id: string): Saver<PlanSave> {
  const known = core.savers.get(id);
  if (known) return known;
  const made = makeSaver<PlanSave>((next) => write(core, next));
  core.savers.set(id, made);
  return made;
}

async function write(core: Core, { plan, revision, updatedAt }: PlanSave): Promise<void> {
  const { state, store, deps, seen, originals, held } = core;
  if (store === null) return;
  const { id } = plan;
  const baseRevision = seen.get(id) ?? 0;
  seen.set(id, revision); // a save that follows before this one is done builds on it
  const previous = originals.get(id) ?? null;
  const saved = await savePlan(store, { plan, revision, baseRevision, updatedAt, previous });
  if (!saved.ok) {
    if (seen.get(id) === revision) seen.set(id, baseRevision);
    if (isRefused(saved) && saved.refusal.code === 'changed-elsewhere') return keepBoth(core, id);
    state.saving.value = 'unsaved';
    if (isRefused(saved)) notifyRefusal(state.notices, { ...saved.refusal, file: planFile(plan) });
    return;
  }
  originals.delete(id);
  if (held.get(id)?.revision === revision) held.delete(id);
  if (held.size === 0) {
    state.saving.value = 'saved';
    // Everything is kept again: what was said of a full or failing store is over.
    for (const code of ['store-full', 'store-failed']) dismiss(state.notices, `refusal ${code}`);
  }
  deps.tabs.tell({ kind: 'saved', id, revision });
  if (core.askedPersistent) return;
  core.askedPersistent = true;
  await deps.device.askPersistent();
}

/** Another tab saved first: this tab's version goes on as a plan of its own, so that both are kept. */
function keepBoth(core: Core, id: string): void {
  const { state, held, deps } = core;
  const mine = held.get(id);
  held.delete(id);
  if (!mine) return;
  const name = `${mine.plan.name.slice(0, 100)} (this tab)`;
  const copy = duplicatePlan(mine.plan, { id: deps.newId(), name });
  if (!copy.ok) throw new Error('a copy of a sound plan is unsound');
  together(() => {
    if (state.plan.value?.id === id) {
      state.plan.value = copy.value;
      const route = state.route.value;
      if (planIdOf(route) === id) {
        state.route.value = { ...route, planId: copy.value.id } as typeof route;
        deps.history.replace(hashOf(state.route.value));
      }
    }
    save(core, copy.value, mine.revision + 1);
    if (state.plan.value?.id === copy.value.id) {
      state.revision.value = mine.revision + 1;
      const shown = state.results.value;
      if (shown?.revision === mine.revision) state.results.value = { ...shown, revision: mine.revision + 1 };
    }
    notifyInfo(
      state.notices,
      `both ${id}`,
      `"${mine.plan.name}" was changed in another tab too. This tab's version is kept as "${name}".`,
    );
  });
  void refreshRows(core);
}
