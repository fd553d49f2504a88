/**
 * Every field of the fullest examples, one after the other, is left out and replaced by things it can't be. Whatever
 * comes, the answer is a plan or problems in whole words: nothing is thrown, no sentence is empty, and every problem
 * that the schema finds lies at the field or below it.
 */
import { describe, expect, test } from 'vitest';
import { isUnder } from '../../src/domain/plan/path.ts';
import { type Problem, sentence } from '../../src/domain/problems.ts';
import { checkPlan } from '../../src/plan-format/gate.ts';
import { exampleText } from './plan-cases.ts';

const planIn = (name: string) => (JSON.parse(exampleText(name)) as { plan: unknown }).plan;

const WRONG: readonly (readonly [what: string, value: unknown])[] = [
  ['an object', {}],
  ['a list', []],
  ['a list of nothing', [null]],
  ['null', null],
  ['true', true],
  ['a word', 'lots'],
  ['a negative number', -1],
  ['a fraction', 0.123456789],
  ['a number beyond all', 1e300],
  ['a digit too many', '0.12345678901234567890'],
];

describe.each(['whole', 'as-it-goes'])('%s', (name) => {
  const plan = planIn(name);
  const places = placesOf(plan, []);

  test('has fields enough to sweep', () => {
    expect(places.length).toBeGreaterThan(400);
  });

  test.each(WRONG)('every field as %s is a plan, or problems in words', (_, value) => {
    for (const keys of places) check(keys, changed(plan, keys, value));
  });

  test('every field left out is missing, by its own path', () => {
    for (const keys of places.filter((each) => typeof each.at(-1) === 'string')) {
      const problems = check(keys, changed(plan, keys, undefined));
      expect(
        problems.map(({ code }) => code),
        keys.join('/'),
      ).toEqual(['field-missing']);
    }
  });
});

/** A bad field is named; where the field is an id, or a rule's kind, other problems may follow from it elsewhere. */
function check(keys: readonly Key[], plan: unknown): readonly Problem[] {
  const outcome = checkPlan(plan);
  if (outcome.ok) return [];
  expect(outcome.problems.length, keys.join('/')).toBeGreaterThan(0);
  for (const problem of outcome.problems) {
    expect(sentence(problem)).not.toMatch(/Invalid input|undefined|\[object|NaN|Infinity/);
    expect(problem.got).not.toBe('');
    expect(problem.got.length).toBeLessThanOrEqual(120);
    if (problem.code === 'field-missing')
      expect(isUnder(problem.path, pathOf(plan, keys.slice(0, -1)))).toBe(true);
  }
  return outcome.problems;
}

type Key = string | number;

function placesOf(value: unknown, keys: readonly Key[]): Key[][] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => {
    const here = [...keys, Array.isArray(value) ? Number(name) : name];
    return [here, ...placesOf(each, here)];
  });
}

function changed(here: unknown, [key, ...rest]: readonly Key[], value: unknown): unknown {
  if (key === undefined) return value;
  if (Array.isArray(here))
    return here.map((each, index) => (index === key ? changed(each, rest, value) : each));
  const { [key]: old, ...others } = here as Record<Key, unknown>;
  const next = changed(old, rest, value);
  return next === undefined ? others : { ...others, [key]: next };
}

/** Ids stand for places of lists, where they are texts. */
function pathOf(plan: unknown, keys: readonly Key[]): string {
  let here = plan as Record<Key, unknown>;
  const segments = keys.map((key) => {
    here = here[key] as Record<Key, unknown>;
    const id = typeof key === 'number' ? (here?.['id'] ?? here?.['itemId']) : undefined;
    return typeof id === 'string' ? id : String(key);
  });
  return segments.join('/');
}
