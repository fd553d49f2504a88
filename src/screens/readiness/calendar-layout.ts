// Where everything stands in the drawing of gates: bars on days, threads for the room they have, joints from a gate to the
// ones that need it first. Days are counted from the Monday, or the weekday of the plan, that the drawing begins with.
// Worked figure: from Monday 2 March to Friday 13 March is 12 days; at 4 px a day a bar from the 9th to the 13th begins at 28 px.
import { dayNumber, isoDateOf, isoWeekOf } from '../../domain/calendar.ts';
import { retailWeekOf } from '../../domain/calendar-454.ts';
import type { Gate } from '../../domain/plan/index.ts';
import type { GateReading, Readiness } from '../../domain/readiness/index.ts';

export interface GateBar {
  id: string;
  row: number;
  /** Days from the drawing's first; the last one counted in. */
  from: number;
  to: number;
  /** Last day it may end on; null where it holds back nothing. */
  until: number | null;
  critical: boolean;
  late: boolean;
}

export interface Joint {
  id: string;
  /** Rows, and the days between which it runs: the end of the first and the start of the second. */
  fromRow: number;
  toRow: number;
  fromDay: number;
  toDay: number;
  critical: boolean;
}

export interface ShelfMark {
  id: string;
  day: number;
  /** Where today's state would have it; the same where it keeps its date. */
  earliest: number;
}

export interface GateCalendar {
  /** Day number of the first day drawn. */
  firstDay: number;
  days: number;
  today: number;
  bars: readonly GateBar[];
  joints: readonly Joint[];
  shelves: readonly ShelfMark[];
}

/** Weeks drawn at most: what lies further off is cut at the edge. */
export const WEEKS_MOST = 104;

/** Only gates that are still to be done are drawn, in the order in which they can begin; null where none is. */
export function gateCalendar(args: {
  readiness: Readiness;
  gates: readonly Gate[];
  /** A weekday that weeks begin on, as any day number of that weekday. */
  weekDay: number;
}): GateCalendar | null {
  const { readiness, gates, weekDay } = args;
  const open = readiness.gates.filter(isOpen).sort((a, b) => a.start.localeCompare(b.start));
  if (open.length === 0) return null;
  const today = dayNumber(readiness.today);
  const starts = open.map(({ start }) => dayNumber(start));
  const lasts = open.map(({ finish, latestFinish }) =>
    Math.max(dayNumber(finish), latestFinish === null ? 0 : dayNumber(latestFinish)),
  );
  const shelfDays = readiness.waves.flatMap(({ shelfDate, earliest }) =>
    [shelfDate, earliest].map(dayNumber).filter((day) => day >= today),
  );
  const firstDay = weekStartBefore(Math.min(today, ...starts), weekDay);
  const lastDay = Math.max(...lasts, ...shelfDays);
  const weeks = Math.min(WEEKS_MOST, Math.ceil((lastDay + 1 - firstDay) / 7) + 1);
  const rowOf = new Map(open.map(({ id }, row) => [id, row]));
  const bars = open.map(
    ({ id, start, finish, latestFinish, critical, late }, row): GateBar => ({
      id,
      row,
      from: dayNumber(start) - firstDay,
      to: dayNumber(finish) - firstDay,
      until: latestFinish === null ? null : dayNumber(latestFinish) - firstDay,
      critical,
      late,
    }),
  );
  return {
    firstDay,
    days: weeks * 7,
    today: today - firstDay,
    bars,
    joints: jointsOf(gates, bars, rowOf),
    shelves: readiness.waves
      .filter(({ shelfDate }) => dayNumber(shelfDate) >= firstDay)
      .map(({ accountId, waveId, shelfDate, earliest }) => ({
        id: `${accountId}/${waveId}`,
        day: dayNumber(shelfDate) - firstDay,
        earliest: dayNumber(earliest) - firstDay,
      })),
  };
}

type Open = GateReading & { start: string; finish: string };

function isOpen(gate: GateReading): gate is Open {
  return gate.state !== 'done' && gate.start !== null && gate.finish !== null;
}

function jointsOf(
  gates: readonly Gate[],
  bars: readonly GateBar[],
  rowOf: ReadonlyMap<string, number>,
): Joint[] {
  return gates.flatMap(({ id, after }) => {
    const second = bars[rowOf.get(id) ?? -1];
    if (second === undefined) return [];
    return after.flatMap((before): Joint[] => {
      const first = bars[rowOf.get(before) ?? -1];
      if (first === undefined) return [];
      return [
        {
          id: `${before} ${id}`,
          fromRow: first.row,
          toRow: second.row,
          fromDay: first.to + 1,
          toDay: second.from,
          critical: first.critical && second.critical,
        },
      ];
    });
  });
}

/** The day, that one or up to six before it, on which a week begins. */
function weekStartBefore(day: number, weekDay: number): number {
  return day - ((((day - weekDay) % 7) + 7) % 7);
}

export interface HeadMark {
  day: number;
  text: string;
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const SUNDAY_BEFORE_1970 = -4;
const MONDAY_BEFORE_1970 = -3;

/** A day of the weekday on which weeks begin: Monday of an ISO week, Sunday of the retail calendar. */
export function weekDayOf(count: 'iso' | 'retail'): number {
  return count === 'iso' ? MONDAY_BEFORE_1970 : SUNDAY_BEFORE_1970;
}

/** The head: months where they begin, and the weeks as they are counted. */
export function headMarks(
  { firstDay, days }: Pick<GateCalendar, 'firstDay' | 'days'>,
  count: 'iso' | 'retail',
): { months: HeadMark[]; weeks: HeadMark[] } {
  const months: HeadMark[] = [];
  for (let day = 0; day < days; day++) {
    const [year = '', month = '', date = ''] = isoDateOf(firstDay + day).split('-');
    if (day > 0 && date !== '01') continue;
    // A month of which only some days are seen at the start would be written over by the next one.
    if (day === 0 && Number(date) > 15) continue;
    const name = MONTHS[Number(month) - 1] ?? month;
    months.push({ day, text: months.length === 0 || month === '01' ? `${name} ${year}` : name });
  }
  const weeks = Array.from({ length: days / 7 }, (_, week) => ({
    day: 7 * week,
    text: weekText(firstDay + 7 * week, count),
  }));
  return { months, weeks };
}

function weekText(day: number, count: 'iso' | 'retail'): string {
  if (count === 'iso') return String(isoWeekOf(day));
  const { period, weekOfPeriod } = retailWeekOf(day);
  return weekOfPeriod === 1 ? `P${period}` : String(weekOfPeriod);
}
