// The deal from the other side of the table: what a unit earns the retailer, what its shelf space earns, and how hard
// its stock works. Front margin is on the price it pays; all-in adds what it keeps of our money.
// Worked figure: it sells at 4.00 before tax what it buys at 2.60, so a unit earns 1.40; GMROI = 35 % / 65 % x turns.
// GMROI and turns as in Dunne & Lusch, Retailing, ch. 9: gross margin money, or units sold, over average stock.
import type { LadderResult } from '../ladder/types.ts';
import { type Decimal, dec, round4, round6, ZERO } from '../money/decimal.ts';
import type { Listing } from '../plan/index.ts';
import { YEAR_WEEKS } from './store-weeks.ts';
import type { RetailerSide } from './types.ts';

export interface RetailerArgs {
  listing: Listing;
  ladder: LadderResult;
  /** Units this item scans in the first year, and door-weeks they were scanned in. */
  firstYearUnits: Decimal;
  firstYearDoorWeeks: number;
  /** Free units the retailer gets in that year. */
  freeUnits: number;
  /** Fixed money it keeps in that year, per unit of any item. */
  fixedKeptPerUnit: Decimal;
  /** Units in a store at a week-end of that year, on average; null while no door opens. */
  storeStockMean: number | null;
}

export function retailerSide(args: RetailerArgs): RetailerSide {
  const { listing, ladder } = args;
  const shelf = ladder.shelfBeforeTax;
  const buying = buyingPrice(ladder);
  const pennyProfit = shelf.minus(buying);
  const pennyProfitAllIn = pennyProfit.plus(keptPerUnit(args, buying));
  const perStoreWeek = pennyProfit.times(listing.unitsPerStoreWeek);
  const rateOfShelf = (money: Decimal) => (shelf.isZero() ? ZERO : round6(money.div(shelf)));
  return {
    buying,
    pennyProfit,
    pennyProfitAllIn,
    frontMarginRate: rateOfShelf(pennyProfit),
    allInMarginRate: rateOfShelf(pennyProfitAllIn),
    perStoreWeek,
    perFacingWeek: round4(perStoreWeek.div(listing.facings)),
    ...stockWork(args, buying, pennyProfit),
    againstReplacedPerStoreWeek: againstReplaced(listing, perStoreWeek),
  };
}

/** Invoice price when it buys from us (a standing off-invoice stays with it), else what the last hand pays. */
export function buyingPrice(ladder: LadderResult): Decimal {
  const last = ladder.hands.at(-1);
  return ladder.hands.length > 1 && last ? last.buys : ladder.invoice;
}

function keptPerUnit(args: RetailerArgs, buying: Decimal): Decimal {
  const deductions = moneyKept(args.ladder);
  if (args.firstYearUnits.lte(0)) return deductions;
  const freeGoods = buying.times(args.freeUnits).div(args.firstYearUnits);
  return round4(deductions.plus(freeGoods).plus(args.fixedKeptPerUnit));
}

/** Deductions it keeps; the credit for goods it sends back is none. */
function moneyKept({ steps, forPass }: LadderResult): Decimal {
  const credits = forPass.charges.filter(({ charge }) => charge.settles === 'returns').map(({ id }) => id);
  return steps
    .filter(({ id, stage, owner }) => stage === 'deduction' && owner === 'theirs' && !credits.includes(id))
    .reduce((sum, { amount }) => sum.plus(amount), ZERO);
}

type StockWork = Pick<RetailerSide, 'averageStockPerStore' | 'turnsPerYear' | 'gmroi' | 'weeksOfSupply'>;

/** Sales and stock of the same 52 weeks, per open door: a ramp lowers both. */
function stockWork(args: RetailerArgs, buying: Decimal, pennyProfit: Decimal): StockWork {
  const { storeStockMean, firstYearUnits, firstYearDoorWeeks } = args;
  if (storeStockMean === null || storeStockMean <= 0 || firstYearDoorWeeks <= 0 || firstYearUnits.lte(0)) {
    return { averageStockPerStore: null, turnsPerYear: null, gmroi: null, weeksOfSupply: null };
  }
  const stock = dec(storeStockMean);
  const yearlyUnits = firstYearUnits.times(YEAR_WEEKS).div(firstYearDoorWeeks);
  return {
    averageStockPerStore: round4(stock),
    turnsPerYear: round4(yearlyUnits.div(stock)),
    gmroi: buying.lte(0) ? null : round4(pennyProfit.times(yearlyUnits).div(stock.times(buying))),
    weeksOfSupply: round4(stock.times(YEAR_WEEKS).div(yearlyUnits)),
  };
}

function againstReplaced(listing: Listing, perStoreWeek: Decimal): Decimal | null {
  const { replaces } = listing;
  if (!replaces) return null;
  const pennyProfit = dec(replaces.shelfBeforeTaxAmount).minus(replaces.buyingAmount);
  return perStoreWeek.minus(pennyProfit.times(replaces.unitsPerStoreWeek));
}
