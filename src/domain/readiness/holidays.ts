// Public holidays of the plan's place, out of the table (holiday-days.ts). A small table instead of the library it is made
// with: nothing to fetch, the same days on every machine; own times we close are in the plan.
// Worked figure: "US" in 2026 has Saturday 4 July, and Friday 3 July, on which it is kept.
import { dayNumber } from '../calendar.ts';
import type { WorkCalendar } from '../plan/index.ts';
import { FIRST_YEAR, HOLIDAY_DAYS, LAST_YEAR } from './holiday-days.ts';
import type { ClosedDays } from './types.ts';

export const KNOWN_YEARS = { from: FIRST_YEAR, until: LAST_YEAR } as const;

/** Day numbers of a year's holidays; none for a plan that counts none, and none outside KNOWN_YEARS. */
export function closedDaysOf({ holidays }: Pick<WorkCalendar, 'holidays'>): ClosedDays {
  if (holidays === null) return () => [];
  const words = HOLIDAY_DAYS[holidays].split(' ');
  return (year) => {
    const days = words[year - FIRST_YEAR]?.match(/\d{4}/g) ?? [];
    return days.map((day) => dayNumber(`${year}-${day.slice(0, 2)}-${day.slice(2)}`));
  };
}
