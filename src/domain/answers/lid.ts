// Whether what landed in a week used up what could land in it: every supplier's lid, and the hours of a line.
// Worked figure: a lid of 1,000 units with 1,000 landed is used up; with 999 it is not. A line of 144,000 seconds with
// 143,950 used at 500 units an hour has less than a minute beyond one unit's 7.2 seconds left: used up.
import type { Results } from '../results.ts';
import { mostLanding } from '../rollout/buying.ts';
import type { CompiledItem } from '../rollout/compiled.ts';

type Read = Pick<Results, 'pass' | 'compiled'>;

/** Each instalment's time is rounded up to a second: so much of an hour counts as none. */
const ROUNDED_SECONDS = 60;

/** True when the item has a lid in that week and nothing more could have landed. Rush orders land beside every lid. */
export function isLidUsed(results: Read, item: number, week: number): boolean {
  const terms = results.compiled.items[item];
  if (!terms) return false;
  const most = mostLanding(results.compiled, terms.buying, week);
  if (!Number.isFinite(most)) return false;
  return landed(results, item, week) >= most || areHoursUsed(results, terms, week);
}

/** First of the weeks in a row, up to and with `week`, in which the lid was used up; `week` itself where it was not. */
export function lidUsedSince(results: Read, item: number, week: number): number {
  let first = week;
  while (first > 0 && isLidUsed(results, item, first - 1)) first--;
  return first;
}

function landed({ pass, compiled }: Read, item: number, week: number): number {
  const units = pass.units[item];
  const rush = compiled.items[item]?.buying.rush ?? null;
  const rushed = rush === null ? 0 : (units?.rushed[week - rush.leadWeeks] ?? 0);
  return (units?.made[week] ?? 0) - rushed;
}

/** Whether the items that share the line's hours left no time for one unit more. Further suppliers use none of them. */
function areHoursUsed(results: Read, { buying }: CompiledItem, week: number): boolean {
  const { compiled } = results;
  const { line } = buying;
  if (line === null || buying.suppliers.length > 1) return false;
  let left = compiled.hours[line.hours]?.[week] ?? 0;
  compiled.items.forEach((other, i) => {
    const own = other.buying.line;
    if (own?.hours === line.hours && other.buying.suppliers.length === 1)
      left -= (landed(results, i, week) * 3600) / own.unitsPerHour;
  });
  return left - ROUNDED_SECONDS < 3600 / line.unitsPerHour;
}
