/**
 * Step 7: what shoppers buy, cell by cell; shrink and invoices of goods on scan; scan-backs.
 * Worked figure: 59.6 units wanted with 0.7 carried over is a demand of 60; with 48 on the shelf 12 are lost.
 */
import { sell, shrink } from './cell.ts';
import { bookSale } from './documents.ts';
import { type Line, promotionAmount } from './facts.ts';
import { priced } from './numbers.ts';
import { claim, count, relieve, type World } from './world.ts';

export function sellToShoppers(world: World): void {
  const soldOf = new Map<Line, number>();
  for (const cell of world.cells) {
    const { line } = cell;
    const { demand, sold } = sell(world.facts, cell, world.week);
    const shrunk = shrink(cell, sold);
    count(world, line.itemAt, 'demand', demand);
    count(world, line.itemAt, 'sold', sold);
    count(world, line.itemAt, 'lost', demand - sold);
    count(world, line.itemAt, 'gone', shrunk);
    relieve(world, line.itemAt, shrunk);
    soldOf.set(line, (soldOf.get(line) ?? 0) + sold);
    const row = world.accountWeeks[line.accountAt];
    if (row) {
      row.sold[world.week] = (row.sold[world.week] ?? 0) + sold;
      row.lost[world.week] = (row.lost[world.week] ?? 0) + demand - sold;
    }
  }
  for (const [line, sold] of soldOf) {
    if (sold === 0) continue;
    if (line.account.sale.by === 'scan') bookSale(world, line, { units: sold, free: 0, held: 0 });
    claimScanBacks(world, line, sold);
  }
}

function claimScanBacks(world: World, line: Line, sold: number): void {
  const { week } = world;
  const { minorDigits } = world.facts;
  for (const { charge } of line.prices.charges) {
    if (charge.settles !== 'claim' || charge.per !== 'unitSold') continue;
    if (week < charge.fromWeek || week >= charge.untilWeek) continue;
    const price = BigInt(charge.priceTenThousandths);
    claim(world, line.accountAt, priced(sold, price, minorDigits), charge.lagWeeks);
  }
  for (const promotion of line.account.promotions) {
    const { fundedBy, fromWeek, weeks, lagWeeks } = promotion;
    if (fundedBy !== 'scanBack' || week < fromWeek || week >= fromWeek + weeks) continue;
    const amount = priced(sold, promotionAmount(line, promotion), minorDigits);
    claim(world, line.accountAt, amount, lagWeeks);
  }
}
