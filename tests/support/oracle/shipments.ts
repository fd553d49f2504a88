/**
 * Step 6: orders leave in their order, in full cases, as far as our stock reaches; then the documents of what left, then
 * ordinary returns.
 * Worked figure: 100 units of stock in cases of 12 against an order of 120: 96 leave, 24 stay open.
 */
import { bookBeside, type Looked, withinLimit } from './beside.ts';
import type { Buyer } from './buyers.ts';
import { hold, type Order, ship } from './cell.ts';
import { multiple } from './demand.ts';
import { shipToDepot, supplyStores } from './depot.ts';
import { bookSale, payForLeaving } from './documents.ts';
import { invoicePrice, type Line } from './facts.ts';
import { fitToLeave, takeOldest } from './lots.ts';
import { priced, total } from './numbers.ts';
import { takeReturns } from './returns.ts';
import { receiveInDepots, receiveInStores } from './stores.ts';
import { count, post, type World } from './world.ts';

type OpenOrder = Buyer & { order: Order };

export function shipOrders(world: World): void {
  const looked = leaveInOrder(world);
  const left = looked.filter(({ units }) => units > 0);
  for (let itemAt = 0; itemAt < world.ours.length; itemAt++) {
    const open = openOrders(world)
      .filter(({ line }) => line.itemAt === itemAt)
      .map(({ order }) => order.left);
    world.unshipped[itemAt] = total(open);
    count(world, itemAt, 'backlog', total(open));
  }
  cancel(world);
  receiveInDepots(world); // what takes no transit weeks
  for (const depot of world.depots) supplyStores(depot, world.week);
  receiveInStores(world, world.cells); // what takes no transit weeks
  for (const line of world.facts.lines) {
    const ofLine = left.filter((each) => each.line === line);
    if (ofLine.length > 0) bookShipment(world, line, ofLine);
  }
  bookBeside(world, looked);
  for (const line of world.facts.lines) takeReturns(world, line);
}

/** Of each buyer, its orders with us, in file order. */
function openOrders(world: World): OpenOrder[] {
  return world.facts.lines.flatMap((line): OpenOrder[] => {
    const q = multiple(line, line.account.depot?.orderIn);
    if (line.account.depot !== null) {
      return world.depots
        .filter((depot) => depot.line === line)
        .flatMap((depot) => depot.orders.map((order) => ({ line, q, cell: null, depot, order })));
    }
    return world.cells
      .filter((cell) => cell.line === line)
      .flatMap((cell) => cell.orders.map((order) => ({ line, q, cell, depot: null, order })));
  });
}

/** Items in file order, the orders of each in theirs. */
function leaveInOrder(world: World): Looked[] {
  const open = openOrders(world);
  open.sort(
    (a, b) =>
      a.line.itemAt - b.line.itemAt ||
      a.order.placedWeek - b.order.placedWeek ||
      Number(b.order.isFill) - Number(a.order.isFill) ||
      a.line.account.priority - b.line.account.priority,
  ); // what is equal stays in file order
  const looked: Looked[] = [];
  for (const each of open) looked.push(leave(world, each, looked));
  return looked;
}

function leave(world: World, { order, ...buyer }: OpenOrder, before: readonly Looked[]): Looked {
  const { itemAt } = buyer.line;
  const { q } = buyer;
  const ours = world.ours[itemAt] ?? 0;
  const open = order.left;
  const weeksAway = (buyer.depot?.terms ?? buyer.line.account.terms).transitWeeks;
  const there = fitToLeave(world, itemAt, weeksAway) ?? ours;
  const could = Math.floor(Math.min(open, there) / q) * q;
  const units = withinLimit(world, buyer, before, { order, could });
  const seen = { ...buyer, open, heldBack: could - units, units };
  if (units === 0) return { ...seen, free: 0 };
  const { free } = buyer.depot
    ? shipToDepot(buyer.depot, order, world.week, units)
    : ship(buyer.cell, order, world.week, units);
  world.ours[itemAt] = ours - units;
  takeOldest(world, itemAt, units, weeksAway);
  count(world, itemAt, 'shipped', units);
  if (order.isFill) count(world, itemAt, 'fillShipped', units);
  return { ...seen, free };
}

/** Only orders with us: a depot keeps what its stores ordered. */
function cancel(world: World): void {
  for (const buyer of [...world.cells, ...world.depots]) {
    const { account } = buyer.line;
    if (account.terms.shortage !== 'cancelled' || (account.depot !== null && 'cohort' in buyer)) continue;
    buyer.orders = buyer.orders.filter(({ isFill }) => isFill);
  }
}

function bookShipment(world: World, line: Line, left: readonly Looked[]): void {
  const units = total(left.map((each) => each.units));
  const free = total(left.map((each) => each.free));
  payForLeaving(world, line, units);
  if (line.account.sale.by === 'scan') return;
  const price = invoicePrice(line, world.week);
  let held = 0;
  for (const { cell, ...each } of left) {
    if (cell === null) continue; // no guarantee goes through a depot
    const kept = hold(cell, world.week, each.units - each.free);
    const money = priced(kept, price, world.facts.minorDigits);
    cell.heldMoney += money;
    held += kept;
    post(world, 'retained', 'accrued', money);
  }
  bookSale(world, line, { units, free, held });
}
