// What a buyer may see of an offer, as a record of its own: every field is named here, and nothing else of the plan gets
// in. Only the last offer said as ours or agreed counts; the draft never does. Where a hand stands between, the buying
// price is that hand's price: neither our price to it nor what it keeps is in the record.
// Worked figure: bought at 2.60 and sold at 4.00 before tax, 6 a store and week: penny profit 1.40, a store earns 8.40.
import type { DealItem } from '../deals/types.ts';
import { placeOf } from '../ladder/rungs.ts';
import type { LadderResult } from '../ladder/types.ts';
import { gridOf, rateOf } from '../money/grid.ts';
import { kept } from '../money/kept.ts';
import type { Account, Item, Listing, OfferSaid, Plan } from '../plan/index.ts';
import { fine, type Outcome } from '../problems.ts';
import { wholePlan } from './run.ts';
import type { Terms } from './types.ts';

/** Amounts and rates are decimal texts, in the record's currency; shares are parts of one. */
export interface TheirRecord {
  chain: string;
  item: string;
  currency: string;
  /** Decimals of the currency's money, 0 to 4. */
  minorDigits: number;
  /** What the shopper reads on the tag. */
  shelf: string;
  /** Null: nothing was said as ours or agreed yet. */
  offer: TheirOffer | null;
}

export interface TheirOffer {
  /** The part of the price before tax that the tag adds; '0' where tax is added at the till. */
  taxRate: string;
  shelfBeforeTax: string;
  buying: string;
  marginRate: string;
  pennyProfit: string;
  unitsPerStoreWeek: string;
  perStoreWeek: string;
  facings: number;
  perFacingWeek: string;
  /** These two are null while nothing stands on a shelf; GMROI also where the goods cost the retailer nothing. */
  turnsPerYear: string | null;
  gmroi: string | null;
  replaced: TheirReplaced | null;
}

/** The item whose place it would take, by the same measures. */
export interface TheirReplaced {
  shelfBeforeTax: string;
  buying: string;
  /** Null where it sells for nothing. */
  marginRate: string | null;
  pennyProfit: string;
  unitsPerStoreWeek: string;
  perStoreWeek: string;
}

export interface TheirRecordArgs {
  /** As it is kept: without the draft, and before any offer. */
  plan: Plan;
  accountId: string;
  itemId: string;
  /** Puts an offer's terms into a plan. */
  withTerms: (plan: Plan, accountId: string, terms: Terms) => Outcome<Plan>;
}

/**
 * The record of one item on one account's shelf, under the last offer said as ours or agreed. Problems: no such account
 * or item, an offer that fits the plan no longer, a plan without results.
 */
export function theirRecord({ plan, accountId, itemId, withTerms }: TheirRecordArgs): Outcome<TheirRecord> {
  const place = placeOf(plan, { accountId, itemId });
  if (!place.ok) return place;
  const said = lastOffered(place.value.account);
  const offered = said === null ? fine(plan) : withTerms(plan, accountId, termsOf(said));
  if (!offered.ok) return offered;
  const found = resultOf(offered.value, accountId, itemId);
  if (!found.ok) return found;
  const { account, item, listing, ladder, dealItem, minorDigits } = found.value;
  return fine({
    chain: account.name,
    item: item.name,
    currency: plan.currency,
    minorDigits,
    shelf: ladder.shelf.toFixed(),
    offer: said === null ? null : offerOf({ plan: offered.value, listing, ladder, dealItem }),
  });
}

/** The last offer that the other side may know of: ours, or agreed. Null before any. */
export function lastOffered({ table }: Account): OfferSaid | null {
  return table?.log.filter(({ said }) => said !== 'ask').at(-1) ?? null;
}

function termsOf({ terms }: OfferSaid): Terms {
  return Object.fromEntries(terms.map(({ term, value }) => [term, Number(value)]));
}

function offerOf(args: {
  plan: Plan;
  listing: Listing;
  ladder: LadderResult;
  dealItem: DealItem;
}): TheirOffer {
  const { plan, listing, ladder, dealItem } = args;
  const { retailer } = dealItem;
  return {
    taxRate: plan.shelfTax.shown === 'inPrice' ? plan.shelfTax.rate : '0',
    shelfBeforeTax: ladder.shelfBeforeTax.toFixed(),
    buying: retailer.buying.toFixed(),
    marginRate: retailer.frontMarginRate.toFixed(),
    pennyProfit: retailer.pennyProfit.toFixed(),
    unitsPerStoreWeek: dealItem.unitsPerStoreWeek.toFixed(),
    perStoreWeek: retailer.perStoreWeek.toFixed(),
    facings: listing.facings,
    perFacingWeek: retailer.perFacingWeek.toFixed(),
    turnsPerYear: retailer.turnsPerYear?.toFixed() ?? null,
    gmroi: retailer.gmroi?.toFixed() ?? null,
    replaced: replacedOf(listing),
  };
}

function replacedOf({ replaces }: Listing): TheirReplaced | null {
  if (!replaces) return null;
  const [shelf, buying, rate] = [
    kept(replaces.shelfBeforeTaxAmount),
    kept(replaces.buyingAmount),
    kept(replaces.unitsPerStoreWeek),
  ];
  const pennyProfit = shelf.minus(buying);
  const marginRate = shelf.gt(0) ? rateOf({ part: gridOf(pennyProfit), whole: gridOf(shelf) }) : null;
  return {
    shelfBeforeTax: shelf.toFixed(),
    buying: buying.toFixed(),
    marginRate: marginRate?.toFixed() ?? null,
    pennyProfit: pennyProfit.toFixed(),
    unitsPerStoreWeek: rate.toFixed(),
    perStoreWeek: pennyProfit.times(rate).toFixed(),
  };
}

interface Found {
  account: Account;
  item: Item;
  listing: Listing;
  ladder: LadderResult;
  dealItem: DealItem;
  minorDigits: number;
}

function resultOf(plan: Plan, accountId: string, itemId: string): Outcome<Found> {
  const place = placeOf(plan, { accountId, itemId });
  if (!place.ok) return place;
  const results = wholePlan(plan);
  if (!results.ok) return results;
  const { ladders, deals, minorDigits } = results.value;
  const ladder = ladders.find((each) => each.accountId === accountId && each.itemId === itemId);
  const deal = deals.find((each) => each.accountId === accountId);
  const dealItem = deal?.items.find((each) => each.itemId === itemId);
  if (!ladder || !dealItem) throw new Error(`no result for listing ${itemId} of account ${accountId}`);
  const { account, listing, item } = place.value;
  return fine({ account, item, listing, ladder, dealItem, minorDigits });
}
