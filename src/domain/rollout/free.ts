// The pass without limits: every order ships the week after it is placed. It gives U, the units of each item shippable
// in each week, which purchase orders are planned on, and the shelf stock the retailer's side is judged by. Cells don't
// touch each other here, so each runs through all its weeks alone.
import type { Compiled } from './compiled.ts';
import { arrive, closingUnits, fillOrder, reorder, sell } from './stores.ts';
import { takeReturns } from './returns.ts';
import type { CellState } from './state.ts';

export interface FreeRun {
  /** [item][week], to the compiled reach. */
  shippable: Float64Array[];
  /** By listing: shelf stock summed over its cells at the 52 week-ends from its first opening, and the door-weeks. */
  shelf: { stock: number; doorWeeks: number }[];
}

export function freeRun(compiled: Compiled): FreeRun {
  const run: FreeRun = {
    shippable: compiled.items.map(() => new Float64Array(compiled.reach + 1)),
    shelf: compiled.listings.map(() => ({ stock: 0, doorWeeks: 0 })),
  };
  const firstWeeks = compiled.accounts.map((account) =>
    Math.max(0, Math.min(...account.cohorts.map((c) => compiled.cohorts[c]?.openWeek ?? 0))),
  );
  compiled.cells.forEach((_, index) => {
    runCell(compiled, index, run, firstWeeks);
  });
  return run;
}

function runCell(compiled: Compiled, index: number, run: FreeRun, firstWeeks: readonly number[]): void {
  const cell = compiled.cells[index];
  const cohort = cell && compiled.cohorts[cell.cohort];
  const shippable = cell && run.shippable[cell.item];
  const shelf = cell && run.shelf[cell.listing];
  if (!cell || !cohort || !shippable || !shelf) throw new Error(`cell ${index} is not compiled`);
  const returns = compiled.listings[cell.listing]?.returns ?? null;
  const first = firstWeeks[cell.account] ?? 0;
  const state = emptyCell(cell.openingStock, compiled.reach + cell.transitWeeks + 1);
  for (let week = -1; week < compiled.reach; week++) {
    if (week >= 0) {
      state.stock -= closingUnits(cohort, state, week);
      shipOpen(state, shippable, week, cell.transitWeeks);
      arrive(cohort, state, week);
      if (returns) takeReturns({ state, returns, week });
      sell(cell, state, week);
      if (week >= first && week < first + 52) {
        shelf.stock += state.stock;
        shelf.doorWeeks += cohort.doors[week] ?? 0;
      }
    }
    state.open += fillOrder(cell, cohort, week);
    if (week >= 0) state.open += reorder({ cell, cohort, state, week });
  }
}

/** Ship all that is open; with no transit it arrives in the same week. */
function shipOpen(state: CellState, shippable: Float64Array, week: number, transitWeeks: number): void {
  const units = state.open;
  if (units === 0) return;
  shippable[week] = (shippable[week] ?? 0) + units;
  state.open = 0;
  state.transit += units;
  state.arriving[week + transitWeeks] = (state.arriving[week + transitWeeks] ?? 0) + units;
}

function emptyCell(stock: number, weeks: number): CellState {
  return {
    stock,
    transit: 0,
    arriving: new Float64Array(weeks),
    open: 0,
    freeLeft: 0,
    demandCarry: 0,
    returnCarry: 0,
    resaleCarry: 0,
    shrinkCarry: 0,
    heldUnits: 0,
    heldAmount: 0,
    heldCarry: 0,
  };
}
