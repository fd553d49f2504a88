// The retail calendar of the National Retail Federation (NRF): weeks from Sunday to Saturday, quarters of 4, 5 and 4
// weeks. A year ends on the Saturday nearest 31 January and is named by the calendar year it starts in; in some years
// that makes 53 weeks, and its last period then has five. Days are day numbers, see calendar.ts.
// Worked figure: 2 March 2026 is a Monday in week 1 of period 2 (March) of 2026, which starts on 1 February 2026.
import { dayNumber, isoDateOf, weekdayOf } from './calendar.ts';

/** Weeks of the twelve periods, February first; the last has one more in a year of 53 weeks. */
const PERIOD_WEEKS = [4, 5, 4, 4, 5, 4, 4, 5, 4, 4, 5, 4] as const;
export const PERIODS_IN_YEAR = PERIOD_WEEKS.length;

/** Calendar month (1 to 12) that a period is called by: period 1 is February, period 12 January. */
export function monthOfPeriod(period: number): number {
  return (period % PERIODS_IN_YEAR) + 1;
}

export interface RetailWeek {
  /** Named by the calendar year it starts in. */
  year: number;
  /** 1 to 12, February first. */
  period: number;
  /** 1 to 5, within the period. */
  weekOfPeriod: number;
  /** 1 to 53, within the year. */
  weekOfYear: number;
}

/** First day (a Sunday) of a retail year, as a day number; years 1 to 9999. */
export function retailYearStart(year: number): number {
  const endOfJanuary = dayNumber(`${String(year).padStart(4, '0')}-01-31`);
  // Saturday is 6 of 1 to 7: the nearest one lies at most three days off, the year starts the day after it.
  const toSaturday = ((6 - weekdayOf(endOfJanuary) + 10) % 7) - 3;
  return endOfJanuary + toSaturday + 1;
}

/** 52 or 53. */
export function weeksInRetailYear(year: number): number {
  return (retailYearStart(year + 1) - retailYearStart(year)) / 7;
}

/** Weeks of a period (1 to 12) of a retail year: 4 or 5. */
export function weeksInPeriod(year: number, period: number): number {
  const weeks = PERIOD_WEEKS[period - 1];
  if (weeks === undefined)
    throw new Error(`a retail year has periods 1 to ${PERIODS_IN_YEAR}, not ${period}`);
  return period === PERIODS_IN_YEAR ? weeks + weeksInRetailYear(year) - 52 : weeks;
}

/** The retail week that a day lies in. */
export function retailWeekOf(day: number): RetailWeek {
  const calendarYear = Number(isoDateOf(day).slice(0, 4));
  const year = day < retailYearStart(calendarYear) ? calendarYear - 1 : calendarYear;
  const weekOfYear = Math.floor((day - retailYearStart(year)) / 7) + 1;
  let before = 0;
  for (let period = 1; period < PERIODS_IN_YEAR; period++) {
    const weeks = weeksInPeriod(year, period);
    if (weekOfYear <= before + weeks) {
      return { year, period, weekOfPeriod: weekOfYear - before, weekOfYear };
    }
    before += weeks;
  }
  return { year, period: PERIODS_IN_YEAR, weekOfPeriod: weekOfYear - before, weekOfYear };
}

/** First day of a period, as a day number. */
export function periodStart(year: number, period: number): number {
  let weeks = 0;
  for (let before = 1; before < period; before++) weeks += weeksInPeriod(year, before);
  return retailYearStart(year) + 7 * weeks;
}
