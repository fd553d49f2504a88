// What an offer's cost per unit does to each ladder and deal: both are made again with it as one more royalty of every
// account, which is how a royalty stands in a ladder. The weekly pass is not run again.
// Worked figure: 0.25 a unit on a contribution of 0.63 leaves 0.38.
import { dealFor } from '../deals/index.ts';
import { ladderFor } from '../ladder/ladder.ts';
import type { LadderResult } from '../ladder/types.ts';
import { dec } from '../money/decimal.ts';
import type { Account, Item, Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { shelfStockMeans } from '../rollout/index.ts';
import type { OfferOnDeal, OfferOnLadder } from './types.ts';

export interface OnDeals {
  ladders: OfferOnLadder[];
  deals: OfferOnDeal[];
}

/** `perUnit` in minor units. Null where the plan can't be computed with it (a ladder that has no answer then). */
export function onDeals(plan: Plan, results: Results, perUnit: number): OnDeals | null {
  const amount = dec(perUnit)
    .div(10 ** results.minorDigits)
    .toDecimalPlaces(4);
  if (amount.gt(1_000_000)) return null;
  const charged = plan.accounts.map((account): Account => {
    const cost = { kind: 'royalty' as const, id: 'offer-cost', amountPerUnit: amount.toFixed(), rate: '0' };
    return { ...account, allowances: [...account.allowances, { ...cost, onFreeGoods: false }] };
  });
  const means = shelfStockMeans(results.free);
  const ladders: LadderResult[] = [];
  const deals: OfferOnDeal[] = [];
  for (const [at, account] of charged.entries()) {
    const from = ladders.length;
    for (const listing of account.listings) {
      const item = plan.items.find(({ id }) => id === listing.itemId) as Item;
      const made = ladderFor({ plan, account, listing, item });
      if (!made.ok) return null;
      ladders.push(made.value);
    }
    const own = ladders.slice(from);
    const storeStockMeans = means.slice(from, ladders.length);
    const { minorDigits } = results;
    const deal = dealFor({ plan, account, ladders: own, storeStockMeans, minorDigits });
    const before = results.deals[at];
    if (before) {
      deals.push({
        accountId: account.id,
        firstYear: before.firstYearAfterFixed.toFixed(),
        firstYearWith: deal.firstYearAfterFixed.toFixed(),
        paybackWeeks: before.paybackWeeks?.toNumber() ?? null,
        paybackWeeksWith: deal.paybackWeeks?.toNumber() ?? null,
        breakEvenRatio: before.breakEvenRatio?.toNumber() ?? null,
        breakEvenRatioWith: deal.breakEvenRatio?.toNumber() ?? null,
      });
    }
  }
  return { ladders: ladders.map((ladder, at) => compared(results.ladders[at] ?? ladder, ladder)), deals };
}

function compared(before: LadderResult, after: LadderResult): OfferOnLadder {
  return {
    accountId: before.accountId,
    itemId: before.itemId,
    contribution: before.contribution.toFixed(),
    contributionWith: after.contribution.toFixed(),
    rate: before.contributionRate?.toNumber() ?? null,
    rateWith: after.contributionRate?.toNumber() ?? null,
  };
}
