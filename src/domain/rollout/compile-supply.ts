// An item's supply in whole numbers: its suppliers, prices by quantity and shock ready to use, the rush order, the hours of
// shared lines. What a plan leaves out is none of it, and its first supplier stands alone.
// Worked figure: goods 2.0000, 3 % off from 5,000 units, a shock of 10 %: 2.0000 x 0.97 x 1.1 = 2.1340.
import type { Landed } from '../ladder/types.ts';
import { type Decimal, dec, ONE, rateOf, round4, toTenThousandths } from '../money/decimal.ts';
import type { Item, Plan } from '../plan/index.ts';
import type { BuyingTerms, GoodsPrice, RushTerms, SupplierTerms } from './compiled-supply.ts';

type Supply = Item['supply'];
type Line = Plan['business']['lines'][number];

const SECONDS = 3600;

/** Good units of an hour on a line: what is made less what is not good, whole units. */
export function goodUnitsPerHour({ unitsPerHour, yieldRate }: NonNullable<Supply['line']>): number {
  return dec(unitsPerHour).times(yieldRate).floor().toNumber();
}

/** Seconds of a line by week: hours a shift x shifts, steps from their week on. */
function secondsOf({ hoursPerShift, shifts, steps }: Line, weeks: number): Float64Array {
  const out = new Float64Array(weeks).fill(hoursPerShift * shifts * SECONDS);
  for (const step of steps) out.fill(hoursPerShift * step.shifts * SECONDS, step.fromWeek);
  return out;
}

export interface Hours {
  /** Seconds by week: a line's common ones, and each fixed share by itself. */
  seconds: Float64Array[];
  /** By item: its place among them, or -1. */
  ofItem: number[];
}

/** The hours of all lines, shared out: a fixed share is the item's own, the rest is common to the others. */
export function hoursOf({ items, business, horizonWeeks }: Plan): Hours {
  const hours: Hours = { seconds: [], ofItem: items.map(() => -1) };
  for (const line of business.lines) {
    const common = secondsOf(line, horizonWeeks);
    const all = Float64Array.from(common);
    const place = hours.seconds.push(common) - 1;
    items.forEach(({ supply }, i) => {
      if (supply.line?.lineId !== line.id) return;
      const { hoursShare } = supply.line;
      hours.ofItem[i] = place;
      if (hoursShare === null) return;
      const share = rateOf(hoursShare);
      const own = all.map((seconds) => Math.floor((seconds * share) / 1_000_000));
      for (let w = 0; w < own.length; w++) common[w] = (common[w] ?? 0) - (own[w] ?? 0);
      hours.ofItem[i] = hours.seconds.push(own) - 1;
    });
  }
  return hours;
}

/** What is bought how: the first supplier at the landed price, the further ones at their own. */
export function buyingOf(item: Item, landed: Landed, hours: { weeks: number; place: number }): BuyingTerms {
  const { supply } = item;
  const { line, purchaseCurrency: currency } = supply;
  return {
    suppliers: [firstSupplier(supply, landed, hours.weeks), ...supply.sources.map(supplierOf)],
    prices: pricesOf(supply, landed.goods),
    shockFromWeek: currency ? currency.shockFromWeek : Number.POSITIVE_INFINITY,
    line: line && { hours: hours.place, unitsPerHour: goodUnitsPerHour(line) },
    rush: rushOf(item),
  };
}

function rushOf({ supply, caseUnits }: Item): RushTerms | null {
  const { expedite } = supply;
  if (!expedite) return null;
  const most = expedite.mostUnitsPerWeek;
  return {
    leadWeeks: expedite.leadWeeks,
    extra: toTenThousandths(dec(expedite.extraAmountPerUnit)),
    mostUnits: most === null ? Number.POSITIVE_INFINITY : Math.floor(most / caseUnits) * caseUnits,
  };
}

function firstSupplier(supply: Supply, landed: Landed, weeks: number): SupplierTerms {
  const capacity = new Float64Array(weeks).fill(supply.capacityUnitsPerWeek ?? Number.POSITIVE_INFINITY);
  for (const step of supply.capacitySteps) capacity.fill(step.unitsPerWeek, step.fromWeek);
  return {
    leadWeeks: supply.leadWeeks,
    minimumOrderUnits: supply.minimumOrderUnits,
    batchUnits: supply.batchUnits,
    capacity,
    goods: toTenThousandths(landed.goods),
    freight: toTenThousandths(landed.freightAndDuty),
    depositRate: rateOf(supply.depositRate),
    supplierWeeks: Math.floor(supply.supplierDays / 7),
  };
}

function supplierOf(source: Supply['sources'][number]): SupplierTerms {
  return {
    leadWeeks: source.leadWeeks,
    minimumOrderUnits: source.minimumOrderUnits,
    batchUnits: source.batchUnits,
    capacity: Float64Array.of(source.capacityUnitsPerWeek ?? Number.POSITIVE_INFINITY),
    goods: toTenThousandths(dec(source.goodsAmountPerUnit)),
    freight: toTenThousandths(dec(source.freightAmountPerUnit)),
    depositRate: rateOf(source.depositRate),
    supplierWeeks: Math.floor(source.supplierDays / 7),
  };
}

/** Each rounded once: goods x the break's factor x (1 + shock). */
function pricesOf({ priceBreaks, purchaseCurrency }: Supply, goods: Decimal): GoodsPrice[] {
  const shocked = ONE.plus(purchaseCurrency ? purchaseCurrency.shockRate : '0');
  const price = (fromUnits: number, factor: string): GoodsPrice => {
    const before = goods.times(factor);
    return {
      fromUnits,
      goods: toTenThousandths(round4(before)),
      shocked: toTenThousandths(round4(before.times(shocked))),
    };
  };
  return [price(0, '1'), ...priceBreaks.map(({ fromUnits, goodsFactor }) => price(fromUnits, goodsFactor))];
}
