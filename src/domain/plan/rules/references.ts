// What names something else in the plan has to name something that is there: listed items, bases of cost lines, locked
// rungs, and the fields that basis notes are about.
// Worked example: duty as a share of "goods" stands after the line "goods"; before it, its base isn't known yet.
import type { Problem } from '../../problems.ts';
import type { Item, Plan } from '../index.ts';
import { getAt } from '../path.ts';
import { accepts } from '../schema-at.ts';
import { shown } from '../shown.ts';
import { OWN_RUNGS } from './ids.ts';

export function referenceProblems(plan: Plan): Problem[] {
  return [...plan.items.flatMap(costBases), ...listedItems(plan), ...lockedRungs(plan)];
}

export function basisProblems(plan: Plan): Problem[] {
  return plan.basis.flatMap((_, index) => noteProblems(plan, index));
}

/** The value that a basis note's end stands for, in the kind of the field's own value. */
export function valueLike(current: unknown, end: string): string | number {
  return typeof current === 'number' ? Number(end) : end;
}

function costBases(item: Item): Problem[] {
  const ids = item.costLines.map(({ id }) => id);
  return item.costLines.flatMap(({ id, rule }, index) => {
    if (rule.by !== 'share') return [];
    const path = `items/${item.id}/costLines/${id}/rule/of`;
    const earlier = ids.slice(0, index);
    const expected =
      earlier.length > 0 ? `earlier lines: ${earlier.map(shown).join(', ')}` : 'no share in a first line';
    if (rule.of.length === 0) return [{ code: 'cost-base', path, got: 'no line', expected } as const];
    return rule.of.flatMap((name, place): Problem[] => {
      const at = `${path}/${place}`;
      if (!ids.includes(name)) return [unknown(at, name, expected)];
      if (!earlier.includes(name)) {
        const got = name === id ? 'the line itself' : `the later line ${shown(name)}`;
        return [{ code: 'cost-base', path: at, got, expected }];
      }
      if (rule.of.indexOf(name) === place) return [];
      return [{ code: 'id-repeated', path: at, got: shown(name), expected: 'each line named once' }];
    });
  });
}

function listedItems(plan: Plan): Problem[] {
  const ids = plan.items.map(({ id }) => id);
  return plan.accounts.flatMap(({ id, listings }) =>
    listings
      .filter(({ itemId }) => !ids.includes(itemId))
      .map(({ itemId }) =>
        unknown(`accounts/${id}/listings/${itemId}/itemId`, itemId, `an item of the plan: ${few(ids)}`),
      ),
  );
}

function lockedRungs(plan: Plan): Problem[] {
  return plan.accounts.flatMap(({ id, hands, listings }) => {
    const rungs = [...OWN_RUNGS, ...hands.map((hand) => hand.id)];
    return listings.flatMap(({ itemId, lockedRungs: locked }) =>
      locked.flatMap((rung, index): Problem[] => {
        const path = `accounts/${id}/listings/${itemId}/lockedRungs/${index}`;
        if (!rungs.includes(rung)) return [unknown(path, rung, `a rung of this ladder: ${few(rungs)}`)];
        if (locked.indexOf(rung) === index) return [];
        return [{ code: 'id-repeated', path, got: shown(rung), expected: 'each locked rung once' }];
      }),
    );
  });
}

function noteProblems(plan: Plan, index: number): Problem[] {
  const note = plan.basis[index];
  if (!note) return [];
  const current = getAt(plan, note.path);
  if (current === undefined)
    return [unknown(`basis/${index}/path`, note.path, 'the path of a field of this plan')];
  const ends = (['low', 'high'] as const).flatMap((key): Problem[] => {
    const end = note[key];
    if (end === null || (isScalar(current) && accepts(plan, note.path, valueLike(current, end)))) return [];
    const expected = `a value that ${note.path} could have, or null`;
    return [{ code: 'field-invalid', path: `basis/${index}/${key}`, got: shown(end), expected }];
  });
  if (ends.length > 0 || note.low === null || note.high === null) return ends;
  if (Number(note.low) <= Number(note.high)) return [];
  const expected = `at least the low end, ${note.low}`;
  return [{ code: 'field-invalid', path: `basis/${index}/high`, got: shown(note.high), expected }];
}

/** Ends are numbers, so they are about a field that is one (kept as text, as a number, or not known yet). */
function isScalar(value: unknown): boolean {
  return typeof value === 'number' || value === null || (typeof value === 'string' && /^-?\d/.test(value));
}

function unknown(path: string, name: string, expected: string): Problem {
  return { code: 'reference-unknown', path, got: shown(name), expected };
}

function few(names: readonly string[]): string {
  const head = names.slice(0, 8).map(shown).join(', ');
  return names.length > 8 ? `${head} and ${names.length - 8} more` : head;
}
