// Terms as they are said across a table: a value in its unit, a term with its value, and how each is typed.
// Worked example: termWords of slotting at 97 is "slotting 97"; of payment days at 60, "60 days".

import { dec } from '../../domain/money/decimal.ts';
import { exact } from '../../domain/money/format.ts';
import type { Term, Terms, TermUnit } from '../../domain/talks/types.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import type { FieldKind } from '../shared/typed-kinds.ts';

/** What a value of each unit is typed as. */
export const KIND_OF: Record<TermUnit, FieldKind> = {
  share: 'percent',
  price: 'amount',
  sum: 'amount',
  days: 'whole',
  weeks: 'whole',
  cases: 'whole',
  doors: 'whole',
};

/** "42 %", "97", "4.99", "60 days", "1 case". */
export function valueText({ unit }: Pick<Term, 'unit'>, value: number, say: ScreenSay): string {
  if (unit === 'share') return shareText(value, say);
  if (unit === 'price') return say.price(dec(String(value)));
  if (unit === 'sum') return sumText(value, say);
  return `${say.count(value)} ${value === 1 ? unit.replace(/s$/, '') : unit}`;
}

/** Whole sums without decimals: nobody says "250.00" across a table. */
function sumText(value: number, say: ScreenSay): string {
  return Number.isInteger(value) ? say.count(value) : say.sum(String(value));
}

/** A share to the last point that was said: 42.05 % is not 42.1 %. */
function shareText(value: number, say: ScreenSay): string {
  const points = dec(String(value)).times(100).toDecimalPlaces(2);
  return `${exact(say.look, points)}\u00a0%`;
}

/** After a number that is being typed. */
export function unitText({ unit, value }: Term, say: ScreenSay): string {
  if (unit === 'share') return '%';
  if (unit === 'price' || unit === 'sum') return say.symbol;
  return value === 1 ? unit.replace(/s$/, '') : unit;
}

/** In the middle of a sentence: "margin 42 %", "60 days", "2 free cases". */
export function termWords(term: Term, value: number, say: ScreenSay): string {
  const counted = countedWords(term, value === 1);
  if (counted !== null) return `${say.count(value)} ${counted}`;
  return `${lower(term.label)} ${valueText(term, value, say)}`;
}

const COUNTED: Readonly<Record<string, string>> = {
  freeFill: 'free cases',
  promoWeeks: 'promo weeks',
  paymentDays: 'days',
  doors: 'doors',
};

/** What a term counts, where its number says the rest: "free cases"; null for terms that need their name. */
export function countedWords({ name }: Term, one: boolean): string | null {
  const words = COUNTED[name];
  return words === undefined ? null : one ? words.replace(/s$/, '') : words;
}

/** Several terms in the order of `terms`: "slotting 180, 45 days". */
export function offerWords(terms: readonly Term[], offer: Terms, say: ScreenSay): string {
  return terms
    .flatMap((term) => {
      const value = offer[term.name];
      return value === undefined ? [] : [termWords(term, value, say)];
    })
    .join(', ');
}

export function lower(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}

export function upper(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
