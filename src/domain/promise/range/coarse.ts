// The plan as a draw runs it: per listing instead of per cell (doors already open in a row apart from those to come), in doubles, with everything that stays the same from draw
// to draw left out. A draw is never shown by itself: what is added to the plan's own exact cash is the difference that
// this coarser pass shows between the draw and the plan (RANGE.md), so that a draw without change is the plan to the cent.
// Worked figure: 12 listings over 104 weeks are 1,248 places a quantity.
import type { Compiled, CompiledAccount, CompiledListing } from '../../rollout/compiled.ts';
import { wantsOf } from '../../rollout/wants.ts';

/** Series are [row x weeks + week]; money is minor units, units are whole or not. */
export interface Coarse {
  weeks: number;
  accounts: number;
  rows: number;
  items: number;
  /** By row, rows of one item side by side in shipping order. */
  account: Int32Array;
  /** 1 for doors that sell already: no draw takes or delays them. */
  running: Uint8Array;
  itemFirst: Int32Array;
  demand: Float64Array;
  /** Demand that the ramp still withholds. */
  withheld: Float64Array;
  /** Fills that can ship in the week, and how much of them is free. */
  fill: Float64Array;
  fillFree: Float64Array;
  fillTarget: Float64Array;
  aheadTarget: Float64Array;
  /** What rounding to full cases a door leaves unordered. */
  slack: Float64Array;
  /** Share of the shelf that stays when doors close; 1 where none do. */
  stays: Float64Array;
  orders: Uint8Array;
  price: Float64Array;
  claimPerSold: Float64Array;
  openingShelf: Float64Array;
  caseUnits: Float64Array;
  transit: Int32Array;
  collect: Int32Array;
  collectEarly: Int32Array;
  claimLag: Int32Array;
  /** Of an invoice: what comes in late and early, what is deducted, what selling costs follow. */
  earlyShare: Float64Array;
  earlyKept: Float64Array;
  deducted: Float64Array;
  sellingShare: Float64Array;
  shipCost: Float64Array;
  returned: Float64Array;
  /** Guaranteed sale: share of what is shipped before the review that may come back then; the review's week, -1 for none. */
  held: Float64Array;
  review: Int32Array;
  onScan: Uint8Array;
  /** By account. */
  fixedOut: Float64Array;
  fixedClaims: Float64Array;
  doors: Float64Array;
  /** By item. */
  buys: CoarseItem[];
  /** Seconds by week that items of a line can land out of. */
  hours: readonly Float64Array[];
  longestTransit: number;
}

export interface CoarseItem {
  opening: number;
  /** Planned need of lead and cover weeks from each week on (U of the plan). */
  ahead: Float64Array;
  landing: Float64Array;
  onOrder: number;
  lead: number;
  line: { hours: number; unitsPerHour: number } | null;
  minimum: number;
  batch: number;
  capacity: Float64Array;
  goods: number;
  freight: number;
  depositRate: number;
  supplierWeeks: number;
}

/** Weeks until what is owed monthly or quarterly on an invoice is paid, in the middle. */
export const SELLING_LAG = 5;

interface Row {
  listing: number;
  running: boolean;
  cells: readonly number[];
}

export function coarseOf(compiled: Compiled, shippable: readonly Float64Array[]): Coarse {
  const { weeks, accounts, items } = compiled;
  const byItem = items.map(({ byPriority }) => byPriority.flatMap((listing) => rowsOf(compiled, listing)));
  const rows = byItem.flat();
  const count = rows.length;
  const series = () => new Float64Array(count * weeks);
  const each = () => new Float64Array(count);
  const weekOf = () => new Int32Array(count);
  const coarse: Coarse = {
    weeks,
    accounts: accounts.length,
    rows: count,
    items: items.length,
    account: weekOf(),
    running: Uint8Array.from(rows, ({ running }) => (running ? 1 : 0)),
    itemFirst: new Int32Array(items.length + 1),
    demand: series(),
    withheld: series(),
    fill: series(),
    fillFree: series(),
    fillTarget: series(),
    aheadTarget: series(),
    slack: series(),
    stays: series().fill(1),
    orders: new Uint8Array(count * weeks),
    price: series(),
    claimPerSold: series(),
    openingShelf: each(),
    caseUnits: each(),
    transit: weekOf(),
    collect: weekOf(),
    collectEarly: weekOf(),
    claimLag: weekOf(),
    earlyShare: each(),
    earlyKept: each(),
    deducted: each(),
    sellingShare: each(),
    shipCost: each(),
    returned: each(),
    held: each(),
    review: weekOf().fill(-1),
    onScan: new Uint8Array(count),
    fixedOut: new Float64Array(accounts.length * weeks),
    fixedClaims: new Float64Array(accounts.length * weeks),
    doors: new Float64Array(accounts.length * weeks),
    buys: items.map((_, i) => boughtItem(compiled, i, shippable[i] as Float64Array)),
    hours: compiled.hours,
    longestTransit: 0,
  };
  let place = 0;
  byItem.forEach((itsRows, i) => {
    coarse.itemFirst[i] = place;
    for (const row of itsRows) writeRow(coarse, compiled, place++, row);
  });
  coarse.itemFirst[items.length] = place;
  accounts.forEach((account, a) => {
    writeAccount(coarse, compiled, account, a);
  });
  return coarse;
}

function rowsOf({ hot, cells }: Compiled, listing: number): Row[] {
  const first = hot.firstOfListing[listing] ?? 0;
  const count = (hot.firstOfListing[listing + 1] ?? 0) - first;
  const all = Array.from({ length: count }, (_, place) => first + place);
  return [true, false]
    .map((running) => ({
      listing,
      running,
      cells: all.filter((index) => (cells[index]?.openWeek ?? 0) < 0 === running),
    }))
    .filter((row) => row.cells.length > 0);
}

function boughtItem(compiled: Compiled, i: number, shippable: Float64Array): CoarseItem {
  const item = compiled.items[i] as Compiled['items'][number];
  const [first] = item.buying.suppliers;
  if (!first) throw new Error(`item ${i} has no supplier`);
  const { weeks } = compiled;
  const ahead = Float64Array.from({ length: weeks }, (_, w) => {
    let sum = 0;
    for (let t = w; t <= w + first.leadWeeks + item.coverWeeks; t++) sum += shippable[t] ?? 0;
    return sum;
  });
  const landing = new Float64Array(2 * weeks + 120);
  let onOrder = 0;
  for (const { week, units } of item.onOrder) {
    landing[week] = (landing[week] ?? 0) + units;
    onOrder += units;
  }
  const last = first.capacity.length - 1;
  const minor = (tenThousandths: number) => tenThousandths / compiled.perMinor;
  return {
    opening: item.openingUnits,
    ahead,
    landing,
    onOrder,
    line: item.buying.line,
    lead: first.leadWeeks,
    minimum: first.minimumOrderUnits,
    batch: first.batchUnits,
    capacity: Float64Array.from(landing, (_, w) => first.capacity[Math.min(w, last)] ?? 0),
    goods: minor(first.goods),
    freight: minor(first.freight),
    depositRate: first.depositRate / 1e6,
    supplierWeeks: first.supplierWeeks,
  };
}

function writeRow(coarse: Coarse, compiled: Compiled, place: number, row: Row): void {
  const listing = compiled.listings[row.listing] as CompiledListing;
  const account = compiled.accounts[listing.account] as CompiledAccount;
  const { weeks } = compiled;
  const minor = (tenThousandths: number) => tenThousandths / compiled.perMinor;
  coarse.account[place] = listing.account;
  coarse.collect[place] = account.collectWeeks;
  coarse.collectEarly[place] = account.discount?.collectWeeks ?? account.collectWeeks;
  const taken = (account.discount?.takenShare ?? 0) / 1e6;
  coarse.earlyShare[place] = taken;
  coarse.earlyKept[place] = 1 - (account.discount?.rate ?? 0) / 1e6;
  const wrong = account.disputed
    ? (account.disputed.wrongRate / 1e6) * (1 - account.disputed.recoveredShare / 1e6)
    : 0;
  coarse.deducted[place] =
    listing.deductions.reduce((sum, rate) => sum + rate / 1e6, account.badDebtRate / 1e6) + wrong;
  coarse.sellingShare[place] = [...listing.monthly, ...listing.quarterly].reduce(
    (sum, { rateMillionths }) => sum + rateMillionths / 1e6,
    0,
  );
  coarse.shipCost[place] = minor(listing.freightOut + listing.pickAndPack);
  coarse.returned[place] = (listing.returns?.rateMillionths ?? 0) / 1e6;
  coarse.onScan[place] = account.sale === 'scan' ? 1 : 0;
  const lags = listing.claims.map(({ lagWeeks }) => lagWeeks);
  coarse.claimLag[place] =
    lags.length === 0 ? 0 : Math.round(lags.reduce((sum, lag) => sum + lag, 0) / lags.length);
  for (let w = 0; w < weeks; w++) {
    coarse.price[place * weeks + w] = minor(listing.invoicePrice[w] ?? 0);
    const claimed = listing.claims.reduce(
      (sum, claim) => sum + (w >= claim.fromWeek && w < claim.untilWeek ? claim.priceTenThousandths : 0),
      0,
    );
    coarse.claimPerSold[place * weeks + w] = minor(claimed);
    const since = w - account.firstOrderWeek;
    coarse.orders[place * weeks + w] = since >= 0 && since % account.orderEveryWeeks === 0 ? 1 : 0;
  }
  writeCells(coarse, compiled, place, row);
  if (account.sale !== 'guaranteed') return;
  const opened = row.cells.map((index) => compiled.cells[index]?.openWeek ?? 0);
  coarse.held[place] = account.expectedReturnRate / 1e6;
  // One review for all cohorts of the row, in the middle of theirs.
  coarse.review[place] =
    Math.round(opened.reduce((sum, week) => sum + week, 0) / opened.length) + account.reviewWeeks;
}

/** Adds up the cells of a row. */
function writeCells(coarse: Coarse, compiled: Compiled, place: number, { listing, cells: own }: Row): void {
  const { weeks, hot, cells, demand } = compiled;
  const wants = wantsOf(compiled);
  const first = hot.firstOfListing[listing] ?? 0;
  const until = hot.firstOfListing[listing + 1] ?? 0;
  const at = place * weeks;
  const before = new Float64Array(weeks);
  const after = new Float64Array(weeks);
  for (const index of own) {
    const cell = cells[index] as Compiled['cells'][number];
    const made = demand[index] as Compiled['demand'][number];
    coarse.caseUnits[place] = cell.multiple;
    coarse.transit[place] = cell.transitWeeks;
    coarse.longestTransit = Math.max(coarse.longestTransit, cell.transitWeeks);
    coarse.openingShelf[place] = (coarse.openingShelf[place] ?? 0) + cell.openingStock;
    const ships = cell.openWeek - cell.transitWeeks;
    if (ships >= 0 && ships < weeks) {
      coarse.fill[at + ships] = (coarse.fill[at + ships] ?? 0) + cell.fillUnits;
      coarse.fillFree[at + ships] = (coarse.fillFree[at + ships] ?? 0) + cell.freeUnits;
    }
    const rows = until - first;
    const from = first * wants.weeks + index - first;
    const { doors } = made.cohort;
    for (let w = 0; w < weeks; w++) {
      const open = doors[w] ?? 0;
      const units = wants.units[from + w * rows] ?? 0;
      coarse.demand[at + w] = (coarse.demand[at + w] ?? 0) + units;
      const age = w - cell.openWeek;
      if (open > 0 && age < made.rampWeeks) {
        const ramp = made.startRate + (1 - made.startRate) * (age / made.rampWeeks);
        const missing = ramp > 0 ? units * (1 / ramp - 1) : open * made.rate;
        coarse.withheld[at + w] = (coarse.withheld[at + w] ?? 0) + missing;
      }
      coarse.fillTarget[at + w] = (coarse.fillTarget[at + w] ?? 0) + open * made.fillPerDoorUnits;
      let ahead = 0;
      for (let j = 1; j <= made.aheadWeeks; j++)
        ahead += wants.units[from + Math.min(wants.weeks - 1, w + j) * rows] ?? 0;
      coarse.aheadTarget[at + w] = (coarse.aheadTarget[at + w] ?? 0) + (open > 0 ? ahead : 0);
      coarse.slack[at + w] = (coarse.slack[at + w] ?? 0) + (Math.max(0, open - 1) * (cell.multiple - 1)) / 2;
      if (w > Math.max(0, cell.openWeek)) {
        before[w] = (before[w] ?? 0) + (doors[w - 1] ?? 0);
        after[w] = (after[w] ?? 0) + open;
      }
    }
  }
  for (let w = 0; w < weeks; w++) {
    if ((after[w] ?? 0) < (before[w] ?? 0)) coarse.stays[at + w] = (after[w] ?? 0) / (before[w] ?? 1);
  }
}

function writeAccount(coarse: Coarse, compiled: Compiled, account: CompiledAccount, a: number): void {
  const { weeks } = compiled;
  const add = (series: Float64Array, week: number, amount: number) => {
    if (week >= 0 && week < weeks) series[a * weeks + week] = (series[a * weeks + week] ?? 0) + amount;
  };
  for (const { week, amount } of [...account.slottingCash, ...account.openingFees, ...account.displayPaid]) {
    add(coarse.fixedOut, week, amount);
  }
  for (const { week, amount } of account.slottingClaims)
    add(coarse.fixedClaims, week + account.collectWeeks, amount);
  account.displayFees.forEach((amount, week) => {
    add(coarse.fixedOut, week, amount);
  });
  for (const index of account.cohorts) {
    const { doors } = compiled.cohorts[index] as Compiled['cohorts'][number];
    for (let w = 0; w < weeks; w++) add(coarse.doors, w, doors[w] ?? 0);
  }
}
