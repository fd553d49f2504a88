// The rungs of one listed item, from the foot up: "landed", "list", each hand by its id, "shelf"; and which of them may
// give way when another moves. Worked example: with list locked and one hand, moving the shelf leaves landed and the hand.
import type { Account, Item, Listing, Plan } from '../plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from '../problems.ts';

/** One listed item and where it stands in its plan. */
export interface Place {
  plan: Plan;
  account: Account;
  listing: Listing;
  item: Item;
}

/** The place an account and an item name; a problem when either is not in the plan. */
export function placeOf(
  plan: Plan,
  { accountId, itemId }: { accountId: string; itemId: string },
): Outcome<Place> {
  const account = plan.accounts.find(({ id }) => id === accountId);
  const listing = account?.listings.find((each) => each.itemId === itemId);
  const item = plan.items.find(({ id }) => id === itemId);
  if (account && listing && item) return fine({ plan, account, listing, item });
  return trouble({
    code: 'reference-unknown',
    path: account ? `accounts/${accountId}/listings` : 'accounts',
    got: account ? itemId : accountId,
    expected: account ? 'an item this account lists' : 'an account of the plan',
  });
}

/** Every rung from the foot up. */
export function rungsOf({ hands }: Account): string[] {
  return ['landed', 'list', ...hands.map(({ id }) => id), 'shelf'];
}

/** What a rung is called in a sentence. */
export function rungName({ hands }: Account, rung: string): string {
  const own: Record<string, string> = { landed: 'landed cost', list: 'list price', shelf: 'shelf price' };
  return own[rung] ?? hands.find(({ id }) => id === rung)?.name ?? rung;
}

/** Why there is no such rung, as a problem; null when there is. */
export function whyNoRung(account: Account, rung: string): Problem | null {
  if (rungsOf(account).includes(rung)) return null;
  const names = rungsOf(account).map((each) => rungName(account, each));
  return {
    code: 'reference-unknown',
    path: `accounts/${account.id}/hands`,
    got: rung,
    expected: `one of the rungs ${names.join(', ')}`,
  };
}

/** The rungs that may give way when `rung` moves: every other one that isn't locked. */
export function mayGiveWay({ account, listing }: Pick<Place, 'account' | 'listing'>, rung: string): string[] {
  return rungsOf(account).filter((each) => each !== rung && !listing.lockedRungs.includes(each));
}

/** Why a rung can't give way, as a problem; null when it can. */
export function whyNotGiveWay(
  place: Place,
  { rung, givesWay }: { rung: string; givesWay: string },
): Problem | null {
  const { account, listing } = place;
  const free = mayGiveWay(place, rung);
  if (free.includes(givesWay)) return null;
  const names = free.map((each) => rungName(account, each)).join(', ');
  const known = rungsOf(account).includes(givesWay);
  const state = givesWay === rung ? ', the rung that moves' : known ? ', locked' : '';
  return {
    code: 'rung-unsolvable',
    path: `accounts/${account.id}/listings/${listing.itemId}/lockedRungs`,
    got: `${rungName(account, givesWay)}${state}`,
    expected:
      names === '' ? 'at least one other rung that is not locked' : `one of these to give way: ${names}`,
  };
}

/** The plan with one account in the place of the old one. */
export function withAccount(plan: Plan, account: Account): Plan {
  return { ...plan, accounts: plan.accounts.map((each) => (each.id === account.id ? account : each)) };
}

export function withItem(plan: Plan, item: Item): Plan {
  return { ...plan, items: plan.items.map((each) => (each.id === item.id ? item : each)) };
}

export function withListing(account: Account, listing: Listing): Account {
  const listings = account.listings.map((each) => (each.itemId === listing.itemId ? listing : each));
  return { ...account, listings };
}
