// What varies from draw to draw, and how far, read off a plan once: tables by a normal score, so that a draw costs a few
// look-ups. With every spread 0 and doors as planned nothing varies, and each draw is the plan.
// Worked figure: a spread of 0.3 and a score of 1 sell e^0.3 = 1.35 times the plan's rate; a score of 0 sells the plan's.
import type { Account, Plan } from '../../plan/index.ts';
import type { RateOfSale } from '../rate-of-sale.ts';
import { chanceOf, slipShares } from '../rungs.ts';
import { scoreBelow } from '../score.ts';
import { believedTable, spreadTable } from './score-table.ts';
import { USUAL_RATE_SPREAD } from './usual.ts';

export interface Varies {
  /** Parts of a score that all accounts share and that are each one's own: squares add up to 1. */
  shared: number;
  own: number;
  ramp: number;
  goods: number;
  accounts: VaryingAccount[];
  /** By listing, in plan order. */
  listings: VaryingListing[];
  items: number;
  /** The longest slip of any account. */
  longestSlip: number;
}

export interface VaryingAccount {
  id: string;
  /** Opens where its score is above this: -Infinity always, Infinity never. */
  opensAbove: number;
  /** Slips so many weeks as scores that its own is above. */
  slipAbove: number[];
  paymentDays: number;
  latenessDays: number;
  latenessSpread: number;
  deductionsSpread: number;
  voidRate: number;
  voidSpread: number;
  /** Doors its waves open. */
  doors: number;
}

export interface VaryingListing {
  account: number;
  item: number;
  /** Times the plan's rate, by score (score-table.ts). */
  rate: Float64Array;
  /** True where it is one unknown for all accounts, since scans speak for all stores alike. */
  isCommon: boolean;
  /** Beside that, how far the mean of this account's own stores lies from all stores': spread of the logarithm. */
  ownSpread: number;
}

/** `rates`: what scans say, by item; null where an item has none. */
export function whatVaries(plan: Plan, rates: readonly (RateOfSale | null)[]): Varies {
  const { spreads } = plan.promise;
  const sharedRate = Number(spreads.sharedRate);
  const accounts = plan.accounts.map((account) => varyingAccount(plan, account));
  return {
    shared: Math.sqrt(sharedRate),
    own: Math.sqrt(1 - sharedRate),
    ramp: Number(spreads.rampRate),
    goods: Number(spreads.goodsRate),
    accounts,
    listings: plan.accounts.flatMap((account, a) => varyingListings(plan, account, a, rates)),
    items: plan.items.length,
    longestSlip: accounts.reduce((most, { slipAbove }) => Math.max(most, slipAbove.length), 0),
  };
}

function varyingAccount({ promise: { spreads } }: Plan, account: Account): VaryingAccount {
  const asStanding = spreads.doors === 'asStanding';
  return {
    id: account.id,
    opensAbove: asStanding ? scoreBelow(1 - chanceOf(account)) : Number.NEGATIVE_INFINITY,
    slipAbove: asStanding ? slipScores(slipShares(account)) : [],
    paymentDays: account.terms.paymentDays,
    latenessDays: account.terms.latenessDays,
    latenessSpread: spreads.latenessDays,
    deductionsSpread: Number(spreads.deductionsRate),
    voidRate: Number(account.voidRate),
    voidSpread: Number(spreads.voidRate),
    doors: account.waves.reduce((sum, { doors }) => sum + doors, 0),
  };
}

/** The scores above which the slip is 1, 2, 3 ... weeks. */
function slipScores(shares: readonly number[]): number[] {
  let below = 0;
  return shares.slice(0, -1).map((share) => {
    below += share;
    return scoreBelow(below);
  });
}

function varyingListings(
  plan: Plan,
  account: Account,
  a: number,
  rates: readonly (RateOfSale | null)[],
): VaryingListing[] {
  const typed = plan.promise.spreads.rateOfSaleRate;
  const doors = account.waves.reduce((sum, wave) => sum + wave.doors, 0);
  return account.listings.map(({ itemId, unitsPerStoreWeek }) => {
    const item = plan.items.findIndex(({ id }) => id === itemId);
    const seen = rates[item] ?? null;
    if (typed !== null || seen === null) {
      const spread = typed === null ? USUAL_RATE_SPREAD : Number(typed);
      return { account: a, item, rate: spreadTable(spread), isCommon: false, ownSpread: 0 };
    }
    return {
      account: a,
      item,
      rate: believedTable(seen.weights, Number(unitsPerStoreWeek)),
      isCommon: true,
      ownSpread: Math.min(1, seen.storesDiffer / Math.sqrt(Math.max(1, doors))),
    };
  });
}
