// How numbers look where the reader lives: separators, grouping, where the percent and currency signs stand. It is plain
// data, read once from the platform's own formatter, which the caller passes in: the domain asks no machine what it likes.
// Worked figure: in German 12345678.5 looks like 12.345.678,5: group ".", decimal ",", groups of three from four digits on.

/** What the platform's number formatter is asked for; fits Intl.NumberFormatOptions. */
export type NumberShape =
  | { style: 'decimal' | 'percent' }
  | { style: 'currency'; currency: string; currencyDisplay: 'narrowSymbol' };

/** For one locale: (value, shape) => new Intl.NumberFormat(locale, shape).formatToParts(value). */
export type PartsOf = (value: number, shape: NumberShape) => readonly { type: string; value: string }[];

export interface NumberLook {
  /** ISO 4217 code of the plan's currency, and how many decimals its money has. */
  currency: string;
  minorDigits: number;
  decimal: string;
  /** '' where digits are never grouped. */
  group: string;
  /** Digits in the group before the decimals, and in those further left: 3 and 3, or 3 and 2. */
  groupFirst: number;
  groupRest: number;
  /** The least count of whole digits that are grouped at all: 4, or 5. */
  groupsFrom: number;
  /** The ten digits, zero first. */
  digits: readonly string[];
  percent: Around;
  money: Around;
}

/** What stands before and after a number. */
export interface Around {
  before: string;
  after: string;
}

/** The look of numbers for the locale behind `partsOf` and a currency of so many decimals. */
export function numberLook({
  partsOf,
  currency,
  minorDigits,
}: {
  partsOf: PartsOf;
  currency: string;
  minorDigits: number;
}): NumberLook {
  const decimal = { style: 'decimal' } as const;
  const long = partsOf(123_456_789.5, decimal);
  const groups = long.filter(({ type }) => type === 'integer').map(({ value }) => [...value].length);
  const short = partsOf(1234, decimal).some(({ type }) => type === 'group');
  return {
    currency,
    minorDigits,
    decimal: partOf(long, 'decimal') ?? '.',
    group: partOf(long, 'group') ?? '',
    groupFirst: groups.at(-1) ?? 3,
    groupRest: groups.at(-2) ?? 3,
    groupsFrom: short ? 4 : 5,
    digits: digitsOf(partsOf(9_876_543_210, decimal)),
    percent: around(partsOf(0.5, { style: 'percent' })),
    money: around(partsOf(1, { style: 'currency', currency, currencyDisplay: 'narrowSymbol' })),
  };
}

/** The look of files and of the command line: a decimal point, thousands by comma, the currency's code behind. */
export function plainLook({ currency, minorDigits }: { currency: string; minorDigits: number }): NumberLook {
  return {
    currency,
    minorDigits,
    decimal: '.',
    group: ',',
    groupFirst: 3,
    groupRest: 3,
    groupsFrom: 4,
    digits: [...'0123456789'],
    percent: { before: '', after: ' %' },
    money: { before: '', after: ` ${currency}` },
  };
}

type Parts = ReturnType<PartsOf>;

function partOf(parts: Parts, type: string): string | undefined {
  return parts.find((part) => part.type === type)?.value;
}

function digitsOf(parts: Parts): string[] {
  const nineToZero = parts.filter(({ type }) => type === 'integer').flatMap(({ value }) => [...value]);
  return nineToZero.length === 10 ? nineToZero.reverse() : [...'0123456789'];
}

const NUMERIC = new Set(['integer', 'group', 'decimal', 'fraction']);

function around(parts: Parts): Around {
  const numeric = parts.map(({ type }) => NUMERIC.has(type));
  const first = numeric.indexOf(true);
  const last = numeric.lastIndexOf(true);
  const text = (some: Parts) => some.map(({ value }) => value).join('');
  return { before: text(parts.slice(0, first)), after: text(parts.slice(last + 1)) };
}
