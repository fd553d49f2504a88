// The cells as the inner loops read them, an array a quantity, and what each cell's demand is made of (see HotCells and
// CellDemand). Worked figure: 288 cells of 96 cohorts share the cohorts' doors: 96 x 140 places, not 288 x 140.
import type { Listing, Plan } from '../plan/index.ts';
import { fillPerDoor, promotionByWeek, seasonByWeek } from './cells.ts';
import type { Cell, CellDemand, Cohort, Compiled, HotCells } from './compiled.ts';
import { LONGEST_AHEAD } from './wants.ts';

interface HotArgs {
  cells: readonly Cell[];
  listings: Compiled['listings'];
  doors: Int32Array;
  doorsKnown: number;
}

export function hotCells({ cells, listings, doors, doorsKnown }: HotArgs): HotCells {
  const count = cells.length;
  const hot: HotCells = {
    count,
    account: new Int32Array(count),
    listing: new Int32Array(count),
    item: new Int32Array(count),
    caseUnits: new Int32Array(count),
    transitWeeks: new Int32Array(count),
    openWeek: new Int32Array(count),
    firstOfListing: new Int32Array(listings.length + 1).fill(count),
    someWithoutTransit: false,
    longestTransit: 0,
    longestReturnLag: 0,
    doors,
    doorsKnown,
    doorsFrom: new Int32Array(count),
  };
  for (let index = count - 1; index >= 0; index--) {
    const cell = cells[index] as Cell;
    hot.account[index] = cell.account;
    hot.listing[index] = cell.listing;
    hot.item[index] = cell.item;
    hot.caseUnits[index] = cell.caseUnits;
    hot.transitWeeks[index] = cell.transitWeeks;
    hot.openWeek[index] = cell.openWeek;
    hot.doorsFrom[index] = cell.cohort * doorsKnown;
    hot.firstOfListing[cell.listing] = index;
    hot.someWithoutTransit ||= cell.transitWeeks === 0;
    hot.longestTransit = Math.max(hot.longestTransit, cell.transitWeeks);
  }
  // A listing without doors begins where the next one does.
  for (let l = listings.length - 1; l >= 0; l--) {
    const next = hot.firstOfListing[l + 1] ?? count;
    hot.firstOfListing[l] = Math.min(hot.firstOfListing[l] ?? count, next);
    hot.longestReturnLag = Math.max(hot.longestReturnLag, listings[l]?.returns?.lagWeeks ?? 0);
  }
  return hot;
}

/** What demand is made of, by cell. */
export function demandOfCells(compiled: Compiled, plan: Plan): CellDemand[] {
  const ahead = compiled.reach + LONGEST_AHEAD;
  const seasons = plan.items.map((item) => seasonByWeek(item, compiled.startDay, ahead));
  const promotions = plan.accounts.map((account) => promotionByWeek(account, ahead));
  return compiled.cells.map((cell) => {
    const account = plan.accounts[cell.account] as Plan['accounts'][number];
    const firstListing = compiled.accounts[cell.account]?.listings[0] ?? 0;
    const listing = account.listings[cell.listing - firstListing] as Listing;
    const { display } = account;
    return {
      cohort: compiled.cohorts[cell.cohort] as Cohort,
      rate: Number(listing.unitsPerStoreWeek),
      startRate: Number(account.ramp.startRate),
      rampWeeks: account.ramp.weeks,
      displayFactor: display ? 1 + Number(display.liftRate) : 1,
      displayWeeks: display ? display.weeks : 0,
      season: seasons[cell.item] ?? null,
      promotion: promotions[cell.account] ?? null,
      aheadWeeks: 1 + account.terms.transitWeeks + listing.coverWeeks,
      fillPerDoorUnits: fillPerDoor(listing, cell.caseUnits),
    };
  });
}
