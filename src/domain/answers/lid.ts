// Whether what landed in a week used up what could land in it.
// Worked figure: a lid of 1,000 units with 1,000 landed is used up; with 999 it is not.
import type { Results } from '../results.ts';

type Read = Pick<Results, 'pass' | 'compiled'>;

/** True when the item has a lid in that week and nothing more could have landed. */
export function isLidUsed({ pass, compiled }: Read, item: number, week: number): boolean {
  const lid = compiled.items[item]?.capacity[week] ?? Number.POSITIVE_INFINITY;
  return Number.isFinite(lid) && (pass.units[item]?.made[week] ?? 0) >= lid;
}

/** First of the weeks in a row, up to and with `week`, in which the lid was used up; `week` itself where it was not. */
export function lidUsedSince(results: Read, item: number, week: number): number {
  let first = week;
  while (first > 0 && isLidUsed(results, item, first - 1)) first--;
  return first;
}
