// What can be typed into a field, and how a plan's value stands in it. The session reads texts with the same parser; it
// is asked here only for fields outside a plan (the seven numbers) and for what a text could have meant besides.
// Worked example: "33 %" read as percent is "0.33", and "0.33" stands in its field as "33".
import { dec } from '../../domain/money/decimal.ts';
import { exact } from '../../domain/money/format.ts';
import { parseTyped, type Typed, type TypedKind } from '../../domain/money/parse-typed.ts';
import { browserLook } from './screen-say.ts';

/** text: a name as it is; the others as parse-typed.ts has them. */
export type FieldKind = TypedKind | 'text';

export interface TypedArgs {
  text: string;
  kind: FieldKind;
  currency: string;
}

/** How a text is read: a number, or what was expected. Null for kinds that are no number. */
export function readNumber({ text, kind, currency }: TypedArgs): Typed | null {
  return kind === 'text' ? null : parseTyped(browserLook(currency), kind, text);
}

interface ValueOf {
  value: unknown;
  kind: FieldKind;
  currency: string;
}

/** A plan's value as the text a field shows: no grouping, the locale's decimal mark, percent in points. */
export function textOf(of: ValueOf): string {
  return written(of, '');
}

/** `group` stands between thousands; the locale's own where it isn't given. */
function written({ value, kind, currency }: ValueOf, group?: string): string {
  if (typeof value !== 'string' && typeof value !== 'number') return '';
  if (kind === 'text') return String(value);
  const look = browserLook(currency);
  const amount = kind === 'percent' ? dec(value).times(100) : dec(value);
  const plain = exact(group === undefined ? look : { ...look, group }, amount);
  return kind === 'amount' ? withCents(plain, look.decimal, look.minorDigits) : plain;
}

/** "3.4" in dollars is shown as "3.40"; "36000" stays. */
function withCents(text: string, decimal: string, minorDigits: number): string {
  const [units = '', decimals] = text.split(decimal);
  return decimals === undefined ? text : `${units}${decimal}${decimals.padEnd(minorDigits, '0')}`;
}

/** The kind of a field by its name in the plan: names end in what they are ("depositRate", "openingCashAmount"). */
export function kindAt(path: string): FieldKind {
  const name = path.split('/').at(-1) ?? '';
  if (/(?:rate|share|points|chance)$/i.test(name)) return 'percent';
  return /amount/i.test(name) ? 'amount' : 'factor';
}

/** A plan's value in words: grouped, with "%" where that belongs; texts that are no number as they are. */
export function valueWords({
  value,
  path,
  currency,
}: {
  value: unknown;
  path: string;
  currency: string;
}): string {
  if (typeof value === 'string' && !/^-?\d/.test(value)) return value;
  const kind = kindAt(path);
  const text = written({ value, kind, currency });
  return text !== '' && kind === 'percent' ? `${text}\u00a0%` : text;
}
