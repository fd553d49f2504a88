// reckon: a plan file in, all its results out as one JSON object, without a screen or a build. The same model as the app.
// Worked example: `npm run -s reckon -- plan.json --weeks` prints results with the weekly series; exit 0.
import process from 'node:process';
import { evaluate } from './domain/evaluate.ts';
import { type Problem, sentence } from './domain/problems.ts';
import { parsePlanText } from './plan-format/text.ts';
import { type Options, readArguments } from './reckon/arguments.ts';
import { HELP } from './reckon/help.ts';
import { readInput } from './reckon/input.ts';
import { outputOf } from './reckon/output.ts';
import { complain, writeOut } from './reckon/print.ts';
import { rangeText } from './reckon/range.ts';
import { calendarText } from './reckon/readiness.ts';
import { sayFor } from './reckon/say.ts';
import { talksOf } from './reckon/talks.ts';
import { warningsOf } from './reckon/warnings.ts';

const COMPUTED = 0;
const CANNOT = 1;
const USAGE = 2;

async function run(words: readonly string[]): Promise<number> {
  const read = readArguments(words);
  if (!read.ok) return refuse([read.sentence], USAGE);
  const { options } = read;
  if (options.help) return print(HELP);
  const input = await readInput(options.file);
  if (!input.ok) return refuse([input.sentence], input.isUsage ? USAGE : CANNOT);
  return reckon(input.text, options);
}

async function reckon(text: string, options: Options): Promise<number> {
  const parsed = parsePlanText(text);
  if (!parsed.ok) {
    return refuse('refusal' in parsed ? [parsed.refusal.sentence] : sentences(parsed.problems), CANNOT);
  }
  const plan = parsed.value;
  const results = evaluate(plan, sayFor);
  if (!results.ok) return refuse(sentences(results.problems), CANNOT);
  if (options.calendar) return print(calendarText(plan, options.today));
  const { deal } = options;
  const talks = deal === null ? null : talksOf(plan, { ...options, deal });
  if (talks && !talks.ok) return refuse(talks.sentences, CANNOT);
  const { output, unsolved } = outputOf({ plan, results: results.value, ...options });
  await complain([...warningsOf(plan, results.value), ...unsolved].map((warning) => `reckon: ${warning}`));
  const range = options.range && rangeText(plan, results.value, options.range);
  if (range === 'tooLarge') return refuse([RANGE_TOO_LARGE], CANNOT);
  return print(`${JSON.stringify({ ...output, ...talks?.value, ...(range && { range }) }, null, 2)}\n`);
}

const RANGE_TOO_LARGE =
  'reckon: the range can’t be drawn: with spreads this wide some draws’ amounts are too large to add up exactly; ' +
  'expected narrower ones in promise/spreads.';

const SENTENCES_MOST = 50;

/** Each once: one hand can be in the way of many items. */
function sentences(problems: readonly Problem[]): string[] {
  const all = [...new Set(problems.map(sentence))];
  const more = all.length - SENTENCES_MOST;
  return more > 0 ? [...all.slice(0, SENTENCES_MOST), `And ${more} more problems.`] : all;
}

async function print(text: string): Promise<number> {
  const failed = await writeOut(text);
  if (failed === null) return COMPUTED;
  return refuse([`reckon: the answer can't be written to standard output: ${failed}.`], USAGE);
}

async function refuse(why: readonly string[], code: number): Promise<number> {
  await complain(why);
  return code;
}

process.exitCode = await run(process.argv.slice(2));
