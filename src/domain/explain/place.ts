// Where in a plan a figure is: the account, the item, its listing, and what was computed for them. Null everywhere
// means that an old link names something the plan no longer has.
// Worked figure: placeOf(scene, 'corner', 'tea') holds Corner, Tea, its listing, its ladder and its part of the deal.
import type { DealItem, DealResult } from '../deals/types.ts';
import type { LadderResult, Step } from '../ladder/types.ts';
import { dec } from '../money/decimal.ts';
import type { Account, Item, Listing } from '../plan/index.ts';
import type { ExplanationLine, FigureKey, ListingFigure } from './types.ts';
import { exactNumber, exactPrice, line, part, type Scene, typed } from './write.ts';

export interface Place {
  account: Account;
  item: Item;
  listing: Listing;
  ladder: LadderResult;
  deal: DealResult;
  dealItem: DealItem;
  /** Of all listings, account outside, listing inside. */
  index: number;
  /** "accounts/corner/listings/tea" */
  path: string;
  /** "Tea, Corner" */
  words: string;
}

export function placeOf({ plan, results }: Scene, accountId: string, itemId: string): Place | null {
  const account = plan.accounts.find(({ id }) => id === accountId);
  const item = plan.items.find(({ id }) => id === itemId);
  const listing = account?.listings.find((each) => each.itemId === itemId);
  const isHere = (each: { accountId: string; itemId: string }) =>
    each.accountId === accountId && each.itemId === itemId;
  const index = results.ladders.findIndex(isHere);
  const ladder = results.ladders[index];
  const deal = results.deals.find((each) => each.accountId === accountId);
  const dealItem = deal?.items.find((each) => each.itemId === itemId);
  if (!account || !item || !listing || !ladder || !deal || !dealItem) return null;
  return {
    account,
    item,
    listing,
    ladder,
    deal,
    dealItem,
    index,
    path: `accounts/${accountId}/listings/${itemId}`,
    words: `${item.name}, ${account.name}`,
  };
}

/** All listings of an account, in its order. */
export function placesOf(scene: Scene, account: Account): Place[] {
  return account.listings.flatMap(({ itemId }) => placeOf(scene, account.id, itemId) ?? []);
}

export function listingKey({ account, item }: Place, figure: ListingFigure): FigureKey {
  return { of: 'listing', accountId: account.id, itemId: item.id, figure };
}

export function stepKey({ account, item }: Place, stepId: string): FigureKey {
  return { of: 'step', accountId: account.id, itemId: item.id, stepId };
}

/** A step of the ladder that is taken off, as a part of a sum. */
export function takenStep(scene: Scene, place: Place, step: Step): ExplanationLine {
  return part(scene, step.amount.negated(), {
    label: step.label,
    reason: step.reason,
    owner: step.owner,
    explains: step.stage === 'landed' ? listingKey(place, 'landed') : stepKey(place, step.id),
  });
}

/** A figure of the listing as an ingredient: no part of a sum. */
export function listingLine(scene: Scene, place: Place, figure: ListingFigure): ExplanationLine {
  const { label, owner } = LEVELS[figure];
  const { ladder } = place;
  const amounts: Partial<Record<ListingFigure, LadderResult['list']>> = {
    landed: ladder.landed.unit,
    list: ladder.list,
    invoice: ladder.invoice,
    net: ladder.net,
    contribution: ladder.contribution,
    shelf: ladder.shelf,
    shelfBeforeTax: ladder.shelfBeforeTax,
    tax: ladder.tax,
  };
  const amount = amounts[figure];
  if (!amount) throw new Error(`${figure} is no price of a listing`);
  return line({ label, value: exactPrice(scene, amount), owner, explains: listingKey(place, figure) });
}

/** Goods that keep only so long, once they come back. */
export function neverAgain(scene: Scene, { item }: Place): ExplanationLine {
  return typed(scene, `items/${item.id}/supply/shelfLife/weeks`, {
    label: 'None of these is sold again',
    value: exactNumber(scene, dec(item.supply.shelfLife?.weeks ?? 0)),
    reason: 'Weeks it keeps; nobody knows how old it is by then',
    owner: 'atRisk',
  });
}

/** Whether an off-invoice allowance lowers what the next hand pays. */
export function isPassedOn({ ladder }: Place, stepId: string): boolean {
  return ladder.forPass.charges.some(
    ({ id, charge }) => id === stepId && charge.settles === 'onInvoice' && charge.passedOn,
  );
}

/** Names of the listing's figures and whose money they are. */
export const LEVELS: Record<ListingFigure, { label: string; owner: ExplanationLine['owner'] }> = {
  landed: { label: 'Landed cost', owner: 'atRisk' },
  list: { label: 'List price', owner: 'ours' },
  invoice: { label: 'Invoice price', owner: 'ours' },
  net: { label: 'Net price', owner: 'ours' },
  contribution: { label: 'Contribution', owner: 'ours' },
  contributionRate: { label: 'Contribution of net price', owner: 'ours' },
  ladderMarginRate: { label: 'Margin of list price', owner: 'ours' },
  tradeRate: { label: 'Trade rate', owner: 'theirs' },
  shelf: { label: 'Shelf price', owner: null },
  shelfBeforeTax: { label: 'Shelf price before tax', owner: null },
  tax: { label: 'Tax', owner: 'tax' },
  givenBack: { label: 'Given back', owner: 'theirs' },
  sellingCosts: { label: 'Selling costs', owner: 'between' },
};
