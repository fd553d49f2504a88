// How an item is bought, as the weekly pass wants it: its suppliers, prices by quantity, hours on a line, rush orders; and
// how long it keeps. Unit prices are 1/10,000, rates millionths, quantities whole units, hours seconds.
// Worked figure: 40 hours x 2 shifts are 288,000 seconds a week.

/** One supplier's terms. The first one's goods price goes by the order (`prices`). */
export interface SupplierTerms {
  leadWeeks: number;
  minimumOrderUnits: number;
  batchUnits: number;
  /** Most units that can land in a week; weeks past its end have its last. Infinity without a lid. */
  capacity: Float64Array;
  goods: number;
  freight: number;
  depositRate: number;
  supplierWeeks: number;
}

/** What a unit costs from so many units an order on, before and after the shock. */
export interface GoodsPrice {
  fromUnits: number;
  goods: number;
  shocked: number;
}

export interface RushTerms {
  leadWeeks: number;
  /** On top of the goods and freight price. */
  extra: number;
  /** Whole cases; Infinity without a lid. */
  mostUnits: number;
}

export interface BuyingTerms {
  /** The first supplier, then the further ones in their order. */
  suppliers: SupplierTerms[];
  /** By `fromUnits`, the lowest (0) first. */
  prices: GoodsPrice[];
  /** Orders placed from then on cost the shocked price; Infinity without a shock. */
  shockFromWeek: number;
  /** The hours it lands out of (a place in `Compiled.hours`) and good units an hour. */
  line: { hours: number; unitsPerHour: number } | null;
  rush: RushTerms | null;
}

/** Weeks a unit keeps after it landed, and the least left when it reaches a store or depot. */
export interface ShelfLife {
  weeks: number;
  least: number;
}
