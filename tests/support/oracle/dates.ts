/**
 * The oracle's calendar, from the engine's own Date in UTC: months, quarters and ISO weeks of a plan's weeks.
 * Worked figure: a plan that starts on 2026-03-02 has its week 0 in ISO week 10, March, first quarter.
 */
const DAY = 86_400_000;

/** Milliseconds of the first day of week w. */
function firstDay(startDate: string, week: number): number {
  const [year = 0, month = 1, day = 1] = startDate.split('-').map(Number);
  return Date.UTC(year, month - 1, day + 7 * week);
}

export function monthOf(startDate: string, week: number): number {
  const date = new Date(firstDay(startDate, week));
  return date.getUTCFullYear() * 12 + date.getUTCMonth();
}

export function quarterOf(startDate: string, week: number): number {
  return Math.floor(monthOf(startDate, week) / 3);
}

/** Whether the day 30 days after the quarter's end falls in the week. */
export function isPaidIn(quarter: number, startDate: string, week: number): boolean {
  const year = Math.floor(quarter / 4);
  const paidOn = Date.UTC(year, (quarter - year * 4) * 3 + 3, 30); // day 0 of that month is the quarter's end
  const first = firstDay(startDate, week);
  return paidOn >= first && paidOn < first + 7 * DAY;
}

/** ISO 8601 week of the week's first day: the one of its Thursday's year, counted from the week of 4 January. */
export function isoWeek(startDate: string, week: number): number {
  const day = firstDay(startDate, week);
  const mondayOf = (time: number) => time - ((new Date(time).getUTCDay() + 6) % 7) * DAY;
  const thursday = new Date(mondayOf(day) + 3 * DAY);
  const firstMonday = mondayOf(Date.UTC(thursday.getUTCFullYear(), 0, 4));
  return Math.round((mondayOf(day) - firstMonday) / (7 * DAY)) + 1;
}
