// Checked plans are fresh objects; what didn't change is handed over from the plan before, so that undo lists stay small
// and an edit that changes nothing is seen to change nothing. The result is frozen: plans are never changed in place.
// Worked example: after one door count is typed, the items of the new plan are the very objects of the old one.

/** `after`, with every part that equals its counterpart in `before` replaced by that one; deep-frozen. */
export function shared<T>(before: unknown, after: T): T {
  return merged(before, after) as T;
}

function merged(before: unknown, after: unknown): unknown {
  if (Object.is(before, after) || typeof after !== 'object' || after === null) return after;
  if (Array.isArray(after)) return mergedList(before, after);
  const old = typeof before === 'object' && before !== null ? (before as Record<string, unknown>) : {};
  const entries = Object.entries(after).map(([key, value]) => [key, merged(old[key], value)] as const);
  const same =
    before !== undefined &&
    !Array.isArray(before) &&
    Object.keys(old).length === entries.length &&
    entries.every(([key, value]) => Object.hasOwn(old, key) && Object.is(old[key], value));
  return same ? before : Object.freeze(Object.fromEntries(entries));
}

/** Places are matched by id where they have one, so that taking out the first does not make all others new. */
function mergedList(before: unknown, after: readonly unknown[]): unknown {
  const old: readonly unknown[] = Array.isArray(before) ? before : [];
  const byId = new Map(old.map((place) => [idOf(place), place] as const));
  const places = after.map((place, index) => {
    const id = idOf(place);
    return merged(id === null ? old[index] : byId.get(id), place);
  });
  const same = old.length === places.length && places.every((place, index) => Object.is(place, old[index]));
  return same && Array.isArray(before) ? before : Object.freeze(places);
}

function idOf(place: unknown): string | null {
  if (typeof place !== 'object' || place === null) return null;
  const { id, itemId } = place as Record<string, unknown>;
  return typeof id === 'string' ? id : typeof itemId === 'string' ? itemId : null;
}
