/**
 * Ordinary returns, at the end of step 6: units off the shelf, a credit, freight back, and what can be sold again.
 * Worked figure: 8 units back at 2.60 are a credit of 20.80; half of them resaleable at 1.00 put 4.00 back into stock.
 */
import { sendBack } from './cell.ts';
import { creditReturns } from './credits.ts';
import type { Line } from './facts.ts';
import { priced } from './numbers.ts';
import { addToPool, count, pay, post, relieve, type World } from './world.ts';

export function takeReturns(world: World, line: Line): void {
  const kinds = line.prices.charges.filter(({ charge }) => charge.settles === 'returns');
  for (let at = 0; at < kinds.length; at++) {
    const charge = kinds[at]?.charge;
    if (charge?.settles !== 'returns') continue;
    const freight = BigInt(charge.freightBackTenThousandths);
    for (const cell of world.cells) {
      if (cell.line !== line) continue;
      const { back, ...sent } = sendBack(cell, at, world.week);
      // What keeps only so long is never sold again.
      const resaleable = line.item.supply.shelfLife === null ? sent.resaleable : 0;
      if (back > 0) bookReturns(world, line, { back, resaleable, freight });
    }
  }
}

function bookReturns(
  world: World,
  line: Line,
  moved: { back: number; resaleable: number; freight: bigint },
): void {
  const { minorDigits } = world.facts;
  const { itemAt } = line;
  const { back, resaleable, freight } = moved;
  count(world, itemAt, 'returned', back);
  count(world, itemAt, 'gone', back - resaleable);
  world.ours[itemAt] = (world.ours[itemAt] ?? 0) + resaleable;
  pay(world, 'retained', priced(back, freight, minorDigits), 'returnsFreight');
  if (line.account.sale.by === 'scan') {
    relieve(world, itemAt, back - resaleable); // nothing was invoiced, nothing had left the stock balance
    return;
  }
  creditReturns(world, line, back, null);
  const value = priced(resaleable, line.landedUnit, minorDigits);
  post(world, 'stock', 'retained', value);
  addToPool(world, itemAt, resaleable, value);
}
