// Worked days, counted: place 0 is the first worked day from an anchor on, -1 the one before it. Lead times are added to
// places, not to dates, so that weekends, holidays and times we close fall out by themselves.
// Worked figure: anchored on Friday 13 March 2026, worked Monday to Friday, place 1 is Monday 16 March.
import { dayNumber, isoDateOf, weekdayOf } from '../calendar.ts';
import type { WorkCalendar } from '../plan/index.ts';
import type { ClosedDays } from './types.ts';

export interface WorkDays {
  /** The day number at a place; places are whole, and may be negative. */
  dayAt: (place: number) => number;
  /** Worked days from the anchor up to, not including, a day; negative before the anchor. */
  placeOf: (day: number) => number;
  isWorked: (day: number) => boolean;
}

/** `closedDays`: the public holidays of a year, as day numbers (holidays.ts). */
export function workDaysFrom(anchor: number, calendar: WorkCalendar, closedDays: ClosedDays): WorkDays {
  const isWorked = workedBy(calendar, closedDays);
  const ahead: number[] = [];
  const behind: number[] = [];
  let lastAhead = anchor - 1;
  let lastBehind = anchor;
  const stepAhead = () => {
    lastAhead += 1;
    if (isWorked(lastAhead)) ahead.push(lastAhead);
  };
  const stepBehind = () => {
    lastBehind -= 1;
    if (isWorked(lastBehind)) behind.push(lastBehind);
  };
  const dayAt = (place: number): number => {
    while (place >= ahead.length && place >= 0) stepAhead();
    while (-place > behind.length) stepBehind();
    return (place >= 0 ? ahead[place] : behind[-place - 1]) as number;
  };
  const placeOf = (day: number): number => {
    while (lastAhead < day - 1) stepAhead();
    while (lastBehind > day) stepBehind();
    return day >= anchor ? countBelow(ahead, day) : 0 - countFrom(behind, day);
  };
  return { dayAt, placeOf, isWorked };
}

function workedBy({ workDays, closed }: WorkCalendar, closedDays: ClosedDays): (day: number) => boolean {
  const years = new Map<number, ReadonlySet<number>>();
  const closedOn = (day: number) => {
    const year = Number(isoDateOf(day).slice(0, 4));
    const found = years.get(year) ?? new Set(closedDays(year));
    years.set(year, found);
    return found.has(day);
  };
  const ranges = closed.map(
    ({ fromDate, untilDate }) => [dayNumber(fromDate), dayNumber(untilDate)] as const,
  );
  return (day) =>
    workDays.includes(weekdayOf(day)) &&
    !ranges.some(([from, until]) => from <= day && day <= until) &&
    !closedOn(day);
}

/** How many of rising `days` lie before `day`. */
function countBelow(days: readonly number[], day: number): number {
  let low = 0;
  let high = days.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((days[middle] as number) < day) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** How many of falling `days` lie on `day` or after it. */
function countFrom(days: readonly number[], day: number): number {
  let low = 0;
  let high = days.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((days[middle] as number) >= day) low = middle + 1;
    else high = middle;
  }
  return low;
}
