// Stock and open orders of every cell as the pass carries them from week to week, and the pass without limits too.
// Worked figure: 288 cells over 104 weeks with a week in transit hold 288 x 106 places of arrivals.
import type { Compiled } from './compiled.ts';

/** Stock and open orders of every cell, an array a quantity: the inner loops run over these. */
export interface CellStates {
  stock: Float64Array;
  transit: Float64Array;
  /** Units ordered and not shipped. */
  open: Float64Array;
  /** Free units of the fill still to ship. */
  freeLeft: Float64Array;
  /** Fractions waiting for the next unit, in millionths. */
  demandCarry: Float64Array;
  returnCarry: Float64Array;
  resaleCarry: Float64Array;
  shrinkCarry: Float64Array;
  /** Guaranteed sale: units that may come back, the sum held for them, the carry of the rate. */
  heldUnits: Float64Array;
  heldAmount: Float64Array;
  heldCarry: Float64Array;
  /** Arrivals at [week x cells + cell]. */
  arriving: Float64Array;
  count: number;
}

/** All cells before the first week; `weeks` is how long this run goes on. */
export function newCells(compiled: Compiled, weeks: number): CellStates {
  const count = compiled.cells.length;
  const span = weeks + 1 + Math.max(0, ...compiled.cells.map((cell) => cell.transitWeeks));
  return {
    stock: Float64Array.from(compiled.cells, (cell) => cell.openingStock),
    transit: new Float64Array(count),
    open: new Float64Array(count),
    freeLeft: Float64Array.from(compiled.cells, (cell) => cell.freeUnits),
    demandCarry: new Float64Array(count),
    returnCarry: new Float64Array(count),
    resaleCarry: new Float64Array(count),
    shrinkCarry: new Float64Array(count),
    heldUnits: new Float64Array(count),
    heldAmount: new Float64Array(count),
    heldCarry: new Float64Array(count),
    arriving: new Float64Array(count * span),
    count,
  };
}

/** Add to an array's place. */
export function plus(series: Float64Array, place: number, amount: number): void {
  series[place] = (series[place] ?? 0) + amount;
}
