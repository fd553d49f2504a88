// The words after --ask and --target, read; or why they can't be, as part of a sentence.
// Worked example: "margin=42%" and "margin=0.42" are the margin 0.42; "slotting=42%" is refused, since slotting is money.
import { dec } from '../domain/money/decimal.ts';
import { shown } from '../domain/plan/shown.ts';
import { type Objective, TERM_NOTES, traitsOf } from '../domain/talks/index.ts';

export interface Ask {
  term: string;
  value: number;
}

export type TargetAsked = Objective;

const NUMBER = /^(-?(?:0|[1-9]\d{0,14})(?:\.\d{1,10})?)(%?)$/;

/** TERM=VALUE, the value in the plan's unit; a share may be a percentage. */
export function readAsk(text: string): Ask | string {
  const at = text.indexOf('=');
  const term = at < 0 ? '' : text.slice(0, at);
  if (term === '') return `--ask ${shown(text)} is not TERM=VALUE, like margin=0.42`;
  const traits = traitsOf(term);
  if (!traits) {
    return `${shown(term)} is not a term; there are ${TERM_NOTES.map(({ name }) => name).join(', ')}`;
  }
  const value = text.slice(at + 1);
  const match = NUMBER.exec(value);
  const isPercent = match?.[2] === '%';
  if (!match || (isPercent && traits.unit !== 'share')) {
    const expected = EXPECTED[traits.unit];
    return `--ask ${term} is given ${shown(value)}; expected ${expected}`;
  }
  return { term, value: numberIn(match) };
}

const EXPECTED = {
  share: 'a share, like 0.42 or 42%',
  price: 'an amount, like 4.99',
  sum: 'an amount, like 250',
  days: 'a number of days, like 45',
  weeks: 'a number of weeks, like 4',
  cases: 'a number of cases, like 1',
  doors: 'a number of doors, like 60',
} as const;

function numberIn(match: RegExpExecArray): number {
  const number = dec(match[1] ?? '0');
  return (match[2] === '%' ? number.div(100) : number).toNumber();
}

/** firstYear, payback, or presentValue=RATE with a yearly rate of 0 to 100. */
export function readTarget(text: string): TargetAsked | string {
  if (text === 'firstYear' || text === 'payback') return { by: text };
  const match = text.startsWith('presentValue=') ? NUMBER.exec(text.slice('presentValue='.length)) : null;
  const rate = match ? numberIn(match) : Number.NaN;
  if (rate >= 0 && rate <= 100)
    return { by: 'presentValue', yearlyRate: dec(String(rate)).toDecimalPlaces(6).toFixed() };
  return `--target is given ${shown(text)}; expected firstYear, payback or presentValue=RATE, like presentValue=0.1`;
}
