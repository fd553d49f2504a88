// What stands after `reckon` on the command line, read into options or refused in a sentence (exit code 2).
// Worked example: ["plan.json", "--weeks"] is { file: 'plan.json', weeks: true, ... }; ["--week"] is refused.

import { shortened, shown } from '../domain/plan/shown.ts';
import { type Ask, readAsk, readTarget, type TargetAsked } from './asks.ts';
import { type RangeAsked, rangeAskedOf } from './range-asked.ts';
import { isDay } from './readiness.ts';

export interface Options {
  /** '-' is standard input. */
  file: string;
  weeks: boolean;
  journal: boolean;
  help: boolean;
  /** Prints the calendar file instead of the results. */
  calendar: boolean;
  /** YYYY-MM-DD; null: the plan's first day. */
  today: string | null;
  /** The account talked with, or null. */
  deal: string | null;
  asks: readonly Ask[];
  /** Null: as the account's table says. */
  target: TargetAsked | null;
  /** Null: no range is asked for. */
  range: RangeAsked | null;
}

export type Arguments = { ok: true; options: Options } | { ok: false; sentence: string };

const FLAGS = ['--weeks', '--journal', '--calendar', '--help'] as const;
/** Options that take the word after them. */
const WITH_VALUE = {
  '--today': 'a date',
  '--deal': 'the id of an account',
  '--ask': 'TERM=VALUE',
  '--target': 'a target',
  '--range': 'a number of draws',
  '--seed': 'a number',
} as const;
const OPTIONS = [...FLAGS.slice(0, 3), ...Object.keys(WITH_VALUE), '--help'];

interface Words {
  files: string[];
  flags: string[];
  values: { option: keyof typeof WITH_VALUE; value: string }[];
}

/** What begins with a hyphen is an option; '-' alone is standard input, and './-x' a file of that name. */
export function readArguments(words: readonly string[]): Arguments {
  const sorted = sortedOut(words);
  if (typeof sorted === 'string') return refuse(sorted);
  const { files, flags, values } = sorted;
  const repeated = flags.find((flag, place) => flags.indexOf(flag) !== place);
  if (repeated) return refuse(`${repeated} is given twice`);
  const help = flags.includes('--help');
  const [file] = files;
  if (!help && (file === undefined || file === '')) {
    return refuse('a plan file is expected, or - for standard input');
  }
  if (files.length > 1) {
    return refuse(
      `one plan file is expected, ${files.length} came: ${shortened(files.map(shown).join(', '))}`,
    );
  }
  const today = todayOf(values);
  if (!today.ok) return refuse(today.why);
  const ofOthers = ['--today', '--range', '--seed'];
  const talks = talksOf(values.filter(({ option }) => !ofOthers.includes(option)));
  if (typeof talks === 'string') return refuse(talks);
  const given = (name: string) => values.filter(({ option }) => option === name).map(({ value }) => value);
  const range = rangeAskedOf(given('--range'), given('--seed'));
  if (typeof range === 'string') return refuse(range);
  const options = {
    file: file ?? '',
    weeks: flags.includes('--weeks'),
    journal: flags.includes('--journal'),
    calendar: flags.includes('--calendar'),
    today: today.date,
    help,
    ...talks,
    range,
  };
  return { ok: true, options };
}

/** Files, flags and options with their words; a sentence part when there is one nobody knows, or a word is missing. */
function sortedOut(words: readonly string[]): Words | string {
  const found: Words = { files: [], flags: [], values: [] };
  for (let place = 0; place < words.length; place++) {
    const word = words[place] ?? '';
    if (!word.startsWith('-') || word === '-') found.files.push(word);
    else if ((FLAGS as readonly string[]).includes(word)) found.flags.push(word);
    else if (isWithValue(word)) {
      place += 1;
      const value = words[place];
      if (value === undefined) return `${word} expects ${WITH_VALUE[word]} after it`;
      found.values.push({ option: word, value });
    } else return `${shown(word)} is not an option; there are ${OPTIONS.join(', ')}`;
  }
  return found;
}

function isWithValue(word: string): word is keyof typeof WITH_VALUE {
  return Object.hasOwn(WITH_VALUE, word);
}

/** The day readiness is counted from, or why there is none. */
function todayOf(values: Words['values']): { ok: true; date: string | null } | { ok: false; why: string } {
  const [first, second] = values.filter(({ option }) => option === '--today');
  if (second) return { ok: false, why: '--today is given twice' };
  if (first && !isDay(first.value)) {
    const expected = 'a date that exists, from 2020 to 2199, like 2026-03-02';
    return { ok: false, why: `--today is given ${shown(first.value)}; expected ${expected}` };
  }
  return { ok: true, date: first?.value ?? null };
}

/** The account, the asks and the target; a sentence part when they can't be read, or don't go together. */
function talksOf(values: Words['values']): Pick<Options, 'deal' | 'asks' | 'target'> | string {
  const of = (name: string) => values.filter(({ option }) => option === name).map(({ value }) => value);
  const twice = (['--deal', '--target'] as const).find((name) => of(name).length > 1);
  if (twice) return `${twice} is given twice`;
  const [deal = null] = of('--deal');
  if (deal === null && values[0])
    return `${values[0].option} is given without --deal, the account it is about`;
  const asks: Ask[] = [];
  for (const text of of('--ask')) {
    const ask = readAsk(text);
    if (typeof ask === 'string') return ask;
    if (asks.some(({ term }) => term === ask.term)) return `--ask names ${ask.term} twice`;
    asks.push(ask);
  }
  const [asked] = of('--target');
  const target = asked === undefined ? null : readTarget(asked);
  return typeof target === 'string' ? target : { deal, asks, target };
}

export const USAGE =
  'Usage: reckon FILE [--weeks] [--journal] [--calendar] [--today DATE] [--deal ID [--ask TERM=VALUE]... [--target TARGET]] [--range DRAWS [--seed N]], or reckon --help';

function refuse(why: string): Arguments {
  return { ok: false, sentence: `reckon: ${why}. ${USAGE}.` };
}
