// From the schema's issues to problems in words: where (ids for places of lists), what came, what was expected.
// What was expected is the schema's own text; only for objects and lists, which have none, it is worded here.
// Worked example: an issue at ["accounts",0,"terms","paymentDays"] that got "soon" becomes
// "accounts/corner/terms/paymentDays: got "soon"; expected a whole number of days from 0 to 365."
import type * as z from 'zod/mini';
import { getAt, pathOfKeys } from '../domain/plan/path.ts';
import { fieldNamesAt } from '../domain/plan/schema-at.ts';
import { shown } from '../domain/plan/shown.ts';
import type { Problem } from '../domain/problems.ts';
import { pathText } from './path-text.ts';

type Issue = z.core.$ZodIssue;

/** What zod says where a schema has no text of its own. */
const NO_WORDS = 'Invalid input';

/** Looked at of each kind; far fewer are reported, and a broken file may have hundreds of thousands. */
const ISSUES_MOST = 500;

/** One problem a field and kind of trouble, in the order of the plan. */
export function problemsOf(raw: unknown, issues: readonly Issue[]): Problem[] {
  const problems = issues
    .slice(0, ISSUES_MOST)
    .flatMap((issue) =>
      issue.code === 'unrecognized_keys' ? unknownFields(raw, issue) : [fieldProblem(raw, issue)],
    );
  const byPlace = new Map(problems.map((problem) => [`${problem.code} ${problem.path}`, problem]));
  return [...byPlace.values()];
}

function unknownFields(raw: unknown, issue: Issue & { keys: string[] }): Problem[] {
  const parent = pathOfKeys(raw, issue.path);
  const known = fieldNamesAt(raw, parent);
  const object = getAt(raw, parent);
  return issue.keys.slice(0, ISSUES_MOST).map((key) => ({
    code: 'field-unknown',
    path: pathText(parent === '' ? key : `${parent}/${key}`),
    got: shown(ownValue(object, key)),
    expected: known.length > 0 ? `only the fields ${known.join(', ')}` : 'no field of that name',
  }));
}

function fieldProblem(raw: unknown, issue: Issue): Problem {
  const found = valueAtKeys(raw, issue.path);
  return {
    code: found === undefined ? 'field-missing' : 'field-invalid',
    path: pathOfKeys(raw, issue.path),
    got: shown(found),
    expected: issue.message === NO_WORDS ? expectedOf(raw, issue) : issue.message,
  };
}

function expectedOf(raw: unknown, issue: Issue): string {
  if (issue.code !== 'invalid_type') return 'a value this field knows';
  if (issue.expected === 'array') return 'a list';
  const known = fieldNamesAt(raw, pathOfKeys(raw, issue.path));
  return known.length > 0 ? `an object with the fields ${known.join(', ')}` : 'an object';
}

function valueAtKeys(raw: unknown, keys: readonly PropertyKey[]): unknown {
  return keys.reduce<unknown>((here, key) => ownValue(here, key), raw);
}

function ownValue(here: unknown, key: PropertyKey): unknown {
  if (typeof here !== 'object' || here === null || !Object.hasOwn(here, key)) return undefined;
  return (here as Record<PropertyKey, unknown>)[key];
}
