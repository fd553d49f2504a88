/**
 * Step 2: the doors that closed since last week and what stood on their shelves, cell by cell; before that, the cell's
 * review where goods were sold with a guarantee.
 * Worked figure: 24 units held at 62.40 together, 18 of them on the shelf: the claim is round(6240 x 18 / 24) = 46.80.
 */
import { type Cell, leaveWithDoors, reviewed } from './cell.ts';
import { creditReturns } from './credits.ts';
import { leaveDepot } from './depot.ts';
import { invoicePrice, type Line } from './facts.ts';
import { millionths, nearest, priced, share } from './numbers.ts';
import { addToPool, claim, count, openClaim, post, relieve, type World } from './world.ts';

export function closeDoors(world: World): void {
  for (const cell of world.cells) {
    review(world, cell);
    const { units, lostOrders } = leaveWithDoors(cell, world.week);
    const { itemAt, account } = cell.line;
    // What stores have open with a depot was never ours to ship.
    if (account.depot === null) world.unshipped[itemAt] = (world.unshipped[itemAt] ?? 0) - lostOrders;
    if (units > 0) settleLeft(world, cell.line, units);
  }
  for (const depot of world.depots) {
    const { units, lostOrders } = leaveDepot(depot, world.week);
    const { itemAt } = depot.line;
    world.unshipped[itemAt] = (world.unshipped[itemAt] ?? 0) - lostOrders;
    if (units > 0) settleLeft(world, depot.line, units);
  }
}

function review(world: World, cell: Cell): void {
  const back = reviewed(cell, world.week);
  const { account, accountAt, itemAt } = cell.line;
  if (back === null || account.sale.by !== 'guaranteed') return;
  const { held, heldMoney } = cell;
  const fitToSell = keeps(cell.line) ? millionths(account.sale.resaleableShare) : 0n;
  const resaleable = Number((BigInt(back) * fitToSell) / 1_000_000n);
  world.ours[itemAt] = (world.ours[itemAt] ?? 0) + resaleable;
  relieve(world, itemAt, back - resaleable);
  count(world, itemAt, 'returned', back);
  count(world, itemAt, 'gone', back - resaleable);
  const credit = nearest(heldMoney * BigInt(back), BigInt(held));
  openClaim(world, accountAt, credit, 0);
  creditReturns(world, cell.line, back, credit);
  post(world, 'accrued', 'retained', heldMoney - credit);
  relieve(world, itemAt, held - back);
  cell.held = 0;
  cell.heldMoney = 0n;
}

/** What keeps only so long is never sold again. */
function keeps({ item }: Line): boolean {
  return item.supply.shelfLife === null;
}

/** Units that left with a cell's doors, or with a depot: kept or credited and gone, or ours again. On scan they were ours all along. */
function settleLeft(world: World, line: Line, units: number): void {
  const { account, itemAt } = line;
  const { closedStock } = account;
  const isOnScan = account.sale.by === 'scan';
  const comesBack = closedStock === 'ours' && keeps(line);
  if (closedStock === 'ours') count(world, itemAt, 'returned', units);
  if (comesBack) {
    world.ours[itemAt] = (world.ours[itemAt] ?? 0) + units;
  } else {
    count(world, itemAt, 'gone', units);
    if (isOnScan) relieve(world, itemAt, units);
  }
  if (isOnScan) return;
  if (closedStock === 'kept') {
    const value = priced(units, invoicePrice(line, world.week), world.facts.minorDigits);
    claim(world, line.accountAt, share(value, millionths(account.exitMarkdownRate)), 0);
    return;
  }
  creditReturns(world, line, units, null);
  if (!comesBack) return;
  const value = priced(units, line.landedUnit, world.facts.minorDigits);
  post(world, 'stock', 'retained', value);
  addToPool(world, itemAt, units, value);
}
