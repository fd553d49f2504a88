// What speaks for the plan: scans of pilot stores, how far each account is agreed, what is sold today, what somebody
// promised, and how far things may come out otherwise. None of it changes a result of the plan itself.
// Worked figure: units [12, null, 9], opened in its first week: two weeks counted, the second one not seen, 21 units.
import * as z from 'zod/mini';
import * as f from './fields.ts';

const unitsSold = () => f.whole({ least: 0, most: 100_000, unit: 'units in a week' });
/** Places of weeks in `units`, from 0. */
const weekPlaces = () =>
  z.array(f.whole({ least: 0, most: 155, unit: 'weeks from the first' })).check(z.maxLength(156));

/** One item in one store, week after week. Opening fills are no scans: only what shoppers took counts. */
export const scan = z.strictObject({
  id: f.id(),
  itemId: f.id(),
  /** The chain it belongs to, where that is an account of the plan. */
  accountId: z.nullable(f.id()),
  store: f.name(),
  /** First day of its first week. */
  firstDate: f.isoDate(),
  /** Whether it first stood on the shelf in that week: then its first weeks are opening weeks. */
  opened: z.boolean({ error: 'true or false' }),
  /** Week by week; null: not seen. Nothing sold is 0. */
  units: z
    .array(z.nullable(unitsSold()))
    .check(z.minLength(1, { error: 'at least one week' }), z.maxLength(156, { error: 'at most 156 weeks' })),
  /** Weeks on a display, and weeks at a lower price. */
  displayWeeks: weekPlaces(),
  priceWeeks: weekPlaces(),
});

/** What a shop or chain ordered again: it says that it goes on, not what shoppers took. */
export const reorder = z.strictObject({
  id: f.id(),
  itemId: f.id(),
  accountId: z.nullable(f.id()),
  date: f.isoDate(),
  units: f.whole({ least: 1, most: 10_000_000, unit: 'units' }),
});

/** What stores like these sell of goods like this, before any scan was seen. */
export const prior = z.strictObject({
  itemId: f.id(),
  unitsPerStoreWeek: f.rateOfSale(),
  /** Standard deviation of its logarithm: 0.5 puts two thirds of what one would bet within a factor of 1.65. */
  spread: f.factor(),
  source: f.note(),
});

export const RUNGS = ['orderInHand', 'signed', 'saidYes', 'inTalks', 'hopedFor'] as const;

/** How far an account is agreed. */
export const standing = z.strictObject({
  rung: z.enum(RUNGS, { error: '"orderInHand", "signed", "saidYes", "inTalks" or "hopedFor"' }),
  /** That its waves come at all; null: as usual for the rung, which is judgement. */
  chance: z.nullable(f.share()),
  /** Weeks later than planned: from none, most likely `slipLikelyWeeks`, to `slipMostWeeks`. */
  slipLikelyWeeks: f.whole({ least: 0, most: 104, unit: 'weeks' }),
  slipMostWeeks: f.whole({ least: 0, most: 104, unit: 'weeks' }),
  papers: z
    .array(z.strictObject({ id: f.id(), date: f.isoDate(), who: f.note(), what: f.name() }))
    .check(z.maxLength(100, { error: 'at most 100 papers' })),
});

/** What somebody promised: doors open on that date; units or revenue from the plan's first day up to it. */
export const claim = z.strictObject({
  of: z.enum(['doors', 'units', 'revenue'], { error: '"doors", "units" or "revenue"' }),
  amount: f.sumAmount(),
  byDate: f.isoDate(),
  who: f.note(),
});

/**
 * How far things may come out otherwise: standard deviations, of the logarithm where the name ends in Rate, but for
 * deductionsRate and voidRate (points of their own). With all at 0, and doors as planned, every draw is the plan.
 */
export const spreads = z.strictObject({
  /** Null: as the scans leave it open, or the usual where there are none. */
  rateOfSaleRate: z.nullable(f.factor()),
  /** Whether accounts open by their chances and slips, or just as planned. */
  doors: z.enum(['asStanding', 'asPlanned'], { error: '"asStanding" or "asPlanned"' }),
  rampRate: f.factor(),
  latenessDays: f.whole({ least: 0, most: 180, unit: 'days' }),
  goodsRate: f.factor(),
  deductionsRate: f.share(),
  voidRate: f.share(),
  /** Correlation of the accounts' fates by what they share, 0 (each its own) to 1. */
  sharedRate: f.share(),
});

export const promise = z.strictObject({
  scans: z.array(scan).check(z.maxLength(500, { error: 'at most 500 stores' })),
  /** Weeks after an opening that say little of those to come. */
  openingWeeks: f.whole({ least: 0, most: 26, unit: 'opening weeks' }),
  reorders: z.array(reorder).check(z.maxLength(500, { error: 'at most 500 reorders' })),
  /** What is open and sold today; null where nothing is. */
  runRate: z.nullable(
    z.strictObject({
      asOf: f.isoDate(),
      doors: z.nullable(f.whole({ least: 0, most: 1_000_000, unit: 'doors' })),
      unitsPerWeek: z.nullable(f.sumAmount()),
      revenueAmountPerWeek: z.nullable(f.sumAmount()),
    }),
  ),
  /** By item; an item without one begins with next to nothing known. */
  priors: z.array(prior),
  claim: z.nullable(claim),
  spreads,
});
