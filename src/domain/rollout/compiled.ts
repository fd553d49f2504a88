// The plan as the weekly pass wants it: flat numbers and typed arrays, no text, no decimals, nothing to look up by
// name. Made once per plan by compile.ts; the pass and the solves run on it. Money is minor units, unit prices 1/10,000,
// rates millionths, quantities whole units. A "cell" is one listed item in one cohort of doors.
import type { Charge } from '../allowances/contract.ts';
import type { Funding } from '../funding/index.ts';
import type { BuyingTerms, ShelfLife } from './compiled-supply.ts';

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
}

export interface Cell {
  account: number;
  listing: number;
  item: number;
  cohort: number;
  /** Units its orders come in multiples of: a case, a layer or a pallet. */
  multiple: number;
  transitWeeks: number;
  /** Negative for doors already open at the start. */
  openWeek: number;
  /** Units of the opening fill (all its doors), 0 for doors already open. */
  fillUnits: number;
  /** Of those, units given free. */
  freeUnits: number;
  openingStock: number;
}

export interface Cohort {
  account: number;
  openWeek: number;
  /** Doors that sell, at the opening and by week, to the compiled reach and past it by the longest way to a shelf. */
  doorsAtOpening: number;
  doors: Int32Array;
  /** Doors that list it, some of which may never have it on the shelf. */
  authorisedAtOpening: number;
  authorised: Int32Array;
  /** Weeks within the reach in which doors close, in order: most cohorts have none or few. */
  closingWeeks: number[];
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

/** Cells as arrays: one a quantity, by cell. Cells of one listing stand side by side. */
export interface HotCells {
  count: number;
  account: Int32Array;
  listing: Int32Array;
  item: Int32Array;
  multiple: Int32Array;
  transitWeeks: Int32Array;
  openWeek: Int32Array;
  /** First cell of each listing, and one place more. */
  firstOfListing: Int32Array;
  /** True when some cell has no transit: its deliveries arrive right after shipping. */
  someWithoutTransit: boolean;
  longestTransit: number;
  /** The longest any listing's returns look back at what was delivered; 0 without returns. */
  longestReturnLag: number;
  /** Doors of all cohorts, one after the other, `doorsKnown` weeks each; where each cell's cohort begins. */
  doors: Int32Array;
  doorsKnown: number;
  doorsFrom: Int32Array;
}

/** What one cell's demand is made of. */
export interface CellDemand {
  cohort: Cohort;
  /** Units a store and week, mature. */
  rate: number;
  startRate: number;
  rampWeeks: number;
  displayFactor: number;
  displayWeeks: number;
  /** By age, where the lift of the display changes. */
  displayByAge: Float64Array | null;
  /** By week of the plan; null when there are none. */
  season: Float64Array | null;
  promotion: Float64Array | null;
  /** Weeks an order looks ahead. */
  aheadWeeks: number;
  fillPerDoorUnits: number;
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
  /** What the inner loops read, an array a quantity. */
  hot: HotCells;
  /** What demand and order-up-to levels are worked out from, by cell (wants.ts). */
  demand: CellDemand[];
  /** By week: cells whose doors close then, or whose guarantee is reviewed, in file order. */
  closings: number[][];
  business: CompiledBusiness;
}
