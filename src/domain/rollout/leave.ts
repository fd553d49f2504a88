// Units that leave the shelves other than through the till: doors that close (step 2), guaranteed sale at its review,
// ordinary returns, shrink of goods sold by scan. Each says what becomes of the units and of the money.
// Worked figure: 40 of 200 units stand in doors that close and are credited at 2.60: a claim of 104.00, 40 units gone.
import { mulDiv, timesPrice } from '../money/integer.ts';
import { post } from './books.ts';
import { reverseShares } from './invoice.ts';
import { takeReturns } from './returns.ts';
import { arrive, closingUnits } from './stores.ts';
import type { State } from './state.ts';
import { relieve } from './supply.ts';

interface CellAt {
  state: State;
  index: number;
  week: number;
}

export function cellParts(at: CellAt) {
  const { compiled } = at.state;
  const cell = compiled.cells[at.index];
  const own = at.state.cells[at.index];
  const cohort = cell && compiled.cohorts[cell.cohort];
  const item = cell && at.state.items[cell.item];
  const account = cell && compiled.accounts[cell.account];
  const listing = cell && compiled.listings[cell.listing];
  if (!cell || !own || !cohort || !item || !account || !listing) throw new Error(`cell ${at.index} is not compiled`);
  return { cell, own, cohort, item, account, listing };
}

/** Step 2: doors close; at the last one the guarantee is settled and open orders are lost. */
export function closeDoors(at: CellAt): void {
  const { cell, own, cohort, account } = cellParts(at);
  const { week } = at;
  const closing = closingUnits(cohort, own, week);
  const shutting = week > 0 && (cohort.doors[week - 1] ?? 0) > 0 && (cohort.doors[week] ?? 0) === 0;
  if (account.sale === 'guaranteed' && (shutting || week === cell.openWeek + account.reviewWeeks)) {
    settleGuarantee(at);
  }
  const units = Math.min(closing, own.stock);
  if (units > 0) leaveShelf(at, units);
  if (shutting) dropOrders(at);
}

function leaveShelf(at: CellAt, units: number): void {
  const { own, item, account } = cellParts(at);
  own.stock -= units;
  item.returned += account.closedStock === 'ours' ? units : 0;
  if (account.sale === 'scan') {
    if (account.closedStock === 'ours') item.ours += units;
    else writeOff(at, units);
    return;
  }
  if (account.closedStock !== 'kept') credit(at, units);
  if (account.closedStock === 'ours') backToStock(at, units);
  else item.gone += units;
}

/** A credit note at the invoice price, taken off the next remittance; broker and royalty go down with it. */
function credit(at: CellAt, units: number): void {
  const { cell, listing } = cellParts(at);
  const { state, week } = at;
  const price = listing.invoicePrice[week] ?? 0;
  const amount = timesPrice(units, price, state.compiled.perMinor);
  if (amount === 0) return;
  post(state.books, 'returnCredited', amount, cell.account, cell.item);
  state.accounts[cell.account]?.claims.push({ amount, fromWeek: week });
  reverseShares({ state, listing: cell.listing, week }, amount, units);
}

/** Sold goods come back into our stock at landed cost. */
function backToStock(at: CellAt, units: number): void {
  const { cell, item } = cellParts(at);
  const { state } = at;
  const amount = timesPrice(units, state.compiled.items[cell.item]?.landed ?? 0, state.compiled.perMinor);
  item.ours += units;
  item.held += units;
  item.stockAmount += amount;
  post(state.books, 'returnToStock', amount, cell.account, cell.item);
}

/** Units still ours are destroyed or lost where they stand. */
function writeOff(at: CellAt, units: number): void {
  const { cell, item } = cellParts(at);
  item.gone += units;
  post(at.state.books, 'writtenOff', relieve(item, units), cell.account, cell.item);
}

/** At the review (or the last door): what stands on the shelf comes back, the rest of what was held is accepted. */
function settleGuarantee(at: CellAt): void {
  const { cell, own, item, account } = cellParts(at);
  const { state, week } = at;
  if (own.heldUnits === 0) return;
  const back = Math.min(own.heldUnits, own.stock);
  const backAmount = mulDiv(own.heldAmount, back, own.heldUnits);
  const accepted = own.heldUnits - back;
  // The sum for returned units is already accrued: it becomes a claim. The rest turns into a sale.
  if (backAmount > 0) state.accounts[cell.account]?.claims.push({ amount: backAmount, fromWeek: week });
  post(state.books, 'guaranteeAccepted', own.heldAmount - backAmount, cell.account, cell.item);
  post(state.books, 'costOfSales', relieve(item, accepted), cell.account, cell.item);
  own.stock -= back;
  item.returned += back;
  const resaleable = Math.floor((back * account.resaleableShare) / 1_000_000);
  item.ours += resaleable;
  if (back > resaleable) writeOff(at, back - resaleable);
  own.heldUnits = 0;
  own.heldAmount = 0;
}

/** A cohort without doors loses its open orders. */
function dropOrders(at: CellAt): void {
  const { own, item } = cellParts(at);
  if (own.open === 0) return;
  item.queue = item.queue.filter((order) => order.cell !== at.index);
  item.backlog = Math.max(0, item.backlog - own.open);
  own.open = 0;
}

/** Step 4: deliveries reach the shelf; what arrives at closed doors is gone. */
export function receiveAtStore(at: CellAt): void {
  const { own, cohort, item, account } = cellParts(at);
  const { shelved, closed } = arrive(cohort, own, at.week);
  item.received += shelved;
  if (closed === 0) return;
  if (account.sale === 'scan') writeOff(at, closed);
  else item.gone += closed;
}

/** Ordinary returns: credited at the invoice price, freight back paid, the resaleable part back in stock. */
export function returnUnits(at: CellAt): void {
  const { cell, own, item, account, listing } = cellParts(at);
  if (!listing.returns) return;
  const { units, resaleable } = takeReturns({ state: own, returns: listing.returns, week: at.week });
  if (units === 0) return;
  item.returned += units;
  const freight = timesPrice(units, listing.returns.freightBackTenThousandths, at.state.compiled.perMinor);
  post(at.state.books, 'returnsFreight', freight, cell.account, cell.item);
  if (account.sale === 'scan') {
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
  const { own, account } = cellParts(at);
  if (account.sale !== 'scan' || account.shrinkRate === 0) return;
  own.shrinkCarry += sold * account.shrinkRate;
  const units = Math.min(own.stock, Math.floor(own.shrinkCarry / 1_000_000));
  if (units === 0) return;
  own.shrinkCarry -= units * 1_000_000;
  own.stock -= units;
  writeOff(at, units);
}
