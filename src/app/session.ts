// The running app behind one object: made once, with everything it needs passed in, and handed to the screens. Screens
// read its signals and call its functions; nothing else reaches the parts of this folder.
// Worked example: session.typeInto('business/openingCashAmount', '36k', 'amount') shows the new cash verdict before it
// returns, and has revision 2 saved.
import type { Job } from '../compute/protocol.ts';
import type { Plan } from '../domain/plan/index.ts';
import type { PlanFile } from '../plan-format/index.ts';
import { type ChosenFile, readMeta, writeMeta } from '../storage/index.ts';
import type { Command } from './commands/field.ts';
import { attempt, replacePlan } from './commit.ts';
import { reportBug } from './computing.ts';
import type { Core, SessionDeps } from './core.ts';
import { examplePlans } from './examples.ts';
import { leansOf } from './leans.ts';
import { addPlan, duplicate, exportPlan, importFile, remove, rename } from './library.ts';
import { closeSheet, go, openSheet } from './navigation.ts';
import { dismiss } from './notices.ts';
import { openPlan } from './opening.ts';
import type { Route } from './route.ts';
import { computeMarks } from './rows.ts';
import { flush, save, saveAgain } from './saving.ts';
import { openStoreAgain, start } from './starting.ts';
import { makeState, type Shown, together, viewsOf } from './state.ts';
import { forget, lookFor, lookOf, putValue, readTyped, type TypingKind, typeInto } from './typing.ts';
import { closed, stepBack, stepForward, type Turn } from './undo.ts';
import { makeUpdate } from './update.ts';

export type { ReadonlySignal } from '@preact/signals';
export type { Running } from '../compute/computer.ts';
export type { Job } from '../compute/protocol.ts';
export type { PlanFile, Refusal } from '../plan-format/index.ts';
export type { PlanRow } from '../storage/index.ts';
export type { Device, Example, SessionDeps, UpdatePort } from './core.ts';
export type { HistoryPort } from './navigation.ts';
export type { Notice } from './notices.ts';
export type { Bug, ImportTrouble, Marks, ShownResults } from './state.ts';
export type { TypingKind } from './typing.ts';
export type { Update } from './update.ts';

export type Session = ReturnType<typeof createSession>;

/** A session that has read and written nothing yet; start() does. */
export function createSession(deps: SessionDeps) {
  const core: Core = {
    deps,
    state: makeState(),
    store: null,
    gate: null,
    held: new Map(),
    seen: new Map(),
    originals: new Map(),
    left: new Map(),
    savers: new Map(),
    openings: 0,
    looks: new Map(),
    askedPersistent: false,
  };
  const shown: Shown = core.state;
  return {
    ...shown,
    ...viewsOf(core.state),
    leans: leansOf(core.state),
    ...editing(core),
    ...plans(core),
    ...around(core),
    update: makeUpdate(core),
  };
}

function editing(core: Core) {
  const { state } = core;
  return {
    typeInto: (path: string, text: string, kind: TypingKind) => typeInto(core, { path, text, kind }),
    /** How a typed number is read, and what else it could mean; null for texts and dates. */
    readTyped: (text: string, kind: TypingKind) => readTyped(core, text, kind),
    /** How numbers look here, in the open plan's currency; lookFor is for a screen without a plan. */
    look: lookOf(core),
    lookFor: (currency: string) => lookFor(core, currency),
    setField: (path: string, value: unknown) => putValue(core, { path, value }),
    /** Runs a command; its problems are shown at `at`. */
    run: <Args>(command: Command<Args>, args: Args, at: string) =>
      attempt(core, { at, text: null, kind: null, apply: (plan) => command(plan, args) }),
    forget: (path: string) => forget(core, path),
    endStep: () => {
      state.steps.value = closed(state.steps.value);
    },
    /** Drops refused texts first; they are the last thing that was done. */
    undo: () => {
      if (state.pending.value.size > 0) state.pending.value = new Map();
      else turn(core, state.plan.value && stepBack(state.steps.value, state.plan.value));
    },
    redo: () => turn(core, state.plan.value && stepForward(state.steps.value, state.plan.value)),
  };
}

/** Undo and redo are saved like any edit: the revision goes up. */
function turn(core: Core, next: Turn | null): void {
  if (next === null) return;
  together(() => {
    const revision = core.state.revision.value + 1;
    core.state.steps.value = next.steps;
    core.state.pending.value = new Map();
    replacePlan(core, next.plan, revision);
    save(core, next.plan, revision);
  });
}

function plans(core: Core) {
  return {
    openPlan: (id: string) => openPlan(core, id),
    /** A new plan: checked, opened, saved; false when it is not sound. Its id is changed when it is taken. */
    addPlan: (plan: Plan) => addPlan(core, plan, plan.name),
    examples: () => examplePlans(core.deps.examples),
    duplicatePlan: (id: string, name: string) => duplicate(core, id, name),
    renamePlan: (id: string, name: string) => rename(core, id, name),
    deletePlan: (id: string) => remove(core, id),
    importFile: (file: ChosenFile) => importFile(core, file),
    exportPlan: (id: string) => exportPlan(core, id),
    clearImportTrouble: () => {
      core.state.importTrouble.value = null;
    },
    computeMarks: () => computeMarks(core),
    newId: () => core.deps.newId(),
    flush: () => flush(core),
    saveAgain: () => saveAgain(core),
  };
}

function around(core: Core) {
  const { state } = core;
  return {
    start: () => start(core),
    /** Long work (most doors, least opening cash): an answer that can be cancelled. */
    compute: <J extends Job>(job: J) => core.deps.computer.run(job),
    /** After a refusal of the store ("another tab ..."): true when it opened this time. */
    openStoreAgain: () => openStoreAgain(core),
    go: (route: Route) => go(core, route),
    openSheet: (name: string) => openSheet(core, name),
    closeSheet: () => closeSheet(core),
    dismiss: (id: string) => dismiss(state.notices, id),
    download: (file: PlanFile) => core.deps.device.download(file),
    canShare: core.deps.device.share !== null,
    share: async (file: PlanFile) => core.deps.device.share?.(file),
    /** For the boundary that catches what a screen throws. */
    reportBug: (error: unknown) => reportBug(core, error, state.plan.value),
    clearBug: () => {
      state.bug.value = null;
    },
    /** What was kept under a name ('seven', 'scheme'), or null. */
    readDraft: async (name: string): Promise<unknown> => {
      const kept = core.store === null ? null : await readMeta(core.store, `draft/${name}`);
      return kept?.ok ? kept.value : null;
    },
    writeDraft: async (name: string, value: unknown): Promise<boolean> =>
      core.store !== null && (await writeMeta(core.store, `draft/${name}`, value)).ok,
  };
}
