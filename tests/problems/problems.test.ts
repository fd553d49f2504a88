/**
 * Every code in problems.ts is provoked by one file of cases, and each case reads well: the whole sentence is compared,
 * with the field, what came and what was expected. A case goes as far as it gets: file, plan, evaluation.
 */
import { describe, expect, test } from 'vitest';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import { PROBLEM_CODES, type Problem, sentence } from '../../src/domain/problems.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { caseFiles, exampleText, textOf } from './plan-cases.ts';

const files = caseFiles();

describe.each(files)('$code', ({ code, cases }) => {
  test.each(cases)('$what', (one) => {
    const problems = problemsIn(textOf(one));
    expect(problems.map(sentence)).toEqual(one.says);
    expect(problems.map((problem) => problem.code)).toContain(code);
  });
});

test('every code has its file', () => {
  expect(files.map(({ code }) => code).sort()).toEqual([...PROBLEM_CODES].sort());
});

test.each(['small', 'by-hand', 'whole'])('the plan that cases start from has no problem: %s', (name) => {
  expect(problemsIn(exampleText(name))).toEqual([]);
});

test('at most 50 problems are reported, the first ones', () => {
  const file = JSON.parse(exampleText('small')) as { plan: { items: unknown[] } };
  file.plan.items = Array.from({ length: 49 }, () => ({}));
  const problems = problemsIn(JSON.stringify(file));
  expect(problems).toHaveLength(50);
  expect(problems[0]?.path).toBe('items/0/id');
});

test('a byte order mark before the text is no problem', () => {
  expect(problemsIn(`\uFEFF${exampleText('small')}`)).toEqual([]);
});

test('what came is cut to 80 characters and stays on one line', () => {
  const file = JSON.parse(exampleText('small')) as { plan: { name: string } };
  file.plan.name = `${'long\n'.repeat(100)}`;
  const [problem] = problemsIn(JSON.stringify(file));
  expect(problem?.got).toHaveLength(80);
  expect(problem?.got).not.toContain('\n');
});

test('a file far too large is not walked', () => {
  const [problem] = problemsIn(`"${'a'.repeat(21_000_000)}"`);
  expect(problem && sentence(problem)).toBe(
    'The plan: got a file of 22 million characters; expected a plan file of at most 20 million characters.',
  );
});

test('a million brackets are a sentence, not an overflow', () => {
  const [problem] = problemsIn('['.repeat(1_000_000));
  expect(problem?.code).toBe('not-json');
});

test('a field called like a part of every object is unknown, and changes nothing', () => {
  const text = exampleText('small').replace('"lesson"', '"__proto__": {"polluted": true}, "lesson"');
  const [problem] = problemsIn(text);
  expect(problem?.code).toBe('field-unknown');
  expect(problem?.path).toBe('__proto__');
  expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
});

function problemsIn(text: string): readonly Problem[] {
  const read = parsePlanText(text);
  if (!read.ok && !('problems' in read)) throw new Error(read.refusal.sentence);
  const outcome = read.ok
    ? evaluate(read.value, ({ minorDigits, startDay }) =>
        plainSay({ minorDigits, startDay, dateOf: isoDateOf }),
      )
    : read;
  return outcome.ok ? [] : outcome.problems;
}
