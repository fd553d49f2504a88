// How an account really behaves: how often and in what it orders, a depot between us and its stores, what it charges
// for short deliveries, what it deducts that isn't owed. Null, or nothing, where it does none of it.
// Worked figure: ordering every second week, a store looks 2 + transit + cover weeks ahead instead of 1.
import * as z from 'zod/mini';
import * as f from './fields.ts';

export const orderIn = () => z.enum(['case', 'layer', 'pallet'], { error: '"case", "layer" or "pallet"' });

/** `everyWeeks` weeks from one order to the next, counted from `firstWeek`; `daily`: it need not wait a week to look again. */
export const ordering = z.strictObject({
  everyWeeks: f.whole({ least: 1, most: 13, unit: 'weeks from order to order' }),
  firstWeek: f.weekIndex(),
  daily: z.boolean({ error: 'true or false' }),
  orderIn: orderIn(),
});

/** Stock between us and the stores, the chain's or a distributor's. Invoiced when it leaves us for there. */
export const depot = z.strictObject({
  keptBy: z.enum(['chain', 'distributor'], { error: '"chain" or "distributor"' }),
  /** From us to the depot; `terms.transitWeeks` is from there to the shelf. */
  transitWeeks: f.whole({ least: 0, most: 26, unit: 'weeks' }),
  /** Weeks of mature sale of the doors already open that lie there on the first day. */
  openingWeeks: f.whole({ least: 0, most: 52, unit: 'weeks of sale' }),
  /** Weeks of mature sale laid in for each opening door, beside its fill. */
  fillWeeks: f.whole({ least: 0, most: 52, unit: 'weeks of sale' }),
  coverWeeks: f.whole({ least: 0, most: 52, unit: 'weeks' }),
  minimumOrderUnits: f.whole({ least: 0, most: 10_000_000, unit: 'units' }),
  orderIn: orderIn(),
});

/** What a delivery costs beside its freight per unit: a sum a drop, a sum a pallet begun. */
export const delivery = z.strictObject({
  amountPerDrop: f.sumAmount(),
  amountPerPallet: f.sumAmount(),
});

/** Below `leastFillRate` of what was due in a week, a charge on the value that was short. */
export const service = z.strictObject({
  leastFillRate: f.share(),
  chargeRate: f.share(),
  lagWeeks: f.whole({ least: 0, most: 52, unit: 'weeks' }),
});

/** Deductions that aren't owed: a share of every invoice, of which a share is recovered some weeks after. */
export const disputed = z.strictObject({
  wrongRate: f.shareBelowOne(),
  recoveredShare: f.share(),
  recoveryWeeks: f.whole({ least: 0, most: 104, unit: 'weeks' }),
});

export const cut = z.strictObject({
  id: f.id(),
  week: f.weekIndex(),
  doors: f.whole({ least: 1, most: 100_000, unit: 'doors' }),
});
