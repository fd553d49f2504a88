// The depots' steps in the pass with limits: cleared with their last door (step 2), what we shipped arrives (step 4, or
// right after shipping), their stores' orders leave (step 6). Nothing happens in a plan without depots.
// Worked figure: 100 units left in a depot whose last door closes, credited at 2.60: a claim of 260.00, 100 units gone.
import type { CompiledDepot } from './compiled.ts';
import { arriveAtDepot, shipFromDepot } from './depot.ts';
import { type CellAt, leaveShelf, loseAtClosedDoors, moveTo } from './leave.ts';
import { dropOrdersOf, type OrderQueue } from './queue.ts';

/** Where the last door of an account is closed and none is to come, its depots are cleared and their orders are lost. */
export function closeDepots(at: CellAt, week: number): void {
  for (const depot of at.compiled.depots) if (depot.endWeek === week) closeDepot(at, depot, week);
}

function closeDepot(at: CellAt, depot: CompiledDepot, week: number): void {
  const { cells } = at;
  const { place } = depot;
  moveToDepot(at, depot, week);
  const units = cells.stock[place] ?? 0;
  if (units > 0) leaveShelf(at, units);
  if ((cells.open[place] ?? 0) === 0) return;
  at.item.backlog -= dropOrdersOf(at.item.queue, place);
  cells.open[place] = 0;
}

/** A depot is handled as one of its stores, at its own place: account, listing and item are the same. */
function moveToDepot(at: CellAt, depot: CompiledDepot, week: number): void {
  moveTo(at, at.compiled.hot.firstOfListing[depot.listing] ?? 0, week);
  at.index = depot.place;
}

/** What we shipped reaches the depots: without transit it does so right after shipping. Too late, it is gone. */
export function depotReceipts(at: CellAt, week: number, sameWeek: boolean): void {
  for (const depot of at.compiled.depots) {
    if ((depot.transitWeeks === 0) !== sameWeek) continue;
    const late = arriveAtDepot(at.cells, depot, week);
    if (late === 0) continue;
    moveToDepot(at, depot, week);
    loseAtClosedDoors(at, late);
  }
}

/** Orders of stores leave their depots. */
export function shipFromDepots({ state, compiled, cells }: CellAt, week: number): void {
  for (const depot of compiled.depots) {
    const queue = state.depotQueues[depot.index] as OrderQueue;
    shipFromDepot(compiled.hot, cells, depot, { queue, week });
  }
}
