// The cells of a plan: one a listed item and cohort, what each is filled with, the order they ship in, and the weeks in
// which something leaves their shelves. Worked figure: 96 cohorts of an account that lists 3 items are 288 cells.
import type { Account, Item, Listing, Plan } from '../plan/index.ts';
import { fillPerDoor, freePerDoor, multipleOf } from './cells.ts';
import type { Cell, Cohort, Compiled, CompiledAccount, CompiledItem } from './compiled.ts';

interface CellArgs {
  plan: Plan;
  a: number;
  account: Account;
  listing: Listing;
  listingIndex: number;
  item: number;
  cohorts: readonly Cohort[];
  firstCohort: number;
}

/** One cell a cohort of this listing. */
export function addCells(compiled: Compiled, args: CellArgs): void {
  const { plan, a, account, listing, listingIndex, item, cohorts, firstCohort } = args;
  const packed = plan.items[item] as Item;
  const multiple = multipleOf(account.ordering.orderIn, packed);
  const perDoor = fillPerDoor(account, listing, packed);
  const free = freePerDoor(account, listing, packed);
  cohorts.forEach((cohort, c) => {
    const running = account.runningDoors[c];
    compiled.cells.push({
      account: a,
      listing: listingIndex,
      item,
      cohort: firstCohort + c,
      multiple,
      transitWeeks: account.terms.transitWeeks,
      openWeek: cohort.openWeek,
      fillUnits: running ? 0 : perDoor * cohort.doorsAtOpening,
      freeUnits: running ? 0 : free * cohort.doorsAtOpening,
      openingStock: running ? cohort.doorsAtOpening * running.unitsPerDoor : 0,
    });
  });
}

/** Shipping order of each item: account priority, then file order; a listing's cells stand side by side. */
export function orderCells(compiled: Compiled, plan: Plan): void {
  const { firstOfListing } = compiled.hot;
  // The sort is stable: accounts of one priority keep their file order.
  const order = compiled.accounts.map((_, a) => a);
  order.sort((x, y) => (plan.accounts[x]?.priority ?? 99) - (plan.accounts[y]?.priority ?? 99));
  for (const a of order) {
    for (const l of compiled.accounts[a]?.listings ?? []) {
      const item = compiled.items[compiled.listings[l]?.item ?? -1] as CompiledItem;
      item.byPriority.push(l);
      for (let index = firstOfListing[l] ?? 0; index < (firstOfListing[l + 1] ?? 0); index++) {
        const cell = compiled.cells[index] as Cell;
        item.fillsByWeek[cell.openWeek - cell.transitWeeks]?.push(index);
      }
    }
  }
}

export function closingsOf(compiled: Compiled): number[][] {
  const closings: number[][] = Array.from({ length: compiled.weeks }, () => []);
  compiled.cells.forEach((cell, index) => {
    const account = compiled.accounts[cell.account] as CompiledAccount;
    const { closingWeeks } = compiled.cohorts[cell.cohort] as Cohort;
    for (const week of closingWeeks) closings[week]?.push(index);
    if (account.sale !== 'guaranteed') return;
    const review = cell.openWeek + account.reviewWeeks;
    if (review >= 0 && !closingWeeks.includes(review)) closings[review]?.push(index);
  });
  return closings;
}
