/**
 * U: units of each item that would ship in week t if every order shipped in full the week after it was placed. Each cell
 * walks alone, since nothing runs short.
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
import type { Facts } from './facts.ts';

/** By item, by week, up to and including `lastWeek`. */
export function unlimitedShipments(facts: Facts, lastWeek: number): number[][] {
  const shipped = facts.plan.items.map(() => new Array<number>(lastWeek + 1).fill(0));
  for (const cell of newCells(facts)) {
    const ofItem = shipped[cell.line.itemAt] as number[];
    order(facts, cell, -1);
    for (let week = 0; week <= lastWeek; week++)
      ofItem[week] = (ofItem[week] ?? 0) + weekOf(facts, cell, week);
  }
  return shipped;
}

function weekOf(facts: Facts, cell: Cell, week: number): number {
  if (reviewed(cell, week) !== null) cell.held = 0;
  leaveWithDoors(cell, week);
  arrive(cell, week);
  let shipped = 0;
  for (const each of [...cell.orders]) {
    const units = each.left;
    const { free } = ship(cell, each, week, units);
    shipped += units;
    hold(cell, week, units - free);
  }
  arrive(cell, week); // what takes no transit weeks
  for (let at = 0; at < cell.returns.length; at++) sendBack(cell, at, week);
  const { sold } = sell(facts, cell, week);
  shrink(cell, sold);
  order(facts, cell, week);
  return shipped;
}
