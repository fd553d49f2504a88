// The evidence of a plan for one item: its scans counted, the rate of sale they speak for with its ranges, what displays and
// prices added, whether sales fall, and how much more would have to be seen. Worked out once for a plan's evidence.
// Worked figure: eight stores of six weeks, 288 units: about 6 a store and week, 80 % of what is believed within 5.5 to 6.6.
import type { Evidence, Item, Plan } from '../plan/index.ts';
import {
  newStores,
  type Prior,
  type Range,
  type RateOfSale,
  rateOfSale,
  type StoreCount,
} from './rate-of-sale.ts';
import { type Counted, countScans, type SeenStore } from './scans.ts';
import { type Effect, type Lift, liftsOf, trendOf, weeksScatter } from './within-stores.ts';

export interface ItemEvidence {
  itemId: string;
  counted: Counted;
  /** What the ranges are worked out from, a place a store. */
  stores: readonly StoreCount[];
  prior: Prior;
  rate: RateOfSale;
  lifts: readonly Lift[];
  trend: Effect | null;
}

const known = new WeakMap<Evidence, WeakMap<Item, ItemEvidence | null>>();

/** Of all accounts together; null where nothing of the item was seen. */
export function evidenceFor(plan: Plan, itemId: string): ItemEvidence | null {
  const item = plan.items.find(({ id }) => id === itemId);
  if (item === undefined) return null;
  const items = known.get(plan.promise) ?? new WeakMap<Item, ItemEvidence | null>();
  known.set(plan.promise, items);
  const before = items.get(item);
  if (before !== undefined) return before;
  const found = evidenceFrom(plan.promise, item, () => true);
  items.set(item, found);
  return found;
}

/** Of every item that has any, in the plan's order. */
export function evidenceOf(plan: Plan): ItemEvidence[] {
  return plan.items.flatMap(({ id }) => evidenceFor(plan, id) ?? []);
}

/** Of the stores of one account alone (null: of stores of no account of the plan). */
export function evidenceOfAccount(plan: Plan, itemId: string, accountId: string | null): ItemEvidence | null {
  const item = plan.items.find(({ id }) => id === itemId);
  return item === undefined ? null : evidenceFrom(plan.promise, item, (of) => of === accountId);
}

function evidenceFrom(
  { scans, openingWeeks, priors }: Evidence,
  item: Item,
  isOf: (accountId: string | null) => boolean,
): ItemEvidence | null {
  const own = scans.filter(({ itemId, accountId }) => itemId === item.id && isOf(accountId));
  const counted = countScans(own, { openingWeeks, item });
  if (counted === null) return null;
  const said = priors.find(({ itemId }) => itemId === item.id);
  const prior: Prior = said
    ? { mean: Number(said.unitsPerStoreWeek), spread: Math.max(LEAST_SPREAD, Number(said.spread)) }
    : WEAK;
  const scatter = weeksScatter(counted.stores);
  const stores = counted.stores.map(countOf);
  const rate = rateOfSale(stores, prior, scatter);
  if (rate === null) return null;
  return {
    itemId: item.id,
    counted,
    stores,
    prior,
    rate,
    lifts: liftsOf(counted.seen, scatter),
    trend: trendOf(counted.stores, scatter),
  };
}

/** Next to nothing known before. */
const WEAK: Prior = { mean: null, spread: 0.5 };
/** A prior that leaves nothing to learn isn't one. */
const LEAST_SPREAD = 0.05;

function countOf({ weeks }: SeenStore): StoreCount {
  return weeks.reduce((sum, { units, weight }) => ({ units: sum.units + units, weeks: sum.weeks + weight }), {
    units: 0,
    weeks: 0,
  });
}

/** What so many stores more would sell a week, on average over them, each in the long run; 1: any one of them. */
export function rangeOfNewStores(evidence: ItemEvidence, stores: number): Range {
  const ranges = ofNew.get(evidence) ?? new Map<number, Range>();
  ofNew.set(evidence, ranges);
  const found = ranges.get(stores) ?? newStores(evidence.rate.weights, stores, evidence.rate.mean);
  ranges.set(stores, found);
  return found;
}

/** Asked for on every paint, and as long to work out as a paint. */
const ofNew = new WeakMap<ItemEvidence, Map<number, Range>>();
