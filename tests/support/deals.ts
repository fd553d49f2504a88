/**
 * A deal from a plan, as evaluate makes it: the account's ladders first, then the deal. Store stock is an argument,
 * because it comes from the weekly pass. Worked figure: dealOf({ account: anAccount() }) is ten doors at 1.60 a unit.
 */
import { type DealArgs, dealFor } from '../../src/domain/deals/index.ts';
import type { DealItem, DealResult } from '../../src/domain/deals/types.ts';
import { ladderFor } from '../../src/domain/ladder/ladder.ts';
import type { Account, Plan } from '../../src/domain/plan/index.ts';
import { aCostLine, aHand, aListing, anAccount, anItem, aPlan } from './builders.ts';

export function dealOf(from: {
  account: Account;
  plan?: Partial<Plan>;
  stock?: DealArgs['storeStockMeans'];
}): DealResult {
  const plan = aPlan({ ...from.plan, accounts: [from.account] });
  const ladders = from.account.listings.map((listing) => {
    const item = plan.items.find(({ id }) => id === listing.itemId);
    if (!item) throw new Error(`no item ${listing.itemId}`);
    const ladder = ladderFor({ plan, account: from.account, listing, item });
    if (!ladder.ok) throw new Error(JSON.stringify(ladder.problems));
    return ladder.value;
  });
  const storeStockMeans = from.stock ?? from.account.listings.map(() => null);
  return dealFor({ plan, account: from.account, ladders, storeStockMeans, minorDigits: 2 });
}

/** One door that sells at full rate from its first day: a unit priced so, costing so, over a term of so many weeks. */
export function simpleDeal(from: {
  price: string;
  cost: string;
  rate: string;
  termWeeks: number;
  account?: Partial<Account>;
}): DealResult {
  const account = anAccount({
    listings: [aListing({ list: { by: 'price', amount: from.price }, unitsPerStoreWeek: from.rate })],
    hands: [aHand()],
    waves: [{ id: 'first', openWeek: 4, doors: 1, doorsPerWeek: 1 }],
    deal: { termWeeks: from.termWeeks, hurdleAmount: '0' },
    ...from.account,
  });
  const goods = aCostLine({ rule: { by: 'unit', amount: from.cost } });
  return dealOf({ account, plan: { items: [anItem({ costLines: [goods] })] } });
}

/** Money asked for once, for the whole chain, at the first opening. */
export function once(amount: string): Account['slotting'] {
  return { amount, per: 'chain', settled: 'atOpening' };
}

export function firstItem(deal: DealResult): DealItem {
  const [item] = deal.items;
  if (!item) throw new Error('a deal without items');
  return item;
}

/** Paths at which a value holds NaN or an infinity, as a number, a decimal or a word; JSON alone would hide the first. */
export function oddNumbers(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value === 'string') return /NaN|Infinity/.test(value) ? [path] : [];
  if (typeof value !== 'object' || value === null) return [];
  if ('toFixed' in value) return oddNumbers(String(value), path);
  return Object.entries(value).flatMap(([key, each]) => oddNumbers(each, `${path}/${key}`));
}
