// Whether what landed in a week used up what could land in it.
// Worked figure: a lid of 1,000 units with 1,000 landed is used up; with 999 it is not.
import type { Results } from '../results.ts';
import { mostLanding } from '../rollout/buying.ts';

type Read = Pick<Results, 'pass' | 'compiled'>;

/** True when the item has a lid in that week and nothing more could have landed. */
export function isLidUsed({ pass, compiled }: Read, item: number, week: number): boolean {
  const buying = compiled.items[item]?.buying;
  if (!buying) return false;
  const lid = mostLanding(compiled, buying, week);
  const made = (i: number) => pass.units[i]?.made[week] ?? 0;
  if (!Number.isFinite(lid)) return false;
  if (made(item) >= lid) return true;
  const { line } = buying;
  if (!line) return false;
  // Beside it on the line, others may have used the hours.
  const used = compiled.items.reduce((sum, { buying: { line: on } }, i) => {
    return on?.hours === line.hours ? sum + Math.ceil((made(i) * 3600) / on.unitsPerHour) : sum;
  }, 0);
  return ((compiled.hours[line.hours]?.[week] ?? 0) - used) * line.unitsPerHour < 3600;
}

/** First of the weeks in a row, up to and with `week`, in which the lid was used up; `week` itself where it was not. */
export function lidUsedSince(results: Read, item: number, week: number): number {
  let first = week;
  while (first > 0 && isLidUsed(results, item, first - 1)) first--;
  return first;
}
