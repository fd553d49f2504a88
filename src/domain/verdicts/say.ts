// How figures inside sentences are written. The words are made here, in the domain, so that screen and command line say
// the same; the numbers' look (grouping, month names) belongs to a locale, so it is passed in.
// Worked figure: money(-1230000) is "−12,300" in en-US with 2 digits; week(9) is "week 9 (2 Mar)".
import { dayNumber } from '../calendar.ts';
import type { Decimal } from '../money/decimal.ts';

export interface Say {
  /** Whole minor units; without cents from 10,000 on. */
  money: (minorUnits: number) => string;
  /** A unit price, at the currency's digits. */
  price: (amount: Decimal) => string;
  /** A share as percent with one decimal at most. */
  percent: (share: Decimal | number) => string;
  /** A rate of sale or ratio, at most two decimals. */
  number: (value: Decimal | number) => string;
  /** A whole count, grouped. */
  count: (value: number) => string;
  /** "week 9 (2 Mar)" */
  week: (index: number) => string;
  /** "2 Mar 2026" for a date written YYYY-MM-DD. */
  date: (isoDate: string) => string;
}

/** Below this share of demand served, verdicts say that shelves run empty. Judgement, no source. */
const FILL_RATE_FINE = 0.9;

/** How much of what shoppers want there is goods for: "27.8 % of what shoppers want"; null where that is most of it. */
export function tooLittleServed(fillRate: number | null, say: Say): string | null {
  if (fillRate === null || fillRate >= FILL_RATE_FINE) return null;
  return `${fillRate < 0.001 ? 'hardly any' : say.percent(fillRate)} of what shoppers want`;
}

/** True minus, no grouping, a point: the same on every machine. For tests and for the command line. */
export function plainSay(args: {
  minorDigits: number;
  startDay: number;
  dateOf: (day: number) => string;
}): Say {
  const minus = (text: string) => text.replace(/^-/, '−');
  const money = (minorUnits: number) => {
    const amount = minorUnits / 10 ** args.minorDigits;
    const digits = Math.abs(amount) >= 10_000 ? 0 : args.minorDigits;
    return minus(amount.toFixed(digits));
  };
  return {
    money,
    price: (amount) => minus(amount.toFixed(Math.max(2, args.minorDigits))),
    percent: (share) => minus(`${trimmed((Number(share) * 100).toFixed(1))} %`),
    number: (value) => minus(trimmed(Number(value).toFixed(2))),
    count: (value) => minus(String(value)),
    week: (index) => `week ${index} (${args.dateOf(args.startDay + 7 * index)})`,
    date: (isoDate) => args.dateOf(dayNumber(isoDate)),
  };
}

function trimmed(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}
