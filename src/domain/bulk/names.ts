// Accounts and items as a table names them: by name, whatever its capitals and spaces, or by id. A name that two share names
// neither, and a name that is nobody's is answered with the nearest. A leading apostrophe is taken off: it is written before
// names that a spreadsheet would take for a formula (a name that begins with =, +, - or @).
// Worked example: "cornr" is nobody's; the nearest is "Corner", one letter away.
import type { Cell } from './csv.ts';
import type { CellProblem } from './types.ts';

export interface Named {
  id: string;
  name: string;
}

export interface NameReader<T extends Named> {
  /** Whom the cell names, or why nobody. */
  find: (cell: Cell | undefined, heading: string, line: number) => T | CellProblem;
  /** How the table writes one: its name, or its id where the name names nobody or another. */
  write: (one: T) => string;
}

export function isNamed<T extends Named>(found: T | CellProblem): found is T {
  return 'id' in found;
}

/** `what`: "chain", as problems call it. */
export function nameReader<T extends Named>(list: readonly T[], what: string): NameReader<T> {
  const byId = new Map(list.map((one) => [one.id, one]));
  const byName = new Map<string, T | null>();
  for (const one of list) {
    const name = folded(one.name);
    byName.set(name, byName.has(name) ? null : one);
  }
  const look = (text: string): T | null | undefined => byId.get(text) ?? byName.get(folded(text));
  const find = (cell: Cell | undefined, heading: string, line: number): T | CellProblem => {
    const text = withoutGuard(cell?.text.trim() ?? '');
    const found = text === '' ? undefined : look(text);
    if (found) return found;
    const at = { line: cell?.line ?? line, column: cell?.column ?? null, heading };
    if (text === '') return { ...at, got: 'nothing', expected: `the name of a ${what} of the plan` };
    const got = `“${text.slice(0, 80)}”`;
    if (found === null) {
      const ids = list.filter((one) => folded(one.name) === folded(text)).map(({ id }) => id);
      return {
        ...at,
        got,
        expected: `one ${what}; ${ids.length} are called so: use ${ids.join(' or ')}, or rename them`,
      };
    }
    const near = nearest(text, list);
    return {
      ...at,
      got,
      expected: `the name of a ${what} of the plan${near === null ? '' : `; the nearest is “${near}”`}`,
    };
  };
  const write = (one: T): string => {
    const name = one.name.trim();
    return withGuard(look(withoutGuard(withGuard(name))) === one ? name : one.id);
  };
  return { find, write };
}

function folded(text: string): string {
  return text.toLowerCase().replace(/\s+/g, ' ').trim();
}

/** With the apostrophe where it is needed; withoutGuard takes it off. */
export function withGuard(text: string): string {
  return /^[=+\-@']/.test(text) ? `'${text}` : text;
}

export function withoutGuard(text: string): string {
  return /^'[=+\-@']/.test(text) ? text.slice(1) : text;
}

/** The name that takes the fewest letters to get to; null where there is none at all. */
function nearest(text: string, list: readonly Named[]): string | null {
  const from = folded(text);
  let best: { name: string; letters: number } | null = null;
  for (const { name } of list.slice(0, 200)) {
    const letters = lettersBetween(from, folded(name));
    if (best === null || letters < best.letters) best = { name, letters };
  }
  return best?.name ?? null;
}

/** Letters put in, taken out or changed, at least (V. I. Levenshtein, 1966). Long texts by their beginnings. */
function lettersBetween(one: string, other: string): number {
  const to = [...other.slice(0, 60)];
  let row = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (const [at, letter] of [...one.slice(0, 60)].entries()) {
    const next = [at + 1];
    for (const [index, each] of to.entries()) {
      const changed = (row[index] ?? 0) + (letter === each ? 0 : 1);
      next.push(Math.min(changed, (row[index + 1] ?? 0) + 1, (next[index] ?? 0) + 1));
    }
    row = next;
  }
  return row.at(-1) ?? 0;
}
