// What deliveries by drop and pallet cost a unit scanned, at the full rate of sale with all doors open: what the weekly
// pass pays week by week, told as one figure a unit so that a deal can be judged before it is shipped. One figure for all
// items of the account, since they travel together. It stands still where break-even moves the rate of sale.
// Worked figure: ten doors at 6 a week take 5 cases of 12 a week: 5 drops at 4.255 and a pallet begun at 30.00 are
// 51.275 over 60 units, 0.8546 a unit.
import { type Decimal, ZERO } from '../money/decimal.ts';
import type { Account, Item, Plan } from '../plan/index.ts';
import { multipleOf } from '../rollout/cells.ts';
import { nearest } from './curve.ts';
import type { StoreWeeks } from './store-weeks.ts';

/** From one order to the next, at the full rate of sale. */
export interface Delivery {
  doors: number;
  /** Weeks from order to order. */
  everyWeeks: number;
  /** Means: a slow seller is not delivered to every door each time, nor is a depot with a large least order. */
  drops: number;
  pallets: number;
  units: number;
  /** In the plan's currency, 4 decimals. */
  perUnit: Decimal;
}

/** Null where nothing is paid by the drop or pallet, the buyer picks up, or no door opens. */
export function deliveryOf(args: { plan: Plan; account: Account; stores: StoreWeeks }): Delivery | null {
  const { plan, account, stores } = args;
  const { delivery, depot, ordering, allowances } = account;
  const pickUp = allowances.some((each) => each.kind === 'freightAllowance' && each.pickUp);
  if (delivery === null || pickUp) return null;
  const doors = stores.open.reduce((most, now) => Math.max(most, now), 0);
  if (doors === 0) return null;
  const { everyWeeks } = ordering;
  let units = 0;
  let pallets = 0;
  let multiplesPerDoor = 0;
  let ofDepot = 0;
  for (const listing of account.listings) {
    const item = plan.items.find(({ id }) => id === listing.itemId);
    if (!item) continue;
    const perDoor = Number(listing.unitsPerStoreWeek) * everyWeeks;
    const wanted = perDoor * doors;
    const least = leastOrder(account, item);
    const share = Math.min(1, wanted / least);
    units += wanted;
    pallets += share * Math.ceil(Math.max(wanted, least) / (item.caseUnits * item.palletCases) - NOISE);
    multiplesPerDoor += perDoor / multipleOf(ordering.orderIn, item);
    ofDepot = Math.max(ofDepot, share);
  }
  const drops = depot ? ofDepot : doors * Math.min(1, multiplesPerDoor);
  const amount = drops * Number(delivery.amountPerDrop) + pallets * Number(delivery.amountPerPallet);
  return { doors, everyWeeks, drops, pallets, units, perUnit: nearest(amount / units, 4) };
}

/** What doubles leave of a whole number of pallets. */
const NOISE = 1e-9;

/** The same, as money alone: nothing where there is no delivery to pay. */
export function deliveryPerUnit(args: { plan: Plan; account: Account; stores: StoreWeeks }): Decimal {
  return deliveryOf(args)?.perUnit ?? ZERO;
}

/** The fewest units of an item that leave at once: a multiple ordered in, or what the depot takes at least. */
function leastOrder({ depot, ordering }: Account, item: Item): number {
  if (!depot) return multipleOf(ordering.orderIn, item);
  return Math.max(depot.minimumOrderUnits, multipleOf(depot.orderIn, item));
}
