// The deal from the other side of the table: what a unit earns the retailer, what its shelf space earns, and how hard
// its stock works. Front margin is on the price it pays; all-in adds what it keeps of our money.
// Worked figure: it sells at 4.00 before tax what it buys at 2.60, so a unit earns 1.40; GMROI = 35 % / 65 % x turns.
// GMROI and turns as in Dunne & Lusch, Retailing, ch. 9: gross margin money, or units sold, over average stock.
import type { LadderResult } from '../ladder/types.ts';
import { type Decimal, numberOf, ZERO } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import type { Listing } from '../plan/index.ts';
import { nearest } from './curve.ts';
import { YEAR_WEEKS } from './store-weeks.ts';
import type { RetailerSide } from './types.ts';

export interface RetailerArgs {
  listing: Listing;
  ladder: LadderResult;
  /** Units this item scans in the first year, and door-weeks they were scanned in. */
  firstYearUnits: number;
  firstYearDoorWeeks: number;
  /** Free units the retailer gets in that year. */
  freeUnits: number;
  /** Fixed money it keeps in that year, per unit of any item. */
  fixedKeptPerUnit: number;
  /** Units in a store at a week-end of that year, on average; null while no door opens. */
  storeStockMean: number | null;
}

export function retailerSide(args: RetailerArgs): RetailerSide {
  const { listing, ladder } = args;
  const buying = buyingPrice(ladder);
  const pennyProfit = ladder.shelfBeforeTax.minus(buying);
  const perStoreWeek = pennyProfit.times(kept(listing.unitsPerStoreWeek));
  const prices = {
    shelf: ladder.forPass.shelfBeforeTaxTenThousandths / 10_000,
    buying: numberOf(buying),
    pennyProfit: numberOf(pennyProfit),
  };
  const allIn = prices.pennyProfit + keptPerUnit(args, prices.buying);
  const rateOfShelf = (money: number) => (prices.shelf > 0 ? nearest(money / prices.shelf, 6) : ZERO);
  return {
    buying,
    pennyProfit,
    pennyProfitAllIn: nearest(allIn, 4),
    frontMarginRate: rateOfShelf(prices.pennyProfit),
    allInMarginRate: rateOfShelf(allIn),
    perStoreWeek,
    perFacingWeek:
      listing.facings === 1 ? perStoreWeek : nearest(numberOf(perStoreWeek) / listing.facings, 4),
    ...stockWork(args, prices.buying, prices.pennyProfit),
    againstReplacedPerStoreWeek: againstReplaced(listing, perStoreWeek),
  };
}

/** Invoice price when it buys from us (a standing off-invoice stays with it), else what the last hand pays. */
export function buyingPrice(ladder: LadderResult): Decimal {
  const last = ladder.hands.at(-1);
  return ladder.hands.length > 1 && last ? last.buys : ladder.invoice;
}

function keptPerUnit(args: RetailerArgs, buying: number): number {
  const deductions = moneyKept(args.ladder);
  if (args.firstYearUnits <= 0) return deductions;
  return deductions + (buying * args.freeUnits) / args.firstYearUnits + args.fixedKeptPerUnit;
}

/** Deductions it keeps; the credit for goods it sends back is none. */
function moneyKept({ steps, forPass }: LadderResult): number {
  const isCredit = (id: string) =>
    forPass.charges.some((each) => each.id === id && each.charge.settles === 'returns');
  return steps.reduce((sum, { id, stage, owner, amount }) => {
    if (stage !== 'deduction' || owner !== 'theirs' || isCredit(id)) return sum;
    return sum + numberOf(amount);
  }, 0);
}

type StockWork = Pick<RetailerSide, 'averageStockPerStore' | 'turnsPerYear' | 'gmroi' | 'weeksOfSupply'>;

/** Sales and stock of the same 52 weeks, per open door: a ramp lowers both. */
function stockWork(args: RetailerArgs, buying: number, pennyProfit: number): StockWork {
  const { storeStockMean: stock, firstYearUnits, firstYearDoorWeeks } = args;
  if (stock === null || stock <= 0 || firstYearDoorWeeks <= 0 || firstYearUnits <= 0) {
    return { averageStockPerStore: null, turnsPerYear: null, gmroi: null, weeksOfSupply: null };
  }
  const weeklyUnits = firstYearUnits / firstYearDoorWeeks;
  const turns = (weeklyUnits * YEAR_WEEKS) / stock;
  return {
    averageStockPerStore: nearest(stock, 4),
    turnsPerYear: nearest(turns, 4),
    gmroi: buying > 0 ? nearest((pennyProfit / buying) * turns, 4) : null,
    weeksOfSupply: nearest(stock / weeklyUnits, 4),
  };
}

function againstReplaced(listing: Listing, perStoreWeek: Decimal): Decimal | null {
  const { replaces } = listing;
  if (!replaces) return null;
  const pennyProfit = kept(replaces.shelfBeforeTaxAmount).minus(kept(replaces.buyingAmount));
  return perStoreWeek.minus(pennyProfit.times(kept(replaces.unitsPerStoreWeek)));
}
