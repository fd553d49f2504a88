// A depot's week, the same with limits (pass.ts) and without (free.ts): what we sent arrives, its stores' orders leave as
// far as its stock reaches, and it orders from us. Its stock, what is on its way and its open orders with us stand in the
// cells' series at a place after all cells. Worked figure: 100 in it, orders of 60 and 60 in cases of 12: 60 and 36 leave.
import { arrivalsFrom, arrivalsLater, type CellStates, plus } from './cell-states.ts';
import type { Compiled, CompiledDepot, HotCells } from './compiled.ts';
import type { OrderQueue } from './queue.ts';

/** What reaches a depot this week goes into its stock. Returns units that came after its end: they are gone. */
export function arriveAtDepot(cells: CellStates, depot: CompiledDepot, week: number): number {
  const { place } = depot;
  const units = cells.arriving[arrivalsFrom(cells, week) + place] ?? 0;
  if (units === 0) return 0;
  plus(cells.transit, place, -units);
  if (week >= depot.endWeek) return units;
  plus(cells.stock, place, units);
  return 0;
}

/** Its stores' orders leave in the order of its queue, each as far as full multiples of its stock reach; the rest waits. */
export function shipFromDepot(hot: HotCells, cells: CellStates, depot: CompiledDepot, at: QueueWeek): void {
  const { queue, week } = at;
  const { count } = queue;
  const arrivals = arrivalsFrom(cells, week);
  let stock = cells.stock[depot.place] ?? 0;
  let kept = 0;
  for (let n = 0; n < count; n++) {
    const index = queue.cell[n] ?? 0;
    const ordered = queue.units[n] ?? 0;
    const multiple = hot.multiple[index] ?? 1;
    const units = ordered <= stock ? ordered : Math.floor(stock / multiple) * multiple;
    if (units > 0) {
      stock -= units;
      plus(cells.open, index, -units);
      plus(cells.transit, index, units);
      plus(cells.arriving, arrivalsLater(cells, arrivals, hot.transitWeeks[index] ?? 0) + index, units);
    }
    if (units === ordered) continue;
    queue.cell[kept] = index;
    queue.units[kept] = ordered - units;
    queue.fill[kept] = queue.fill[n] ?? 0;
    kept++;
  }
  queue.count = kept;
  cells.stock[depot.place] = stock;
}

/** A depot's queue in a week. */
export interface QueueWeek {
  queue: OrderQueue;
  week: number;
}

/** Units it orders from us at the end of a week, after its stores ordered; the fills' free units join its balance. */
export function orderOfDepot(
  { hot }: Compiled,
  cells: CellStates,
  depot: CompiledDepot,
  week: number,
): number {
  const { place, listing, multiple } = depot;
  plus(cells.freeLeft, place, depot.free[week] ?? 0);
  const need = depot.need[week] ?? -1;
  if (need < 0) return 0;
  let position = (cells.stock[place] ?? 0) + (cells.transit[place] ?? 0) + (cells.open[place] ?? 0);
  const until = hot.firstOfListing[listing + 1] ?? 0;
  for (let index = hot.firstOfListing[listing] ?? 0; index < until; index++)
    position -= cells.open[index] ?? 0;
  if (need <= position) return 0;
  return Math.ceil(Math.max(need - position, depot.minimumOrderUnits) / multiple) * multiple;
}
