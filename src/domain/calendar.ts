// Dates as whole day numbers (days since 1970-01-01, negative before), so that the domain needs no clock and no Date.
// Every week of a plan begins on the weekday of its start date; season follows the ISO week of the week's first day.
// The civil calendar is the proleptic Gregorian one of ISO 8601; the arithmetic counts years from 1 March, so that the
// leap day comes last. Worked figure: 2024-03-01 is day 19783, in ISO week 9, month index 24290, quarter index 8096.

/** 400 Gregorian years; 1 March of the year 0 is this many days before 1970-01-01. */
const DAYS_IN_400_YEARS = 146_097;
const DAYS_FROM_MARCH_0000 = 719_468;

/** Days since 1970-01-01 of a date written YYYY-MM-DD. Throws when it isn't a date that exists (a bug: plans are checked). */
export function dayNumber(isoDate: string): number {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(isoDate);
  if (!match) throw new Error(`"${isoDate}" is not a date written YYYY-MM-DD`);
  const day = dayOf(Number(match[1]), Number(match[2]), Number(match[3]));
  if (isoDateOf(day) !== isoDate) throw new Error(`"${isoDate}" is not a date that exists`);
  return day;
}

/** The date of a day number, written YYYY-MM-DD; years 0 to 9999. */
export function isoDateOf(dayNumber: number): string {
  const { year, month, day } = civil(dayNumber);
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

/** A date so many days later (earlier when negative), both written YYYY-MM-DD. */
export function addDays(isoDate: string, days: number): string {
  return isoDateOf(dayNumber(isoDate) + days);
}

/** First day of week `weekIndex` (from 0) of a plan that starts on `startDate`, as a day number. */
export function weekStart(startDate: string, weekIndex: number): number {
  return dayNumber(startDate) + 7 * weekIndex;
}

/** Weekday of a day number: 1 is Monday, 7 is Sunday (ISO 8601). */
export function weekdayOf(dayNumber: number): number {
  return modulo(dayNumber + 3, 7) + 1;
}

/** ISO 8601 week, 1 to 53: the year's first week is the one that holds its first Thursday. */
export function isoWeekOf(dayNumber: number): number {
  const thursday = dayNumber + 4 - weekdayOf(dayNumber);
  const newYear = dayOf(civil(thursday).year, 1, 1);
  return Math.floor((thursday - newYear) / 7) + 1;
}

/** Months since January of the year 0: year x 12 + (month - 1). */
export function monthIndexOf(dayNumber: number): number {
  const { year, month } = civil(dayNumber);
  return year * 12 + month - 1;
}

/** Calendar quarters since the first of the year 0: year x 4 + (quarter - 1). */
export function quarterIndexOf(dayNumber: number): number {
  return Math.floor(monthIndexOf(dayNumber) / 3);
}

/** The last day of a calendar quarter, as a day number. */
export function quarterEndDay(quarterIndex: number): number {
  const next = quarterIndex + 1;
  return dayOf(Math.floor(next / 4), modulo(next, 4) * 3 + 1, 1) - 1;
}

function dayOf(year: number, month: number, day: number): number {
  const marchYear = month > 2 ? year : year - 1;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  const leapDays = Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100);
  return era * DAYS_IN_400_YEARS + yearOfEra * 365 + leapDays + dayOfYear - DAYS_FROM_MARCH_0000;
}

function civil(dayNumber: number): { year: number; month: number; day: number } {
  const shifted = dayNumber + DAYS_FROM_MARCH_0000;
  const era = Math.floor(shifted / DAYS_IN_400_YEARS);
  const dayOfEra = shifted - era * DAYS_IN_400_YEARS;
  const leapDays =
    Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096);
  const yearOfEra = Math.floor((dayOfEra - leapDays) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = ((marchMonth + 2) % 12) + 1;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1,
  };
}

function modulo(value: number, base: number): number {
  return ((value % base) + base) % base;
}
