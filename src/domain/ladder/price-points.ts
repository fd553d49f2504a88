// The shelf prices a chain's tags may show: endings below one (.99, .49), or a list of its own. They act on the price the
// shopper reads, tax in it where the market shows it so. Worked figure: with endings .49 and .99, 4.74 is as far from
// 4.49 as from 4.99; ties go up, so it moves to 4.99.
import { type Decimal, dec } from '../money/decimal.ts';
import type { Account } from '../plan/index.ts';

export type PricePoints = NonNullable<Account['pricePoints']>;

/** The point `price` moves to, or null when the chain has none on that side (below its lowest, above its highest). */
export function movedToPoint(price: Decimal, points: PricePoints): Decimal | null {
  const below = pointBelow(price, points, true);
  if (below?.eq(price)) return below;
  const above = pointAbove(price, points, true);
  if (points.move === 'up') return above;
  if (points.move === 'down') return below;
  if (!below || !above) return below ?? above;
  return above.minus(price).gt(price.minus(below)) ? below : above;
}

/** The nearest point above (or at, where said) a price; null when there is none. */
export function pointAbove(price: Decimal, points: PricePoints, orAt: boolean): Decimal | null {
  return best(candidates(price, points), (point) => (orAt ? point.gte(price) : point.gt(price)), 'least');
}

/** The nearest point below (or at, where said) a price; null when there is none. */
export function pointBelow(price: Decimal, points: PricePoints, orAt: boolean): Decimal | null {
  return best(candidates(price, points), (point) => (orAt ? point.lte(price) : point.lt(price)), 'most');
}

/** Every point that could be the nearest on either side: none is zero. */
function candidates(price: Decimal, points: PricePoints): Decimal[] {
  if (points.listOfPrices) return points.endings.map(dec).filter((point) => point.gt(0));
  const floor = price.floor();
  return points.endings
    .flatMap((ending) => [floor.minus(1), floor, floor.plus(1)].map((whole) => whole.plus(dec(ending))))
    .filter((point) => point.gt(0));
}

function best(
  points: readonly Decimal[],
  fits: (point: Decimal) => boolean,
  end: 'least' | 'most',
): Decimal | null {
  let found: Decimal | null = null;
  for (const point of points) {
    if (!fits(point)) continue;
    if (found === null || (end === 'least' ? point.lt(found) : point.gt(found))) found = point;
  }
  return found;
}
