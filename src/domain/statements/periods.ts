// The weeks of a plan gathered into periods: weeks, calendar months, calendar quarters, or the retail calendar's 4-5-4
// periods, or all of them into one. A week belongs to the period of its first day, so periods hold whole weeks and nothing is split.
// Worked figure: a plan from Monday 2 March 2026 has weeks 0 to 4 in March (the last begins on the 30th).
import { isoDateOf, monthIndexOf, quarterIndexOf } from '../calendar.ts';
import { retailWeekOf } from '../calendar-454.ts';

export const PERIOD_KINDS = ['week', 'month', 'quarter', 'retail', 'plan'] as const;
export type PeriodKind = (typeof PERIOD_KINDS)[number];

export interface Period {
  kind: PeriodKind;
  /** "12" (the plan's week), "2026-03", "2026-Q1", "2026-P02" (year and period of the retail calendar), "plan". */
  key: string;
  /** First and last week of the plan in it, both counted in. */
  fromWeek: number;
  toWeek: number;
  /** First day of its first week, written YYYY-MM-DD. */
  firstDate: string;
}

/** The periods of a plan's weeks in order; the first and the last may be cut off by the plan's own ends. */
export function periodsOf(args: { kind: PeriodKind; startDay: number; weeks: number }): Period[] {
  const { kind, startDay, weeks } = args;
  const periods: Period[] = [];
  for (let week = 0; week < weeks; week++) {
    const day = startDay + 7 * week;
    const key = kind === 'week' ? String(week) : KEYS[kind](day);
    const last = periods.at(-1);
    if (last?.key === key) last.toWeek = week;
    else periods.push({ kind, key, fromWeek: week, toWeek: week, firstDate: isoDateOf(day) });
  }
  return periods;
}

const two = (part: number) => String(part).padStart(2, '0');

const KEYS: Record<Exclude<PeriodKind, 'week'>, (day: number) => string> = {
  month: (day) => isoDateOf(day).slice(0, 7),
  quarter: (day) => {
    const quarter = quarterIndexOf(day);
    return `${Math.floor(monthIndexOf(day) / 12)}-Q${(quarter % 4) + 1}`;
  },
  plan: () => 'plan',
  retail: (day) => {
    const { year, period } = retailWeekOf(day);
    return `${year}-P${two(period)}`;
  },
};
