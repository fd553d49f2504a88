/**
 * Step 6: orders leave in their order, in full cases, as far as our stock reaches; then the documents of what left, then
 * ordinary returns.
 * Worked figure: 100 units of stock in cases of 12 against an order of 120: 96 leave, 24 stay open.
 */
import { type Cell, hold, type Order, ship } from './cell.ts';
import { multiple } from './demand.ts';
import { bookSale, payForLeaving } from './documents.ts';
import { invoicePrice, type Line } from './facts.ts';
import { priced, total } from './numbers.ts';
import { takeReturns } from './returns.ts';
import { receiveInStores } from './stores.ts';
import { count, post, type World } from './world.ts';

/** What left of one order. */
interface Left {
  cell: Cell;
  units: number;
  free: number;
}

export function shipOrders(world: World): void {
  const left = leaveInOrder(world);
  for (let itemAt = 0; itemAt < world.ours.length; itemAt++) {
    const open = world.cells
      .filter(({ line }) => line.itemAt === itemAt)
      .flatMap(({ orders }) => orders.map((each) => each.left));
    world.unshipped[itemAt] = total(open);
    count(world, itemAt, 'backlog', total(open));
  }
  cancel(world);
  receiveInStores(world, world.cells); // what takes no transit weeks
  for (const line of world.facts.lines) {
    const ofLine = left.filter(({ cell }) => cell.line === line);
    if (ofLine.length > 0) bookShipment(world, line, ofLine);
  }
  for (const line of world.facts.lines) takeReturns(world, line);
}

function leaveInOrder(world: World): Left[] {
  const open = world.cells.flatMap((cell) => cell.orders.map((order) => ({ cell, order })));
  open.sort(
    (a, b) =>
      a.order.placedWeek - b.order.placedWeek ||
      Number(b.order.isFill) - Number(a.order.isFill) ||
      a.cell.line.account.priority - b.cell.line.account.priority ||
      a.cell.at - b.cell.at,
  );
  return open.flatMap(({ cell, order }) => leave(world, cell, order));
}

function leave(world: World, cell: Cell, order: Order): Left[] {
  const { itemAt } = cell.line;
  const ours = world.ours[itemAt] ?? 0;
  const q = multiple(cell.line);
  const units = Math.floor(Math.min(order.left, ours) / q) * q;
  if (units === 0) return [];
  const { free } = ship(cell, order, world.week, units);
  world.ours[itemAt] = ours - units;
  count(world, itemAt, 'shipped', units);
  if (order.isFill) count(world, itemAt, 'fillShipped', units);
  return [{ cell, units, free }];
}

function cancel(world: World): void {
  for (const cell of world.cells) {
    if (cell.line.account.terms.shortage !== 'cancelled') continue;
    cell.orders = cell.orders.filter(({ isFill }) => isFill);
  }
}

function bookShipment(world: World, line: Line, left: readonly Left[]): void {
  const units = total(left.map((each) => each.units));
  const free = total(left.map((each) => each.free));
  payForLeaving(world, line, units);
  if (line.account.sale.by === 'scan') return;
  const price = invoicePrice(line, world.week);
  let held = 0;
  for (const { cell, ...each } of left) {
    const kept = hold(cell, world.week, each.units - each.free);
    const money = priced(kept, price, world.facts.minorDigits);
    cell.heldMoney += money;
    held += kept;
    post(world, 'retained', 'accrued', money);
  }
  bookSale(world, line, { units, free, held });
}
