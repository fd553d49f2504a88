// The commands that know no business word: set a field, add, remove or move a place of a list. Every command is a pure
// function of a plan and named arguments to a plan or problems; the checks of the whole plan come after, in commit.ts.
// Setting a field drops its basis note, and removing a place drops the notes about it: what is typed is no default.
// Worked example: setField(plan, { path: 'accounts/corner/terms/latenessDays', value: 5 }) also takes the note
// "Chains pay about ten days late" out of plan.basis.
import type { BasisNote, Plan } from '../../domain/plan/index.ts';
import { getAt, idOf, insertAt, isUnder, removeAt, setAt } from '../../domain/plan/path.ts';
import { fine, type Outcome } from '../../domain/problems.ts';

/** A command as the session runs it. */
export type Command<Args> = (plan: Plan, args: Args) => Outcome<Plan>;

export interface FieldChange {
  path: string;
  value: unknown;
}

/** Throws when the path names no field of the plan. */
export function setField(plan: Plan, { path, value }: FieldChange): Outcome<Plan> {
  return fine(withoutNotes(setAt(plan, path, value), path));
}

/** A part that was missing, with notes about what in it is a default. */
export function addPart(
  plan: Plan,
  { path, value, notes }: FieldChange & { notes: readonly BasisNote[] },
): Outcome<Plan> {
  const added = setField(plan, { path, value });
  return added.ok ? fine(withNotes(added.value, notes)) : added;
}

/** Several fields at once, as one edit. */
export function setFields(plan: Plan, { changes }: { changes: readonly FieldChange[] }): Outcome<Plan> {
  return fine(
    changes.reduce((changed, { path, value }) => withoutNotes(setAt(changed, path, value), path), plan),
  );
}

/** Puts `place` into the list at `listPath` before `index`; the list's length puts it last. `notes` say what in it is a default. */
export function addPlace(
  plan: Plan,
  {
    listPath,
    index,
    place,
    notes = [],
  }: { listPath: string; index: number; place: unknown; notes?: readonly BasisNote[] },
): Outcome<Plan> {
  return fine(withNotes(insertAt(plan, listPath, index, place), notes));
}

export function removePlace(plan: Plan, { path }: { path: string }): Outcome<Plan> {
  return fine(withoutNotes(removeAt(plan, path), path));
}

/** Takes a place to another index of its list; the order counts for hands, cost lines and discounts in series. */
export function movePlace(plan: Plan, { path, toIndex }: { path: string; toIndex: number }): Outcome<Plan> {
  const place = getAt(plan, path);
  return fine(insertAt(removeAt(plan, path), path.slice(0, path.lastIndexOf('/')), toIndex, place));
}

/** Puts a place last into a list. */
export function append(plan: Plan, listPath: string, place: unknown): Outcome<Plan> {
  const list = getAt(plan, listPath);
  return addPlace(plan, { listPath, index: Array.isArray(list) ? list.length : 0, place });
}

/** The plan with basis notes added; a field that has one gets the new one. */
export function withNotes(plan: Plan, notes: readonly BasisNote[]): Plan {
  if (notes.length === 0) return plan;
  const kept = plan.basis.filter(({ path }) => notes.every((note) => note.path !== path));
  return { ...plan, basis: [...kept, ...notes] };
}

/** Where the default at `path` came from, or null when it was typed. */
export function noteAt(plan: Plan, path: string): BasisNote | null {
  return plan.basis.find((note) => note.path === path) ?? null;
}

/** Without the notes about `path`, what is under it, and what it is a part of: a list of factors is no default once one is typed. */
function withoutNotes(plan: Plan, path: string): Plan {
  const kept = plan.basis.filter((note) => !isUnder(note.path, path) && !isUnder(path, note.path));
  return kept.length === plan.basis.length ? plan : { ...plan, basis: kept };
}

/** The list with the place of that id changed, the others as they are. */
export function changed<T>(list: readonly T[], id: string, change: (place: T) => T): T[] {
  return list.map((place) => (idOf(place) === id ? change(place) : place));
}
