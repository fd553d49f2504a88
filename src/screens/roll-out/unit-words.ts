// What the unit series of the weekly pass are called, and sums of them over products.
// Worked figure: "fillShipped" is "Of it, for openings": a fill is no sale to a shopper.
import type { PassResult, UnitName } from '../../domain/rollout/types.ts';

export const UNIT_WORDS: Record<UnitName, string> = {
  ordered: 'Ordered',
  rushed: 'Of it, rushed',
  made: 'Landed',
  shipped: 'Shipped',
  fillShipped: 'Of it, fills',
  received: 'At stores',
  demand: 'Wanted',
  sold: 'Sold',
  lost: 'Lost',
  returned: 'Sent back',
  gone: 'Gone unsold',
  ours: 'With us',
  inTransit: 'On the way',
  inStores: 'In stores',
  atDepot: 'In depots',
  backlog: 'Waiting',
  onOrder: 'On order',
};

/** One series of one product, or of all together where `item` is null. */
export function unitSeries(pass: PassResult, item: number | null, name: UnitName): Float64Array {
  const chosen = item === null ? pass.units : pass.units.slice(item, item + 1);
  const total = new Float64Array(pass.weeks);
  for (const units of chosen) {
    const series = units[name];
    for (let week = 0; week < total.length; week++) total[week] = (total[week] ?? 0) + (series[week] ?? 0);
  }
  return total;
}

export function sumOf(series: Float64Array): number {
  return series.reduce((sum, value) => sum + value, 0);
}
