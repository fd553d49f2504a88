// The terms that share a ladder: the shelf's margin and the prices on the tag. At the table the tag and our landed cost
// stand and our list price gives way; where the list price is locked, the tag gives way for the margin, and the shelf's
// hand for the tag. Worked figure: tag 4.99, margin 40 % asked to 42 %: list 2.9940 becomes 2.8942.
import { frozen, withRule } from '../ladder/frozen.ts';
import { ladderFor } from '../ladder/ladder.ts';
import type { LadderResult } from '../ladder/types.ts';
import { numberOf } from '../money/decimal.ts';
import type { Account, Hand, Listing } from '../plan/index.ts';
import { fine, type Outcome, type Problem } from '../problems.ts';
import { type At, textOf } from './kind.ts';

export interface PricesAsked {
  /** The last hand's margin rate; null: not asked. */
  margin: number | null;
  /** Price on the tag by item. */
  shelves: ReadonlyMap<string, number>;
}

/** The ladder of one of the account's listings. */
export function ladderOf({ plan, account }: At, listing: Listing): Outcome<LadderResult> {
  const item = plan.items.find(({ id }) => id === listing.itemId);
  if (!item) throw new Error(`no item ${listing.itemId} in the plan`);
  return ladderFor({ plan, account, listing, item });
}

/** The margin of the shelf's hand, by its rule or, on the first listing, as it comes out; null where no ladder stands. */
export function marginOf(at: At): number | null {
  const { rule } = lastHand(at.account);
  if (rule.by === 'margin') return Number(rule.rate);
  const [listing] = at.account.listings;
  const ladder = listing ? ladderOf(at, listing) : null;
  const hand = ladder?.ok ? ladder.value.hands.at(-1) : null;
  return hand ? numberOf(hand.marginRate) : null;
}

/** The price on the tag, as it stands after its move to the chain's points; null where no ladder stands. */
export function shelfOf(at: At, listing: Listing): number | null {
  if (listing.shelf.by === 'price' && at.account.pricePoints === null) return Number(listing.shelf.amount);
  const ladder = ladderOf(at, listing);
  return ladder.ok ? numberOf(ladder.value.shelf) : null;
}

function lastHand({ hands }: Account): Hand {
  const last = hands.at(-1);
  if (!last) throw new Error('an account without a hand');
  return last;
}

/** The account with the asked margin and tags, one rung of each ladder left to be solved. */
export function withPrices(at: At, asked: PricesAsked): Outcome<Account> {
  const { account } = at;
  const stuck = account.listings.flatMap((listing) => whyStuck(account, listing, asked));
  if (stuck.length > 0) return { ok: false, problems: stuck };
  const handGives =
    asked.margin === null &&
    account.listings.some((each) => asked.shelves.has(each.itemId) && isLocked(each, 'list'));
  const hands = handsTyped(at, asked, handGives);
  if (!hands.ok) return hands;
  const hadSolvedHand = account.hands.some(({ rule }) => rule.by === 'solved');
  const listings: Listing[] = [];
  for (const listing of account.listings) {
    const isTouched =
      asked.margin !== null || asked.shelves.has(listing.itemId) || hadSolvedHand || handGives;
    const gives = handGives ? null : isLocked(listing, 'list') ? 'shelf' : 'list';
    const next = isTouched ? arranged(at, listing, asked, gives) : fine(listing);
    if (!next.ok) return next;
    listings.push(next.value);
  }
  return fine({ ...account, hands: hands.value, listings });
}

function isLocked(listing: Listing, rung: string): boolean {
  return listing.lockedRungs.includes(rung);
}

/** A listing of which too much is locked for what is asked. */
function whyStuck(account: Account, listing: Listing, { margin, shelves }: PricesAsked): Problem[] {
  if (!isLocked(listing, 'list')) return [];
  const isTag = shelves.has(listing.itemId);
  const hand = lastHand(account);
  const path = `accounts/${account.id}/listings/${listing.itemId}/lockedRungs`;
  const code = 'rung-unsolvable';
  if (margin !== null && isTag) {
    const expected = 'one of them to stand, or the list price unlocked to give way';
    return [{ code, path, got: 'a margin and a shelf price with the list price locked', expected }];
  }
  if (margin !== null && isLocked(listing, 'shelf')) {
    const expected = 'one of them unlocked, to give way for the margin';
    return [{ code, path, got: 'list price and shelf price locked', expected }];
  }
  if (isTag && isLocked(listing, hand.id)) {
    const expected = 'one of them unlocked, to give way for the shelf price';
    return [{ code, path, got: `list price and ${hand.name} locked`, expected }];
  }
  return [];
}

/** Hands with rules of their own, as they come out now where they were solved; the last one solved where it gives way. */
function handsTyped(at: At, { margin }: PricesAsked, handGives: boolean): Outcome<Account['hands']> {
  let { account } = at;
  const solved = account.hands.find(({ rule }) => rule.by === 'solved');
  const last = lastHand(account);
  const isReplaced = solved?.id === last.id && (margin !== null || handGives);
  if (solved && !isReplaced) {
    const typed = withHandTyped(at);
    if (!typed.ok) return typed;
    account = typed.value;
  }
  if (margin !== null) account = withRule(account, last.id, { by: 'margin', rate: textOf(margin, 6) });
  if (handGives) account = withRule(account, last.id, { by: 'solved' });
  return fine(account.hands);
}

/** A solved hand typed at the margin it keeps on the first listing. */
function withHandTyped(at: At): Outcome<Account> {
  const [listing] = at.account.listings;
  if (!listing) throw new Error('an account without a listing');
  const ladder = ladderOf(at, listing);
  return ladder.ok ? frozen({ account: at.account, listing }, ladder.value, 'price') : ladder;
}

/** List and tag of one listing, typed but for the one that gives way; null: neither does. */
function arranged(
  at: At,
  listing: Listing,
  { shelves }: PricesAsked,
  gives: 'list' | 'shelf' | null,
): Outcome<Listing> {
  const asked = shelves.get(listing.itemId);
  let { list, shelf } = listing;
  if (asked !== undefined) shelf = { by: 'price', amount: textOf(asked, 4) };
  const needsNow = (shelf.by === 'solved' && gives !== 'shelf') || (list.by === 'solved' && gives !== 'list');
  if (needsNow) {
    const now = ladderOf(at, listing);
    if (!now.ok) return now;
    if (shelf.by === 'solved') shelf = { by: 'price', amount: now.value.shelf.toFixed() };
    if (list.by === 'solved') list = { by: 'price', amount: now.value.list.toFixed() };
  }
  if (gives === 'list') list = { by: 'solved' };
  if (gives === 'shelf') shelf = { by: 'solved' };
  return fine({ ...listing, list, shelf });
}

export function unknownAccount(accountId: string): Problem {
  const got = accountId === '' ? 'an empty text' : accountId.slice(0, 80);
  return { code: 'reference-unknown', path: 'accounts', got, expected: 'the id of an account of the plan' };
}
