// Rungs made typed at the value they have now, so that another can be left to be solved. Hands belong to the account:
// when one of them starts or stops giving way, every other item the account lists follows.
// Worked example: shelf solved at 4.99; when the chain's margin is to give way instead, the shelf is typed at 4.99.
import type { Decimal } from '../money/decimal.ts';
import { priceText } from '../money/plain.ts';
import type { Account, Hand, Listing } from '../plan/index.ts';
import { fine, type Outcome, trouble } from '../problems.ts';
import { ladderFor } from './ladder.ts';
import { type Place, withListing } from './rungs.ts';
import type { LadderResult } from './types.ts';

/** The account with the listing's solved rung typed, as our margin or as a price where it is the list price. */
export function frozen(
  { account, listing }: Pick<Place, 'account' | 'listing'>,
  ladder: LadderResult,
  listBy: 'price' | 'margin',
): Outcome<Account> {
  const { solvedRung } = ladder;
  if (solvedRung === 'list')
    return fine(withListing(account, { ...listing, list: typedList(ladder, listBy) }));
  if (solvedRung === 'shelf') {
    return fine(withListing(account, { ...listing, shelf: { by: 'price', amount: ladder.shelf.toFixed() } }));
  }
  const result = ladder.hands.find(({ id }) => id === solvedRung);
  if (!result) throw new Error(`no hand ${solvedRung} in the ladder of ${account.id}`);
  if (result.keeps.isNegative() || result.marginRate.gte(1)) {
    return trouble({
      code: 'rung-unsolvable',
      path: `accounts/${account.id}/hands/${solvedRung}/rule`,
      got: `${result.name} keeping ${priceText(result.keeps)} of ${priceText(result.sells)}`,
      expected: `${result.name} to keep 0 or more before another rung gives way in its place`,
    });
  }
  return fine(withRule(account, solvedRung, { by: 'margin', rate: rateText(result.marginRate) }));
}

export function withRule(account: Account, handId: string, rule: Hand['rule']): Account {
  return { ...account, hands: account.hands.map((hand) => (hand.id === handId ? { ...hand, rule } : hand)) };
}

/** A rate as a plan keeps it. */
export function rateText(rate: Decimal): string {
  return rate.toDecimalPlaces(6).toFixed();
}

function typedList(ladder: LadderResult, listBy: 'price' | 'margin'): Listing['list'] {
  const rate = ladder.ladderMarginRate;
  // a list price below landed cost is no margin a plan can state
  if (listBy === 'margin' && !rate.isNegative() && rate.lt(1)) return { by: 'margin', rate: rateText(rate) };
  return { by: 'price', amount: ladder.list.toFixed() };
}

/**
 * The account with its other listings brought to one solved rung each: where a hand gives way they are typed at what they
 * come to now; where none does any more, `else` gives way on each of them.
 */
export function othersFollowing(
  before: Place,
  account: Account,
  { instead }: { instead: 'list' | 'shelf' },
): Outcome<Account> {
  const handSolved = account.hands.some(({ rule }) => rule.by === 'solved');
  const listings: Listing[] = [];
  for (const listing of account.listings) {
    const open = listing.list.by === 'solved' || listing.shelf.by === 'solved';
    if (listing.itemId === before.listing.itemId || open !== handSolved) {
      listings.push(listing);
    } else if (!handSolved) {
      listings.push({ ...listing, [instead]: { by: 'solved' } });
    } else {
      const typed = typedAsNow(before, listing);
      if (!typed.ok) return typed;
      listings.push(typed.value);
    }
  }
  return fine({ ...account, listings });
}

function typedAsNow({ plan, account }: Place, listing: Listing): Outcome<Listing> {
  const item = plan.items.find(({ id }) => id === listing.itemId);
  if (!item) throw new Error(`no item ${listing.itemId} in the plan`);
  const ladder = ladderFor({ plan, account, listing, item });
  if (!ladder.ok) return ladder;
  if (listing.list.by === 'solved') return fine({ ...listing, list: typedList(ladder.value, 'price') });
  return fine({ ...listing, shelf: { by: 'price', amount: ladder.value.shelf.toFixed() } });
}
