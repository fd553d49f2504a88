// What bulk entry is made of: a table of one kind is read into fields of the plan that would change, or problems by line and
// column. Nothing here changes a plan; a person accepts the changes as a whole.
// Worked example: "Corner,9,12" under "account,week,doors" would change 'accounts/corner/waves'.
import type { NumberLook } from '../money/look.ts';
import type { Plan } from '../plan/index.ts';
import type { Cell, Separator } from './csv.ts';

export const BULK_TABLES = ['doors', 'prices', 'season', 'scans'] as const;
export type BulkTable = (typeof BULK_TABLES)[number];

/** A cell that can't be taken, or a row, or the table. Reads "line 7, column 3 (week): got “wk9”; expected ...". */
export interface CellProblem {
  /** From 1; null for what is no line's. */
  line: number | null;
  column: number | null;
  /** The column's heading, or null. */
  heading: string | null;
  got: string;
  expected: string;
}

/** One value that would change, as a person reads it. */
export interface BulkChange {
  /** "Corner, Tea" */
  where: string;
  /** "list price", "week 9" */
  what: string;
  before: string;
  after: string;
}

export interface BulkReading {
  separator: Separator;
  /** Columns as they stand, and the name of what each is taken as; null: not used. */
  columns: readonly { heading: string; use: string | null }[];
  /** Rows below the headings. */
  rows: number;
  problems: readonly CellProblem[];
  changes: readonly BulkChange[];
  /** The fields of the plan behind them: what accepting sets, as one edit. */
  fields: readonly { path: string; value: unknown }[];
  /** Values that the plan has already. */
  same: number;
  /** Sentences about wholes: openings of an account before and after. */
  notes: readonly string[];
  /** Accounts or items that the table could name and doesn't: nothing of them changes. */
  leftAlone: readonly string[];
  /** Numbers that could be read two ways, as they stand; the preview shows which was taken. */
  twoWays: readonly string[];
}

/** A column that a table of a kind can have. */
export interface Column {
  key: string;
  /** As the template writes it. */
  heading: string;
  /** Other words for it, in small letters. */
  also: readonly string[];
  needed: boolean;
  /** One that may be left out without leaving nothing to read. */
  beside?: boolean;
}

/** Cells of one logical row, by the column's key. */
export interface Entry {
  line: number;
  cells: Readonly<Record<string, Cell | undefined>>;
}

/** What reading writes into, and what it reads with. */
export interface Task {
  plan: Plan;
  look: NumberLook;
  /** YYYY-MM-DD; null where it isn't known. */
  today: string | null;
  /** "week 9 (4 May)" */
  week: (index: number) => string;
  headings: Readonly<Record<string, string>>;
  problems: CellProblem[];
  changes: BulkChange[];
  fields: { path: string; value: unknown }[];
  notes: string[];
  twoWays: string[];
  same: number;
}

export interface TableKind {
  columns: readonly Column[];
  /** The column whose values may stand across the top, the one down the side then, and what the cells are. */
  across: readonly { down: string; across: string; value: string }[];
  /** Reads entries into changes; gives the names of those it found. */
  read: (task: Task, entries: readonly Entry[]) => Set<string>;
  /** Ids and names of what the table is about. */
  about: (plan: Plan) => readonly { id: string; name: string }[];
  /** The plan's own values as rows below the headings. */
  write: (plan: Plan, look: NumberLook) => string[][];
}
