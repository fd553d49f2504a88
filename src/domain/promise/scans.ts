// From scans to counts: which weeks of which stores say what sells from week to week. A week not seen is left out, a week
// with nothing sold is a 0. The first weeks after an opening are left out, since shoppers try what is new; so are weeks on
// a display or at a lower price, as long as others are left. A week of the season counts as its factor.
// Worked figure: units [30, 12, 9, null, 8, 14] from an opening, four opening weeks, the last on display: one week, 8 units.
import { dayNumber, isoWeekOf } from '../calendar.ts';
import type { Item, Scan } from '../plan/index.ts';

export type WeekOn = 'plain' | 'display' | 'price' | 'both';

/** One week of one store that was seen. */
export interface SeenWeek {
  /** Weeks since 1970-01-05, a Monday: the same for all stores. */
  calendarWeek: number;
  units: number;
  /** What it counts for: 1, or the item's factor of the season. Above 0. */
  weight: number;
  on: WeekOn;
  isOpening: boolean;
}

/** One store with all its weeks that were seen, of one item. */
export interface SeenStore {
  store: string;
  accountId: string | null;
  weeks: SeenWeek[];
  /** Weeks inside its scans that were not seen. */
  gaps: number;
}

/** Which weeks the rate of sale is read off: the first of these that there are any of. */
export type Basis = 'plain' | 'withDeals' | 'withOpenings';

export interface Counted {
  basis: Basis;
  /** Stores with at least one week that counts; of each only the weeks that count. */
  stores: SeenStore[];
  /** Every store of the item, with every week that was seen. */
  seen: SeenStore[];
  /** Weeks left out: openings, displays and prices; and weeks not seen. */
  leftOut: { openings: number; deals: number; gaps: number };
}

/** Scans of one item. Null where no store has a week that was seen. */
export function countScans(
  scans: readonly Scan[],
  { openingWeeks, item }: { openingWeeks: number; item: Item },
): Counted | null {
  const seen = seenStores(scans, openingWeeks, item);
  const total = (test: (week: SeenWeek) => boolean) =>
    seen.reduce((sum, { weeks }) => sum + weeks.filter(test).length, 0);
  if (total(() => true) === 0) return null;
  const isPlain = ({ on, isOpening }: SeenWeek) => on === 'plain' && !isOpening;
  const isSettled = ({ isOpening }: SeenWeek) => !isOpening;
  const basis: Basis = total(isPlain) > 0 ? 'plain' : total(isSettled) > 0 ? 'withDeals' : 'withOpenings';
  const counts = { plain: isPlain, withDeals: isSettled, withOpenings: () => true }[basis];
  const stores = seen
    .map((each) => ({ ...each, weeks: each.weeks.filter(counts) }))
    .filter(({ weeks }) => weeks.length > 0);
  const isLeftOut = (week: SeenWeek) => !counts(week);
  return {
    basis,
    stores,
    seen,
    leftOut: {
      openings: total((week) => isLeftOut(week) && week.isOpening),
      deals: total((week) => isLeftOut(week) && !week.isOpening),
      // Of a store that was just begun nothing was seen yet: those are no gaps.
      gaps: seen.reduce((sum, { weeks, gaps }) => sum + (weeks.length === 0 ? 0 : gaps), 0),
    },
  };
}

/** Scans of the same store of the same chain are one store; the order is that of the plan. */
function seenStores(scans: readonly Scan[], openingWeeks: number, item: Item): SeenStore[] {
  const stores = new Map<string, SeenStore>();
  for (const scan of scans) {
    const key = `${scan.accountId ?? ''} ${storeKey(scan.store)}`;
    const { store, accountId } = scan;
    const own = stores.get(key) ?? { store, accountId, weeks: [], gaps: 0 };
    stores.set(key, own);
    const firstDay = dayNumber(scan.firstDate);
    scan.units.forEach((units, place) => {
      const day = firstDay + 7 * place;
      const weight = seasonOf(item, day);
      if (units === null || weight <= 0) own.gaps += 1;
      else
        own.weeks.push({
          calendarWeek: Math.floor((day - MONDAY) / 7),
          units,
          weight,
          on: onOf(scan, place),
          isOpening: scan.opened && place < openingWeeks,
        });
    });
  }
  return [...stores.values()];
}

/** 1970-01-05, counted as the calendar counts days. */
const MONDAY = dayNumber('1970-01-05');

/** Capitals and spaces don't make another store. */
export function storeKey(name: string): string {
  return name.toLowerCase().replace(/\s+/g, ' ').trim();
}

function onOf({ displayWeeks, priceWeeks }: Scan, place: number): WeekOn {
  const [display, price] = [displayWeeks.includes(place), priceWeeks.includes(place)];
  if (display && price) return 'both';
  return display ? 'display' : price ? 'price' : 'plain';
}

function seasonOf({ seasonFactors }: Item, day: number): number {
  return seasonFactors === null ? 1 : Number(seasonFactors[Math.min(52, isoWeekOf(day)) - 1] ?? 1);
}
