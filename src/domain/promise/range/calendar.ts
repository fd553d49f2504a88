// What the calendar does to a listing's demand: season times promotions, apart from what goes by a door's age, so that an
// account that opens later still meets the same Decembers. Worked figure: a season of 1.2 in a promotion of 50 % is 1.8.
import type { CellDemand, Compiled } from '../../rollout/compiled.ts';
import { LONGEST_AHEAD } from '../../rollout/wants.ts';

export interface Calendar {
  /** By week, to the horizon and past it as far as orders look. */
  factor: Float64Array;
}

/** Of a listing with cells; all of its cells share it. */
export function calendarOf(compiled: Compiled, listing: number): Calendar {
  const first = compiled.hot.firstOfListing[listing] ?? 0;
  const { season, promotion } = compiled.demand[first] as CellDemand;
  const factor = new Float64Array(compiled.reach + LONGEST_AHEAD).fill(1);
  for (let w = 0; w < factor.length; w++) {
    factor[w] = (season ? (season[w] ?? 1) : 1) * (promotion ? (promotion[w] ?? 1) : 1);
  }
  return { factor };
}

/** Mean over so many weeks after a week; 1 where it looks at none. */
export function meanAhead({ factor }: Calendar, week: number, weeks: number): number {
  if (weeks === 0) return 1;
  let sum = 0;
  for (let j = 1; j <= weeks; j++) sum += factor[Math.min(factor.length - 1, week + j)] ?? 1;
  return sum / weeks;
}
