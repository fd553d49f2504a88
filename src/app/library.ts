// What is done with whole plans: add, duplicate, rename, delete with undo, import, export. Ids of plans are never taken
// twice: an imported plan whose id is in use gets a new one, and overwrites nothing.
// Worked example: importing the file of a plan that is still here gives a second plan of the same name.
import type { Plan } from '../domain/plan/index.ts';
import { isRefused, planFile } from '../plan-format/index.ts';
import {
  type ChosenFile,
  deletePlan as deleteKept,
  loadPlan,
  type PlanRecord,
  readPlanFile,
  restorePlan,
  writeMeta,
} from '../storage/index.ts';
import { duplicatePlan, renamePlan } from './commands/plans.ts';
import { attempt } from './commit.ts';
import type { Core, HeldPlan } from './core.ts';
import { exampleOf } from './examples.ts';
import { gateOf, gateOrSay } from './gate.ts';
import { replaceRoute } from './navigation.ts';
import { dismiss, notify, notifyRefusal } from './notices.ts';
import { leave, openPlan, show } from './opening.ts';
import { planIdOf } from './route.ts';
import { anyPlan, refreshRows, showRow } from './rows.ts';
import { flush, save } from './saving.ts';
import { shared } from './share.ts';
import { together } from './state.ts';

/** Takes in a plan that is new here, opens it and has it saved; false, with its problems shown, when it is not sound. */
export async function addPlan(core: Core, plan: Plan, fileName: string): Promise<boolean> {
  const gate = core.gate ?? (await gateOrSay(core));
  if (gate === null) return false;
  const checked = gate.checkPlan(plan);
  if (!checked.ok) {
    core.state.importTrouble.value = { fileName, problems: checked.problems };
    return false;
  }
  const isTaken =
    core.state.plans.value.some(({ id }) => id === plan.id) || exampleOf(core.deps.examples, plan.id);
  const id = isTaken ? core.deps.newId() : plan.id;
  const own = shared(undefined, { ...checked.value, id });
  together(() => {
    core.openings += 1;
    core.state.importTrouble.value = null;
    show(core, own, 1);
    save(core, own, 1);
  });
  return true;
}

export async function importFile(core: Core, file: ChosenFile): Promise<boolean> {
  const read = await readPlanFile(file);
  if (read.ok) return await addPlan(core, read.value, file.name);
  if (isRefused(read)) notifyRefusal(core.state.notices, read.refusal);
  else core.state.importTrouble.value = { fileName: file.name, problems: read.problems };
  return false;
}

/** Downloads a plan as it stands; one that can't be read is downloaded as it was kept. */
export async function exportPlan(core: Core, id: string): Promise<boolean> {
  const plan = (await anyPlan(core, id)) ?? exampleOf(core.deps.examples, id);
  if (plan) {
    core.deps.device.download(planFile(plan));
    return true;
  }
  const kept = core.store === null ? null : await loadPlan(core.store, id, () => gateOf(core));
  const file = kept !== null && isRefused(kept) ? kept.refusal.file : null;
  if (file) core.deps.device.download(file);
  else if (kept !== null && isRefused(kept)) notifyRefusal(core.state.notices, kept.refusal);
  return file !== null;
}

/** A second plan from one that can be read; it is opened. */
export async function duplicate(core: Core, id: string, name: string): Promise<boolean> {
  const plan = (await anyPlan(core, id)) ?? exampleOf(core.deps.examples, id);
  if (!plan) return openPlan(core, id); // says why it can't be read
  const copy = duplicatePlan(plan, { id: core.deps.newId(), name });
  return copy.ok && (await addPlan(core, copy.value, name));
}

export async function rename(core: Core, id: string, name: string): Promise<boolean> {
  if (core.state.plan.value?.id !== id && !(await openPlan(core, id))) return false;
  return attempt(core, { at: 'name', text: null, kind: null, apply: (plan) => renamePlan(plan, { name }) });
}

/** Takes a plan away; the notice that follows puts it back whole, undo and all. */
export async function remove(core: Core, id: string): Promise<boolean> {
  const { state, store, held } = core;
  await flush(core);
  const row = state.plans.value.find((each) => each.id === id);
  const own = held.get(id) ?? null;
  const kept = store === null ? null : await deleteKept(store, id);
  if (kept !== null && !kept.ok) {
    if (isRefused(kept)) notifyRefusal(state.notices, kept.refusal);
    return false;
  }
  together(() => {
    held.delete(id);
    if (state.plan.value?.id === id) leave(core);
    state.plans.value = state.plans.value.filter((each) => each.id !== id);
    if (planIdOf(state.route.value) === id) replaceRoute(core, { view: 'plans', sheet: null });
    notify(state.notices, id, {
      kind: 'undo',
      sentence: `"${row?.name ?? 'The plan'}" was deleted.`,
      action: { label: 'Undo', run: () => void putBack(core, id, kept?.value ?? null, own) },
      file: null,
    });
  });
  if (store !== null) void writeMeta(store, `typed/${id}`, null);
  core.deps.tabs.tell({ kind: 'deleted', id });
  return true;
}

async function putBack(
  core: Core,
  id: string,
  record: PlanRecord | null,
  own: HeldPlan | null,
): Promise<void> {
  const { state, store } = core;
  dismiss(state.notices, `undo ${id}`);
  if (store !== null && record !== null) {
    const restored = await restorePlan(store, record);
    if (!restored.ok) {
      if (isRefused(restored)) notifyRefusal(state.notices, restored.refusal);
      return;
    }
    showRow(core, restored.value);
    core.deps.tabs.tell({ kind: 'saved', id, revision: restored.value.revision });
  }
  if (own !== null) save(core, own.plan, own.revision);
  await refreshRows(core);
}
