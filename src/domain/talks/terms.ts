// The terms of an account read, and set: the plan with an offer in it. A term set to what it is already changes nothing.
// Worked figure: withTerms(plan, 'corner', { margin: 0.42 }) is the plan with the shelf's margin at 42 % and the list price
// left to be solved.

import { withAccount } from '../ladder/rungs.ts';
import { minorDigitsOf } from '../money/currency.ts';
import type { Plan, TermValue } from '../plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from '../problems.ts';
import { type At, textOf } from './kind.ts';
import { findTerm, namesOf, termAt, valueNow } from './kinds.ts';
import { type PricesAsked, unknownAccount, withPrices } from './prices.ts';
import type { Term, Terms } from './types.ts';

/** Values nearer than this are the same value. */
const SAME = 1e-9;

/** Decimals a term is kept with among a plan's talks. */
const DECIMALS = 4;

/** Where an account's terms stand; null when the plan has no such account. */
export function atAccount(plan: Plan, accountId: string): At | null {
  const account = plan.accounts.find(({ id }) => id === accountId);
  return account ? { plan, account, minorDigits: minorDigitsOf(plan.currency) ?? 2 } : null;
}

/** Every term the account can have, with its present value; none for an account that isn't there. */
export function termsOf(plan: Plan, accountId: string): Term[] {
  const at = atAccount(plan, accountId);
  if (!at) return [];
  return namesOf(at).flatMap((name) => termAt(at, name) ?? []);
}

/**
 * The plan with these terms set, by name. Problems: an account or a term that isn't there ('reference-unknown'), a value
 * the term can't have ('field-invalid'), rungs that are locked against it ('rung-unsolvable').
 */
export function withTerms(plan: Plan, accountId: string, terms: Terms): Outcome<Plan> {
  const at = atAccount(plan, accountId);
  if (!at) return trouble(unknownAccount(accountId));
  const problems: Problem[] = [];
  const prices: { margin: number | null; shelves: Map<string, number> } = {
    margin: null,
    shelves: new Map(),
  };
  let { account } = at;
  for (const [name, value] of inOrder(at, terms)) {
    const here = { ...at, account };
    const problem = whyNot(here, name, value);
    if (problem) problems.push(problem);
    if (problem || isMoot(name, terms)) continue;
    const found = findTerm(here, name);
    if (!found || Math.abs((valueNow(here, found) ?? Number.NaN) - value) < SAME) continue;
    if (found.by === 'margin') prices.margin = value;
    else if (found.by === 'shelf') prices.shelves.set(found.listing.itemId, value);
    else account = found.kind.write(here, value);
  }
  if (problems.length > 0) return { ok: false, problems };
  const priced = withAsked({ ...at, account }, prices);
  return priced.ok ? fine(withAccount(plan, priced.value)) : priced;
}

/** Without weeks there is no promotion, however deep. */
function isMoot(name: string, terms: Terms): boolean {
  return terms['promoWeeks'] === 0 && (name === 'promoDepth' || name === 'promoFunded');
}

function withAsked(at: At, asked: PricesAsked) {
  return asked.margin === null && asked.shelves.size === 0 ? fine(at.account) : withPrices(at, asked);
}

/** In the order of the list, so that a depth is set before its funding; unknown names last. */
function inOrder(at: At, terms: Terms): [string, number][] {
  const names = namesOf(at);
  const place = (name: string) => (names.includes(name) ? names.indexOf(name) : names.length);
  return Object.entries(terms).sort(([x], [y]) => place(x) - place(y));
}

/** Why a term can't be set to a value, or null. */
function whyNot(at: At, name: string, value: number): Problem | null {
  const path = `accounts/${at.account.id}/table/draft/${name}`;
  const found = findTerm(at, name);
  if (!found) {
    const expected = `one of the account’s terms: ${namesOf(at).join(', ')}`;
    return { code: 'reference-unknown', path, got: JSON.stringify(name).slice(0, 80), expected };
  }
  const term = termAt(at, name);
  if (!term) {
    const got = `${name} at an account that can’t have it`;
    return { code: 'reference-unknown', path, got, expected: `one of ${termNames(at)}` };
  }
  const isWhole = WHOLE.has(term.unit);
  const fits = Number.isFinite(value) && value >= term.least && value <= term.most;
  if (fits && (!isWhole || Number.isInteger(value))) return null;
  const because = found.by === 'kind' ? found.kind.mostBecause : '';
  return { code: 'field-invalid', path, got: gotText(value), expected: `${rangeText(term)}${because}` };
}

function termNames(at: At): string {
  return namesOf(at)
    .filter((name) => termAt(at, name) !== null)
    .join(', ');
}

const WHOLE = new Set<Term['unit']>(['days', 'weeks', 'cases', 'doors']);

function gotText(value: number): string {
  return Number.isFinite(value) ? textOf(value, 6) : String(value);
}

function rangeText({ unit, least, most }: Term): string {
  const [from, to] = [textOf(least, 4), textOf(most, 4)];
  if (unit === 'share') return `a share from ${from} to ${to}; 42 % is 0.42`;
  if (unit === 'price' || unit === 'sum') return `an amount from ${from} to ${to}`;
  return `a whole number of ${unit} from ${from} to ${to}`;
}

/** Terms as a plan's talks keep them, by name; of a term that is there twice the last counts. */
export function termsFrom(values: readonly TermValue[]): Terms {
  return Object.fromEntries(values.map(({ term, value }) => [term, Number(value)]));
}

/** Terms as decimal texts of at most four decimals. */
export function valuesFrom(terms: Terms): TermValue[] {
  return Object.entries(terms).map(([term, value]) => ({ term, value: textOf(value, DECIMALS) }));
}

/** Where an account's terms stand; a problem when the plan has no such account. */
export function foundAt(plan: Plan, accountId: string): Outcome<At> {
  const at = atAccount(plan, accountId);
  return at ? fine(at) : trouble(unknownAccount(accountId));
}
