// What one account's deal comes to: per unit, per store per week, per year, money down, payback, break-even, and the
// retailer's side. Deal figures count units scanned with supply and shelf not binding (the weekly pass has those).
import type { Decimal } from '../money/decimal.ts';

export interface DealItem {
  itemId: string;
  unitsPerStoreWeek: Decimal;
  /**
   * What the way of sale costs beside the ladder, per unit scanned: bad debts, deductions not owed and not won back,
   * unsold goods coming back, shrink. Charges for short deliveries are not in it: a deal counts demand as served.
   */
  riskPerUnit: Decimal;
  /** Drops and pallets per unit, at the full rate of sale with all doors open (delivery.ts). */
  deliveryPerUnit: Decimal;
  /** The ladder's contribution in a week without deals, less `riskPerUnit` and `deliveryPerUnit`. */
  contributionPerUnit: Decimal;
  contributionPerStoreWeek: Decimal;
  /** Units scanned in the first 52 weeks from the account's first opening. */
  firstYearUnits: Decimal;
  /** The smallest mature rate at which the term pays (6 decimals, rounded up), or null when none does. */
  breakEvenUnitsPerStoreWeek: Decimal | null;
  retailer: RetailerSide;
}

export interface RetailerSide {
  /** What the last hand pays for a unit: its invoice price from us, or the price of the hand before it. */
  buying: Decimal;
  pennyProfit: Decimal;
  /** With what the retailer keeps of our allowances, fixed money and free goods. */
  pennyProfitAllIn: Decimal;
  frontMarginRate: Decimal;
  allInMarginRate: Decimal;
  perStoreWeek: Decimal;
  perFacingWeek: Decimal;
  /** The next four are null while no door opens, or nothing stands on a shelf. */
  averageStockPerStore: Decimal | null;
  turnsPerYear: Decimal | null;
  /** Also null when the goods cost the retailer nothing. */
  gmroi: Decimal | null;
  weeksOfSupply: Decimal | null;
  /** Ours less theirs, per store per week; null when the replaced item isn't known. */
  againstReplacedPerStoreWeek: Decimal | null;
}

export interface FixedLine {
  id: string;
  label: string;
  amount: Decimal;
  reason: string;
  owner: 'theirs' | 'between' | 'atRisk';
}

export interface DealResult {
  accountId: string;
  /** Doors the deal opens; of an account that opens none, the doors already running. */
  doors: number;
  items: readonly DealItem[];
  contributionPerStoreWeek: Decimal;
  fixedLines: readonly FixedLine[];
  fixedAmount: Decimal;
  moneyDownPerDoor: Decimal;
  firstYearContribution: Decimal;
  /** First-year contribution less the fixed money put down within that year. */
  firstYearAfterFixed: Decimal;
  /** Net price of the first year's units, deal weeks counted, less that year's fixed money; null without units. */
  fullyLoadedNetPerUnit: Decimal | null;
  /** Margin on the paid part of the opening fill, a line of its own, in none of the other figures. */
  fillMargin: Decimal;
  /** Contribution less fixed money at each week-end of the term, from the first opening, in whole minor units. */
  cumulated: readonly number[];
  /** Weeks after the first opening (interpolated, 4 decimals), or null: not within the term. */
  paybackWeeks: Decimal | null;
  termWeeks: number;
  /** Planned mature rate / break-even rate, the same for every item (6 decimals, rounded down); null when nothing
   * breaks even, or when there is nothing to break even with. */
  breakEvenRatio: Decimal | null;
  /** True when no money and no hurdle is to be earned back and the units contribute: pays from the first unit. */
  nothingDown: boolean;
}
