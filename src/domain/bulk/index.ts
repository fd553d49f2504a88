// Bulk entry: a table pasted or chosen as a file, of doors by account and week, of prices, of seasonality, or of scans, read into what
// would change; and the plan's own values written as such a table. Reading what was written changes nothing.
// Worked example: "account,week,doors" over "Corner,9,12" reads as one change, "Corner, week 9: 10 becomes 12".
import { dayNumber, isoDateOf } from '../calendar.ts';
import type { NumberLook } from '../money/look.ts';
import type { Plan } from '../plan/index.ts';
import { setAt } from '../plan/path.ts';
import { checkRules } from '../plan/rules.ts';
import { recognise } from './columns.ts';
import { readCsv, type Separator, writeCsv } from './csv.ts';
import { DOORS } from './doors.ts';
import { PRICE_LIST } from './prices.ts';
import { SCANS } from './scans.ts';
import { SEASON } from './season.ts';
import type { BulkReading, BulkTable, CellProblem, TableKind, Task } from './types.ts';

const KINDS: Readonly<Record<BulkTable, TableKind>> = {
  doors: DOORS,
  prices: PRICE_LIST,
  season: SEASON,
  scans: SCANS,
};

/** The longest text that is read, in characters; far above any table of a person. */
export const TEXT_MOST = 5_000_000;

/** Problems beyond these are counted only. */
const PROBLEMS_MOST = 1000;

export interface BulkText {
  table: BulkTable;
  text: string;
  plan: Plan;
  /** How numbers are written in the text. */
  look: NumberLook;
  /** "week 9 (4 May)" for the preview; the date as YYYY-MM-DD otherwise. */
  week?: (index: number) => string;
  /** YYYY-MM-DD: what was sold can't have been sold after it. Without it nothing is refused for that. */
  today?: string;
}

/** What accepting the text would change; with any problem nothing of it is to be accepted. */
export function readBulk({ table, text, plan, look, week, today }: BulkText): BulkReading {
  if (text.length > TEXT_MOST) return tooLong(text.length);
  const kind = KINDS[table];
  const { separator, rows, faults } = readCsv(text);
  const { columns, entries, problems, headings } = recognise(kind, rows);
  const task: Task = {
    plan,
    look,
    today: today ?? null,
    week: week ?? ((index) => `week ${index} (${isoDateOf(dayNumber(plan.startDate) + 7 * index)})`),
    headings,
    problems: [...faults.map(({ cell, expected }) => fault(cell, expected)), ...problems],
    changes: [],
    fields: [],
    notes: [],
    twoWays: [],
    same: 0,
  };
  const isReadable = problems.length === 0 || entries.length > 0;
  const named =
    isReadable && columns.some(({ use }) => use !== null) ? kind.read(task, entries) : new Set<string>();
  const ruled = task.problems.length === 0 ? againstRules(task) : [];
  return {
    separator,
    columns,
    rows: Math.max(0, rows.length - 1),
    problems: ordered([...task.problems, ...ruled]),
    changes: task.changes,
    fields: task.fields,
    same: task.same,
    notes: task.notes,
    leftAlone: kind.about(plan).flatMap(({ id, name }) => (named.has(id) ? [] : [name])),
    twoWays: [...new Set(task.twoWays)],
  };
}

/** The plan's values as a table with its headings. */
export function writeBulk(
  { table, plan, look }: Omit<BulkText, 'text' | 'week' | 'today'>,
  separator: Separator,
): string {
  const kind = KINDS[table];
  return writeCsv([kind.columns.map(({ heading }) => heading), ...kind.write(plan, look)], separator);
}

/** What stands between cells where the decimal mark is a comma: a semicolon, as spreadsheets there write it. */
export function separatorFor({ decimal }: NumberLook): Separator {
  return decimal === '.' ? ',' : ';';
}

/** Headings of a kind of table: those it needs, and those it may have. */
export function headingsOf(table: BulkTable): { needed: string[]; other: string[] } {
  const { columns } = KINDS[table];
  const names = (needed: boolean) =>
    columns.filter((each) => each.needed === needed).map(({ heading }) => heading);
  return { needed: names(true), other: names(false) };
}

/** What the plan as it would be breaks of its own rules, and didn't before. */
function againstRules({ plan, fields }: Task): CellProblem[] {
  if (fields.length === 0) return [];
  const changed = fields.reduce((next, { path, value }) => setAt(next, path, value), plan);
  const before = new Set(checkRules(plan).map(({ path, code }) => `${path} ${code}`));
  return checkRules(changed)
    .filter(({ path, code }) => !before.has(`${path} ${code}`))
    .map(({ path, got, expected }) => ({ line: null, column: null, heading: path, got, expected }));
}

function fault(
  { line, column, text }: { line: number; column: number; text: string },
  expected: string,
): CellProblem {
  return { line, column, heading: null, got: `“${text.trim().slice(0, 80)}”`, expected };
}

/** By line and column, each once: a heading that is wrong is met by every row. */
function ordered(problems: readonly CellProblem[]): CellProblem[] {
  const once = new Map<string, CellProblem>();
  for (const problem of problems) {
    const key = `${problem.line} ${problem.column} ${problem.got} ${problem.expected}`;
    if (!once.has(key)) once.set(key, problem);
  }
  const place = ({ line, column }: CellProblem) => (line ?? 1e9) * 1e5 + (column ?? 0);
  return [...once.values()].sort((one, other) => place(one) - place(other)).slice(0, PROBLEMS_MOST);
}

function tooLong(length: number): BulkReading {
  const got = `${Math.ceil(length / 1_000_000)} million characters`;
  const problem = { line: null, column: null, heading: null, got, expected: 'at most 5 million' };
  const nothing = {
    columns: [],
    rows: 0,
    changes: [],
    fields: [],
    same: 0,
    notes: [],
    leftAlone: [],
    twoWays: [],
  };
  return { ...nothing, separator: ',', problems: [problem] };
}

/** "Line 7, column 3 (week): got “wk9”; expected a week from 1 to 103." */
export function problemLine({ line, column, heading, got, expected }: CellProblem): string {
  const named = heading === null || heading === '' ? '' : ` (${heading})`;
  const where =
    line === null
      ? (heading ?? 'The table')
      : column === null || column === 0
        ? `Line ${line}`
        : `Line ${line}, column ${column}${named}`;
  return `${where}: got ${got}; expected ${expected}.`;
}
