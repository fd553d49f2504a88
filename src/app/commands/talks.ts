// Commands about the talks with one account: what we want, how far we would go, the draft on the table, which terms are
// in play, and what was said. None of them changes a result of the plan but takeIntoPlan, which writes an offer's terms
// into the account. Values are decimal texts in the plan's own units; a value as it stands in the plan is no draft.
// Worked example: setTerm(plan, { accountId: 'corner', term: 'margin', value: 0.42 }) puts 42 points on the table.
import type { Account, OfferSaid, Plan, Table } from '../../domain/plan/index.ts';
import { fine, type Outcome } from '../../domain/problems.ts';
import { blankTable, termsFrom, termsOf, valuesFrom, withTerms } from '../../domain/talks/index.ts';
import type { Terms } from '../../domain/talks/types.ts';
import { changed } from './field.ts';

/** Rows on the one screen. */
export const IN_PLAY_MOST = 5;

/** What is talked about first, in this order, as far as the account has it. */
const USUAL = ['margin', 'slotting', 'freeFill', 'promoWeeks', 'paymentDays', 'spoils', 'doors'];

type Of<Args> = { accountId: string } & Args;

/** The talks with an account as they stand; what nobody touched yet is blank. */
export function tableOf(account: Account): Table {
  return account.table ?? blankTable();
}

/** The terms on the screen, in their order: those chosen, or the usual ones. */
export function inPlayOf(plan: Plan, account: Account): string[] {
  const has = termsOf(plan, account.id).map(({ name }) => name);
  const chosen = tableOf(account).inPlay.filter((name) => has.includes(name));
  return (chosen.length > 0 ? chosen : USUAL.filter((name) => has.includes(name))).slice(0, IN_PLAY_MOST);
}

/** Objective, target, walk-away and the week of the first review. */
export function setAims(
  plan: Plan,
  args: Of<{ aims: Partial<Pick<Table, 'objective' | 'targetAmount' | 'walkAwayAmount' | 'reviewWeeks'>> }>,
): Outcome<Plan> {
  return withTable(plan, args.accountId, (table) => ({ ...table, ...args.aims }));
}

/** One term of the draft; it enters play. Problems where the account can't have this value. */
export function setTerm(plan: Plan, args: Of<{ term: string; value: number }>): Outcome<Plan> {
  const { accountId, term, value } = args;
  const before = draftOf(plan, accountId);
  const drafted = withDraft(plan, accountId, { ...before, [term]: value });
  return drafted.ok ? bringIntoPlay(drafted.value, { accountId, term }) : drafted;
}

/** The whole draft at once: a counter-offer used, or an offer returned to. Its terms enter play. */
export function setDraft(plan: Plan, { accountId, terms }: Of<{ terms: Terms }>): Outcome<Plan> {
  const drafted = withDraft(plan, accountId, terms);
  if (!drafted.ok) return drafted;
  return Object.keys(terms).reduce<Outcome<Plan>>(
    (before, term) => (before.ok ? bringIntoPlay(before.value, { accountId, term }) : before),
    drafted,
  );
}

/** Puts a term on the screen; of five, the last one that is as the plan has it makes room. */
export function bringIntoPlay(plan: Plan, { accountId, term }: Of<{ term: string }>): Outcome<Plan> {
  const account = accountOf(plan, accountId);
  const now = inPlayOf(plan, account);
  if (now.includes(term)) return fine(plan);
  const draft = draftOf(plan, accountId);
  const room =
    now.length < IN_PLAY_MOST ? null : (now.findLast((name) => draft[name] === undefined) ?? now.at(-1));
  const inPlay = [...now.filter((name) => name !== room), term];
  return withTable(plan, accountId, (table) => ({ ...table, inPlay }));
}

/** Takes a term off the screen; its value stays in the draft. The last one stays. */
export function takeOutOfPlay(plan: Plan, { accountId, term }: Of<{ term: string }>): Outcome<Plan> {
  const inPlay = inPlayOf(plan, accountOf(plan, accountId)).filter((name) => name !== term);
  return inPlay.length === 0 ? fine(plan) : withTable(plan, accountId, (table) => ({ ...table, inPlay }));
}

/** Keeps the whole draft as said by one side. */
export function stamp(
  plan: Plan,
  args: Of<{ said: OfferSaid['said']; id: string; atSeconds: number }>,
): Outcome<Plan> {
  const { accountId, said, id, atSeconds } = args;
  return withTable(plan, accountId, (table) => ({
    ...table,
    log: [...table.log, { id, said, atSeconds, terms: table.draft }],
  }));
}

/** As far as we would go on a term; null: no limit. */
export function setLimit(
  plan: Plan,
  { accountId, term, value }: Of<{ term: string; value: number | null }>,
): Outcome<Plan> {
  if (value !== null) {
    const possible = withTerms(plan, accountId, { [term]: value });
    if (!possible.ok) return possible;
  }
  return withTable(plan, accountId, (table) => {
    const others = table.limits.filter((each) => each.term !== term);
    return { ...table, limits: value === null ? others : [...others, ...valuesFrom({ [term]: value })] };
  });
}

/** Every term in the order of what we would rather give: those ordered by hand first. */
export function orderOf(plan: Plan, account: Account): string[] {
  const names = termsOf(plan, account.id).map(({ name }) => name);
  const ordered = tableOf(account).order.filter((name) => names.includes(name));
  return [...ordered, ...names.filter((name) => !ordered.includes(name))];
}

/** One place up or down in the order of what we would rather give. */
export function moveInOrder(
  plan: Plan,
  { accountId, term, by }: Of<{ term: string; by: 1 | -1 }>,
): Outcome<Plan> {
  const order = orderOf(plan, accountOf(plan, accountId));
  const from = order.indexOf(term);
  const to = from + by;
  if (from < 0 || to < 0 || to >= order.length) return fine(plan);
  const moved = order.filter((name) => name !== term);
  moved.splice(to, 0, term);
  return withTable(plan, accountId, (table) => ({ ...table, order: moved }));
}

/**
 * The terms of an offer become the account's own; the table is clear again. What was said is kept: an offer that left a
 * term as the plan had it now says so in words of its own.
 */
export function takeIntoPlan(plan: Plan, { accountId, terms }: Of<{ terms: Terms }>): Outcome<Plan> {
  const taken = withTerms(plan, accountId, terms);
  if (!taken.ok) return taken;
  const stood = termsOf(plan, accountId).filter(({ name }) => terms[name] !== undefined);
  const before = Object.fromEntries(stood.map(({ name, value }) => [name, value]));
  return withTable(taken.value, accountId, (table) => ({
    ...table,
    draft: [],
    log: table.log.map((offer) => ({
      ...offer,
      terms: valuesFrom({ ...before, ...termsFrom(offer.terms) }),
    })),
  }));
}

/** The draft by term. */
export function draftOf(plan: Plan, accountId: string): Terms {
  return termsFrom(tableOf(accountOf(plan, accountId)).draft);
}

function withDraft(plan: Plan, accountId: string, terms: Terms): Outcome<Plan> {
  const possible = withTerms(plan, accountId, terms);
  if (!possible.ok) return possible;
  const stands = new Map(termsOf(plan, accountId).map(({ name, value }) => [name, value]));
  const moved = Object.entries(terms).filter(([name, value]) => !isSame(stands.get(name), value));
  return withTable(plan, accountId, (table) => ({ ...table, draft: valuesFrom(Object.fromEntries(moved)) }));
}

function isSame(one: number | undefined, other: number): boolean {
  return one !== undefined && Math.abs(one - other) < 1e-9;
}

function accountOf(plan: Plan, accountId: string): Account {
  const account = plan.accounts.find(({ id }) => id === accountId);
  if (!account) throw new Error(`no account "${accountId}"`);
  return account;
}

function withTable(plan: Plan, accountId: string, change: (table: Table) => Table): Outcome<Plan> {
  const accounts = changed(plan.accounts, accountId, (account) => ({
    ...account,
    table: change(tableOf(account)),
  }));
  return fine({ ...plan, accounts });
}
