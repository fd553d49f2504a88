// Numbers and weeks of a table's cells, read as a person types them and checked by the field they go to.
// Worked example: "3,40" under list price in a browser with a decimal comma is 3.40; "wk9" is no week.
import { dayNumber } from '../calendar.ts';
import { dec } from '../money/decimal.ts';
import { exact, unitPrice } from '../money/format.ts';
import type { NumberLook } from '../money/look.ts';
import { parseTyped, type TypedKind } from '../money/parse-typed.ts';
import type { Plan } from '../plan/index.ts';
import type { Cell } from './csv.ts';
import type { Task } from './types.ts';

/** The number as canonical text; null where it is none, with a problem. */
export function readNumber(
  task: Task,
  cell: Cell,
  { key, kind, expected }: { key: string; kind: TypedKind; expected: string },
): string | null {
  const isPercent = cell.text.trim().endsWith('%');
  const typed = parseTyped(task.look, isPercent ? 'percent' : kind, cell.text);
  if (!typed.ok) {
    refuse(task, cell, key, expected === '' ? typed.expected : expected);
    return null;
  }
  if (typed.couldBe !== null) task.twoWays.push(cell.text.trim());
  return typed.text;
}

/** A whole number between two ends. */
export function readWhole(
  task: Task,
  cell: Cell,
  { key, least, most, what }: { key: string; least: number; most: number; what: string },
): number | null {
  const expected = `${what} from ${least} to ${most}`;
  const typed = parseTyped(task.look, 'whole', cell.text);
  const value = typed.ok ? Number(typed.text) : Number.NaN;
  if (typed.ok && value >= least && value <= most) return value;
  refuse(task, cell, key, expected);
  return null;
}

/**
 * A week of the plan by its number, or by a day in it (2026-05-04). Weeks of `known` are taken although the plan ends before
 * them: an opening can go on past its end.
 */
export function readWeek(
  task: Task,
  cell: Cell,
  { least, known }: { least: number; known: ReadonlyMap<number, number> },
): number | null {
  const { plan } = task;
  const most = plan.horizonWeeks - 1;
  const text = cell.text.trim();
  const isDay = /^\d{4}-\d{2}-\d{2}$/.test(text);
  const number = isDay ? weekOfDay(plan, text) : /^(?:week )?(\d{1,4})$/i.exec(text)?.[1];
  const week = number === undefined || number === null ? null : Number(number);
  if (week !== null && ((week >= least && week <= most) || known.has(week))) return week;
  refuse(task, cell, 'week', `a week from ${least} to ${most}${isDay ? ', or a day in one' : ''}`);
  return null;
}

function weekOfDay(plan: Plan, isoDate: string): number | null {
  try {
    return Math.floor((dayNumber(isoDate) - dayNumber(plan.startDate)) / 7);
  } catch {
    return null; // a day that isn't in the calendar
  }
}

export function refuse(task: Task, cell: Cell, key: string, expected: string): void {
  const { line, column, text } = cell;
  const got = text.trim() === '' ? 'nothing' : `“${text.trim().slice(0, 80)}”`;
  task.problems.push({ line, column, heading: task.headings[key] ?? null, got, expected });
}

/** A kept number as the preview shows it. */
export function shownNumber(look: NumberLook, text: string | number): string {
  return exact(look, dec(text));
}

/** A kept price as the preview shows it: the currency's decimals, or more where it has more. */
export function shownPrice(look: NumberLook, text: string): string {
  const price = dec(text);
  return price.decimalPlaces() > look.minorDigits ? exact(look, price) : unitPrice(look, price);
}

/** A kept number as a file writes it: plain digits, the reader's decimal mark, no grouping. */
export function fileNumber(look: NumberLook, text: string | number): string {
  return String(text).replace('.', look.decimal === '.' ? '.' : ',');
}
