// Where a field of a plan is: field names and ids joined by "/", from the plan down. In a list an id stands for the
// place (a listing's is its itemId), so a path stays right when the list is sorted; an index is accepted too, and is
// the only name where places have no id. Basis notes, problems, typed text and commands all name fields this way.
// Worked example: 'accounts/corner/listings/tea/unitsPerStoreWeek' in a plan whose first account is "corner" is the
// same field as 'accounts/0/listings/0/unitsPerStoreWeek'.
import type { Plan } from './index.ts';

/** The value at `path`, or undefined when there is no such field. '' is the plan itself. */
export function getAt(plan: unknown, path: string): unknown {
  let here: unknown = plan;
  for (const segment of segmentsOf(path)) {
    const key = keyOf(here, segment);
    if (key === null) return undefined;
    here = (here as Record<string | number, unknown>)[key];
  }
  return here;
}

/**
 * The plan with `value` at `path`; everything beside the path is shared with the old plan. The value is not checked
 * here. Throws when the path names no field, which is a bug: ask hasAt first where the path came from outside.
 */
export function setAt(plan: Plan, path: string, value: unknown): Plan {
  return replaced(plan, segmentsOf(path), value, path) as Plan;
}

/** Whether `path` names a field or a place of a list. */
export function hasAt(plan: unknown, path: string): boolean {
  return getAt(plan, path) !== undefined;
}

/** The plan with `place` put into the list at `listPath`, before `index` (its length puts it last). */
export function insertAt(plan: Plan, listPath: string, index: number, place: unknown): Plan {
  const list = listAt(plan, listPath);
  return setAt(plan, listPath, [...list.slice(0, index), place, ...list.slice(index)]);
}

/** The plan without the list place that `path` names. */
export function removeAt(plan: Plan, path: string): Plan {
  const cut = path.lastIndexOf('/');
  if (cut < 0) throw new Error(`"${path}" is not a place in a list`);
  const list = listAt(plan, path.slice(0, cut));
  const index = keyOf(list, path.slice(cut + 1));
  if (index === null) throw new Error(`no place "${path}" in the plan`);
  return setAt(
    plan,
    path.slice(0, cut),
    list.filter((_, each) => each !== index),
  );
}

/** The path that names by ids what `keys` names by indexes, as a schema's issue does. Keys that lead nowhere are kept. */
export function pathOfKeys(plan: unknown, keys: readonly PropertyKey[]): string {
  let here: unknown = plan;
  const segments = keys.map((key) => {
    const list = Array.isArray(here) ? here : null;
    here = ownValue(here, String(key));
    return (list && uniqueId(list, here)) ?? String(key);
  });
  return segments.join('/');
}

/** Whether `path` is `above` or lies under it. */
export function isUnder(path: string, above: string): boolean {
  return above === '' || path === above || path.startsWith(`${above}/`);
}

function segmentsOf(path: string): string[] {
  return path === '' ? [] : path.split('/');
}

/** The own key or index that `segment` names in `here`, or null. An id goes before an index. */
function keyOf(here: unknown, segment: string): string | number | null {
  if (Array.isArray(here)) {
    const byId = here.findIndex((place) => idOf(place) === segment);
    if (byId >= 0) return byId;
    const index = /^(?:0|[1-9]\d{0,5})$/.test(segment) ? Number(segment) : -1;
    return index >= 0 && index < here.length ? index : null;
  }
  return typeof here === 'object' && here !== null && Object.hasOwn(here, segment) ? segment : null;
}

/** What names a place of a list: its id, or the item it lists. */
export function idOf(place: unknown): string | null {
  const id = ownValue(place, 'id') ?? ownValue(place, 'itemId');
  return typeof id === 'string' ? id : null;
}

/** An id that two places share, or that could not be a segment, names neither: then the index has to. */
function uniqueId(list: readonly unknown[], place: unknown): string | null {
  const id = idOf(place);
  if (id === null || !/^[A-Za-z0-9-]{1,60}$/.test(id)) return null;
  return list.filter((each) => idOf(each) === id).length === 1 ? id : null;
}

function ownValue(here: unknown, key: string): unknown {
  if (typeof here !== 'object' || here === null || !Object.hasOwn(here, key)) return undefined;
  return (here as Record<string, unknown>)[key];
}

function listAt(plan: Plan, path: string): readonly unknown[] {
  const list = getAt(plan, path);
  if (!Array.isArray(list)) throw new Error(`"${path}" is not a list of the plan`);
  return list;
}

function replaced(here: unknown, segments: readonly string[], value: unknown, path: string): unknown {
  const [segment, ...rest] = segments;
  if (segment === undefined) return value;
  const key = keyOf(here, segment);
  if (key === null) throw new Error(`no field "${path}" in the plan`);
  if (Array.isArray(here)) {
    return here.map((place, index) => (index === key ? replaced(place, rest, value, path) : place));
  }
  const fields = here as Record<string, unknown>;
  return { ...fields, [key]: replaced(fields[key as string], rest, value, path) };
}
