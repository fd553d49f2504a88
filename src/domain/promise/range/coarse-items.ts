// How a draw buys an item: from its first supplier, at one price, in whole batches, as much as capacity lets land. The
// forecast is the plan's in every draw: stock is bought on the plan and sold in the draw.
// Worked figure: lead 4, cover 2: the need of week 10 is what the plan ships in weeks 10 to 16.
import { quarterEndDay } from '../../calendar.ts';
import type { Compiled } from '../../rollout/compiled.ts';

export interface BoughtItem {
  opening: number;
  /** Planned need of lead and cover weeks from each week on (U of the plan). */
  ahead: Float64Array;
  /** Units under way at the start, by week they land. */
  landing: Float64Array;
  onOrder: number;
  lead: number;
  line: { hours: number; unitsPerHour: number } | null;
  minimum: number;
  batch: number;
  capacity: Float64Array;
  /** Minor units a unit, by the week it is ordered in. */
  goods: Float64Array;
  freight: number;
  depositRate: number;
  supplierWeeks: number;
}

export function boughtItem(compiled: Compiled, i: number, shippable: Float64Array): BoughtItem {
  const item = compiled.items[i] as Compiled['items'][number];
  const { buying } = item;
  const [first] = buying.suppliers;
  if (!first) throw new Error(`item ${i} has no supplier`);
  const { weeks, perMinor } = compiled;
  const landing = new Float64Array(2 * weeks + 120);
  let onOrder = 0;
  for (const { week, units } of item.onOrder) {
    landing[week] = (landing[week] ?? 0) + units;
    onOrder += units;
  }
  const last = first.capacity.length - 1;
  const price = priceOfUsualOrder(compiled, i, shippable);
  return {
    opening: item.openingUnits,
    ahead: aheadOf(shippable, weeks, first.leadWeeks + item.coverWeeks),
    landing,
    onOrder,
    line: buying.line,
    lead: first.leadWeeks,
    minimum: first.minimumOrderUnits,
    batch: first.batchUnits,
    capacity: Float64Array.from(landing, (_, w) => first.capacity[Math.min(w, last)] ?? 0),
    goods: Float64Array.from(
      { length: weeks },
      (_, w) => (w >= buying.shockFromWeek ? price.shocked : price.goods) / perMinor,
    ),
    freight: first.freight / perMinor,
    depositRate: first.depositRate / 1e6,
    supplierWeeks: first.supplierWeeks,
  };
}

function aheadOf(shippable: Float64Array, weeks: number, reach: number): Float64Array {
  return Float64Array.from({ length: weeks }, (_, w) => {
    let sum = 0;
    for (let t = w; t <= w + reach; t++) sum += shippable[t] ?? 0;
    return sum;
  });
}

/** The price by quantity that an order of the plan's mean need of lead and cover weeks would have. */
function priceOfUsualOrder({ items, weeks }: Compiled, i: number, shippable: Float64Array) {
  const { buying } = items[i] as Compiled['items'][number];
  const first = buying.suppliers[0] as (typeof buying.suppliers)[number];
  let shipped = 0;
  let busy = 0;
  for (let w = 0; w < weeks; w++) {
    shipped += shippable[w] ?? 0;
    if ((shippable[w] ?? 0) > 0) busy += 1;
  }
  const usual = Math.max(first.minimumOrderUnits, first.batchUnits, busy === 0 ? 0 : shipped / busy);
  const reached = buying.prices.filter(({ fromUnits }) => fromUnits <= usual);
  return reached.at(-1) ?? { goods: first.goods, shocked: first.goods };
}

/** By week: the week its VAT is settled in, the end of its quarter and 30 days; empty where there is no VAT. */
export function vatWeeks({ business, quarters, startDay }: Compiled): Int32Array {
  if (business.vat === null) return new Int32Array(0);
  return Int32Array.from(quarters, (quarter) => Math.floor((quarterEndDay(quarter) + 30 - startDay) / 7));
}
