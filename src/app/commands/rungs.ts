// Commands about which rung of a ladder gives way. Whatever was solved until now becomes typed, at the amounts that
// were shown, so that the picture stands still when another rung is let loose.
// Hands belong to the account and prices to each listing: when a hand is let loose, or was loose, every listing of the
// account changes with it, since each ladder has exactly one loose rung.
// Worked example: list price loose at 2.89 under a shelf price of 4.99; solveFor the shop makes the list price a typed
// 2.89 and the shop's margin the one that gives way.
import type { Account, Hand, Listing, Plan } from '../../domain/plan/index.ts';
import { solvedRungs } from '../../domain/plan/rules/ladders.ts';
import { fine, type Outcome, trouble } from '../../domain/problems.ts';
import { changed } from './field.ts';

/** What the screen showed: prices by item as decimal text on the 0.0001 grid, margins by hand with 6 decimals. */
export interface ShownRungs {
  prices: Readonly<Record<string, { list: string; shelf: string }>>;
  handMarginRates: Readonly<Record<string, string>>;
}

export interface RungArgs {
  accountId: string;
  itemId: string;
  /** "list", "shelf" or a hand's id. */
  rung: string;
}

export function lockRung(plan: Plan, args: RungArgs): Outcome<Plan> {
  return withListing(plan, args, (listing) => ({
    ...listing,
    lockedRungs: [...listing.lockedRungs.filter((rung) => rung !== args.rung), args.rung],
  }));
}

export function unlockRung(plan: Plan, args: RungArgs): Outcome<Plan> {
  return withListing(plan, args, (listing) => unlocked(listing, args.rung));
}

/** Lets `rung` give way from now on. A locked rung has to be unlocked first. */
export function solveFor(plan: Plan, args: RungArgs & { shown: ShownRungs }): Outcome<Plan> {
  const { accountId, itemId, rung, shown } = args;
  const account = plan.accounts.find(({ id }) => id === accountId);
  const listing = account?.listings.find((each) => each.itemId === itemId);
  if (!account || !listing) throw new Error(`no listing "${itemId}" at account "${accountId}"`);
  if (listing.lockedRungs.includes(rung)) {
    const path = `accounts/${accountId}/listings/${itemId}/lockedRungs`;
    return trouble({
      code: 'solved-count',
      path,
      got: `"${rung}", a locked rung, to be solved`,
      expected: 'a rung that is not locked',
    });
  }
  const isHand = (each: string) => account.hands.some(({ id }) => id === each);
  const ofAll = [rung, ...solvedRungs(account, listing)].some(isHand);
  const next: Account = {
    ...account,
    hands: account.hands.map((hand) => handFor(hand, rung, ofAll, shown)),
    listings: account.listings.map((each) =>
      ofAll || each === listing ? listingFor(each, rung, shown) : each,
    ),
  };
  return fine({ ...plan, accounts: changed(plan.accounts, accountId, () => next) });
}

function handFor(hand: Hand, rung: string, ofAll: boolean, { handMarginRates }: ShownRungs): Hand {
  if (hand.id === rung) return { ...hand, rule: { by: 'solved' } };
  const rate = handMarginRates[hand.id];
  if (!ofAll || hand.rule.by !== 'solved' || rate === undefined) return hand;
  return { ...hand, rule: { by: 'margin', rate } };
}

function listingFor(listing: Listing, rung: string, { prices }: ShownRungs): Listing {
  const price = prices[listing.itemId];
  const free = unlocked(listing, rung);
  const list =
    listing.list.by === 'solved' && price ? ({ by: 'price', amount: price.list } as const) : listing.list;
  const shelf =
    listing.shelf.by === 'solved' && price ? ({ by: 'price', amount: price.shelf } as const) : listing.shelf;
  return {
    ...free,
    list: rung === 'list' ? { by: 'solved' } : list,
    shelf: rung === 'shelf' ? { by: 'solved' } : shelf,
  };
}

function unlocked(listing: Listing, rung: string): Listing {
  return { ...listing, lockedRungs: listing.lockedRungs.filter((each) => each !== rung) };
}

function withListing(
  plan: Plan,
  { accountId, itemId }: RungArgs,
  change: (listing: Listing) => Listing,
): Outcome<Plan> {
  const accounts = changed(plan.accounts, accountId, (account) => ({
    ...account,
    listings: changed(account.listings, itemId, change),
  }));
  return fine({ ...plan, accounts });
}
