// The shelf prices a chain's tags may show: endings below one (.99, .49), or a list of its own. They act on the price the
// shopper reads, tax in it where the market shows it so. Prices here are whole 1/10,000.
// Worked figure: with endings .49 and .99, 4.74 is as far from 4.49 as from 4.99; ties go up, so it moves to 4.99.
import { keptTenThousandths } from '../money/kept.ts';
import type { Account } from '../plan/index.ts';

export type PricePoints = NonNullable<Account['pricePoints']>;

/** The point `price` moves to, or null when the chain has none on that side (below its lowest, above its highest). */
export function movedToPoint(price: number, points: PricePoints): number | null {
  const below = nearestBelow(price, points);
  if (below === price) return below;
  const above = nearestAbove(price, points);
  if (points.move === 'up') return above;
  if (points.move === 'down') return below;
  if (below === null || above === null) return below ?? above;
  return above - price > price - below ? below : above;
}

/** The next point above a price, or below it; null when there is none. */
export function nextPoint(price: number, points: PricePoints, way: 'up' | 'down'): number | null {
  return way === 'up' ? nearestAbove(price + 1, points) : nearestBelow(price - 1, points);
}

const ONE_UNIT = 10_000;

/** The least point at or above `price`. */
function nearestAbove(price: number, { endings, listOfPrices }: PricePoints): number | null {
  let found: number | null = null;
  for (const text of endings) {
    const ending = keptTenThousandths(text);
    const turns = listOfPrices ? 0 : Math.ceil((price - ending) / ONE_UNIT);
    const point = ending + Math.max(turns, 0) * ONE_UNIT;
    if (point >= price && point > 0 && (found === null || point < found)) found = point;
  }
  return found;
}

/** The greatest point at or below `price`. */
function nearestBelow(price: number, { endings, listOfPrices }: PricePoints): number | null {
  let found: number | null = null;
  for (const text of endings) {
    const ending = keptTenThousandths(text);
    const turns = listOfPrices ? 0 : Math.floor((price - ending) / ONE_UNIT);
    const point = ending + turns * ONE_UNIT;
    if (point <= price && point > 0 && (found === null || point > found)) found = point;
  }
  return found;
}
