/**
 * Step 2: the reviews of guaranteed sales, then the doors that closed and what stood on their shelves.
 * Worked figure: 24 units held at 62.40 together, 18 of them on the shelf: the claim is round(6240 x 18 / 24) = 46.80.
 */
import { type Cell, leaveWithDoors, reviewed } from './cell.ts';
import { creditReturns } from './credits.ts';
import type { Line } from './facts.ts';
import { millionths, nearest, priced } from './numbers.ts';
import { addToPool, count, openClaim, post, relieve, type World } from './world.ts';

export function closeDoors(world: World): void {
  for (const cell of world.cells) review(world, cell);
  for (const line of world.facts.lines) {
    let left = 0;
    for (const cell of world.cells) {
      if (cell.line === line) left += leaveCell(world, cell);
    }
    if (left > 0 && line.account.sale.by !== 'scan') settleLeft(world, line, left);
  }
}

function review(world: World, cell: Cell): void {
  const back = reviewed(cell, world.week);
  const { account, accountAt, itemAt } = cell.line;
  if (back === null || account.sale.by !== 'guaranteed') return;
  const { held, heldMoney } = cell;
  const resaleable = Number((BigInt(back) * millionths(account.sale.resaleableShare)) / 1_000_000n);
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

/** Units that leave with one cell's doors; those on scan are written off, or ours again, right here. */
function leaveCell(world: World, cell: Cell): number {
  const { account, itemAt } = cell.line;
  const units = leaveWithDoors(cell, world.week);
  if (units === 0) return 0;
  if (account.closedStock === 'ours') {
    world.ours[itemAt] = (world.ours[itemAt] ?? 0) + units;
    count(world, itemAt, 'returned', units);
  } else {
    count(world, itemAt, 'gone', units);
    if (account.sale.by === 'scan') relieve(world, itemAt, units);
  }
  return units;
}

function settleLeft(world: World, line: Line, units: number): void {
  const { closedStock } = line.account;
  if (closedStock === 'kept') return;
  creditReturns(world, line, units, null);
  if (closedStock === 'credited') return;
  const value = priced(units, line.landedUnit, world.facts.minorDigits);
  post(world, 'stock', 'retained', value);
  addToPool(world, line.itemAt, units, value);
}
