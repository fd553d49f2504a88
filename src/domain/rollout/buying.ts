// How an item's orders are shared out among its suppliers: each takes what its weeks of cover have room for, the next
// one the rest; prices go by quantity; what lands uses a line's hours.
// Worked figure: 7,000 needed, the first has room for 1,000 in each of 3 weeks: 3,000 from it, 4,000 from the next.
import type { Compiled } from './compiled.ts';
import type { BuyingTerms, SupplierTerms } from './compiled-supply.ts';
import { type Landings, landingPlaces, newLandings } from './landings.ts';
import type { CutSeries } from './series.ts';

/** One supplier of one item as the pass carries it. */
export interface Supplier {
  terms: SupplierTerms;
  /** Units that land by week, those of its capacity. */
  taken: Float64Array;
  landings: Landings;
}

export interface Buying {
  terms: BuyingTerms;
  suppliers: Supplier[];
  rush: Landings | null;
  /** Seconds its line has left by week, shared with the items beside it; null without a line. */
  seconds: Float64Array | null;
}

/** Orders are placed as long as the plan runs, and land where capacity is left, up to as long again after it. */
export function landingWeeks(weeks: number): number {
  return 2 * weeks + 120;
}

/** Places of memory that newBuying() cuts its series from. */
export function buyingPlaces({ suppliers, rush }: BuyingTerms, weeks: number): number {
  const places = landingWeeks(weeks);
  const own = landingPlaces(places, weeks);
  return suppliers.length * (own + places) + (rush ? own + weeks : 0);
}

interface BuyingArgs {
  /** Seconds left of all hours, by place. */
  hours: readonly Float64Array[];
  weeks: number;
  series: CutSeries;
}

export function newBuying(terms: BuyingTerms, { hours, weeks, series }: BuyingArgs): Buying {
  const places = landingWeeks(weeks);
  return {
    terms,
    suppliers: terms.suppliers.map((each) => ({
      terms: each,
      taken: series(places),
      landings: newLandings(series, places, weeks),
    })),
    rush: terms.rush && { ...newLandings(series, places, weeks), extra: series(weeks) },
    seconds: terms.line ? (hours[terms.line.hours] ?? null) : null,
  };
}

/** Raised to the supplier's least order, then up to its batch. */
export function raised(
  units: number,
  { minimumOrderUnits, batchUnits }: Pick<SupplierTerms, 'minimumOrderUnits' | 'batchUnits'>,
): number {
  return Math.ceil(Math.max(units, minimumOrderUnits) / batchUnits) * batchUnits;
}

/** What the first supplier asks a unit for an order of so many, placed in a week. */
export function goodsPrice({ prices, shockFromWeek }: BuyingTerms, units: number, week: number): number {
  let at = 0;
  while (units >= (prices[at + 1]?.fromUnits ?? Number.POSITIVE_INFINITY)) at++;
  return (week >= shockFromWeek ? prices[at]?.shocked : prices[at]?.goods) ?? 0;
}

/** Units that can still land of a supplier in a week: within its lid, and the first within the line's hours. */
export function leftIn(buying: Buying, s: number, week: number): number {
  const { terms, taken } = buying.suppliers[s] as Supplier;
  const lid = terms.capacity[Math.min(week, terms.capacity.length - 1)] ?? 0;
  const left = Math.max(0, lid - (taken[week] ?? 0));
  const { line } = buying.terms;
  if (s > 0 || !line || !buying.seconds) return left;
  const seconds = Math.max(0, buying.seconds[week] ?? 0);
  return Math.min(left, Math.floor((seconds * line.unitsPerHour) / 3600));
}

/** Units will land of a supplier in a week: they take their place, and the first supplier's their hours. */
export function takePlace(buying: Buying, s: number, week: number, units: number): void {
  const { taken } = buying.suppliers[s] as Supplier;
  taken[week] = (taken[week] ?? 0) + units;
  const { line } = buying.terms;
  if (s > 0 || !line || !buying.seconds) return;
  const used = Math.ceil((units * 3600) / line.unitsPerHour);
  buying.seconds[week] = (buying.seconds[week] ?? 0) - used;
}

/** What each supplier is asked for, the first again for what none has room for in its weeks of cover. */
export function sharedOut(buying: Buying, need: number, week: number, coverWeeks: number): number[] {
  const { suppliers } = buying;
  const asked = suppliers.map(() => 0);
  const first = (suppliers[0] as Supplier).terms;
  let rest = raised(need, first);
  if (suppliers.length === 1) return [rest];
  for (let s = 0; s < suppliers.length && rest > 0; s++) {
    const { terms } = suppliers[s] as Supplier;
    const wanted = s === 0 ? rest : raised(rest, terms);
    const room = roomFor({ buying, s, from: week + terms.leadWeeks, coverWeeks }, wanted);
    const whole = Math.floor(room / terms.batchUnits) * terms.batchUnits;
    if (whole < terms.minimumOrderUnits) continue;
    asked[s] = whole;
    rest = Math.max(0, rest - whole);
  }
  if (rest > 0) asked[0] = raised((asked[0] ?? 0) + rest, first);
  return asked;
}

interface Room {
  buying: Buying;
  s: number;
  from: number;
  coverWeeks: number;
}

/** Units a supplier can land in its weeks of cover, up to what is wanted. */
function roomFor({ buying, s, from, coverWeeks }: Room, wanted: number): number {
  const places = (buying.suppliers[s] as Supplier).taken.length;
  let room = 0;
  for (let w = from; w <= from + coverWeeks && w < places && room < wanted; w++) room += leftIn(buying, s, w);
  return Math.min(room, wanted);
}

/** Most units that can land in a week by the lids of all suppliers and the line's hours, had nothing else taken them. */
export function mostLanding({ hours }: Compiled, { suppliers, line }: BuyingTerms, week: number): number {
  const seconds = line ? (hours[line.hours]?.[week] ?? 0) : Number.POSITIVE_INFINITY;
  const made = line ? Math.floor((seconds * line.unitsPerHour) / 3600) : Number.POSITIVE_INFINITY;
  return suppliers.reduce((sum, { capacity }, s) => {
    const lid = capacity[Math.min(week, capacity.length - 1)] ?? 0;
    return sum + (s === 0 ? Math.min(lid, made) : lid);
  }, 0);
}
