// How figures are written on screens: numbers in the look of the browser's locale, dates and week names in the English
// of the screens' words. The model's sentences use the same object (it is a Say), so a sentence and the figure beside it
// can't differ. Worked figure: money(-1230000) is "−12,300" in en-US with 2 digits; week(9) is "week 9 (4 May)".
import { isoDateOf } from '../../domain/calendar.ts';
import { minorDigitsOf } from '../../domain/money/currency.ts';
import { type Decimal, dec } from '../../domain/money/decimal.ts';
import * as format from '../../domain/money/format.ts';
import { type NumberLook, numberLook } from '../../domain/money/look.ts';
import type { Say } from '../../domain/verdicts/say.ts';

export interface ScreenSay extends Say {
  look: NumberLook;
  /** "$", "€", "USD": before or after the number as the locale has it. */
  symbol: string;
  /** The decimal mark of the keypad. */
  separator: '.' | ',';
  /** A sum to its last minor unit, for tables. */
  moneyExact: (minorUnits: number) => string;
  /** A difference of sums: "+1,200", "−300", "0.00". */
  moneySigned: (minorUnits: number) => string;
  /** A sum kept as decimal ("36000" is "36,000"). */
  sum: (amount: Decimal | string) => string;
  sumSigned: (amount: Decimal | string) => string;
  /** A unit price with 4 decimals, for workings. */
  priceExact: (amount: Decimal | string) => string;
  priceSigned: (amount: Decimal) => string;
  /** A unit price with its currency sign: "$4.99". */
  priceWithSign: (amount: Decimal | string) => string;
  /** A difference of shares in points, signed: "+4.0 points". */
  pointsSigned: (difference: Decimal | number) => string;
  /** "2 Mar", the first day of a week of the plan. */
  weekDay: (index: number) => string;
}

/** The reader's locale, the first that the browser names. */
export function browserLocale(): string {
  return navigator.languages[0] ?? navigator.language;
}

const made = new Map<string, ScreenSay>();

/** A Say for one currency and first day; the same object while nothing changes. Unknown currencies show two decimals. */
export function screenSay(args: { currency: string; startDay: number }): ScreenSay {
  const locale = browserLocale();
  const key = `${locale} ${args.currency} ${args.startDay}`;
  const known = made.get(key);
  if (known) return known;
  if (made.size > 50) made.clear();
  const fresh = makeSay({ ...args, locale });
  made.set(key, fresh);
  return fresh;
}

const looks = new Map<string, NumberLook>();

/** The look of numbers for a currency in the reader's locale; asked of the platform once. */
export function browserLook(currency: string): NumberLook {
  return lookFor(browserLocale(), currency);
}

function lookFor(locale: string, currency: string): NumberLook {
  const key = `${locale} ${currency}`;
  const look = looks.get(key) ?? readLook(locale, currency);
  looks.set(key, look);
  return look;
}

function readLook(locale: string, currency: string): NumberLook {
  const look = numberLook({
    partsOf: (value, shape) => new Intl.NumberFormat(locale, shape).formatToParts(value),
    currency,
    minorDigits: minorDigitsOf(currency) ?? 2,
  });
  // The model's reasons write "12.5 %", so screens do too, whatever the locale puts before the sign.
  const percent = look.percent.after.endsWith('%') ? { before: '', after: '\u00a0%' } : look.percent;
  return { ...look, percent };
}

function makeSay(args: { currency: string; startDay: number; locale: string }): ScreenSay {
  const look = lookFor(args.locale, args.currency);
  const language = /^en\b/.test(args.locale) ? args.locale : 'en-GB';
  const dayText = dateText(language, { day: 'numeric', month: 'short' });
  const longText = dateText(language, { day: 'numeric', month: 'short', year: 'numeric' });
  const weekDay = (index: number) => dayText(isoDateOf(args.startDay + 7 * index));
  const asDecimal = (amount: Decimal | string | number) =>
    typeof amount === 'object' ? amount : dec(amount);
  const signed = (text: string) => format.withPlus(look, text);
  return {
    look,
    symbol: `${look.money.before}${look.money.after}`.trim(),
    separator: look.decimal === ',' ? ',' : '.',
    money: (minorUnits) => format.moneyOfMinor(look, minorUnits),
    moneyExact: (minorUnits) => format.moneyExactOfMinor(look, minorUnits),
    moneySigned: (minorUnits) => signed(format.moneyOfMinor(look, minorUnits)),
    sum: (amount) => format.money(look, asDecimal(amount)),
    sumSigned: (amount) => signed(format.money(look, asDecimal(amount))),
    price: (amount) => format.unitPrice(look, amount),
    priceExact: (amount) => format.unitPriceExact(look, asDecimal(amount)),
    priceSigned: (amount) => signed(format.unitPrice(look, amount)),
    priceWithSign: (amount) => format.withCurrency(look, format.unitPrice(look, asDecimal(amount))),
    percent: (share) => trimmed(look, format.percent(look, asDecimal(share))),
    pointsSigned: (difference) => `${signed(format.points(look, asDecimal(difference)))} points`,
    number: (value) => format.exact(look, asDecimal(value).toDecimalPlaces(2)),
    count: (value) => format.whole(look, value),
    week: (index) => `week ${index} (${weekDay(index)})`,
    weekDay,
    date: longText,
  };
}

/** "42.0 %" is read as "42 %". */
function trimmed(look: NumberLook, text: string): string {
  const zero = `${look.decimal}${look.digits[0] ?? '0'}${look.percent.after}`;
  return text.endsWith(zero) ? `${text.slice(0, -zero.length)}${look.percent.after}` : text;
}

function dateText(language: string, parts: Intl.DateTimeFormatOptions): (isoDate: string) => string {
  const formatter = new Intl.DateTimeFormat(language, { ...parts, timeZone: 'UTC' });
  return (isoDate) => formatter.format(new Date(`${isoDate}T00:00:00Z`));
}
