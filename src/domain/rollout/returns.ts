// Ordinary returns: a share of what a store received comes back some weeks later, off its shelf. Fractions carry, so no
// unit is lost to rounding; a store can't return what it no longer has. Worked figure: 3 % of a delivery of 120 units
// is 3.6: three go back now, 0.6 waits for the next delivery.

import { arrivalsFrom, plus } from './cell-states.ts';
import type { CompiledListing } from './compiled.ts';
import type { CellWeek } from './stores.ts';

type Returns = NonNullable<CompiledListing['returns']>;

/** Takes the week's returned units off the shelf. */
export function takeReturns(at: CellWeek, returns: Returns): number {
  const { cells, index, week } = at;
  const from = week - returns.lagWeeks;
  const delivered = from >= 0 ? (cells.arriving[arrivalsFrom(cells, from) + index] ?? 0) : 0;
  if (delivered > 0) plus(cells.returnCarry, index, delivered * returns.rateMillionths);
  const due = Math.floor((cells.returnCarry[index] ?? 0) / 1_000_000);
  const units = Math.min(due, cells.stock[index] ?? 0);
  plus(cells.returnCarry, index, -units * 1_000_000);
  plus(cells.stock, index, -units);
  return units;
}

/** Of so many returned units, those that can be sold again. */
export function resaleableOf(at: CellWeek, returns: Returns, units: number): number {
  const { cells, index } = at;
  plus(cells.resaleCarry, index, units * returns.resaleableMillionths);
  const resaleable = Math.floor((cells.resaleCarry[index] ?? 0) / 1_000_000);
  plus(cells.resaleCarry, index, -resaleable * 1_000_000);
  return resaleable;
}
