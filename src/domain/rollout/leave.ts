// Units that leave the shelves other than through the till: doors that close (step 2), guaranteed sale at its review,
// ordinary returns, shrink of goods sold by scan. Each says what becomes of the units and of the money.
// Worked figure: 40 of 200 units stand in doors that close and are credited at 2.60: a claim of 104.00, 40 units gone.
import { mulDiv, timesPrice, timesRate } from '../money/integer.ts';
import { E, post } from './books.ts';
import { plus } from './cell-states.ts';
import type { Cell, Cohort, CompiledAccount, CompiledListing } from './compiled.ts';
import { listingAt, reverseShares } from './invoice.ts';
import type { ItemState } from './item-state.ts';
import { dropOrdersOf, type OrderQueue } from './queue.ts';
import { resaleableOf, takeReturns } from './returns.ts';
import type { AccountState, State } from './state.ts';
import { type CellWeek, closingUnits, isLastClosing, isReviewed, takeHeld, takeShrink } from './stores.ts';
import { relieve } from './supply.ts';

/** One cell in one week of the pass, with what it belongs to. */
export interface CellAt extends CellWeek {
  state: State;
  cell: Cell;
  cohort: Cohort;
  item: ItemState;
  account: CompiledAccount;
  listing: CompiledListing;
  sales: AccountState;
}

/** The same object for every cell and week of a pass, moved on by moveTo(): nothing is allocated in the loops. */
export function cellAt(state: State): CellAt {
  const at = { state, compiled: state.compiled, cells: state.cells, index: 0, week: 0 } as CellAt;
  if (state.compiled.cells.length > 0) moveTo(at, 0, 0);
  return at;
}

export function moveTo(at: CellAt, index: number, week: number): void {
  const { compiled, state } = at;
  const cell = compiled.cells[index] as Cell;
  at.index = index;
  at.week = week;
  at.cell = cell;
  at.cohort = compiled.cohorts[cell.cohort] as Cohort;
  at.item = state.items[cell.item] as ItemState;
  at.account = compiled.accounts[cell.account] as CompiledAccount;
  at.listing = compiled.listings[cell.listing] as CompiledListing;
  at.sales = state.accounts[cell.account] as AccountState;
}

/** Step 2: doors close; at the last one the guarantee is settled and open orders are lost. */
export function closeDoors(at: CellAt): void {
  const { cell, cohort, account, cells, index, week } = at;
  if (isReviewed(cell, cohort, account, week)) settleGuarantee(at);
  const units = closingUnits(cohort, cells.stock[index] ?? 0, week);
  if (units > 0) leaveShelf(at, units);
  if (isLastClosing(cohort, week)) dropOrders(at);
}

/** Units leave a shelf, or a depot, with its doors: they stay there, are credited, or come back to us. */
export function leaveShelf(at: CellAt, units: number): void {
  const { item, account } = at;
  plus(at.cells.stock, at.index, -units);
  item.returned += account.closedStock === 'ours' ? units : 0;
  if (account.sale === 'scan') {
    if (account.closedStock === 'ours' && !item.lots) item.ours += units;
    else writeOff(at, units);
    return;
  }
  if (account.closedStock !== 'kept') credit(at, units);
  else if (account.exitMarkdownRate > 0) claimMarkdown(at, units);
  if (account.closedStock === 'ours' && !item.lots) backToStock(at, units);
  else item.gone += units;
}

/** A credit note at the invoice price, taken off the next remittance; broker and royalty go down with it. */
function credit(at: CellAt, units: number): void {
  const { state, cell, listing, week } = at;
  const amount = timesPrice(units, listing.invoicePrice[week] ?? 0, state.compiled.perMinor);
  post(state.books, E.returnCredited, amount, cell.account, cell.item);
  if (amount > 0) at.sales.claims.push({ amount, fromWeek: week });
  reverseShares(listingAt(state, cell.listing, week), { amount, units });
}

/** The chain marks down what it keeps in closed doors, and charges us a part of what it paid for it. */
function claimMarkdown(at: CellAt, units: number): void {
  const { state, cell, listing, account, week } = at;
  const worth = timesPrice(units, listing.invoicePrice[week] ?? 0, state.compiled.perMinor);
  const amount = timesRate(worth, account.exitMarkdownRate);
  if (amount === 0) return;
  post(state.books, E.claimAccrued, amount, cell.account, cell.item);
  at.sales.claims.push({ amount, fromWeek: week });
}

/** Sold goods come back into our stock at landed cost. */
function backToStock(at: CellAt, units: number): void {
  const { state, cell, item } = at;
  const amount = timesPrice(units, state.compiled.items[cell.item]?.landed ?? 0, state.compiled.perMinor);
  item.ours += units;
  item.held += units;
  item.stockAmount += amount;
  post(state.books, E.returnToStock, amount, cell.account, cell.item);
}

/** Units still ours are destroyed or lost where they stand. */
function writeOff(at: CellAt, units: number): void {
  at.item.gone += units;
  post(at.state.books, E.writtenOff, relieve(at.item, units), at.cell.account, at.cell.item);
}

/** At the review (or the last door): what stands on the shelf comes back, the rest of what was held is accepted. */
function settleGuarantee(at: CellAt): void {
  const { state, cells, index, cell, item, account, week } = at;
  const held = cells.heldUnits[index] ?? 0;
  const heldAmount = cells.heldAmount[index] ?? 0;
  if (held === 0) return;
  const back = takeHeld(cells, index);
  const backAmount = mulDiv(heldAmount, back, held);
  item.returned += back;
  const resaleable = item.lots ? 0 : Math.floor((back * account.resaleableShare) / 1_000_000);
  item.ours += resaleable;
  if (back > resaleable) writeOff(at, back - resaleable);
  // The sum for returned units is already accrued: it becomes a claim. The rest turns into a sale.
  if (backAmount > 0) at.sales.claims.push({ amount: backAmount, fromWeek: week });
  if (back > 0) reverseShares(listingAt(state, cell.listing, week), { amount: backAmount, units: back });
  post(state.books, E.guaranteeAccepted, heldAmount - backAmount, cell.account, cell.item);
  post(state.books, E.costOfSales, relieve(item, held - back), cell.account, cell.item);
  cells.heldAmount[index] = 0;
}

/** A cohort without doors loses its open orders, with us or with its depot. */
function dropOrders(at: CellAt): void {
  const { state, item, cells, index, listing } = at;
  if ((cells.open[index] ?? 0) === 0) return;
  if (listing.depot) dropOrdersOf(state.depotQueues[listing.depot.index] as OrderQueue, index);
  else item.backlog -= dropOrdersOf(item.queue, index);
  cells.open[index] = 0;
}

/** Step 4: what arrives at closed doors is gone. */
export function loseAtClosedDoors(at: CellAt, units: number): void {
  if (at.account.sale === 'scan') writeOff(at, units);
  else at.item.gone += units;
}

/** Ordinary returns: credited at the invoice price, freight back paid, the resaleable part back in stock. */
export function returnUnits(at: CellAt): void {
  const { state, cell, item } = at;
  const { returns } = at.listing;
  if (!returns) return;
  const units = takeReturns(at, returns);
  if (units === 0) return;
  // Nobody knows how old it is by then.
  const resaleable = item.lots ? 0 : resaleableOf(at, returns, units);
  item.returned += units;
  const freight = timesPrice(units, returns.freightBackTenThousandths, state.compiled.perMinor);
  post(state.books, E.returnsFreight, freight, cell.account, cell.item);
  if (at.account.sale === 'scan') {
    item.ours += resaleable;
    if (units > resaleable) writeOff(at, units - resaleable);
    return;
  }
  credit(at, units);
  if (resaleable > 0) backToStock(at, resaleable);
  item.gone += units - resaleable;
}

/** Pay-on-scan: what disappears from the shelf unscanned is our loss. */
export function shrink(at: CellAt, sold: number): void {
  const units = takeShrink(at.cells, at.index, sold, at.account.shrinkRate);
  if (units > 0) writeOff(at, units);
}
