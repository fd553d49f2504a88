// Numbers as text for a reader, in the look passed in. Decimals are rounded as decimals, halves away from zero, and only
// then turned into text: no binary fraction comes between. Minus is a true minus; a zero has none.
// Worked figure: money of 12300.4 in the plain look is "12,300" (10,000 and more go without cents); 9999.5 is "9,999.50".
import { type Decimal, dec, ZERO } from './decimal.ts';
import type { NumberLook } from './look.ts';

/** Where cents are left out: money of this size and more. */
const CENTS_BELOW = 10_000;

/** Money without a currency sign: with cents below 10,000, without from there on. */
export function money(look: NumberLook, amount: Decimal): string {
  return fixed(look, amount, amount.abs().lt(CENTS_BELOW) ? look.minorDigits : 0);
}

/** Money to its last minor unit whatever its size, for tables and documents. */
export function moneyExact(look: NumberLook, amount: Decimal): string {
  return fixed(look, amount, look.minorDigits);
}

/** The same two for the weekly pass's whole minor units (cents). */
export function moneyOfMinor(look: NumberLook, minorUnits: number): string {
  return money(look, ofMinor(look, minorUnits));
}

export function moneyExactOfMinor(look: NumberLook, minorUnits: number): string {
  return moneyExact(look, ofMinor(look, minorUnits));
}

/** A price of one unit as read on a tag: the currency's own decimals. */
export function unitPrice(look: NumberLook, amount: Decimal): string {
  return fixed(look, amount, look.minorDigits);
}

/** A price of one unit in workings: 4 decimals. */
export function unitPriceExact(look: NumberLook, amount: Decimal): string {
  return fixed(look, amount, 4);
}

/** A margin, markup or other share, to a tenth of a point: 0.4167 is "41.7 %". */
export function percent(look: NumberLook, rate: Decimal): string {
  return around(fixed(look, rate.times(100), 1), look.percent);
}

/** A share to whole points. */
export function percentWhole(look: NumberLook, rate: Decimal): string {
  return around(fixed(look, rate.times(100), 0), look.percent);
}

/** A share with every decimal it has, as a field shows what was typed: "0.125" is "12.5 %". */
export function percentExact(look: NumberLook, rate: Decimal): string {
  return around(exact(look, rate.times(100)), look.percent);
}

/** A chance, to the nearest 5 points. */
export function chance(look: NumberLook, rate: Decimal): string {
  return around(fixed(look, rate.times(20).toDecimalPlaces(0).times(5), 0), look.percent);
}

/** A difference of two shares in points, to a tenth: 0.04 is "4.0". The word "points" is the screen's. */
export function points(look: NumberLook, rateDifference: Decimal): string {
  return fixed(look, rateDifference.times(100), 1);
}

/** A rate of sale, turns, weeks: to a tenth. */
export function tenths(look: NumberLook, amount: Decimal): string {
  return fixed(look, amount, 1);
}

/** A correlation: to a hundredth. */
export function hundredths(look: NumberLook, amount: Decimal): string {
  return fixed(look, amount, 2);
}

/** Units, doors, cases: whole. */
export function whole(look: NumberLook, count: number | Decimal): string {
  return fixed(look, typeof count === 'number' ? dec(count) : count, 0);
}

/** A number with every decimal it has, as a field shows what was typed. */
export function exact(look: NumberLook, amount: Decimal): string {
  return shown(look, amount.toFixed());
}

/** The currency sign where the locale puts it; a minus stands before both. */
export function withCurrency(look: NumberLook, text: string): string {
  return around(text, look.money);
}

/** A difference as read: a plus before what is neither negative nor zero. */
export function withPlus(look: NumberLook, text: string): string {
  const nothing = [...text].every((each) => !look.digits.includes(each) || each === look.digits[0]);
  return nothing || text.startsWith('−') ? text : `+${text}`;
}

function ofMinor({ minorDigits }: NumberLook, minorUnits: number): Decimal {
  return dec(minorUnits).div(10 ** minorDigits);
}

/** So many decimals, no more and no fewer. */
function fixed(look: NumberLook, amount: Decimal, decimals: number): string {
  const rounded = amount.toDecimalPlaces(decimals);
  return shown(look, (rounded.isZero() ? ZERO : rounded).toFixed(decimals));
}

/** A plain decimal text in the reader's digits and separators. */
function shown(look: NumberLook, plain: string): string {
  const negative = plain.startsWith('-');
  const [units = '0', decimals] = (negative ? plain.slice(1) : plain).split('.');
  const text =
    decimals === undefined ? grouped(look, units) : `${grouped(look, units)}${look.decimal}${decimals}`;
  const local =
    look.digits[0] === '0' ? text : text.replace(/\d/g, (digit) => look.digits[Number(digit)] ?? digit);
  return negative ? `−${local}` : local;
}

function grouped({ group, groupFirst, groupRest, groupsFrom }: NumberLook, units: string): string {
  if (group === '' || units.length < groupsFrom || units.length <= groupFirst) return units;
  const groups = [units.slice(-groupFirst)];
  let rest = units.slice(0, -groupFirst);
  while (rest.length > groupRest) {
    groups.unshift(rest.slice(-groupRest));
    rest = rest.slice(0, -groupRest);
  }
  return [rest, ...groups].join(group);
}

function around(text: string, { before, after }: { before: string; after: string }): string {
  return text.startsWith('−') ? `−${before}${text.slice(1)}${after}` : `${before}${text}${after}`;
}
