// Everything the app knows while it runs, as signals: the plan, its results, and what was typed and not accepted; beside
// them the list of plans, the address and the notices. Only the files of this folder write them.
// Worked example: "120" typed as a margin leaves plan and results as they were; `pending` holds the text and why it was
// refused, and `stale` is true.
import { batch, computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Plan } from '../domain/plan/index.ts';
import type { Outcome, Problem } from '../domain/problems.ts';
import type { Results, VerdictName, VerdictState } from '../domain/results.ts';
import type { Gate, PlanFile, Refusal } from '../plan-format/index.ts';
import type { PlanRow } from '../storage/index.ts';
import type { Leans } from './leans.ts';
import type { Notices } from './notices.ts';
import type { Route } from './route.ts';
import { NO_STEPS, type Steps } from './undo.ts';

/** An edit that was not accepted, or not judged yet: one that was refused is tried again after every accepted one. */
export interface Pending {
  /** What was typed; null when a control without text was used. */
  text: string | null;
  /** The kind it was typed as, to type it again after a reload. */
  kind: string | null;
  problems: readonly Problem[];
  apply: (plan: Plan, gate: Gate) => Outcome<Plan>;
  /** What judges it wasn't there yet: then it has no problems so far. */
  waits: boolean;
}

export type Pendings = ReadonlyMap<string, Pending>;
export type Marks = Readonly<Record<VerdictName, VerdictState>>;

export interface ShownResults {
  results: Results;
  /** The plan revision they were computed from. */
  revision: number;
}

/** A failed assertion, caught at the boundary: what to show, and the plan to keep. */
export interface Bug {
  message: string;
  file: PlanFile | null;
}

export interface ImportTrouble {
  fileName: string;
  problems: readonly Problem[];
}

export interface State {
  phase: Signal<'starting' | 'ready'>;
  storage: Signal<Refusal | null>;
  saving: Signal<'saved' | 'saving' | 'unsaved'>;
  plans: Signal<readonly PlanRow[]>;
  marks: Signal<ReadonlyMap<string, Marks | 'unreadable'>>;
  plan: Signal<Plan | null>;
  revision: Signal<number>;
  results: Signal<ShownResults | null>;
  /** What was last found out about the guesses that verdicts lean on, and for which results. */
  leansAt: Signal<{ planId: string; results: Results; leans: Leans } | null>;
  pending: Signal<Pendings>;
  /** Why the plan as it stands can't be computed; empty when it can. */
  planProblems: Signal<readonly Problem[]>;
  steps: Signal<Steps>;
  route: Signal<Route>;
  notices: Notices;
  bug: Signal<Bug | null>;
  importTrouble: Signal<ImportTrouble | null>;
}

export function makeState(): State {
  return {
    phase: signal('starting'),
    storage: signal(null),
    saving: signal('saved'),
    plans: signal([]),
    marks: signal(new Map()),
    plan: signal(null),
    revision: signal(0),
    results: signal(null),
    leansAt: signal(null),
    pending: signal(new Map()),
    planProblems: signal([]),
    steps: signal(NO_STEPS),
    route: signal({ view: 'plans', sheet: null }),
    notices: signal([]),
    bug: signal(null),
    importTrouble: signal(null),
  };
}

/** The signals that screens read as they are; that they can't write them is the type's part. */
export type Shown = {
  readonly [Key in Exclude<
    keyof State,
    'pending' | 'planProblems' | 'steps' | 'leansAt'
  >]: State[Key] extends Signal<infer Value> ? ReadonlySignal<Value> : never;
};

/** What screens read, worked out from the state. */
export interface Views {
  stale: ReadonlySignal<boolean>;
  typed: ReadonlySignal<ReadonlyMap<string, string>>;
  problems: ReadonlySignal<ReadonlyMap<string, readonly Problem[]>>;
  canUndo: ReadonlySignal<boolean>;
  canRedo: ReadonlySignal<boolean>;
}

export function viewsOf(state: State): Views {
  const { pending, planProblems, plan, results, revision, steps } = state;
  return {
    stale: computed(
      () =>
        plan.value !== null &&
        ([...pending.value.values()].some(({ text, waits }) => text !== null || waits) ||
          planProblems.value.length > 0 ||
          (results.value !== null && results.value.revision !== revision.value)),
    ),
    typed: computed(() => typedTexts(pending.value)),
    problems: computed(() => problemsByPath(pending.value, planProblems.value)),
    canUndo: computed(() => pending.value.size > 0 || steps.value.past.length > 0),
    canRedo: computed(() => steps.value.future.length > 0),
  };
}

/** Changes several signals so that screens see them at once. */
export function together<T>(change: () => T): T {
  return batch(change);
}

function typedTexts(pending: Pendings): ReadonlyMap<string, string> {
  return new Map([...pending].flatMap(([path, { text }]) => (text === null ? [] : [[path, text] as const])));
}

function problemsByPath(
  pending: Pendings,
  planProblems: readonly Problem[],
): ReadonlyMap<string, readonly Problem[]> {
  const byPath = new Map<string, readonly Problem[]>();
  for (const problem of planProblems) {
    byPath.set(problem.path, [...(byPath.get(problem.path) ?? []), problem]);
  }
  for (const [path, { problems }] of pending) byPath.set(path, problems);
  return byPath;
}
