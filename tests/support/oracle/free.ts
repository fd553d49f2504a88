/**
 * U: units of each item that would ship in week t if every order shipped in full the week after it was placed. Each cell
 * walks alone, since nothing runs short; a depot walks with its own, for they wait for what it lacks.
 * Worked figure: ten doors that open in week 4 behind one transit week, 12 units a door: U(3) holds their fill of 120.
 */
import {
  arrive,
  type Cell,
  hold,
  leaveWithDoors,
  newCells,
  order,
  reviewed,
  sell,
  sendBack,
  ship,
  shrink,
} from './cell.ts';
import {
  type Depot,
  leaveDepot,
  newDepots,
  orderForDepot,
  receiveInDepot,
  shipToDepot,
  supplyStores,
} from './depot.ts';
import type { Facts } from './facts.ts';
import { total } from './numbers.ts';

/** By item, by week, up to and including `lastWeek`. */
export function unlimitedShipments(facts: Facts, lastWeek: number): number[][] {
  const shipped = facts.plan.items.map(() => new Array<number>(lastWeek + 1).fill(0));
  const cells = newCells(facts);
  const depots = newDepots(facts, cells);
  const alone = cells.filter(({ line }) => line.account.depot === null);
  for (const cells of [...alone.map((cell) => [cell]), ...depots.map((depot) => depot.cells)]) {
    const depot = depots.find((each) => each.cells === cells) ?? null;
    for (const cell of cells) order(facts, cell, -1);
    for (let week = 0; week <= lastWeek; week++) {
      const units = weekOf(facts, cells, depot, week);
      const ofItem = cells[0] ? shipped[cells[0].line.itemAt] : undefined;
      if (ofItem) ofItem[week] = (ofItem[week] ?? 0) + units;
    }
  }
  return shipped;
}

/** One week of a cell alone, or of a depot with its cells. */
function weekOf(facts: Facts, cells: readonly Cell[], depot: Depot | null, week: number): number {
  for (const cell of cells) {
    if (reviewed(cell, week) !== null) cell.held = 0;
    leaveWithDoors(cell, week);
  }
  if (depot) leaveDepot(depot, week);
  if (depot) receiveInDepot(depot, week);
  for (const cell of cells) arrive(cell, week);
  const shipped = depot ? allToDepot(depot, week) : total(cells.map((cell) => allToShelf(cell, week)));
  for (const cell of cells) {
    arrive(cell, week); // what takes no transit weeks
    for (let at = 0; at < cell.returns.length; at++) sendBack(cell, at, week);
    const { sold } = sell(facts, cell, week);
    shrink(cell, sold);
    order(facts, cell, week);
  }
  if (depot) orderForDepot(facts, depot, week);
  return shipped;
}

function allToShelf(cell: Cell, week: number): number {
  let shipped = 0;
  for (const each of [...cell.orders]) {
    const units = each.left;
    const { free } = ship(cell, each, week, units);
    shipped += units;
    hold(cell, week, units - free);
  }
  return shipped;
}

/** All its orders leave us; it ships what it has. */
function allToDepot(depot: Depot, week: number): number {
  let shipped = 0;
  for (const each of [...depot.orders]) {
    shipped += each.left;
    shipToDepot(depot, each, week, each.left);
  }
  receiveInDepot(depot, week); // what takes no transit weeks
  supplyStores(depot, week);
  return shipped;
}
