// Step 8: what stores order at the end of a week. Fills first, then reorders, each in shipping order, so that every
// item's queue is always sorted. Worked figure: a fill that is to be on the shelf in week 6 after a week in transit leaves
// in week 5 and is ordered at the end of week 4.
import { plus } from './cell-states.ts';
import { isOrderWeek } from './cells.ts';
import type { Cell, CompiledAccount, CompiledItem, CompiledListing } from './compiled.ts';
import { orderOfDepot } from './depot.ts';
import type { ItemState } from './item-state.ts';
import type { CellAt } from './leave.ts';
import { addOrder, type OrderQueue } from './queue.ts';
import type { State } from './state.ts';
import { fillOrder, reorder } from './stores.ts';
import type { Wants } from './wants.ts';

/** Orders of the end of a week; those of week -1 arrive in time for week 0. */
export function placeOrders(at: CellAt, wants: Wants, week: number): void {
  const { state, compiled } = at;
  for (let i = 0; i < compiled.items.length; i++) {
    const { queue } = state.items[i] as ItemState;
    const item = compiled.items[i] as CompiledItem;
    for (const index of item.fillsByWeek[week + 1] ?? []) {
      const units = fillOrder(compiled, compiled.cells[index] as Cell);
      if (units === 0) continue;
      const { depot } = compiled.listings[compiled.cells[index]?.listing ?? 0] as CompiledListing;
      place(state, depot ? (state.depotQueues[depot.index] as OrderQueue) : queue, index, units, 1);
    }
    if (week < 0) continue;
    for (const listing of item.byPriority) placeReorders(at, wants, queue, week, listing);
  }
}

function placeReorders(at: CellAt, wants: Wants, queue: OrderQueue, week: number, listing: number): void {
  const { state, compiled, cells } = at;
  const { hot } = compiled;
  const { account, depot } = compiled.listings[listing] as CompiledListing;
  const { firstOrderWeek, orderEveryWeeks } = compiled.accounts[account] as CompiledAccount;
  if (!isOrderWeek(week, firstOrderWeek, orderEveryWeeks)) return;
  const first = hot.firstOfListing[listing] ?? 0;
  const until = hot.firstOfListing[listing + 1] ?? 0;
  const row = first * wants.weeks + week * (until - first) - first;
  const asked = depot ? (state.depotQueues[depot.index] as OrderQueue) : queue;
  for (let index = first; index < until; index++) {
    if (week < (hot.openWeek[index] ?? 0)) continue;
    const units = reorder(hot, cells, index, week, wants.target[row + index] ?? 0);
    if (units > 0) place(state, asked, index, units, 0);
  }
  if (!depot) return;
  const units = orderOfDepot(compiled, cells, depot, week);
  if (units > 0) place(state, queue, depot.place, units, 0);
}

/** An order at the end of a queue, ours or a depot's; `fill` is 1 for an opening fill. */
function place(state: State, queue: OrderQueue, index: number, units: number, fill: 0 | 1): void {
  plus(state.cells.open, index, units);
  addOrder(queue, index, units, fill);
}
