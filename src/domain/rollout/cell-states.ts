// Stock and open orders of every cell as the pass carries them from week to week, and the pass without limits too.
// Worked figure: 288 cells with a week in transit and no returns hold 2 weeks of arrivals, 576 places.
import type { Compiled } from './compiled.ts';
import type { CutSeries } from './series.ts';

/** Stock and open orders of every cell, and after them of every depot, an array a quantity: inner loops run over these. */
export interface CellStates {
  stock: Float64Array;
  transit: Float64Array;
  /** Units ordered and not shipped. */
  open: Float64Array;
  /** Free units of the fill still to ship. */
  freeLeft: Float64Array;
  /** Fractions waiting for the next unit, in millionths. */
  returnCarry: Float64Array;
  resaleCarry: Float64Array;
  shrinkCarry: Float64Array;
  /** Guaranteed sale: units that may come back, the sum held for them, the carry of the rate. */
  heldUnits: Float64Array;
  heldAmount: Float64Array;
  heldCarry: Float64Array;
  /** Arrivals, a round of weeks: as many as the longest transit and the longest look back of returns need. */
  arriving: Float64Array;
  arrivingWeeks: number;
  returnLag: number;
  count: number;
}

const SERIES = 10;

/** Places of memory that newCells() cuts its series from. */
export function cellPlaces({ hot }: Compiled): number {
  return hot.places * (SERIES + roundOf(hot));
}

/** Weeks of arrivals that are known at once. */
function roundOf({ longestTransit, longestReturnLag }: Compiled['hot']): number {
  return longestTransit + longestReturnLag + 1;
}

/** All cells before the first week. */
export function newCells({ cells, depots, hot }: Compiled, series: CutSeries): CellStates {
  const { places: count, longestReturnLag } = hot;
  const arrivingWeeks = roundOf(hot);
  const states: CellStates = {
    stock: series(count),
    transit: series(count),
    open: series(count),
    freeLeft: series(count),
    returnCarry: series(count),
    resaleCarry: series(count),
    shrinkCarry: series(count),
    heldUnits: series(count),
    heldAmount: series(count),
    heldCarry: series(count),
    arriving: series(count * arrivingWeeks),
    arrivingWeeks,
    returnLag: longestReturnLag,
    count,
  };
  cells.forEach((cell, index) => {
    states.stock[index] = cell.openingStock;
    states.freeLeft[index] = cell.freeUnits;
  });
  for (const { place, openingStock } of depots) states.stock[place] = openingStock;
  return states;
}

/** Where a week's arrivals begin in their round. */
export function arrivalsFrom(cells: CellStates, week: number): number {
  return (week % cells.arrivingWeeks) * cells.count;
}

/** The same so many weeks on, fewer than the round has, from where one week's begin: without a division. */
export function arrivalsLater(cells: CellStates, from: number, weeks: number): number {
  const later = from + weeks * cells.count;
  const round = cells.arrivingWeeks * cells.count;
  return later < round ? later : later - round;
}

/** At the end of a week: the arrivals no return looks back at any more give their place to weeks to come. */
export function forgetArrivals(cells: CellStates, week: number): void {
  const past = week - cells.returnLag;
  if (past < 0) return;
  const from = arrivalsFrom(cells, past);
  cells.arriving.fill(0, from, from + cells.count);
}

/** Add to an array's place. */
export function plus(series: Float64Array, place: number, amount: number): void {
  series[place] = (series[place] ?? 0) + amount;
}
