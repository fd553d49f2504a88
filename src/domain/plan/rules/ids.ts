// An id names one place of its list, and a field is noted as a default once; else a path would name two things.
// Worked example: two waves called "first" are one problem, at the second one's id, named there by its index.
import type { Problem } from '../../problems.ts';
import type { Plan } from '../index.ts';
import { idOf } from '../path.ts';
import { shown } from '../shown.ts';

/** Names of rungs that are no hand's; a hand may not be called so. */
export const OWN_RUNGS = ['landed', 'list', 'shelf'] as const;

export function repeatedIds(plan: Plan): Problem[] {
  return [...repeatedBelow(plan, ''), ...handsCalledRungs(plan), ...repeatedNotes(plan)];
}

function repeatedBelow(value: unknown, path: string): Problem[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = Array.isArray(value) ? repeatedIn(value, path) : [];
  const below = Object.entries(value).flatMap(([key, each]) => {
    const segment = Array.isArray(value) ? (idOf(each) ?? key) : key;
    return repeatedBelow(each, path === '' ? segment : `${path}/${segment}`);
  });
  return [...own, ...below];
}

function repeatedIn(list: readonly unknown[], path: string): Problem[] {
  const seen = new Set<string>();
  return list.flatMap((place, index) => {
    const id = idOf(place);
    if (id === null) return [];
    const isNew = !seen.has(id);
    seen.add(id);
    const field = Object.hasOwn(place as object, 'id') ? 'id' : 'itemId';
    return isNew
      ? []
      : [repeated(`${path}/${index}/${field}`, id, 'an identifier that no other place of the list has')];
  });
}

function handsCalledRungs(plan: Plan): Problem[] {
  return plan.accounts.flatMap((account) =>
    account.hands
      .filter(({ id }) => (OWN_RUNGS as readonly string[]).includes(id))
      .map(({ id }) =>
        repeated(
          `accounts/${account.id}/hands/${id}/id`,
          id,
          'an identifier other than "landed", "list" and "shelf"',
        ),
      ),
  );
}

function repeatedNotes(plan: Plan): Problem[] {
  const paths = plan.basis.map(({ path }) => path);
  return paths.flatMap((path, index) =>
    paths.indexOf(path) === index
      ? []
      : [repeated(`basis/${index}/path`, path, 'a field that no other basis note is about')],
  );
}

function repeated(path: string, id: string, expected: string): Problem {
  return { code: 'id-repeated', path, got: shown(id), expected };
}
