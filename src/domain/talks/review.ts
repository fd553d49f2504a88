// What is lost when the chain takes us off its shelves at its first look at them: the deal up to that week, with what
// the goods left on its shelves come to. Closed form, so that it can stand beside every step of the talks.
// Worked figure: 300 down a door and 9.60 a store and week are 249.60 back after 26 weeks: 50.40 a door are lost.

import { type StoreWeeks, storeWeeks, unitsByWeek } from '../deals/store-weeks.ts';
import { wayOutPerUnit } from '../deals/unit-money.ts';
import type { LadderResult } from '../ladder/types.ts';
import { numberOf } from '../money/decimal.ts';
import type { Account, Item, Listing, Plan } from '../plan/index.ts';
import { fine, type Outcome } from '../problems.ts';
import { aheadWeeks, fillPerDoor, freePerDoor, multipleOf } from '../rollout/cells.ts';
import { type OneDeal, oneDeal } from './run.ts';

export interface ReviewLoss {
  /** In the plan's currency; negative is a loss. The deal's cumulated level at the review, and the goods left. */
  amount: number;
  /** Contribution less fixed money up to the review. */
  dealAmount: number;
  /** What goods left on shelves bring or cost; 0 where the chain keeps and pays them. */
  goodsLeftAmount: number;
  goodsLeftUnits: number;
  /** Week of the plan in which the shelf is lost, and weeks after the first opening. */
  week: number;
  reviewWeeks: number;
}

/** `reviewWeeks` from 1 on, counted from the account's first opening. An account without doors loses nothing. */
export function droppedAtReview(plan: Plan, accountId: string, reviewWeeks: number): Outcome<ReviewLoss> {
  const now = oneDeal(plan, accountId);
  return now.ok ? fine(droppedAfter(now.value, reviewWeeks)) : now;
}

/** The same for a deal already worked out. */
export function droppedAfter(now: OneDeal, reviewWeeks: number): ReviewLoss {
  return lossByWeeks(now)(reviewWeeks);
}

/**
 * The loss by the weeks after which the shelf is lost. Up to that week nothing in a deal depends on what would have come
 * after it, so its curve up to there is that of a deal cut then.
 */
export function lossByWeeks(now: OneDeal): (reviewWeeks: number) => ReviewLoss {
  const { account, deal, minorDigits } = now;
  const stores = storeWeeks(account);
  const shelves = shelvesOf(now, stores);
  return (reviewWeeks) => {
    const week = Math.min(account.cutWeek ?? Number.POSITIVE_INFINITY, stores.firstWeek + reviewWeeks);
    const weeks = Math.max(0, week - stores.firstWeek);
    const dealAmount = (deal.cumulated[Math.min(weeks, deal.termWeeks) - 1] ?? 0) / 10 ** minorDigits;
    const left = goodsLeft(account, shelves, { weeks, doors: stores.open[weeks - 1] ?? 0 });
    return {
      amount: round(dealAmount + left.amount, minorDigits),
      dealAmount,
      goodsLeftAmount: round(left.amount, minorDigits),
      goodsLeftUnits: Math.round(left.units),
      week,
      reviewWeeks: weeks,
    };
  };
}

interface Shelf {
  listing: Listing;
  item: Item;
  ladder: LadderResult;
  units: Float64Array;
}

function shelvesOf({ plan, account, ladders }: OneDeal, stores: StoreWeeks): Shelf[] {
  return account.listings.flatMap((listing, index) => {
    const ladder = ladders[index];
    const item = plan.items.find(({ id }) => id === listing.itemId);
    if (!ladder || !item) return [];
    return [{ listing, item, ladder, units: unitsByWeek({ plan, account, listing, stores }) }];
  });
}

function goodsLeft(account: Account, shelves: readonly Shelf[], at: { weeks: number; doors: number }) {
  const { weeks, doors } = at;
  let amount = 0;
  let units = 0;
  for (const { listing, item, ladder, units: wantedByWeek } of shelves) {
    const left = unitsLeft({ account, listing, item, doors, wanted: wantedByWeek[weeks - 1] ?? 0 });
    const free = Math.min(left, doors * freePerDoor(account, listing, item));
    units += left;
    amount += worthLeft(account, { ladder, left, free });
  }
  return { amount, units };
}

/**
 * Units on the shelves when the last order has come in: the level that doors order up to (PASS.md), less what sells
 * while that order is on its way, at the rate of the last week, and less half a case a door, for orders are whole cases.
 * Orders that would arrive later are not placed.
 */
function unitsLeft(of: {
  account: Account;
  listing: Listing;
  item: Item;
  doors: number;
  wanted: number;
}): number {
  const { account, listing, item, doors, wanted } = of;
  const ahead = aheadWeeks(account, listing.coverWeeks);
  const onTheWay = wanted * (1 + account.terms.transitWeeks);
  const level = Math.max(doors * fillPerDoor(account, listing, item), wanted * ahead) - onTheWay;
  const multiple = multipleOf(account.ordering.orderIn, item);
  return Math.max(0, level - (doors * (multiple - 1)) / 2);
}

/**
 * The deal counts units scanned and, as fixed money, free ones. Units left were paid for by the chain beside that:
 * kept, their margin stands in no figure of the deal and is left out here too. Taken back, all of them are credited at
 * the invoice price, and landed cost and way out of the paid ones are lost; landed cost comes back where goods do.
 */
function worthLeft(account: Account, of: { ladder: LadderResult; left: number; free: number }): number {
  const { ladder, left, free } = of;
  const landed = numberOf(ladder.landed.unit);
  const back = account.closedStock === 'ours' ? landed * left : 0;
  if (account.sale.by === 'scan') return back - (landed + numberOf(wayOutPerUnit(ladder))) * (left - free);
  if (account.closedStock === 'kept') return 0;
  return numberOf(ladder.contribution) * (left - free) - numberOf(ladder.invoice) * left + back;
}

function round(amount: number, minorDigits: number): number {
  return Number(amount.toFixed(minorDigits)) + 0;
}
