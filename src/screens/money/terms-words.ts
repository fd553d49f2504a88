// The terms of an offer in one line: its money, then what may be moved in it. Worked example: "Equity: 100,000, part 20 %".

import { dec, ZERO } from '../../domain/money/decimal.ts';
import type { Movable } from '../../domain/offers/contract.ts';
import { type OfferPart, offerKindOf } from '../../domain/offers/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

export function termsWords(parts: readonly OfferPart[], say: ScreenSay): string {
  return parts.length === 0 ? 'Nothing in it.' : `${parts.map((part) => partWords(part, say)).join('; ')}.`;
}

function partWords(part: OfferPart, say: ScreenSay): string {
  const { label, movable } = offerKindOf(part);
  const money = 'tranches' in part ? part.tranches.reduce((sum, { amount }) => sum.plus(amount), ZERO) : null;
  const words = movable.flatMap((term) => {
    const value = keptTerm(part, term.key);
    return value === null || dec(value).isZero()
      ? []
      : [`${lower(term.label)} ${valueWords(term, value, say)}`];
  });
  return `${label}: ${[...(money === null ? [] : [say.sum(money)]), ...words].join(', ')}`;
}

/** A term's kept text; null where it is left open, or the part has none of that name. */
export function keptTerm(part: OfferPart, key: string): string | null {
  const value = (part as unknown as Record<string, unknown>)[key];
  return typeof value === 'string' ? value : null;
}

/** "17.4 %", "0.25 a unit", "2.5 times", "100,000". */
export function valueWords({ unit }: Pick<Movable, 'unit'>, value: string, say: ScreenSay): string {
  if (unit === 'share') return `${say.number(dec(value).times(100).toDecimalPlaces(2))}\u00a0%`;
  if (unit === 'perUnit') return `${say.priceExact(value)} a unit`;
  return unit === 'times' ? `${say.number(dec(value))} times` : say.sum(value);
}

export function lower(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}
