// Step 6: orders leave in the order they were placed (fills first, then priority), each as far as whole cases reach.
// What can't leave is backlog, or cancelled where the account's rule says so; fills never are. Worked figure: 100 units
// ours, case 12, orders of 60 and 60: 60 leave for the first, 36 for the second, 4 stay.
import { timesPrice } from '../money/integer.ts';
import type { CompiledAccount } from './compiled.ts';
import type { OpenOrder, State } from './state.ts';

export function shipItem(state: State, i: number, week: number): void {
  const item = state.items[i];
  if (!item) throw new Error(`no item ${i}`);
  const caseUnits = state.compiled.items[i]?.caseUnits ?? 1;
  const kept: OpenOrder[] = [];
  let backlog = 0;
  for (const order of item.queue) {
    const whole = Math.floor(Math.min(order.units, item.ours) / caseUnits) * caseUnits;
    if (whole > 0) shipOrder(state, order, whole, week);
    const left = order.units - whole;
    if (left <= 0) continue;
    backlog += left;
    const account = accountOf(state, order.cell);
    if (account.cancels && !order.fill) {
      (state.cells[order.cell] as { open: number }).open -= left;
    } else {
      kept.push({ ...order, units: left });
    }
  }
  item.queue = kept;
  item.backlog = backlog;
}

function accountOf(state: State, cell: number): CompiledAccount {
  const index = state.compiled.cells[cell]?.account ?? -1;
  const account = state.compiled.accounts[index];
  if (!account) throw new Error(`cell ${cell} has no account`);
  return account;
}

/** Whole cases of one order leave; free units of a fill go first. */
function shipOrder(state: State, order: OpenOrder, units: number, week: number): void {
  const cell = state.compiled.cells[order.cell];
  const cellState = state.cells[order.cell];
  const item = cell && state.items[cell.item];
  const listing = cell && state.listings[cell.listing];
  const account = cell && state.compiled.accounts[cell.account];
  if (!cell || !cellState || !item || !listing || !account) throw new Error(`cell ${order.cell} is not compiled`);
  item.ours -= units;
  item.shipped += units;
  if (order.fill) item.fillShipped += units;
  cellState.open -= units;
  cellState.transit += units;
  cellState.arriving[week + cell.transitWeeks] = (cellState.arriving[week + cell.transitWeeks] ?? 0) + units;
  const free = order.fill ? Math.min(cellState.freeLeft, units) : 0;
  cellState.freeLeft -= free;
  listing.shippedFree += free;
  listing.shippedPaid += units - free;
  if (account.sale === 'guaranteed' && week + cell.transitWeeks < cell.openWeek + account.reviewWeeks) {
    holdGuaranteed(state, order.cell, units - free, week);
  }
}

/** Under guaranteed sale a share of the units may come back: they are held, not sold, until the review. */
function holdGuaranteed(state: State, cellIndex: number, paid: number, week: number): void {
  const cell = state.compiled.cells[cellIndex];
  const cellState = state.cells[cellIndex];
  const listing = cell && state.listings[cell.listing];
  const terms = cell && state.compiled.accounts[cell.account];
  if (!cell || !cellState || !listing || !terms) throw new Error(`cell ${cellIndex} is not compiled`);
  cellState.heldCarry += paid * terms.expectedReturnRate;
  const held = Math.min(paid, Math.floor(cellState.heldCarry / 1_000_000));
  cellState.heldCarry -= held * 1_000_000;
  if (held === 0) return;
  const price = state.compiled.listings[cell.listing]?.invoicePrice[week] ?? 0;
  const amount = timesPrice(held, price, state.compiled.perMinor);
  cellState.heldUnits += held;
  cellState.heldAmount += amount;
  listing.shippedHeld += held;
  state.guaranteeAmount[cell.listing] = (state.guaranteeAmount[cell.listing] ?? 0) + amount;
}
