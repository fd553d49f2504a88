/**
 * Reads the project's own text the way the tidy tests need it: file lists, code without its comments, and
 * every import of a file. Paths are always relative to the repository, with forward slashes.
 * Worked figure: `import type { Plan } from './plan.ts'` in src/domain/evaluate.ts is one import, of
 * src/domain/plan.ts, and a type import counts like any other.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, posix, relative, sep } from 'node:path';
import { parseSync } from 'vite';

export const root = join(import.meta.dirname, '../..');

const notOurs = new Set(['node_modules', 'dist', '.git']);

/** Every file under a folder of the repository ('' is all of it), sorted; what git ignores is left out. */
export function filesUnder(folder: string): string[] {
  const start = join(root, folder);
  if (!existsSync(start)) return [];
  return readdirSync(start, { withFileTypes: true })
    .filter((entry) => !notOurs.has(entry.name))
    .flatMap((entry) => {
      const path = relative(root, join(start, entry.name)).split(sep).join('/');
      return entry.isDirectory() ? filesUnder(path) : [path];
    })
    .sort();
}

export function readText(path: string): string {
  return readFileSync(join(root, path), 'utf8');
}

export function isCode(path: string): boolean {
  return /\.tsx?$/.test(path);
}

/** The text with each comment turned into spaces, so that positions and line numbers stay. */
export function withoutComments(path: string, text: string): string {
  let code = text;
  for (const { start, end } of parse(path, text).comments) {
    code = code.slice(0, start) + code.slice(start, end).replace(/[^\n]/g, ' ') + code.slice(end);
  }
  return code;
}

export interface Import {
  /** As written: './plan.ts', 'zod/mini'. */
  readonly written: string;
  /** The file it names in the repository, or null for a package. */
  readonly file: string | null;
  /** True where the import is gone once types are stripped. */
  readonly typeOnly: boolean;
}

/** All of a file's imports: static, re-exported, dynamic, in types, by worker address, and in CSS. */
export function importsOf(path: string, text: string): Import[] {
  if (path.endsWith('.css')) {
    const inCss = text.matchAll(/(?:@import\s+(?:url\()?|\burl\()\s*["']?([^"')\s]+)/g);
    return [...inCss].map((match) => resolveImport(path, match[1] ?? '', false));
  }
  const { module } = parse(path, text);
  const found = new Map<string, boolean>();
  const add = (written: string, typeOnly: boolean) =>
    found.set(written, typeOnly && (found.get(written) ?? true));

  for (const each of module.staticImports) {
    const typeOnly = each.entries.length > 0 && each.entries.every((entry) => entry.isType);
    add(each.moduleRequest.value, typeOnly);
  }
  for (const each of module.staticExports.flatMap((statement) => statement.entries)) {
    if (each.moduleRequest) add(each.moduleRequest.value, each.isType);
  }
  const code = withoutComments(path, text);
  const elsewhere = /(?:\bimport\(|\bnew URL\(|\bimport\.meta\.glob(?:<[^>]*>)?\()\s*['"`]([^'"`]+)['"`]/g;
  for (const match of code.matchAll(elsewhere)) add(match[1] ?? '', true);
  return [...found].map(([written, typeOnly]) => resolveImport(path, written, typeOnly));
}

/** The modules that must be there before a file can run: static imports and re-exports, as written. */
export function importsAtStart(path: string, text: string): string[] {
  const { staticImports, staticExports } = parse(path, text).module;
  const exported = staticExports.flatMap((each) => each.entries).flatMap((each) => each.moduleRequest ?? []);
  return [...staticImports.map((each) => each.moduleRequest), ...exported].map(({ value }) => value);
}

function resolveImport(from: string, written: string, typeOnly: boolean): Import {
  const bare = written.replace(/\?.*$/, '');
  const file = bare.startsWith('.') ? posix.join(posix.dirname(from), bare) : null;
  return { written, file, typeOnly };
}

function parse(path: string, text: string): ReturnType<typeof parseSync> {
  const parsed = parseSync(path, text);
  const [first] = parsed.errors;
  if (first) throw new Error(`${path} does not parse: ${first.message}`);
  return parsed;
}
