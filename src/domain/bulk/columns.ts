// From cells to entries: which column is what, by its heading; a table that has one dimension across its top (a column a
// week, or a column a chain) becomes one entry a cell. Headings are told apart by letters and digits alone.
// Worked example: "Chain;9;10" over "Corner;12;8" is two entries: Corner, week 9, 12 and Corner, week 10, 8.
import type { Cell } from './csv.ts';
import type { CellProblem, Column, Entry, TableKind } from './types.ts';

export interface Recognised {
  columns: { heading: string; use: string | null }[];
  entries: Entry[];
  problems: CellProblem[];
  /** Headings as they stand, by the column's key. */
  headings: Record<string, string>;
}

export function recognise(kind: TableKind, rows: readonly (readonly Cell[])[]): Recognised {
  const [head = [], ...body] = rows;
  const found = head.map((cell) => kind.columns.find((column) => isCalled(column, cell.text)) ?? null);
  const used = new Set(found.flatMap((column) => (column ? [column.key] : [])));
  const wide = kind.across.find(
    ({ down, across, value }) => used.has(down) && !used.has(across) && !used.has(value),
  );
  const over = wide && head.some((cell, at) => found[at] === null && cell.text.trim() !== '') ? wide : null;
  const nameOf = (key: string) => kind.columns.find((column) => column.key === key)?.heading ?? key;
  const columns = head.map(({ text }, at) => ({
    heading: text.trim(),
    use:
      found[at]?.heading ??
      (over && text.trim() !== '' ? `${nameOf(over.value)} of one ${nameOf(over.across)}` : null),
  }));
  const problems = [
    ...repeated(head, found),
    ...(over ? [] : missing(kind.columns, used, head)),
    ...body.flatMap((cells) => beyond(cells, head)),
  ];
  const headings = Object.fromEntries(
    head.flatMap(({ text }, at) => (found[at] ? [[found[at].key, text.trim()]] : [])),
  );
  const entries = body.flatMap((cells) =>
    over ? across(over, { head, found, cells }) : [entryOf(found, cells)],
  );
  return { columns, entries, problems, headings };
}

function entryOf(found: readonly (Column | null)[], cells: readonly Cell[]): Entry {
  const own: Record<string, Cell> = {};
  for (const [at, column] of found.entries()) {
    const cell = cells[at];
    if (column && cell) own[column.key] = cell;
  }
  return { line: cells[0]?.line ?? 0, cells: own };
}

/** A cell under a heading that names its week, or its chain: an entry of its own. The heading is looked at as a cell. */
function across(
  over: { across: string; value: string },
  {
    head,
    found,
    cells,
  }: { head: readonly Cell[]; found: readonly (Column | null)[]; cells: readonly Cell[] },
): Entry[] {
  const shared = entryOf(found, cells);
  return head.flatMap((heading, at) => {
    const cell = cells[at];
    if (found[at] !== null || heading.text.trim() === '' || !cell || cell.text.trim() === '') return [];
    return [{ line: shared.line, cells: { ...shared.cells, [over.across]: heading, [over.value]: cell } }];
  });
}

function isCalled(column: Column, heading: string): boolean {
  const plain = plainName(heading);
  return plain === plainName(column.heading) || column.also.includes(plain);
}

/** Small letters and digits, one space between words. */
export function plainName(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

function repeated(head: readonly Cell[], found: readonly (Column | null)[]): CellProblem[] {
  return head.flatMap((cell, at) => {
    const column = found[at];
    if (!column || found.indexOf(column) === at) return [];
    const before = found.indexOf(column) + 1;
    const expected = `one column for ${column.heading}; column ${before} is one already`;
    return [{ line: cell.line, column: cell.column, heading: null, got: `“${cell.text.trim()}”`, expected }];
  });
}

function missing(
  columns: readonly Column[],
  used: ReadonlySet<string>,
  head: readonly Cell[],
): CellProblem[] {
  const needed = columns.filter((column) => column.needed && !used.has(column.key));
  const values = columns.filter((column) => !column.needed && !column.beside);
  const noValue = values.length > 0 && values.every(({ key }) => !used.has(key));
  if (needed.length === 0 && !noValue) return [];
  const got =
    head.length === 0 ? 'nothing' : `the headings ${head.map(({ text }) => `“${text.trim()}”`).join(', ')}`;
  const names = needed.map(({ heading }) => heading);
  const any = noValue ? [`at least one of ${values.map(({ heading }) => heading).join(', ')}`] : [];
  const expected = `a first line with headings, among them ${[...names, ...any].join(', ')}`;
  return [{ line: head[0]?.line ?? 1, column: null, heading: null, got: got.slice(0, 160), expected }];
}

/** Something stands where no heading is. */
function beyond(cells: readonly Cell[], head: readonly Cell[]): CellProblem[] {
  const outside = cells.slice(head.length).find(({ text }) => text.trim() !== '');
  if (!outside) return [];
  const expected = `nothing behind the last of ${head.length} columns; a cell with a separator in it is put in quotes`;
  return [
    { line: outside.line, column: outside.column, heading: null, got: `“${outside.text.trim()}”`, expected },
  ];
}
