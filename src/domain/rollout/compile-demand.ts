// Demand and order-up-to level of every cell, laid out for the inner loops (see HotCells).
// Worked figure: 288 cells over a reach of 113 weeks are three arrays of 32,544 places.
import type { Listing, Plan } from '../plan/index.ts';
import { fillDemandAndTarget, fillPerDoor, LONGEST_TRANSIT, promotionByWeek, seasonByWeek } from './cells.ts';
import type { Cell, Cohort, Compiled, HotCells } from './compiled.ts';

/** Empty arrays for so many cells. */
export function hotCells(cells: readonly Cell[], reach: number): HotCells {
  const count = cells.length;
  return {
    count,
    account: Int32Array.from(cells, (cell) => cell.account),
    listing: Int32Array.from(cells, (cell) => cell.listing),
    item: Int32Array.from(cells, (cell) => cell.item),
    caseUnits: Int32Array.from(cells, (cell) => cell.caseUnits),
    transitWeeks: Int32Array.from(cells, (cell) => cell.transitWeeks),
    openWeek: Int32Array.from(cells, (cell) => cell.openWeek),
    someWithoutTransit: cells.some((cell) => cell.transitWeeks === 0),
    doors: new Int32Array(count * (reach + LONGEST_TRANSIT)),
    demand: new Float64Array(count * reach),
    target: new Float64Array(count * reach),
  };
}

/** Demand and order-up-to level of every cell. */
export function addDemand(compiled: Compiled, plan: Plan): void {
  const { reach, cells } = compiled;
  const hot = hotCells(cells, reach);
  compiled.hot = hot;
  const ahead = reach + LONGEST_AHEAD;
  const seasons = plan.items.map((item) => seasonByWeek(item, compiled.startDay, ahead));
  plan.accounts.forEach((account, a) => {
    const promotion = promotionByWeek(account, ahead);
    const firstListing = compiled.accounts[a]?.listings[0] ?? 0;
    for (const index of compiled.accounts[a]?.cells ?? []) {
      const cell = cells[index] as Cell;
      const listing = account.listings[cell.listing - firstListing] as Listing;
      fillDemandAndTarget({
        account,
        listing,
        cohort: compiled.cohorts[cell.cohort] as Cohort,
        fillPerDoorUnits: fillPerDoor(listing, cell.caseUnits),
        season: seasons[cell.item] ?? null,
        promotion,
        reach,
        hot,
        cell: index,
      });
    }
  });
}

/** An order looks ahead at most 1 + 26 weeks of transit + 52 of cover. */
const LONGEST_AHEAD = 80;
