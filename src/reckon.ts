// reckon: a plan file in, all its results out as one JSON object, without a screen or a build. The same model as the app.
// Worked example: `npm run -s reckon -- plan.json --weeks` prints results with the weekly series; exit 0.
import { readFileSync } from 'node:fs';
import { argv, exit, stderr, stdin, stdout } from 'node:process';
import { evaluate } from './domain/evaluate.ts';
import { sentence } from './domain/problems.ts';
import { parsePlanText } from './plan-format/index.ts';
import { readArguments } from './reckon/arguments.ts';
import { HELP } from './reckon/help.ts';
import { outputOf } from './reckon/output.ts';
import { sayFor } from './reckon/say.ts';
import { warningsOf } from './reckon/warnings.ts';

const COMPUTED = 0;
const CANNOT = 1;
const USAGE = 2;

function run(): number {
  const read = readArguments(argv.slice(2));
  if (!read.ok) return complain([read.sentence], USAGE);
  const { options } = read;
  if (options.help) return print(HELP);
  const text = textOf(options.file);
  if (text === null) {
    return complain([`reckon: ${options.file} can't be read; expected the path of a plan file, or -.`], USAGE);
  }
  const parsed = parsePlanText(text);
  if (!parsed.ok) {
    if ('refusal' in parsed) return complain([parsed.refusal.sentence], CANNOT);
    return complain(parsed.problems.map(sentence), CANNOT);
  }
  const plan = parsed.value;
  const results = evaluate(plan, sayFor);
  if (!results.ok) return complain(results.problems.map(sentence), CANNOT);
  for (const warning of warningsOf(plan, results.value)) stderr.write(`reckon: ${warning}\n`);
  return print(`${JSON.stringify(outputOf({ plan, results: results.value, ...options }), null, 2)}\n`);
}

function textOf(file: string): string | null {
  try {
    return readFileSync(file === '-' ? stdin.fd : file, 'utf8');
  } catch {
    return null;
  }
}

function print(text: string): number {
  stdout.write(text);
  return COMPUTED;
}

function complain(sentences: readonly string[], code: number): number {
  for (const text of sentences) stderr.write(`${text}\n`);
  return code;
}

const code = run();
// A long answer down a pipe is written in parts: leave only when it is out.
stdout.write('', () => exit(code));
