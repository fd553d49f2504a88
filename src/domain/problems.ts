// Trouble a person can mend: what they typed, or what the file they opened says. A Problem is returned, never thrown.
// (A Refusal is the device's trouble, see storage; a Bug is a failed assertion, thrown.)
// Worked example: { code: 'margin-too-high', path: 'accounts/corner/hands/shop/rule/rate', got: '1.2',
// expected: 'a share from 0 to below 1' } reads "Corner, Shop, margin: got 1.2; expected a share from 0 to below 1."

/** Every kind of problem a person can meet. tests/problems provokes each one. */
export const PROBLEM_CODES = [
  'not-json', // the file isn't JSON at all
  'not-a-plan', // JSON, but no plan envelope
  'field-invalid', // one field is not what it should be
  'field-missing', // a field isn't there
  'field-unknown', // a field nobody knows
  'reference-unknown', // an id that names nothing
  'id-repeated', // an id that names two things
  'solved-count', // not exactly one rung of a ladder is left to be solved
  'rung-unsolvable', // no value of the solved rung fits
  'dates-out-of-order', // a week before the one it must follow
  'takes-too-much', // allowances take all of an invoice, or more
  'cost-base', // a cost line takes a share of a later line, or of itself
  'pack-needed', // a cost by the load, of an item whose pack isn't known or fits no such load
  'number-too-large', // exact arithmetic can't hold the product
  'currency-unknown', // not in ISO 4217
] as const;
export type ProblemCode = (typeof PROBLEM_CODES)[number];

export interface Problem {
  code: ProblemCode;
  /** Field names and ids joined by "/"; '' is the whole plan. */
  path: string;
  /** What came, as text, at most 80 characters. */
  got: string;
  /** What was expected, as the rest of a sentence: "a share from 0 to below 1". */
  expected: string;
}

export type Outcome<T> = { ok: true; value: T } | { ok: false; problems: readonly Problem[] };

export function fine<T>(value: T): Outcome<T> {
  return { ok: true, value };
}

export function trouble<T>(...problems: Problem[]): Outcome<T> {
  return { ok: false, problems };
}

/** One sentence: where, what came, what was expected. */
export function sentence(problem: Problem): string {
  const where = problem.path === '' ? 'The plan' : problem.path;
  return `${where}: got ${problem.got}; expected ${problem.expected}.`;
}
