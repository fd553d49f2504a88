/**
 * Plan files with one thing wrong, made from the frozen examples: a case names what it sets, adds or removes by path, or
 * brings its own text. tests/problems/cases has one file a problem code.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export interface Case {
  what: string;
  /** The whole text of a file; instead of the rest. */
  text?: string;
  base?: 'small' | 'whole';
  set?: Record<string, unknown>;
  add?: Record<string, unknown>;
  remove?: string[];
  /** Every sentence that has to come, in order. */
  says: string[];
}

export interface CaseFile {
  code: string;
  cases: Case[];
}

export function caseFiles(): CaseFile[] {
  const folder = new URL('./cases/', import.meta.url);
  return readdirSync(folder).map(
    (name) => JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as CaseFile,
  );
}

export function exampleText(name: string): string {
  return readFileSync(join(import.meta.dirname, `../formats/v3/${name}.json`), 'utf8');
}

/** The text of the file a case is about. */
export function textOf({ text, base, set, add, remove }: Case): string {
  if (text !== undefined) return text;
  const file = JSON.parse(exampleText(base ?? 'small')) as { plan: unknown };
  for (const path of remove ?? []) delete parentOf(file.plan, path)[lastOf(path)];
  for (const [path, value] of Object.entries({ ...set, ...add }))
    parentOf(file.plan, path)[lastOf(path)] = value;
  for (const path of Object.keys(add ?? {})) {
    if (!Object.hasOwn(parentOf(file.plan, path), lastOf(path))) throw new Error(`${path} was not added`);
  }
  return JSON.stringify(file);
}

type Fields = Record<string, unknown>;

/** Walks ids and indexes on its own, so that the code under test does not find its way by itself. */
function parentOf(plan: unknown, path: string): Fields {
  return path
    .split('/')
    .slice(0, -1)
    .reduce<unknown>((here, segment) => {
      const next = Array.isArray(here)
        ? (here.find((each: Fields) => each['id'] === segment || each['itemId'] === segment) ??
          here[Number(segment)])
        : (here as Fields)[segment];
      if (next === undefined) throw new Error(`no "${segment}" on the way to ${path}`);
      return next;
    }, plan) as Fields;
}

function lastOf(path: string): string {
  return path.split('/').at(-1) ?? '';
}
