// One account (a chain, or a group of stores bought for together): the hands between us and its shelf, what it lists,
// when its doors open, and every term it asks for. Worked figure: 60 doors at 10 a week from week 6 are six cohorts.
import * as z from 'zod/mini';
import { allowance } from './allowance-terms.ts';
import { cut, delivery, depot, disputed, ordering, service } from './conduct.ts';
import * as f from './fields.ts';
import { standing } from './promise.ts';
import { table } from './table.ts';

/** How a hand prices; `solved` means this hand takes what the others leave. */
export const handRule = z.discriminatedUnion(
  'by',
  [
    z.strictObject({ by: z.literal('margin'), rate: f.shareBelowOne() }),
    z.strictObject({ by: z.literal('markup'), rate: f.factor() }),
    z.strictObject({ by: z.literal('fixed'), amount: f.unitAmount(), per: z.enum(['unit', 'case']) }),
    z.strictObject({ by: z.literal('solved') }),
  ],
  { error: 'a rule stated by "margin", "markup", "fixed" or "solved"' },
);

/** In order from us to the shelf; the last hand is the shelf's. */
export const hand = z.strictObject({
  id: f.id(),
  name: f.name(),
  rule: handRule,
  /** The least margin this hand says it needs, or null when it said nothing. */
  requiredMarginRate: z.nullable(f.shareBelowOne()),
});

/** Our price to the first hand: typed, a margin on landed cost, or what the shelf price leaves. */
export const listRule = z.discriminatedUnion(
  'by',
  [
    z.strictObject({ by: z.literal('price'), amount: f.positiveUnitAmount() }),
    z.strictObject({ by: z.literal('margin'), rate: f.shareBelowOne() }),
    z.strictObject({ by: z.literal('solved') }),
  ],
  { error: 'a list price stated by "price", "margin" or "solved"' },
);

export const shelfRule = z.discriminatedUnion(
  'by',
  [
    z.strictObject({ by: z.literal('price'), amount: f.positiveUnitAmount() }),
    z.strictObject({ by: z.literal('solved') }),
  ],
  { error: 'a shelf price stated by "price" or "solved"' },
);

export const pricePoints = z.strictObject({
  /** Endings of the shelf price, as amounts below 1 ("0.99"), or whole prices of an own list. */
  endings: z.array(f.unitAmount()).check(z.minLength(1, { error: 'at least one ending or price' })),
  listOfPrices: z.boolean({ error: 'true or false' }),
  move: z.enum(['nearest', 'up', 'down'], { error: '"nearest", "up" or "down"' }),
  absorbedBy: z.enum(['lastHand', 'us'], { error: '"lastHand" or "us"' }),
});

export const listing = z.strictObject({
  itemId: f.id(),
  list: listRule,
  shelf: shelfRule,
  /** Rungs that may not give way: "landed", "list", "shelf" or a hand's id. */
  lockedRungs: z.array(f.id()),
  unitsPerStoreWeek: f.rateOfSale(),
  facings: f.whole({ least: 1, most: 1000, unit: 'facings' }),
  depthUnits: f.whole({ least: 1, most: 1000, unit: 'units behind a facing' }),
  backStockUnits: f.whole({ least: 0, most: 10_000, unit: 'units' }),
  /** Weeks of supply the store orders up to, when that is more than its fill. */
  coverWeeks: f.whole({ least: 0, most: 52, unit: 'weeks' }),
  freeCasesPerDoor: f.whole({ least: 0, most: 1000, unit: 'cases per door' }),
  /** The item it takes the place of, for the retailer's side; null when unknown. */
  replaces: z.nullable(
    z.strictObject({
      unitsPerStoreWeek: f.rateOfSale(),
      shelfBeforeTaxAmount: f.unitAmount(),
      buyingAmount: f.unitAmount(),
    }),
  ),
});

export const wave = z.strictObject({
  id: f.id(),
  openWeek: f.weekIndex(),
  doors: f.whole({ least: 1, most: 100_000, unit: 'doors' }),
  doorsPerWeek: f.whole({ least: 1, most: 100_000, unit: 'doors a week' }),
});

/** Doors that already sell on the first day, with what stands on their shelves. */
export const runningDoors = z.strictObject({
  id: f.id(),
  doors: f.whole({ least: 1, most: 100_000, unit: 'doors' }),
  ageWeeks: f.whole({ least: 0, most: 1040, unit: 'weeks' }),
  unitsPerDoor: f.whole({ least: 0, most: 10_000, unit: 'units of each item' }),
});

export const terms = z.strictObject({
  paymentDays: f.whole({ least: 0, most: 365, unit: 'days' }),
  latenessDays: f.whole({ least: 0, most: 365, unit: 'days' }),
  earlyDiscount: z.nullable(
    z.strictObject({
      rate: f.shareBelowOne(),
      days: f.whole({ least: 0, most: 365, unit: 'days' }),
      takenShare: f.share(),
    }),
  ),
  transitWeeks: f.whole({ least: 0, most: 26, unit: 'weeks' }),
  /** What happens to an order we can't ship: kept as backlog, or cancelled (fills never are). */
  shortage: z.enum(['backlog', 'cancelled'], { error: '"backlog" or "cancelled"' }),
  badDebtRate: f.shareBelowOne(),
});

/** When a shipment counts as sold. */
export const sale = z.discriminatedUnion(
  'by',
  [
    z.strictObject({ by: z.literal('shipment') }),
    z.strictObject({
      by: z.literal('guaranteed'),
      expectedReturnRate: f.share(),
      reviewWeeks: f.whole({ least: 1, most: 104, unit: 'weeks after opening' }),
      resaleableShare: f.share(),
    }),
    z.strictObject({ by: z.literal('scan'), shrinkRate: f.shareBelowOne() }),
  ],
  { error: 'a sale stated by "shipment", "guaranteed" or "scan"' },
);

export const fee = z.strictObject({
  id: f.id(),
  label: f.name(),
  amount: f.sumAmount(),
  per: z.enum(['item', 'door', 'chain', 'itemDoor'], { error: '"item", "door", "chain" or "itemDoor"' }),
});

export const display = z.strictObject({
  buildAmountPerDoor: f.sumAmount(),
  freightAmountPerDoor: f.sumAmount(),
  buildWeeks: f.whole({ least: 0, most: 52, unit: 'weeks before opening' }),
  feeAmountPerStoreWeek: f.sumAmount(),
  weeks: f.whole({ least: 1, most: 104, unit: 'weeks' }),
  liftRate: f.factor(),
  /** Lift in its last week, reached in a straight line; null: it stays as it is. */
  liftEndRate: z.nullable(f.factor()),
});

export const promotion = z.strictObject({
  id: f.id(),
  label: f.name(),
  fromWeek: f.weekIndex(),
  weeks: f.whole({ least: 1, most: 52, unit: 'weeks' }),
  depthRate: f.shareBelowOne(),
  fundedShare: f.share(),
  fundedBy: z.enum(['scanBack', 'offInvoice'], { error: '"scanBack" or "offInvoice"' }),
  /** Weeks before it starts in which an off-invoice price can already be bought. */
  buyInWeeks: f.whole({ least: 0, most: 12, unit: 'weeks' }),
  lagWeeks: f.whole({ least: 0, most: 52, unit: 'weeks' }),
  liftRate: f.factor(),
  /** The items on promotion; null: all that are listed. */
  itemIds: z.nullable(z.array(f.id()).check(z.minLength(1, { error: 'at least one item, or null for all' }))),
  /** Of the extra units, the share taken from items of ours beside it that are not on promotion. */
  sisterShare: f.share(),
  dipShare: f.share(),
  dipWeeks: f.whole({ least: 0, most: 26, unit: 'weeks' }),
});

export const account = z.strictObject({
  id: f.id(),
  name: f.name(),
  priority: f.whole({ least: 1, most: 99, unit: 'places, 1 ships first' }),
  hands: z.array(hand).check(z.minLength(1, { error: 'at least one hand, the shelf’s' })),
  pricePoints: z.nullable(pricePoints),
  listings: z.array(listing).check(z.minLength(1, { error: 'at least one listed item' })),
  waves: z.array(wave),
  runningDoors: z.array(runningDoors),
  attritionYearlyRate: f.shareBelowOne(),
  /** The week the chain takes us off its shelves, or null. */
  cutWeek: z.nullable(f.weekIndex()),
  /** Doors planned to close before that, newest first. */
  cuts: z.array(cut),
  /** Money per invoiced value of what stands in closed doors, for marking it down, where the chain keeps it. */
  exitMarkdownRate: f.share(),
  /** Authorised doors where it is not on the shelf: they are neither filled nor sell. */
  voidRate: f.shareBelowOne(),
  closedStock: z.enum(['kept', 'credited', 'ours'], { error: '"kept", "credited" or "ours"' }),
  ramp: z.strictObject({
    startRate: f.share(),
    weeks: f.whole({ least: 0, most: 104, unit: 'weeks' }),
  }),
  terms,
  ordering,
  depot: z.nullable(depot),
  delivery: z.nullable(delivery),
  service: z.nullable(service),
  disputed: z.nullable(disputed),
  /** Most it may owe us: what would pass it waits; null: no limit. */
  creditLimitAmount: z.nullable(f.sumAmount()),
  sale,
  allowances: z.array(allowance),
  slotting: z.nullable(
    z.strictObject({
      amount: f.sumAmount(),
      per: z.enum(['item', 'door', 'chain', 'itemDoor'], {
        error: '"item", "door", "chain" or "itemDoor"',
      }),
      settled: z.enum(['atOpening', 'offRemittances'], { error: '"atOpening" or "offRemittances"' }),
    }),
  ),
  freeFill: z.strictObject({
    settled: z.enum(['free', 'billedBack'], { error: '"free" or "billedBack"' }),
    lagWeeks: f.whole({ least: 0, most: 52, unit: 'weeks' }),
  }),
  openingFees: z.array(fee),
  display: z.nullable(display),
  promotions: z.array(promotion),
  deal: z.strictObject({
    termWeeks: f.whole({ least: 1, most: 260, unit: 'weeks' }),
    hurdleAmount: f.sumAmount(),
  }),
  /** The talks with this account, or null before any. */
  table: z.nullable(table),
  /** How far it is agreed; null where nobody has said. */
  standing: z.nullable(standing),
});
