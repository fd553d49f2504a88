// Seven texts as typed to seven numbers. A text that isn't what its row takes leaves the last good number in its place
// and says what was expected; an empty text is no number.
// Worked example: "120" as margin after "42" gives 0.42 still, and "It must be from 0 to below 100 %."
import { checkSeven } from '../../domain/quick/check.ts';
import { SEVEN_KEYS, type SevenKey, type SevenNumbers } from '../../domain/quick/index.ts';
import { problemWords } from '../shared/problem-words.ts';
import { readNumber, textOf } from '../shared/typed-kinds.ts';
import { rowOf } from './rows.ts';

export type SevenTexts = Readonly<Record<SevenKey, string>>;
export type SevenProblems = Partial<Record<SevenKey, string>>;

export interface SevenRead {
  seven: SevenNumbers;
  problems: SevenProblems;
}

export const NO_TEXTS: SevenTexts = {
  shelfPrice: '',
  landedPerUnit: '',
  retailerMarginRate: '',
  moneyDownPerStore: '',
  stores: '',
  unitsPerStoreWeek: '',
  cash: '',
};

export function readSeven(args: { texts: SevenTexts; before: SevenNumbers; currency: string }): SevenRead {
  const { texts, before, currency } = args;
  const problems: SevenProblems = {};
  let seven = before;
  for (const key of SEVEN_KEYS) {
    const read = readOne({ key, text: texts[key], before, currency });
    if (read.problem !== null) problems[key] = read.problem;
    else seven = { ...seven, [key]: read.value };
  }
  return { seven, problems };
}

interface ReadOne {
  value: string | number | null;
  problem: string | null;
}

function readOne(args: { key: SevenKey; text: string; before: SevenNumbers; currency: string }): ReadOne {
  const { key, text, before, currency } = args;
  const { kind, label } = rowOf(key);
  if (text.trim() === '') return { value: null, problem: null };
  const words = (got: string, expected: string) =>
    problemWords({
      label,
      isShare: kind === 'percent',
      typed: text,
      still: stillOf(before, key, currency),
      problem: { code: 'field-invalid', path: key, got, expected },
    });
  const read = readNumber({ text, kind, currency });
  if (read === null || !read.ok)
    return { value: null, problem: words(read?.got ?? text, read?.expected ?? 'a number') };
  const value = kind === 'whole' ? Number(read.text) : read.text;
  const wrong = checkSeven({ ...before, [key]: value }).find((each) => each.path === key);
  return wrong ? { value: null, problem: words(wrong.got, wrong.expected) } : { value, problem: null };
}

/** What a number still counts as while its text is not accepted; '' when there is none. */
function stillOf(before: SevenNumbers, key: SevenKey, currency: string): string {
  const { kind } = rowOf(key);
  const text = textOf({ value: before[key], kind, currency });
  return text !== '' && kind === 'percent' ? `${text} %` : text;
}

/** The texts of a plan's numbers, as a field shows them. */
export function textsOf(seven: SevenNumbers, currency: string): SevenTexts {
  const text = (key: SevenKey) => textOf({ value: seven[key], kind: rowOf(key).kind, currency });
  return Object.fromEntries(SEVEN_KEYS.map((key) => [key, text(key)])) as SevenTexts;
}
