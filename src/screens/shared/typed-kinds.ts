// What can be typed into a field of a plan, and how it becomes the value the plan keeps. A "?" at the end means the
// field may be left empty, which is null. Texts that aren't such a value come back as a sentence part.
// Worked example: readTyped({ text: '33 %', kind: 'percent', currency: 'USD' }) is "0.33"; '' as 'whole?' is null.
import { exact } from '../../domain/money/format.ts';
import { dec } from '../../domain/money/decimal.ts';
import { parseTyped, type TypedKind } from '../../domain/money/parse-typed.ts';
import { fine, type Outcome, trouble } from '../../domain/problems.ts';
import { browserLook } from './screen-say.ts';

/** text: a name as it is; factor: a plain number like 1.25; the others as parse-typed.ts has them. */
export type FieldKind = TypedKind | 'text' | 'factor' | 'amount?' | 'percent?' | 'whole?';

export interface TypedArgs {
  text: string;
  kind: string;
  currency: string;
}

export function readTyped({ text, kind, currency }: TypedArgs): Outcome<string | number | null> {
  if (kind === 'text') return fine(text.trim());
  if (kind.endsWith('?') && text.trim() === '') return fine(null);
  const base = baseKind(kind);
  const read = parseTyped(browserLook(currency), base, text);
  if (!read.ok) {
    const expected = kind === 'factor' ? 'a number, like 1.25' : read.expected;
    return trouble({ code: 'field-invalid', path: '', got: read.got, expected });
  }
  return fine(base === 'whole' ? Number(read.text) : read.text);
}

/** The other number a text could mean, as read back, or null when there is only one reading. */
export function otherReading({ text, kind, currency }: TypedArgs): string | null {
  if (kind === 'text' || text.trim() === '') return null;
  const read = parseTyped(browserLook(currency), baseKind(kind), text);
  return read.ok ? read.couldBe : null;
}

/** A plan's value as the text a field shows: no grouping, the locale's decimal mark, percent in points. */
export function textOf({ value, kind, currency }: { value: unknown; kind: string; currency: string }): string {
  if (value === null || value === undefined) return '';
  if (typeof value !== 'string' && typeof value !== 'number') return '';
  if (kind === 'text') return String(value);
  const look = browserLook(currency);
  const base = baseKind(kind);
  const amount = base === 'percent' ? dec(value).times(100) : dec(value);
  const plain = exact({ ...look, group: '' }, amount);
  return base === 'amount' ? withCents(plain, look.decimal, look.minorDigits) : plain;
}

/** "3.4" in dollars is shown as "3.40"; "36000" stays. */
function withCents(text: string, decimal: string, minorDigits: number): string {
  const [units = '', decimals] = text.split(decimal);
  return decimals === undefined ? text : `${units}${decimal}${decimals.padEnd(minorDigits, '0')}`;
}

function baseKind(kind: string): TypedKind {
  const bare = kind.replace(/\?$/, '');
  return bare === 'factor' ? 'rateOfSale' : (bare as TypedKind);
}
