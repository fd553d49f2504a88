// The plan as the weekly pass wants it: flat numbers and typed arrays, no text, no decimals, nothing to look up by
// name. Made once per plan by compile.ts; the pass and the solves run on it. Money is minor units, unit prices 1/10,000,
// rates millionths, quantities whole units. A "cell" is one listed item in one cohort of doors.
import type { Charge } from '../allowances/contract.ts';
import type { Funding } from '../funding/index.ts';
import type { Cell, CellDemand, Cohort, CompiledDepot, HotCells } from './compiled-cells.ts';
import type { BuyingTerms, ShelfLife } from './compiled-supply.ts';

export type { Cell, CellDemand, Cohort, CompiledDepot, HotCells } from './compiled-cells.ts';

export interface CompiledItem {
  caseUnits: number;
  palletUnits: number;
  landed: number;
  coverWeeks: number;
  /** No purchase order goes out before this week: 0, but in a what-if. */
  ordersFrom: number;
  buying: BuyingTerms;
  /** Null for what keeps as long as it has to. */
  shelfLife: ShelfLife | null;
  openingUnits: number;
  openingStock: number;
  onOrder: { week: number; units: number; deposit: number }[];
  removals: { week: number; units: number; writeOff: boolean }[];
  /** Its listings in shipping order: priority of the account, then file order. */
  byPriority: number[];
  /** Cells whose fill is ordered at the end of week w, at [w + 1], in shipping order. */
  fillsByWeek: number[][];
}

type Of<K extends Charge['settles']> = Extract<Charge, { settles: K }>;

export interface CompiledListing {
  account: number;
  item: number;
  /** Invoice price by week, lowered in off-invoice buying windows. */
  invoicePrice: Float64Array;
  firstHandSells: number;
  deductions: number[];
  claims: Of<'claim'>[];
  monthly: Of<'monthly' | 'quarterly'>[];
  quarterly: Of<'monthly' | 'quarterly'>[];
  freightOut: number;
  pickAndPack: number;
  returns: Of<'returns'> | null;
  /** Where its stores are served from; null: from us. */
  depot: CompiledDepot | null;
}

/** What an account adds to its terms (PASS.md, "Beside the terms"); each null where it has none of it. */
export interface CompiledConduct {
  /** Most it may owe, minor units; null for goods on scan too. */
  creditLimit: number | null;
  service: { leastFillRate: number; chargeRate: number; lagWeeks: number } | null;
  /** Sums in 1/10,000; null also where the buyer picks up. To a depot all of a week is one drop. */
  delivery: { perDrop: number; perPallet: number; toDepot: boolean } | null;
}

/** Cash or claim the account is due on a fixed week. */
export interface DatedSum {
  week: number;
  amount: number;
}

export interface CompiledAccount {
  collectWeeks: number;
  discount: { rate: number; takenShare: number; collectWeeks: number } | null;
  badDebtRate: number;
  /** From this week on it pays nothing more: never, but in a what-if. */
  failsWeek: number;
  /** Rates in millionths; null where it deducts only what is owed. */
  disputed: { wrongRate: number; recoveredShare: number; recoveryWeeks: number } | null;
  /** Null for most accounts: then nothing of it is looked at. */
  conduct: CompiledConduct | null;
  cancels: boolean;
  closedStock: 'kept' | 'credited' | 'ours';
  sale: 'shipment' | 'guaranteed' | 'scan';
  expectedReturnRate: number;
  reviewWeeks: number;
  resaleableShare: number;
  shrinkRate: number;
  /** Of the invoice value of what stands in closed doors and is kept there. */
  exitMarkdownRate: number;
  /** Stores order at the end of weeks so far apart, from this one on. */
  firstOrderWeek: number;
  orderEveryWeeks: number;
  billBack: { lagWeeks: number } | null;
  listings: number[];
  cells: number[];
  cohorts: number[];
  slottingCash: DatedSum[];
  slottingClaims: DatedSum[];
  openingFees: DatedSum[];
  /** Paid when built, expensed at opening. */
  displayPaid: DatedSum[];
  displayOpened: DatedSum[];
  displayFees: Float64Array;
  /** Whether it asks for any of these sums: most weeks of most plans pay none. */
  hasFixedSums: boolean;
}

/** The opening books but for cash; what they leave over is retained. */
export interface OpeningBalances {
  receivables: number;
  stock: number;
  deposits: number;
  equipment: number;
  payables: number;
  accrued: number;
  loans: number;
  paidInAmount: number;
}

export interface CompiledBusiness {
  openingCash: number;
  opening: OpeningBalances;
  receivables: DatedSum[];
  payables: DatedSum[];
  accrued: DatedSum[];
  /** Straight-line depreciation: amount, life, first week. */
  fixtures: { amount: number; lifeWeeks: number; week: number }[];
  capital: DatedSum[];
  overhead: Float64Array;
  base: { revenue: number; cost: number; collectWeeks: number; payWeeks: number } | null;
  funding: Funding[];
  openingLoans: LoanTerms[];
  vat: { sales: number; purchases: number } | null;
}

export interface LoanTerms {
  week: number;
  amount: number;
  fee: number;
  yearlyRate: number;
  interestOnlyMonths: number;
  principalMonths: number;
}

export interface Compiled {
  weeks: number;
  /** Weeks the unlimited pass runs: the horizon plus the longest lead and cover. */
  reach: number;
  minorDigits: number;
  perMinor: number;
  startDay: number;
  months: Int32Array;
  quarters: Int32Array;
  items: CompiledItem[];
  /** Seconds by week that items' goods can land out of: lines' common hours, and fixed shares of them. */
  hours: Float64Array[];
  accounts: CompiledAccount[];
  listings: CompiledListing[];
  cohorts: Cohort[];
  cells: Cell[];
  depots: CompiledDepot[];
  /** What the inner loops read, an array a quantity. */
  hot: HotCells;
  /** What demand and order-up-to levels are worked out from, by cell (wants.ts). */
  demand: CellDemand[];
  /** By week: cells whose doors close then, or whose guarantee is reviewed, in file order. */
  closings: number[][];
  business: CompiledBusiness;
}
