/**
 * What the oracle is told: the plan, the ladder's unit prices, and from them the lists in file order that the weekly
 * pass walks: lines (an account's listed items), cohorts of doors, and cells (a listed item in a cohort).
 * Worked figure: a wave of 25 doors, 10 a week from week 4, is three cohorts of 10, 10 and 5 in weeks 4, 5 and 6.
 */
import type { LadderForPass } from '../../../src/domain/ladder/types.ts';
import type { Account, Item, Listing, Plan } from '../../../src/domain/plan/index.ts';
import { cohortsOf } from './cohorts.ts';
import { millionths, nearest, scaled } from './numbers.ts';

export interface OracleInput {
  plan: Plan;
  minorDigits: number;
  /** Per account and listing, in plan order. */
  forPass: readonly (readonly LadderForPass[])[];
  /** Per item, in plan order, on the 0.0001 grid. */
  landed: readonly { goods: number; freight: number }[];
}

export interface Line {
  accountAt: number;
  account: Account;
  listing: Listing;
  item: Item;
  itemAt: number;
  prices: LadderForPass;
  landedUnit: bigint;
}

export interface Cohort {
  accountAt: number;
  account: Account;
  openWeek: number;
  /** Doors that sell. */
  doorsAtOpening: number;
  /** Doors that list it, those where it isn't on the shelf too. */
  authorisedAtOpening: number;
  /** From these weeks on its doors are counted anew; the last of a week holds. */
  bases: { week: number; authorised: number; selling: number }[];
  /** Sells already on the first day. */
  isRunning: boolean;
  unitsPerDoor: number;
}

export interface Place {
  line: Line;
  cohort: Cohort;
}

export interface Facts extends OracleInput {
  lines: Line[];
  cohorts: Cohort[];
  /** Cells in file order: account, listing, cohort. */
  places: Place[];
}

export function factsOf(input: OracleInput): Facts {
  const { plan, forPass, landed } = input;
  const lines = plan.accounts.flatMap((account, accountAt) =>
    account.listings.map((listing, at): Line => {
      const itemAt = plan.items.findIndex(({ id }) => id === listing.itemId);
      const item = plan.items[itemAt];
      const prices = forPass[accountAt]?.[at];
      const cost = landed[itemAt];
      if (!item || !prices || !cost) throw new Error(`nothing known of ${account.id} / ${listing.itemId}`);
      return {
        accountAt,
        account,
        listing,
        item,
        itemAt,
        prices,
        landedUnit: BigInt(cost.goods + cost.freight),
      };
    }),
  );
  const cohorts = plan.accounts.flatMap(cohortsOf);
  const places = lines.flatMap((line) =>
    cohorts.filter((cohort) => cohort.accountAt === line.accountAt).map((cohort) => ({ line, cohort })),
  );
  return { ...input, lines, cohorts, places };
}

export { authorisedIn, doorsIn } from './cohorts.ts';

/** Whether a cohort of a wave ever opens. */
export function opens({ account, openWeek, isRunning }: Cohort): boolean {
  return !isRunning && (account.cutWeek === null || openWeek < account.cutWeek);
}

type Promotion = Account['promotions'][number];

export function isOnPromotion({ listing }: Line, { itemIds }: Promotion): boolean {
  return itemIds === null || itemIds.includes(listing.itemId);
}

/** depth x shelf price before tax x funded share, to 4 decimals: what a promotion takes of each unit of an item on it. */
export function promotionAmount(line: Line, promotion: Promotion): bigint {
  if (!isOnPromotion(line, promotion)) return 0n;
  const shelf = BigInt(line.prices.shelfBeforeTaxTenThousandths);
  const product = shelf * millionths(promotion.depthRate) * millionths(promotion.fundedShare);
  return nearest(product, 1_000_000_000_000n);
}

/** The invoice price of a week: lowered in the buying windows of off-invoice promotions, never below zero. */
export function invoicePrice(line: Line, week: number): bigint {
  let price = BigInt(line.prices.invoiceTenThousandths);
  for (const promotion of line.account.promotions) {
    if (promotion.fundedBy !== 'offInvoice') continue;
    const from = promotion.fromWeek - promotion.buyInWeeks;
    if (week >= from && week < promotion.fromWeek + promotion.weeks)
      price -= promotionAmount(line, promotion);
  }
  return price < 0n ? 0n : price;
}

/** A typed sum in minor units. */
export function sum(facts: Facts, text: string): bigint {
  return scaled(text, facts.minorDigits);
}
