// What will land of an item from one supplier, by week, with its documents' sums; read when it does (receipt.ts).
// Worked figure: instalments of 1,200 and 600 placed for one week are 1,800 units landing then.
import type { CutSeries } from './series.ts';

export interface Landings {
  /** Known past the horizon; amounts only within it. */
  units: Float64Array;
  goods: Float64Array;
  freight: Float64Array;
  deposit: Float64Array;
  /** What being rushed costs; null for ordinary orders. */
  extra: Float64Array | null;
}

export function newLandings(cut: CutSeries, places: number, weeks: number): Landings {
  return { units: cut(places), goods: cut(weeks), freight: cut(weeks), deposit: cut(weeks), extra: null };
}

/** Places of memory that newLandings() cuts. */
export function landingPlaces(places: number, weeks: number): number {
  return places + 3 * weeks;
}

export interface Landing {
  week: number;
  units: number;
  goods: number;
  freight: number;
  deposit: number;
}

/** An instalment that will land; past the horizon only its units matter. */
export function addLanding(landings: Landings, landing: Landing): void {
  const { week } = landing;
  const { units, goods, freight, deposit } = landings;
  units[week] = (units[week] ?? 0) + landing.units;
  if (week >= goods.length) return;
  goods[week] = (goods[week] ?? 0) + landing.goods;
  freight[week] = (freight[week] ?? 0) + landing.freight;
  deposit[week] = (deposit[week] ?? 0) + landing.deposit;
}
