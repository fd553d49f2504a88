// One rung of a ladder moved by hand, another giving way: the command behind dragging, stepping and typing on the
// ladder. Plan in, new plan out; every rung that neither moves nor gives way stays what it was, typed where it was solved.
// Worked figure: list 2.60, one hand at 40 %, shelf solved; the shelf moved to 4.99 with the hand giving way: the shelf is
// typed, the hand is solved and keeps 2.39, 47.9 %.
import type * as z from 'zod/mini';
import { type Decimal, ONE } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import { handRule, listRule, shelfRule } from '../plan/account.ts';
import type { Account, Plan } from '../plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from '../problems.ts';
import { frozen, othersFollowing, withRule } from './frozen.ts';
import { ladderFor } from './ladder.ts';
import { itemLandingAt } from './landed-target.ts';
import { type RungTarget, ruleFor } from './rung-target.ts';
import {
  type Place,
  placeOf,
  whyNoRung,
  whyNotGiveWay,
  withAccount,
  withItem,
  withListing,
} from './rungs.ts';
import type { LadderResult } from './types.ts';

export interface RungMove {
  accountId: string;
  itemId: string;
  /** "landed", "list", "shelf" or a hand's id. */
  rung: string;
  to: RungTarget;
  /** The rung that takes the difference; never locked. */
  givesWay: string;
}

export interface RungMoved {
  plan: Plan;
  ladder: LadderResult;
  /** Rungs that could not be met exactly on their grid, and how far above (or below) they came out; empty when none. */
  misses: readonly { rung: string; amount: Decimal }[];
}

/**
 * Move a rung to a value. Problems: a rung that may not give way or that no value fits ('rung-unsolvable'), a value no
 * such rung can have ('field-invalid'), and whatever the new ladder meets.
 */
export function moveRung(plan: Plan, move: RungMove): Outcome<RungMoved> {
  const place = placeOf(plan, move);
  if (!place.ok) return place;
  const unknown = whyNoRung(place.value.account, move.rung);
  if (unknown) return trouble(unknown);
  const locked = whyNotGiveWay(place.value, move);
  if (locked) return trouble(locked);
  const now = ladderFor(place.value);
  if (!now.ok) return now;
  if (move.givesWay === 'landed') return landedGivesWay(place.value, now.value, move);
  if (move.rung === 'landed') return landedMoves(place.value, now.value, move);
  const account = rearranged(place.value, now.value, move, move.givesWay);
  return account.ok ? settled(withAccount(plan, account.value), move, []) : account;
}

/** The account with the moved rung typed, the solved one typed as it stands, and `open` left to be solved. */
function rearranged(place: Place, now: LadderResult, move: RungMove, open: string): Outcome<Account> {
  const { rung } = move;
  const replaced = now.solvedRung === open || now.solvedRung === rung;
  const held = replaced ? fine(place.account) : frozen(place, now, listByWhen(rung));
  if (!held.ok) return held;
  const moved = rung === 'landed' ? held : withTarget({ ...place, account: held.value }, now, move);
  if (!moved.ok) return moved;
  const opened = leftToSolve(moved.value, place.listing.itemId, open);
  return othersFollowing(place, opened, { instead: open === 'shelf' ? 'shelf' : 'list' });
}

/** A list price that was solved follows a moving landed cost by its margin; otherwise it stands as a price. */
function listByWhen(rung: string): 'price' | 'margin' {
  return rung === 'landed' ? 'margin' : 'price';
}

function leftToSolve(account: Account, itemId: string, open: string): Account {
  if (open !== 'list' && open !== 'shelf') return withRule(account, open, { by: 'solved' });
  const listing = account.listings.find((each) => each.itemId === itemId);
  return listing ? withListing(account, { ...listing, [open]: { by: 'solved' } }) : account;
}

/** The moved rung, typed. Its listing is read from the account, which may have been typed anew. */
function withTarget(
  { account, listing: { itemId } }: Place,
  now: LadderResult,
  move: RungMove,
): Outcome<Account> {
  const rule = ruleFor(account, now, move);
  if (!rule.ok) return rule;
  const listing = account.listings.find((each) => each.itemId === itemId);
  if (!listing) throw new Error(`no listing of ${itemId} at ${account.id}`);
  const path = `accounts/${account.id}/listings/${itemId}`;
  if (move.rung === 'list') {
    const list = checked(listRule, rule.value, `${path}/list`);
    return list.ok ? fine(withListing(account, { ...listing, list: list.value })) : list;
  }
  if (move.rung === 'shelf') {
    const shelf = checked(shelfRule, rule.value, `${path}/shelf`);
    return shelf.ok ? fine(withListing(account, { ...listing, shelf: shelf.value })) : shelf;
  }
  const ofHand = checked(handRule, rule.value, `accounts/${account.id}/hands/${move.rung}/rule`);
  return ofHand.ok ? fine(withRule(account, move.rung, ofHand.value)) : ofHand;
}

/** The landed cost is moved to a price: its goods line is worked out, then the rest is arranged as for any rung. */
function landedMoves(place: Place, now: LadderResult, move: RungMove): Outcome<RungMoved> {
  const { to } = move;
  if (to.by !== 'price') return trouble(notFor(place, move, 'a landed cost stated as an amount'));
  const item = itemLandingAt(place.item, kept(to.amount));
  if (!item.ok) return item;
  const account = rearranged(place, now, move, move.givesWay);
  if (!account.ok) return account;
  return settled(withItem(withAccount(place.plan, account.value), item.value), move, [
    { rung: 'landed', exact: kept(to.amount) },
  ]);
}

/** Our margin is kept (or is what moves), and the landed cost is what list price and margin leave. */
function landedGivesWay(place: Place, now: LadderResult, move: RungMove): Outcome<RungMoved> {
  const { listing, plan } = place;
  const target = move.rung === 'list' ? move.to : null;
  if (target && target.by !== 'margin') {
    return trouble(
      notFor(place, move, 'our margin, where landed cost gives way: hands and shelf hold the list price'),
    );
  }
  let account: Account = place.account;
  if (target) {
    const list = checked(listRule, target, `accounts/${account.id}/listings/${listing.itemId}/list`);
    if (!list.ok) return list;
    if (listing.list.by === 'margin') account = withListing(account, { ...listing, list: list.value });
  } else {
    const arranged = rearranged(place, now, move, 'list');
    if (!arranged.ok) return arranged;
    account = arranged.value;
  }
  const margin = target
    ? kept(target.rate)
    : listing.list.by === 'margin'
      ? kept(listing.list.rate)
      : now.ladderMarginRate;
  const arrangedPlan = withAccount(plan, account);
  const list = target ? fine(now.list) : listPriceIn(arrangedPlan, move);
  if (!list.ok) return list;
  const exact = list.value.times(ONE.minus(margin));
  const item = itemLandingAt(place.item, exact);
  if (!item.ok) return item;
  return settled(withItem(arrangedPlan, item.value), move, [{ rung: 'landed', exact }]);
}

function listPriceIn(plan: Plan, move: RungMove): Outcome<Decimal> {
  const place = placeOf(plan, move);
  const ladder = place.ok ? ladderFor(place.value) : place;
  return ladder.ok ? fine(ladder.value.list) : ladder;
}

/** The new plan with its ladder and what its grids kept it from. */
function settled(
  plan: Plan,
  move: RungMove,
  exacts: readonly { rung: string; exact: Decimal }[],
): Outcome<RungMoved> {
  const place = placeOf(plan, move);
  if (!place.ok) return place;
  const ladder = ladderFor(place.value);
  if (!ladder.ok) return ladder;
  const { value } = ladder;
  const misses = exacts.map(({ rung, exact }) => ({ rung, amount: value.landed.unit.minus(exact) }));
  misses.push({ rung: value.solvedRung, amount: value.miss });
  misses.push({ rung: 'shelf', amount: value.shelf.minus(value.shelfUnmoved) });
  return fine({ plan, ladder: value, misses: misses.filter(({ amount }) => !amount.isZero()) });
}

/** A rule that a plan may hold, or the first thing its schema says against it. */
function checked<T>(schema: z.ZodMiniType<T, unknown>, rule: unknown, path: string): Outcome<T> {
  const parsed = schema.safeParse(rule);
  if (parsed.success) return fine(parsed.data);
  const issue = parsed.error.issues[0];
  const key = issue?.path.map(String).join('/') ?? '';
  const value = (rule as Record<string, unknown>)[key];
  return trouble({
    code: 'field-invalid',
    path: key === '' ? path : `${path}/${key}`,
    got: String(value ?? (rule as { by?: unknown }).by).slice(0, 80),
    expected: issue?.message ?? 'another value',
  });
}

function notFor({ account }: Place, { rung, to, itemId }: RungMove, expected: string): Problem {
  const value = 'rate' in to ? to.rate : to.amount;
  const path = `accounts/${account.id}/listings/${itemId}/${rung}`;
  return { code: 'field-invalid', path, got: `${to.by} ${value}`, expected };
}
