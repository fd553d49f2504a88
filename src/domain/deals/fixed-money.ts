// The money a deal asks for whatever is sold: slotting, opening fees, free fill, displays. Each is a line with its
// reason, and a sum by week from the first opening: what is per door is put down as each door opens, what is per chain
// or per item at the first opening, display fees week by week while the display stands.
// Worked figure: 250 a door and 40 doors in two weeks are 5,000 in the first week and 5,000 in the second.
import type { LadderResult } from '../ladder/types.ts';
import { Decimal, numberOf, ZERO } from '../money/decimal.ts';
import { onGrid } from '../money/grid.ts';
import { kept } from '../money/kept.ts';
import type { Account, Item, Listing, Plan } from '../plan/index.ts';
import { fillPerDoor, freePerDoor } from '../rollout/cells.ts';
import type { StoreWeeks } from './store-weeks.ts';
import type { FixedLine } from './types.ts';
import { wayOutPerUnit } from './unit-money.ts';

export interface FixedMoney {
  lines: readonly FixedLine[];
  /** In the plan's currency, by week from the first opening. */
  byWeek: Float64Array;
  /** Of that, what the retailer keeps as money. */
  theirsByWeek: Float64Array;
}

interface Timed {
  line: FixedLine;
  byWeek: Float64Array;
  keptByRetailer: boolean;
}

export function fixedMoney(args: {
  plan: Plan;
  account: Account;
  ladders: readonly LadderResult[];
  stores: StoreWeeks;
}): FixedMoney {
  const { account, stores } = args;
  const timed =
    stores.newDoors === 0
      ? []
      : [...slottingAndFees(account, stores), ...freeFill(args), ...displayLines(account, stores)];
  const sum = (each: readonly Timed[]) => {
    const total = new Float64Array(stores.weeks);
    for (const { byWeek } of each)
      for (let w = 0; w < total.length; w++) total[w] = (total[w] ?? 0) + (byWeek[w] ?? 0);
    return total;
  };
  return {
    lines: timed.map(({ line }) => line),
    byWeek: sum(timed),
    theirsByWeek: sum(timed.filter(({ keptByRetailer }) => keptByRetailer)),
  };
}

function slottingAndFees(account: Account, stores: StoreWeeks): Timed[] {
  const asked = [
    ...(account.slotting ? [{ id: 'slotting', label: 'Slotting', ...account.slotting }] : []),
    ...account.openingFees,
  ];
  const items = account.listings.length;
  const ways = {
    chain: { times: 1, perDoor: false, words: 'once for the chain' },
    item: { times: items, perDoor: false, words: `an item, ${items} listed` },
    door: { times: 1, perDoor: true, words: `a door, ${stores.newDoors} doors` },
    itemDoor: {
      times: items,
      perDoor: true,
      words: `an item and door, ${items} listed, ${stores.newDoors} doors`,
    },
  };
  return asked
    .filter(({ amount }) => !kept(amount).isZero())
    .map(({ id, label, amount, per }) => {
      const way = ways[per];
      const each = kept(amount).times(way.times);
      const total = way.perDoor ? each.times(stores.newDoors) : each;
      return {
        line: { id, label, amount: total, reason: `${amount} ${way.words}`, owner: 'theirs' as const },
        byWeek: way.perDoor ? atOpenings(each, stores) : atFirstOpening(each, stores),
        keptByRetailer: true,
      };
    });
}

/**
 * Free goods cost what they landed at and their way to the shelf. Billed back by a distributor they cost its selling
 * price too, less the invoice it paid us for them. They can't be more than the opening fill.
 */
function freeFill(args: {
  plan: Plan;
  account: Account;
  ladders: readonly LadderResult[];
  stores: StoreWeeks;
}): Timed[] {
  return args.account.listings.flatMap((listing, index) => {
    const ladder = args.ladders[index];
    const item = args.plan.items.find(({ id }) => id === listing.itemId);
    if (!ladder || !item) return [];
    const units = freePerDoor(args.account, listing, item);
    if (units === 0) return [];
    const unitCost = freeUnitCost(ladder, args.account.freeFill.settled);
    const perDoor = unitCost.times(units);
    return {
      line: {
        id: `free-fill-${listing.itemId}`,
        label: `Free fill, ${item.name}`,
        amount: perDoor.times(args.stores.filledDoors),
        reason: `${units} units a door at ${unitCost.toFixed(4)}, ${args.stores.filledDoors} doors`,
        owner: 'theirs' as const,
      },
      byWeek: args.stores.fillings.map((doors) => doors * numberOf(perDoor)),
      keptByRetailer: false, // goods, not money: counted at the retailer's own cost in its figures
    };
  });
}

function freeUnitCost(ladder: LadderResult, settled: Account['freeFill']['settled']): Decimal {
  const billed =
    settled === 'billedBack'
      ? onGrid(ladder.forPass.firstHandSellsTenThousandths).minus(ladder.invoice)
      : ZERO;
  return ladder.landed.unit.plus(billed).plus(costToShelf(ladder));
}

/** Freight out and picking, and broker or royalty where they are owed on free goods too, per unit. */
function costToShelf(ladder: LadderResult): Decimal {
  return ladder.forPass.charges.reduce((sum, { charge }) => {
    if (charge.settles !== 'monthly' && charge.settles !== 'quarterly') return sum;
    if (!charge.onFreeGoods) return sum;
    const share = ladder.invoice.times(charge.rateMillionths).div(1_000_000);
    return sum.plus(share).plus(onGrid(charge.priceTenThousandths));
  }, wayOutPerUnit(ladder));
}

function displayLines(account: Account, stores: StoreWeeks): Timed[] {
  const display = account.display;
  if (!display) return [];
  const doors = `${stores.newDoors} doors`;
  const once = (id: string, label: string, amount: string, owner: FixedLine['owner']): Timed => ({
    line: {
      id,
      label,
      amount: kept(amount).times(stores.newDoors),
      reason: `${amount} a door, ${doors}`,
      owner,
    },
    byWeek: atOpenings(kept(amount), stores),
    keptByRetailer: false,
  });
  const storeWeeks = stores.withDisplay.reduce((sum, doorsNow) => sum + doorsNow, 0);
  const fee = Number(display.feeAmountPerStoreWeek);
  const fees: Timed = {
    line: {
      id: 'display-fees',
      label: 'Display fees',
      amount: kept(display.feeAmountPerStoreWeek).times(new Decimal(storeWeeks)).toDecimalPlaces(4),
      reason: `${display.feeAmountPerStoreWeek} a store and week, ${display.weeks} weeks, ${doors}`,
      owner: 'theirs',
    },
    byWeek: stores.withDisplay.map((doorsNow) => doorsNow * fee),
    keptByRetailer: true,
  };
  const lines = [
    once('display-build', 'Display, built', display.buildAmountPerDoor, 'atRisk'),
    once('display-freight', 'Display, freight', display.freightAmountPerDoor, 'between'),
    fees,
  ];
  return lines.filter(({ line }) => !line.amount.isZero());
}

function atOpenings(perDoor: Decimal, stores: StoreWeeks): Float64Array {
  const each = numberOf(perDoor);
  return stores.openings.map((doors) => doors * each);
}

function atFirstOpening(amount: Decimal, stores: StoreWeeks): Float64Array {
  const byWeek = new Float64Array(stores.weeks);
  byWeek[0] = numberOf(amount);
  return byWeek;
}

/** The fill each door pays for, in units. */
export function paidFillPerDoor(account: Account, listing: Listing, item: Item): number {
  return fillPerDoor(account, listing, item) - freePerDoor(account, listing, item);
}
