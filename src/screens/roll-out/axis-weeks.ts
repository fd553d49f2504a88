// The head of the time axis: months above, below them the weeks as they are counted here: weeks of the plan, weeks of the
// ISO year, or periods of the retail calendar (4-5-4). A week stands in the month, and in the period, of its first day.
// Worked figure: a plan that starts on 2 March 2026 begins in ISO week 10 and in week 1 of period 2; its week 5 begins April.
import { isoDateOf, isoWeekOf } from '../../domain/calendar.ts';
import { retailWeekOf } from '../../domain/calendar-454.ts';
import type { AxisScale } from '../../widgets/index.ts';

export const WEEK_COUNTS = [
  { value: 'plan', label: 'Weeks of the plan' },
  { value: 'iso', label: 'ISO weeks' },
  { value: 'retail', label: '4-5-4 periods' },
] as const;
export type WeekCount = (typeof WEEK_COUNTS)[number]['value'];

export function isWeekCount(value: unknown): value is WeekCount {
  return WEEK_COUNTS.some((each) => each.value === value);
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

export interface AxisTime {
  scales: AxisScale[];
  /** Weeks that begin a month. */
  lines: number[];
}

export function axisTime(args: { startDay: number; weeks: number; count: WeekCount }): AxisTime {
  const { startDay, weeks, count } = args;
  const days = Array.from({ length: weeks }, (_, week) => startDay + 7 * week);
  const months = monthMarks(days);
  const lines = months.map(({ index }) => index);
  const label = WEEK_COUNTS.find(({ value }) => value === count)?.label ?? '';
  return {
    scales: [
      { id: 'months', label: 'Month', marks: months },
      { id: count, label, marks: weekMarks(days, count) },
    ],
    lines,
  };
}

/** The year is written where it begins, and at the first month. */
function monthMarks(days: readonly number[]): AxisScale['marks'] {
  return days.flatMap((day, index) => {
    const [year = '', month = ''] = isoDateOf(day).split('-');
    const before = index === 0 ? '' : isoDateOf(day - 7).slice(5, 7);
    if (before === month) return [];
    const name = MONTHS[Number(month) - 1] ?? month;
    const strong = index === 0 || month === '01';
    return [{ index, text: strong ? `${name} ${year}` : name, strong }];
  });
}

function weekMarks(days: readonly number[], count: WeekCount): AxisScale['marks'] {
  if (count === 'retail') return days.map(retailMark);
  return days.map((day, index) => ({ index, text: String(count === 'plan' ? index : isoWeekOf(day)) }));
}

/** "P2" where a period begins, then the number of the week within it. */
function retailMark(day: number, index: number): AxisScale['marks'][number] {
  const { period, weekOfPeriod } = retailWeekOf(day);
  const begins = weekOfPeriod === 1;
  return { index, text: begins ? `P${period}` : String(weekOfPeriod), strong: begins };
}
