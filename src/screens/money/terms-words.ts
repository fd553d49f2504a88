// The terms of an offer in one line: its money, then every term that was said. Worked example: "Term loan: 60,000, interest
// a year 11.5 %, 6 months of interest alone, 30 months of repayment after those".

import { dec, ZERO } from '../../domain/money/decimal.ts';
import type { FieldNote, Movable } from '../../domain/offers/contract.ts';
import { type OfferPart, offerKindOf } from '../../domain/offers/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

export function termsWords(parts: readonly OfferPart[], say: ScreenSay): string {
  return parts.length === 0 ? 'Nothing in it.' : `${parts.map((part) => partWords(part, say)).join('; ')}.`;
}

function partWords(part: OfferPart, say: ScreenSay): string {
  const { label, fields } = offerKindOf(part);
  const money = 'tranches' in part ? part.tranches.reduce((sum, { amount }) => sum.plus(amount), ZERO) : null;
  const words = fields.map((field) => fieldWords(part, field, say)).filter((each) => each !== '');
  return `${label}: ${[...(money === null ? [] : [say.sum(money)]), ...words].join(', ')}`;
}

/** One term as it would be said; '' for none and for nothing. */
function fieldWords(part: OfferPart, field: FieldNote, say: ScreenSay): string {
  const { key, label, unit, choices = [] } = field;
  const value = (part as unknown as Record<string, unknown>)[key];
  const name = lower(label);
  if (unit === 'switch') return value === true ? name : '';
  if (unit === 'choice') return lower(choices.find((choice) => choice.value === value)?.label ?? '');
  if (typeof value === 'number') {
    if (unit === 'months') return value === 0 ? '' : `${say.count(value)} ${value === 1 ? one(name) : name}`;
    return unit === 'days'
      ? `${name} ${say.count(value)} ${value === 1 ? 'day' : 'days'}`
      : `${name} ${say.count(value)}`;
  }
  if (typeof value !== 'string' || dec(value).isZero()) return '';
  // how many times says nothing where nobody is paid first
  if (key === 'preferenceMultiple' && part.kind === 'equity' && part.preference === 'none') return '';
  if (unit === 'times') return name.replace('so many times', valueWords({ unit }, value, say));
  if (unit === 'perUnit') return `${name} ${perUnitText(value, say)}`;
  return unit === 'share' || unit === 'sum' ? `${name} ${valueWords({ unit }, value, say)}` : '';
}

/** As it was said: "0.35", "0.3567". */
function perUnitText(value: string, say: ScreenSay): string {
  return dec(value).decimalPlaces() > 2 ? say.priceExact(value) : say.price(dec(value));
}

function one(months: string): string {
  return months.replace(/^months/, 'month');
}

/** "17.4 %", "0.25 a unit", "2.5 times", "100,000". */
export function valueWords({ unit }: Pick<Movable, 'unit'>, value: string, say: ScreenSay): string {
  if (unit === 'share') return `${say.number(dec(value).times(100).toDecimalPlaces(2))}\u00a0%`;
  if (unit === 'perUnit') return `${perUnitText(value, say)} a unit`;
  if (unit === 'sum') return say.sum(value);
  return dec(value).eq(1) ? 'once' : `${say.number(dec(value))} times`;
}

export function lower(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}
