// What it would cost to give the same term to everybody else: each other account with that term set to the same value,
// against its own first year now. Who is at it or past it already costs nothing.
// Worked figure: 250 a door given here cost 2,500 more at another chain with ten doors and none; one at 300 costs 0.

import { withAccount } from '../ladder/rungs.ts';
import type { Account, Plan } from '../plan/index.ts';
import { fine, type Outcome, trouble } from '../problems.ts';
import { unknownAccount } from './prices.ts';
import { oneDeal } from './run.ts';
import { termsOf, withTerms } from './terms.ts';
import type { Term } from './types.ts';

export interface MatchLine {
  accountId: string;
  name: string;
  /** What it has now, in the term's unit; null where the account can't have the term. */
  now: number | null;
  /** What its first year loses, 0 where nothing is to be given; null where it can't be reckoned. */
  cost: number | null;
  /** Why not, or why nothing; '' where the cost says it all. */
  why: string;
}

export interface MatchCost {
  term: string;
  value: number;
  lines: readonly MatchLine[];
  /** Of the lines that could be reckoned. */
  total: number;
}

/** Terms that are one account's own: nobody could ask for the same. */
const OWN = new Set(['doors']);

/** One term of an account, as it stands in `plan`, given to every other account. Problems: an unknown account or term. */
export function matchCost(plan: Plan, accountId: string, name: string): Outcome<MatchCost> {
  const account = plan.accounts.find(({ id }) => id === accountId);
  if (!account) return trouble(unknownAccount(accountId));
  const terms = termsOf(plan, accountId);
  const term = terms.find((each) => each.name === name);
  if (!term || OWN.has(name)) {
    const names = terms.map((each) => each.name).filter((each) => !OWN.has(each));
    const expected = `a term that others can be given too: ${names.join(', ')}`;
    return trouble({
      code: 'reference-unknown',
      path: `accounts/${accountId}/table`,
      got: JSON.stringify(name).slice(0, 80),
      expected,
    });
  }
  const lines = plan.accounts
    .filter(({ id }) => id !== accountId)
    .map((other) => lineFor({ plan, account, other, term }));
  const total = lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
  return fine({ term: name, value: term.value, lines, total: Number(total.toFixed(4)) });
}

interface Given {
  plan: Plan;
  account: Account;
  other: Account;
  term: Term;
}

function lineFor(given: Given): MatchLine {
  const { other, term } = given;
  const plan = statedAlike(given);
  const base = { accountId: other.id, name: other.name };
  const theirs = termsOf(plan, other.id).find((each) => each.name === nameAt(given));
  if (!theirs) return { ...base, now: null, cost: null, why: `${other.name} can’t have this term.` };
  const now = theirs.value;
  if (isPast(theirs, term)) return { ...base, now, cost: 0, why: 'At it or past it already.' };
  const before = oneDeal(plan, other.id);
  const changed = withTerms(plan, other.id, { [theirs.name]: term.value });
  const after = changed.ok ? oneDeal(changed.value, other.id) : changed;
  if (!before.ok || !after.ok) {
    const [problem] = [before, after].flatMap((each) => (each.ok ? [] : each.problems));
    return {
      ...base,
      now,
      cost: null,
      why: problem ? `Got ${problem.got}; expected ${problem.expected}.` : '',
    };
  }
  const change = before.value.deal.firstYearAfterFixed.minus(after.value.deal.firstYearAfterFixed);
  return { ...base, now, cost: change.toNumber(), why: '' };
}

/** "shelf:honey" is "shelf" at an account that lists honey alone, and the other way round. */
function nameAt({ account, other, term }: Given): string {
  if (!term.name.startsWith('shelf')) return term.name;
  const itemId = term.name.split(':')[1] ?? account.listings[0]?.itemId ?? '';
  if (!other.listings.some((listing) => listing.itemId === itemId)) return '';
  return other.listings.length === 1 ? 'shelf' : `shelf:${itemId}`;
}

/** The other account is at least as far in its own favour. */
function isPast(theirs: Term, { value, better }: Term): boolean {
  return better === 'lower' ? theirs.value >= value : theirs.value <= value;
}

/** Slotting is given as it is asked here: an amount a door is not the same amount for the chain. */
function statedAlike({ plan, account, other, term }: Given): Plan {
  const per = account.slotting?.per ?? 'door';
  if (term.name !== 'slotting' || other.slotting === null || other.slotting.per === per) return plan;
  const factor = timesPaid(other, other.slotting.per) / Math.max(1, timesPaid(other, per));
  const amount = (Number(other.slotting.amount) * factor).toFixed(4).replace(/\.?0+$/, '');
  return withAccount(plan, { ...other, slotting: { ...other.slotting, amount, per } });
}

function timesPaid(account: Account, per: NonNullable<Account['slotting']>['per']): number {
  const doors = account.waves.reduce((sum, wave) => sum + wave.doors, 0);
  const items = account.listings.length;
  return { chain: 1, item: items, door: doors, itemDoor: doors * items }[per];
}
