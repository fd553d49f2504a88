// One chain's economics: what its doors bring, what it asks for before they do, when that is back, and the rate of sale
// at which it just is. Figures count units scanned from the account's first opening and run on past the plan's horizon.
// Worked figure: 60 doors at 6 a week and 0.63 a unit bring 3.78 a store and week, 11,793.60 in the first year; 250 down
// a door is 15,000, so the first year falls 3,206.40 short and the break-even rate is 6 x 15,000 / 11,793.60 = 7.631258.
import type { LadderResult } from '../ladder/types.ts';
import { type Decimal, numberOf, ZERO } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import type { Account, Listing, Plan } from '../plan/index.ts';
import { freePerDoor } from '../rollout/cells.ts';
import { breakEvenRate, breakEvenRatio, breakEvenShare, levels, nearest, paybackWeeks } from './curve.ts';
import { deliveryPerUnit } from './delivery.ts';
import { type FixedMoney, fixedMoney, paidFillPerDoor } from './fixed-money.ts';
import { retailerSide } from './retailer.ts';
import { type StoreWeeks, storeWeeks, unitsByWeek, YEAR_WEEKS } from './store-weeks.ts';
import type { DealItem, DealResult } from './types.ts';
import { type DealTake, dealTakes, riskPerUnit } from './unit-money.ts';

export interface DealArgs {
  plan: Plan;
  account: Account;
  /** This account's, in listing order. */
  ladders: readonly LadderResult[];
  /** By listing: mean units per open door at the first 52 week-ends without supply limits; null if no door opens. */
  storeStockMeans: readonly (number | null)[];
  /** Digits of the currency's minor unit (ISO 4217). */
  minorDigits: number;
}

/** One listing, with its units and money by week from the first opening; sums are doubles, in the plan's currency. */
interface Line {
  listing: Listing;
  ladder: LadderResult;
  risk: Decimal;
  delivery: Decimal;
  contribution: Decimal;
  units: Float64Array;
  /** What deals take of this listing; null: nothing. */
  taken: Float64Array | null;
  firstYearUnits: number;
}

export function dealFor(args: DealArgs): DealResult {
  const { account } = args;
  const { termWeeks } = account.deal;
  const stores = storeWeeks(account);
  const lines = account.listings.map((listing, index) => lineOf(args, listing, index, stores));
  const fixed = fixedMoney({ ...args, stores });
  const contributed = contributedByWeek(lines, stores.weeks);
  const toEarnBack = sumTo(fixed.byWeek, termWeeks) + Number(account.deal.hurdleAmount);
  const share = breakEvenShare(sumTo(contributed, termWeeks), toEarnBack);
  const ends = levels({ contribution: contributed, fixed: fixed.byWeek, weeks: termWeeks });
  const fixedAmount = fixed.lines.reduce((sum, { amount }) => sum.plus(amount), ZERO);
  const year = yearOf(lines, fixed, stores);
  const items = lines.map((line, index) => dealItem({ args, line, index, year, share }));
  const perMinor = 10 ** args.minorDigits;
  return {
    accountId: account.id,
    doors: stores.doors,
    items,
    contributionPerStoreWeek: items.reduce((sum, each) => sum.plus(each.contributionPerStoreWeek), ZERO),
    fixedLines: fixed.lines,
    fixedAmount,
    moneyDownPerDoor: stores.newDoors === 0 ? ZERO : nearest(numberOf(fixedAmount) / stores.newDoors, 4),
    ...firstYear(lines, year, contributed),
    fillMargin: fillMargin(args, lines, stores),
    cumulated: Array.from(ends, (level) => Math.sign(level) * Math.round(Math.abs(level) * perMinor) + 0),
    paybackWeeks: share === null ? null : paybackWeeks(ends, fixed.byWeek[0] ?? 0),
    termWeeks,
    breakEvenRatio: share === null ? null : breakEvenRatio(share),
    nothingDown: share !== null && toEarnBack === 0,
  };
}

function lineOf(args: DealArgs, listing: Listing, index: number, stores: StoreWeeks): Line {
  const { plan, account } = args;
  const ladder = args.ladders[index];
  if (!ladder) throw new Error(`no ladder for listing ${index} of account ${account.id}`);
  const risk = riskPerUnit(account, ladder);
  const delivery = deliveryPerUnit({ plan, account, stores });
  const contribution = ladder.contribution.minus(risk).minus(delivery);
  const units = unitsByWeek({ plan, account, listing, stores });
  const taken = takenByWeek(units, dealTakes(account, ladder), stores);
  return {
    listing,
    ladder,
    risk,
    delivery,
    contribution,
    units,
    taken,
    firstYearUnits: sumTo(units, YEAR_WEEKS),
  };
}

/** What scan-backs, bill-backs and promotions take, by week from the first opening; null without any. */
function takenByWeek(
  units: Float64Array,
  takes: readonly DealTake[],
  stores: StoreWeeks,
): Float64Array | null {
  if (takes.length === 0) return null;
  const taken = new Float64Array(units.length);
  for (const { amount, fromWeek, untilWeek } of takes) {
    const until = Math.min(units.length, untilWeek - stores.firstWeek);
    for (let week = Math.max(0, fromWeek - stores.firstWeek); week < until; week++) {
      taken[week] = (taken[week] ?? 0) + (units[week] ?? 0) * amount;
    }
  }
  return taken;
}

/** Contribution of all lines together. */
function contributedByWeek(lines: readonly Line[], weeks: number): Float64Array {
  const sum = new Float64Array(weeks);
  for (const { units, taken, contribution } of lines) {
    const each = numberOf(contribution);
    for (let week = 0; week < weeks; week++) {
      const own = (units[week] ?? 0) * each - (taken ? (taken[week] ?? 0) : 0);
      sum[week] = (sum[week] ?? 0) + own;
    }
  }
  return sum;
}

function sumTo(byWeek: Float64Array, weeks: number): number {
  let sum = 0;
  for (let week = 0; week < weeks && week < byWeek.length; week++) sum += byWeek[week] ?? 0;
  return sum;
}

/** Sums of the first year that every item's figures use. */
interface Year {
  units: number;
  doorWeeks: number;
  doorsFilled: number;
  putDown: number;
  keptByRetailer: number;
}

function yearOf(lines: readonly Line[], fixed: FixedMoney, stores: StoreWeeks): Year {
  return {
    units: lines.reduce((sum, { firstYearUnits }) => sum + firstYearUnits, 0),
    doorWeeks: sumTo(stores.open, YEAR_WEEKS),
    doorsFilled: sumTo(stores.fillings, YEAR_WEEKS),
    putDown: sumTo(fixed.byWeek, YEAR_WEEKS),
    keptByRetailer: sumTo(fixed.theirsByWeek, YEAR_WEEKS),
  };
}

type FirstYear = Pick<DealResult, 'firstYearContribution' | 'firstYearAfterFixed' | 'fullyLoadedNetPerUnit'>;

function firstYear(lines: readonly Line[], year: Year, contributed: Float64Array): FirstYear {
  const contribution = sumTo(contributed, YEAR_WEEKS);
  const net = lines.reduce(
    (sum, { ladder, firstYearUnits, taken }) =>
      sum + numberOf(ladder.net) * firstYearUnits - (taken ? sumTo(taken, YEAR_WEEKS) : 0),
    0,
  );
  return {
    firstYearContribution: nearest(contribution, 4),
    firstYearAfterFixed: nearest(contribution - year.putDown, 4),
    fullyLoadedNetPerUnit: year.units > 0 ? nearest((net - year.putDown) / year.units, 4) : null,
  };
}

function dealItem(from: {
  args: DealArgs;
  line: Line;
  index: number;
  year: Year;
  share: number | null;
}): DealItem {
  const { args, line, year, share } = from;
  const { listing, ladder, contribution } = line;
  const rate = kept(listing.unitsPerStoreWeek);
  const item = args.plan.items.find(({ id }) => id === listing.itemId);
  return {
    itemId: listing.itemId,
    unitsPerStoreWeek: rate,
    riskPerUnit: line.risk,
    deliveryPerUnit: line.delivery,
    contributionPerUnit: contribution,
    contributionPerStoreWeek: rate.times(contribution),
    firstYearUnits: nearest(line.firstYearUnits, 6),
    breakEvenUnitsPerStoreWeek:
      share === null ? null : breakEvenRate(Number(listing.unitsPerStoreWeek), share),
    retailer: retailerSide({
      listing,
      ladder,
      firstYearUnits: line.firstYearUnits,
      firstYearDoorWeeks: year.doorWeeks,
      freeUnits: item ? freePerDoor(args.account, listing, item) * year.doorsFilled : 0,
      fixedKeptPerUnit: year.units > 0 ? year.keptByRetailer / year.units : 0,
      storeStockMean: args.storeStockMeans[from.index] ?? null,
    }),
  };
}

/** Under pay-on-scan the fill stays our stock, so there is no margin on it. */
function fillMargin(args: DealArgs, lines: readonly Line[], stores: StoreWeeks): Decimal {
  if (args.account.sale.by === 'scan') return ZERO;
  return lines.reduce((sum, { listing, ladder }) => {
    const item = args.plan.items.find(({ id }) => id === listing.itemId);
    const paid = item ? paidFillPerDoor(args.account, listing, item) * stores.filledDoors : 0;
    return sum.plus(ladder.contribution.times(paid));
  }, ZERO);
}
