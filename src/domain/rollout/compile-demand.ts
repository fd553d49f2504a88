// The cells as the inner loops read them, an array a quantity, and what each cell's demand is made of (see HotCells and
// CellDemand). Worked figure: 288 cells of 96 cohorts share the cohorts' doors: 96 x 140 places, not 288 x 140.
import type { Account, Item, Listing, Plan } from '../plan/index.ts';
import { aheadWeeks, displayLiftAt, fillPerDoor, promotionByWeek, seasonByWeek } from './cells.ts';
import type { Cell, CellDemand, Cohort, Compiled, CompiledDepot, HotCells } from './compiled.ts';
import { LONGEST_AHEAD } from './wants.ts';

interface HotArgs {
  cells: readonly Cell[];
  listings: Compiled['listings'];
  depots: readonly CompiledDepot[];
  doors: Int32Array;
  doorsKnown: number;
}

export function hotCells({ cells, listings, depots, doors, doorsKnown }: HotArgs): HotCells {
  const count = cells.length;
  const places = count + depots.length;
  const hot: HotCells = {
    count,
    places,
    account: new Int32Array(places),
    listing: new Int32Array(places),
    item: new Int32Array(places),
    multiple: new Int32Array(places),
    transitWeeks: new Int32Array(places),
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
    hot.multiple[index] = cell.multiple;
    hot.transitWeeks[index] = cell.transitWeeks;
    hot.openWeek[index] = cell.openWeek;
    hot.doorsFrom[index] = cell.cohort * doorsKnown;
    hot.firstOfListing[cell.listing] = index;
    hot.someWithoutTransit ||= cell.transitWeeks === 0;
    hot.longestTransit = Math.max(hot.longestTransit, cell.transitWeeks);
  }
  for (const { place, account, listing, item, multiple, transitWeeks } of depots) {
    hot.account[place] = account;
    hot.listing[place] = listing;
    hot.item[place] = item;
    hot.multiple[place] = multiple;
    hot.transitWeeks[place] = transitWeeks;
    hot.longestTransit = Math.max(hot.longestTransit, transitWeeks);
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
  const terms = plan.accounts.flatMap((account) => {
    const displayByAge = displayAges(account);
    return account.listings.map((listing) => termsOf({ plan, account, listing, displayByAge, ahead }));
  });
  return compiled.cells.map(({ cohort, item, listing }) => {
    const own = terms[listing] as ListingDemand;
    // Written out: a spread costs more than the rest of it, once a cell.
    return {
      cohort: compiled.cohorts[cohort] as Cohort,
      rate: own.rate,
      startRate: own.startRate,
      rampWeeks: own.rampWeeks,
      displayFactor: own.displayFactor,
      displayWeeks: own.displayWeeks,
      displayByAge: own.displayByAge,
      season: seasons[item] ?? null,
      promotion: own.promotion,
      aheadWeeks: own.aheadWeeks,
      fillPerDoorUnits: own.fillPerDoorUnits,
    };
  });
}

type ListingDemand = Omit<CellDemand, 'cohort' | 'season'>;

/** What the cells of one listing share. */
function termsOf(of: {
  plan: Plan;
  account: Account;
  listing: Listing;
  displayByAge: Float64Array | null;
  ahead: number;
}): ListingDemand {
  const { plan, account, listing, displayByAge, ahead } = of;
  const { display, ramp } = account;
  const item = plan.items.find(({ id }) => id === listing.itemId) as Item;
  return {
    rate: Number(listing.unitsPerStoreWeek),
    startRate: Number(ramp.startRate),
    rampWeeks: ramp.weeks,
    displayFactor: 1 + displayLiftAt(display, 0),
    displayWeeks: display ? display.weeks : 0,
    displayByAge,
    promotion: promotionByWeek(account, listing.itemId, ahead),
    aheadWeeks: aheadWeeks(account, listing.coverWeeks),
    fillPerDoorUnits: fillPerDoor(account, listing, item),
  };
}

/** 1 + lift of a display by age; null where it stays the same. */
function displayAges({ display }: Account): Float64Array | null {
  if (display === null || display.liftEndRate === null) return null;
  return Float64Array.from({ length: display.weeks }, (_, age) => 1 + displayLiftAt(display, age));
}
