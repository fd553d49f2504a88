// One chain's economics: what its doors bring, what it asks for before they do, when that is back, and the rate of sale
// at which it just is. Figures count units scanned from the account's first opening and run on past the plan's horizon.
// Worked figure: 60 doors at 6 a week and 0.63 a unit bring 3.78 a store and week, 11,793.60 in the first year; 250 down
// a door is 15,000, so the first year falls 3,206.40 short and the break-even rate is 6 x 15,000 / 11,793.60 = 7.631258.
import type { LadderResult } from '../ladder/types.ts';
import { Decimal, dec, round4, round6, ZERO } from '../money/decimal.ts';
import type { Account, Listing, Plan } from '../plan/index.ts';
import { breakEvenRate, breakEvenRatio, breakEvenShare, levels, paybackWeeks } from './curve.ts';
import { type FixedMoney, fixedMoney, freeUnitsPerDoor, paidFillPerDoor } from './fixed-money.ts';
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

/** One listing, with its units and money by week from the first opening. */
interface Line {
  listing: Listing;
  ladder: LadderResult;
  risk: Decimal;
  contribution: Decimal;
  takes: readonly DealTake[];
  units: Float64Array;
  firstYearUnits: Decimal;
  firstYearTaken: Decimal;
  /** Over the term, deal weeks counted. */
  termContribution: Decimal;
  firstYearContribution: Decimal;
}

export function dealFor(args: DealArgs): DealResult {
  const { account } = args;
  const { termWeeks } = account.deal;
  const stores = storeWeeks(account);
  const lines = account.listings.map((listing, index) => lineOf(args, listing, index, stores));
  const fixed = fixedMoney({ ...args, stores });
  const hurdle = dec(account.deal.hurdleAmount);
  const toEarnBack = sumTo(fixed.byWeek, termWeeks).plus(hurdle);
  const share = breakEvenShare(total(lines, 'termContribution'), toEarnBack);
  const perMinor = 10 ** args.minorDigits;
  const ends = levels({
    contribution: contributionByWeek(lines, stores, perMinor),
    fixed: fixed.byWeek.map((amount) => amount * perMinor),
    weeks: termWeeks,
  });
  const fixedAmount = fixed.lines.reduce((sum, { amount }) => sum.plus(amount), ZERO);
  const nothingDown = share !== null && toEarnBack.isZero();
  const items = lines.map((line, index) => dealItem({ args, line, index, lines, stores, fixed, share }));
  return {
    accountId: account.id,
    doors: stores.doors,
    items,
    contributionPerStoreWeek: items.reduce((sum, each) => sum.plus(each.contributionPerStoreWeek), ZERO),
    fixedLines: fixed.lines,
    fixedAmount,
    moneyDownPerDoor: stores.newDoors === 0 ? ZERO : round4(fixedAmount.div(stores.newDoors)),
    ...firstYear(lines, fixed),
    fillMargin: fillMargin(args, lines, stores),
    cumulated: Array.from(ends, (level) => Math.sign(level) * Math.round(Math.abs(level)) + 0),
    paybackWeeks: share === null ? null : paybackWeeks(ends, (fixed.byWeek[0] ?? 0) * perMinor),
    termWeeks,
    breakEvenRatio: share && breakEvenRatio(share),
    nothingDown,
  };
}

function lineOf(args: DealArgs, listing: Listing, index: number, stores: StoreWeeks): Line {
  const { plan, account } = args;
  const ladder = args.ladders[index];
  if (!ladder) throw new Error(`no ladder for listing ${index} of account ${account.id}`);
  const risk = riskPerUnit(account, ladder);
  const contribution = ladder.contribution.minus(risk);
  const takes = dealTakes(account, ladder);
  const units = unitsByWeek({ plan, account, listing, stores });
  const { firstWeek } = stores;
  const brought = (weeks: number) =>
    sumTo(units, weeks)
      .times(contribution)
      .minus(takenTo(units, takes, firstWeek, weeks));
  return {
    listing,
    ladder,
    risk,
    contribution,
    takes,
    units,
    firstYearUnits: sumTo(units, YEAR_WEEKS),
    firstYearTaken: takenTo(units, takes, firstWeek, YEAR_WEEKS),
    termContribution: brought(account.deal.termWeeks),
    firstYearContribution: brought(YEAR_WEEKS),
  };
}

function sumTo(byWeek: Float64Array, weeks: number): Decimal {
  return sumBetween(byWeek, 0, weeks);
}

function sumBetween(byWeek: Float64Array, from: number, until: number): Decimal {
  let sum = 0;
  for (let week = Math.max(0, from); week < until && week < byWeek.length; week++) sum += byWeek[week] ?? 0;
  return new Decimal(sum);
}

/** What scan-backs, bill-backs and promotions take in the first `weeks` weeks. */
function takenTo(units: Float64Array, takes: readonly DealTake[], firstWeek: number, weeks: number): Decimal {
  return takes.reduce((sum, { amount, fromWeek, untilWeek }) => {
    const until = Math.min(weeks, untilWeek - firstWeek);
    return sum.plus(sumBetween(units, fromWeek - firstWeek, until).times(amount));
  }, ZERO);
}

function contributionByWeek(lines: readonly Line[], stores: StoreWeeks, perMinor: number): Float64Array {
  const out = new Float64Array(stores.weeks);
  for (const { units, contribution, takes } of lines) {
    const each = contribution.toNumber() * perMinor;
    for (let week = 0; week < out.length; week++) out[week] = (out[week] ?? 0) + (units[week] ?? 0) * each;
    for (const take of takes) {
      const taken = take.amount.toNumber() * perMinor;
      const until = Math.min(out.length, take.untilWeek - stores.firstWeek);
      for (let week = Math.max(0, take.fromWeek - stores.firstWeek); week < until; week++) {
        out[week] = (out[week] ?? 0) - (units[week] ?? 0) * taken;
      }
    }
  }
  return out;
}

function total(
  lines: readonly Line[],
  key: 'termContribution' | 'firstYearContribution' | 'firstYearUnits',
): Decimal {
  return lines.reduce((sum, line) => sum.plus(line[key]), ZERO);
}

type FirstYear = Pick<DealResult, 'firstYearContribution' | 'firstYearAfterFixed' | 'fullyLoadedNetPerUnit'>;

function firstYear(lines: readonly Line[], fixed: FixedMoney): FirstYear {
  const contribution = total(lines, 'firstYearContribution');
  const putDown = sumTo(fixed.byWeek, YEAR_WEEKS);
  const units = total(lines, 'firstYearUnits');
  const net = lines.reduce(
    (sum, line) => sum.plus(line.ladder.net.times(line.firstYearUnits)).minus(line.firstYearTaken),
    ZERO,
  );
  return {
    firstYearContribution: round4(contribution),
    firstYearAfterFixed: round4(contribution.minus(putDown)),
    fullyLoadedNetPerUnit: units.lte(0) ? null : round4(net.minus(putDown).div(units)),
  };
}

function dealItem(from: {
  args: DealArgs;
  line: Line;
  index: number;
  lines: readonly Line[];
  stores: StoreWeeks;
  fixed: FixedMoney;
  share: Decimal | null;
}): DealItem {
  const { args, line, stores, share } = from;
  const { listing, ladder, contribution } = line;
  const rate = dec(listing.unitsPerStoreWeek);
  const allUnits = total(from.lines, 'firstYearUnits');
  const item = args.plan.items.find(({ id }) => id === listing.itemId);
  const opened = stores.newDoors === 0 ? 0 : sumTo(stores.openings, YEAR_WEEKS).toNumber();
  return {
    itemId: listing.itemId,
    unitsPerStoreWeek: rate,
    riskPerUnit: line.risk,
    contributionPerUnit: contribution,
    contributionPerStoreWeek: rate.times(contribution),
    firstYearUnits: round6(line.firstYearUnits),
    breakEvenUnitsPerStoreWeek: share && breakEvenRate(rate, share),
    retailer: retailerSide({
      listing,
      ladder,
      firstYearUnits: line.firstYearUnits,
      firstYearDoorWeeks: sumTo(stores.open, YEAR_WEEKS).toNumber(),
      freeUnits: item ? freeUnitsPerDoor(listing, item.caseUnits) * opened : 0,
      fixedKeptPerUnit: allUnits.lte(0) ? ZERO : sumTo(from.fixed.theirsByWeek, YEAR_WEEKS).div(allUnits),
      storeStockMean: args.storeStockMeans[from.index] ?? null,
    }),
  };
}

/** Under pay-on-scan the fill stays our stock, so there is no margin on it. */
function fillMargin(args: DealArgs, lines: readonly Line[], stores: StoreWeeks): Decimal {
  if (args.account.sale.by === 'scan') return ZERO;
  return lines.reduce((sum, { listing, ladder }) => {
    const item = args.plan.items.find(({ id }) => id === listing.itemId);
    const paid = item ? paidFillPerDoor(listing, item) * stores.newDoors : 0;
    return sum.plus(ladder.contribution.times(paid));
  }, ZERO);
}
