// Periods in words, as they stand over a column: "week 12", "May 2026", "Q2 2026", "May 2026 (P4)".
// Worked figure: the retail calendar's period 4 of 2026 is called by its month, May.
import { isoDateOf } from '../../domain/calendar.ts';
import { monthOfPeriod } from '../../domain/calendar-454.ts';
import type { Period, PeriodKind } from '../../domain/statements/index.ts';
import { browserLocale, type ScreenSay } from '../shared/screen-say.ts';

export const KIND_CHOICES: readonly { value: PeriodKind; label: string }[] = [
  { value: 'week', label: 'Weeks' },
  { value: 'month', label: 'Months' },
  { value: 'quarter', label: 'Quarters' },
  { value: 'retail', label: '4-5-4' },
  { value: 'plan', label: 'Whole plan' },
];

/** Over a table: "by month". */
export const BY_KIND: Record<PeriodKind, string> = {
  week: 'by week',
  month: 'by month',
  quarter: 'by quarter',
  retail: 'by period of the retail calendar',
  plan: 'over the whole plan',
};

/** What has to be said of a way to gather weeks; '' where it says itself. */
export const KIND_NOTES: Record<PeriodKind, string> = {
  week: '',
  month: 'A week belongs to the month of its first day.',
  quarter: 'A week belongs to the quarter of its first day.',
  retail:
    'Retail calendar: weeks from Sunday, quarters of 4, 5 and 4 weeks, a year ends on the Saturday nearest 31 January (US National Retail Federation). A week of the plan belongs to the period of its first day.',
  plan: '',
};

export function periodWords({ kind, key, fromWeek }: Period, say: ScreenSay): string {
  const [year = '', part = ''] = key.split('-');
  switch (kind) {
    case 'week':
      // Where it has to break, the date stays in one piece.
      return `week\u00a0${fromWeek} (${say.weekDay(fromWeek).replaceAll(' ', '\u00a0')})`;
    case 'month':
      return monthText(Number(year), Number(part));
    case 'quarter':
      return `${part} ${year}`;
    case 'retail': {
      const period = Number(part.slice(1));
      // Period 12 is the January after the year it belongs to.
      const month = monthOfPeriod(period);
      return `${monthText(month === 1 ? Number(year) + 1 : Number(year), month)} (P${period})`;
    }
    case 'plan':
      return 'Whole plan';
  }
}

/** The weeks a period holds: "weeks 5 to 8". */
export function weeksWords({ fromWeek, toWeek }: Period): string {
  return fromWeek === toWeek ? `week ${fromWeek}` : `weeks ${fromWeek} to ${toWeek}`;
}

const formats = new Map<string, Intl.DateTimeFormat>();

function monthText(year: number, month: number): string {
  const locale = browserLocale();
  const language = /^en\b/.test(locale) ? locale : 'en-GB';
  const format =
    formats.get(language) ??
    new Intl.DateTimeFormat(language, { month: 'short', year: 'numeric', timeZone: 'UTC' });
  formats.set(language, format);
  return format.format(
    new Date(`${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-01T00:00:00Z`),
  );
}

/** The last day of a period's last week, for print. */
export function lastDate({ toWeek }: Period, startDay: number): string {
  return isoDateOf(startDay + 7 * toWeek + 6);
}
