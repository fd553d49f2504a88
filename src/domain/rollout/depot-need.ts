// What each depot needs at the end of its order weeks, worked out once per plan: it depends on doors only. Its stores'
// demand until the next order is there, at today's doors, and the fills that will be asked of it by then.
// Worked figure: 10 doors at 6 a week, ordering weekly, 2 weeks from us and 1 of cover: 60 x (1 + 2 + 1) = 240 units.
import type { Account, Item, Listing, Plan } from '../plan/index.ts';
import { isOrderWeek, multipleOf } from './cells.ts';
import type { Cell, CellDemand, Compiled, CompiledDepot, CompiledListing } from './compiled.ts';
import { fillOrder } from './stores.ts';
import { millionthsOf } from './wants.ts';

/** Every listing that is served from a depot, each with its place after all cells; what it needs is worked out later. */
export function depotsOf(compiled: Compiled, plan: Plan): CompiledDepot[] {
  const depots: CompiledDepot[] = [];
  compiled.listings.forEach((listing, l) => {
    const account = plan.accounts[listing.account] as Account;
    if (account.depot === null) return;
    const item = plan.items[listing.item] as Item;
    const first = compiled.accounts[listing.account]?.listings[0] ?? 0;
    const depot: CompiledDepot = {
      listing: l,
      account: listing.account,
      item: listing.item,
      index: depots.length,
      place: compiled.cells.length + depots.length,
      transitWeeks: account.depot.transitWeeks,
      multiple: multipleOf(account.depot.orderIn, item),
      minimumOrderUnits: account.depot.minimumOrderUnits,
      openingStock: openingStock(account, account.listings[l - first] as Listing),
      endWeek: endWeek(compiled, account, listing),
      need: new Float64Array(compiled.reach).fill(-1),
      free: new Float64Array(compiled.reach),
    };
    listing.depot = depot;
    depots.push(depot);
  });
  return depots;
}

function openingStock(account: Account, listing: Listing): number {
  const weeks = account.depot?.openingWeeks ?? 0;
  const units = (doors: number) => Math.round(doors * Number(listing.unitsPerStoreWeek) * weeks);
  return account.runningDoors.reduce((sum, { doors }) => sum + units(doors), 0);
}

/** The first week without a door of the account open and none to open later; none while the plan can see one. */
function endWeek(compiled: Compiled, account: Account, { account: a }: CompiledListing): number {
  const cohorts = compiled.cohorts.filter((cohort) => cohort.account === a);
  const cut = account.cutWeek ?? Number.POSITIVE_INFINITY;
  const known = compiled.hot.doorsKnown;
  const opensLater = account.waves.some(
    ({ openWeek, doors, doorsPerWeek }) =>
      openWeek < cut &&
      openWeek + Math.ceil(doors / doorsPerWeek) - 1 >= compiled.reach &&
      cut > compiled.reach,
  );
  if (cohorts.length === 0 || opensLater) return Number.POSITIVE_INFINITY;
  let last = known - 1;
  while (last >= 0 && cohorts.every(({ doors }) => doors[last] === 0)) last--;
  if (last === known - 1) return Number.POSITIVE_INFINITY;
  const everOpen = last >= 0 || cohorts.some(({ openWeek }) => openWeek < 0);
  return everOpen ? last + 1 : Number.POSITIVE_INFINITY;
}

/** Writes what every depot needs and which free units join its balance, by order week. Needs the cells' demand. */
export function writeNeeds(compiled: Compiled, plan: Plan): void {
  for (const depot of compiled.depots) {
    const account = plan.accounts[depot.account] as Account;
    const sums = newSums(compiled.reach);
    const { firstOfListing } = compiled.hot;
    const until = firstOfListing[depot.listing + 1] ?? 0;
    for (let index = firstOfListing[depot.listing] ?? 0; index < until; index++) {
      addFill(compiled, account, depot, index, sums);
      addDemand(compiled, account, index, sums);
    }
    const { firstWeek, everyWeeks } = account.ordering;
    for (let w = 0; w < compiled.reach; w++) {
      if (sums.may[w] !== 1 || !isOrderWeek(w, firstWeek, everyWeeks)) continue;
      const demand = (sums.whole[w] ?? 0) + Math.floor(((sums.millionths[w] ?? 0) + 500_000) / 1_000_000);
      depot.need[w] = demand + (sums.fills[w] ?? 0);
    }
  }
}

/** By week: whole units and millionths of demand ahead, units of fills ahead, and whether there is anything to order for. */
interface Sums {
  whole: Float64Array;
  millionths: Float64Array;
  fills: Float64Array;
  may: Uint8Array;
}

function newSums(weeks: number): Sums {
  return {
    whole: new Float64Array(weeks),
    millionths: new Float64Array(weeks),
    fills: new Float64Array(weeks),
    may: new Uint8Array(weeks),
  };
}

/** A fill counts in the weeks from which the next order would come too late for it, until its stores ask for it. */
function addFill(
  compiled: Compiled,
  account: Account,
  depot: CompiledDepot,
  index: number,
  sums: Sums,
): void {
  const cell = compiled.cells[index] as Cell;
  const units = cell.openWeek < 0 ? 0 : fillOrder(compiled, cell);
  if (units === 0) return;
  const { ordering, depot: terms } = account;
  const placed = cell.openWeek - cell.transitWeeks - 1;
  const first = placed - depot.transitWeeks - ordering.everyWeeks + 1;
  const { rate } = compiled.demand[index] as CellDemand;
  const doors = compiled.cohorts[cell.cohort]?.doorsAtOpening ?? 0;
  const laidIn = Math.round(doors * rate * (terms?.fillWeeks ?? 0));
  for (let w = Math.max(0, first); w < Math.min(placed, compiled.reach); w++) {
    sums.fills[w] = (sums.fills[w] ?? 0) + units + laidIn;
    sums.may[w] = 1;
  }
  let joins = Math.max(0, first);
  while (joins < compiled.reach && !isOrderWeek(joins, ordering.firstWeek, ordering.everyWeeks)) joins++;
  if (joins < compiled.reach) depot.free[joins] = (depot.free[joins] ?? 0) + cell.freeUnits;
}

let row = new Float64Array(0);

/** Demand of the weeks until the next order is there and of the cover, the window moved on while doors stay the same. */
function addDemand(compiled: Compiled, account: Account, index: number, sums: Sums): void {
  const { ordering, depot } = account;
  if (!depot) return;
  const cell = compiled.demand[index] as CellDemand;
  const { reach } = compiled;
  const { doors, openWeek } = cell.cohort;
  const ahead = ordering.everyWeeks + depot.transitWeeks + depot.coverWeeks;
  const arrives = 1 + depot.transitWeeks + account.terms.transitWeeks;
  if (row.length < reach + ahead + 1) row = new Float64Array(reach + ahead + 1);
  let counted = -1;
  let sum = 0;
  for (let w = 0; w < reach; w++) {
    const now = doors[w] ?? 0;
    if (now !== counted) {
      counted = now;
      millionthsOf(cell, now, w, w + ahead + 1, row);
      sum = 0;
      for (let j = 1; j <= ahead; j++) sum += row[w + j] ?? 0;
    } else if (now > 0) {
      millionthsOf(cell, now, w + ahead, w + ahead + 1, row);
      sum += (row[w + ahead] ?? 0) - (row[w] ?? 0);
    }
    // Nothing is ordered for doors that will be closed when it is there.
    if ((doors[w + arrives] ?? 0) === 0) continue;
    sums.may[w] = 1;
    if (now === 0 || w < openWeek) continue;
    const whole = Math.floor(sum / 1_000_000);
    sums.whole[w] = (sums.whole[w] ?? 0) + whole;
    sums.millionths[w] = (sums.millionths[w] ?? 0) + sum - whole * 1_000_000;
  }
}
