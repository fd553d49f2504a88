// The store side of a compiled plan: cohorts of doors, cells (one listed item in one cohort), depots, and what the inner
// loops read of them, an array a quantity. Worked figure: 288 cells and 2 depots make arrays of 290 places.

/** A listing's stock in its account's depot. */
export interface CompiledDepot {
  listing: number;
  account: number;
  item: number;
  /** Among the depots, and among the series of the cells: after all of them. */
  index: number;
  place: number;
  /** From us to it. */
  transitWeeks: number;
  /** Units its orders come in multiples of. */
  multiple: number;
  minimumOrderUnits: number;
  openingStock: number;
  /** The first week without a door, now or later; Infinity when there is none. */
  endWeek: number;
  /** By week, to the reach: units it needs to have or to have ordered; −1 where it orders nothing. */
  need: Float64Array;
  /** By week: free units of fills that it first orders for then. */
  free: Float64Array;
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

/** Cells as arrays: one a quantity, by cell. Cells of one listing stand side by side. */
export interface HotCells {
  /** Cells, and places of all arrays: a depot has one after the cells, so that its orders are shipped as theirs are. */
  count: number;
  places: number;
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
