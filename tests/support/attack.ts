/**
 * What the attacks on the whole model share: the demo plans to spoil, ways to spoil them, and what has to hold of every
 * answer: results whose books balance and whose figures are figures, or problems in whole words.
 * Worked example: changed(file, ['plan', 'horizonWeeks'], 0) is the same file with an empty horizon.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { type Problem, sentence } from '../../src/domain/problems.ts';
import type { Results } from '../../src/domain/results.ts';
import { BALANCE_NAMES, FLOW_NAMES } from '../../src/domain/rollout/types.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { warningsOf } from '../../src/reckon/warnings.ts';
import { root } from './source-files.ts';

export type Key = string | number;

export interface PlanFileJson {
  format: string;
  // biome-ignore lint/suspicious/noExplicitAny: plans are spoiled here in ways no type allows
  plan: any;
}

const folder = join(root, 'demo-catalog');
export const demoNames = readdirSync(folder).filter((name) => name.endsWith('.json'));

/** A fresh copy of a demo file, to spoil. */
export function demoFile(name: string): PlanFileJson {
  return JSON.parse(readFileSync(join(folder, name), 'utf8')) as PlanFileJson;
}

/** Keys from the top to every value in it, lists and objects too, in their order. */
export function placesOf(value: unknown, keys: readonly Key[] = []): Key[][] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => {
    const here = [...keys, Array.isArray(value) ? Number(name) : name];
    return [here, ...placesOf(each, here)];
  });
}

/** `undefined` takes the value out. */
export function changed(here: unknown, [key, ...rest]: readonly Key[], value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(here)) {
    const next = here.map((each, index) => (index === key ? changed(each, rest, value) : each));
    return next.filter((_, index) => index !== key || next[index] !== undefined);
  }
  const { [key]: old, ...others } = here as Record<Key, unknown>;
  const next = changed(old, rest, value);
  return next === undefined ? others : { ...(here as object), [key]: next };
}

/** The same numbers for the same seed (a linear congruential generator, Numerical Recipes' constants, from memory). */
export function draws(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

export type Answer = { problems: readonly Problem[] } | { plan: Plan; results: Results };

/** The text of a file to its answer, as reckon and the app come to it. A newer format is not among the attacks. */
export function answerTo(text: string): Answer {
  const read = parsePlanText(text);
  if (!read.ok) return 'problems' in read ? read : { problems: [] };
  return answerOf(read.value);
}

export function answerOf(plan: Plan): Answer {
  const results = evaluate(plan, sayFor);
  return results.ok ? { plan, results: results.value } : results;
}

/** What is wrong with an answer, in words; empty when it is a good one. */
export function faultsOf(answer: Answer): string[] {
  if ('problems' in answer) return problemFaults(answer.problems);
  const { plan, results } = answer;
  const { ladders, deals, reading, verdicts, pass } = results;
  return [
    ...oddFigures({ ladders, deals, reading, verdicts, pass }),
    ...warningsOf(plan, results).flatMap((warning) => oddFigures(warning, 'warning')),
    ...bookFaults(results),
  ];
}

/** Each names a place, what came and what was expected, in one line of a readable length. */
function problemFaults(problems: readonly Problem[]): string[] {
  if (problems.length === 0) return ['neither results nor a problem'];
  return problems.flatMap((problem) => {
    const said = sentence(problem);
    const isWhole =
      /^\S.*: got \S.*; expected \S.*\.$/.test(said) && problem.got !== '' && problem.expected !== '';
    const isOdd = /Invalid input|undefined|\[object|\bInfinity\b/.test(said) || said.includes('\n');
    return isWhole && !isOdd && said.length <= 600 ? [] : [`no clear sentence: ${said.slice(0, 200)}`];
  });
}

/** Paths of numbers and texts that are no figure. */
function oddFigures(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value === 'string')
    return /\bNaN\b|Infinity|undefined|\[object/.test(value) ? [`${path}: ${value}`] : [];
  if (typeof value !== 'object' || value === null) return value === undefined ? [`${path} is missing`] : [];
  if (value instanceof Float64Array) {
    const odd = value.findIndex((each) => !Number.isFinite(each));
    return odd < 0 ? [] : [`${path}/${odd} is ${value[odd]}`];
  }
  if ('toFixed' in value) return oddFigures(Number(String(value)), path);
  return Object.entries(value).flatMap(([key, each]) => oddFigures(each, `${path}/${key}`));
}

function bookFaults({ pass }: Results): string[] {
  const faults: string[] = [];
  let cash = pass.openingCash;
  for (let week = 0; week < pass.weeks; week++) {
    const balances = BALANCE_NAMES.map((name) => pass.balances[name][week] ?? Number.NaN);
    const owned = balances.slice(0, 5).reduce((sum, each) => sum + each, 0);
    const owed = balances.slice(5).reduce((sum, each) => sum + each, 0);
    if (owned !== owed) faults.push(`week ${week}: ${owned} owned, ${owed} owed`);
    const net = FLOW_NAMES.reduce((sum, name) => sum + (pass.flows[name][week] ?? Number.NaN), 0);
    const after = pass.balances.cash[week] ?? Number.NaN;
    if (after - cash !== net) faults.push(`week ${week}: cash moved ${after - cash}, flows say ${net}`);
    if ((pass.low[week] ?? Number.NaN) > Math.min(after, cash + net))
      faults.push(`week ${week}: low above cash`);
    cash = after;
  }
  return faults;
}
