/**
 * Writes src/domain/readiness/holiday-days.ts anew from the library date-holidays (which is far too large to travel with the
 * app): `npx tsx tests/support/write-holidays.ts`. tests/outside/holidays.test.ts compares what is there with the library.
 * Worked figure: "0101 0119" for US in 2026: New Year and the third Monday of January.
 */
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import Holidays from 'date-holidays';
import { HOLIDAY_PLACES } from '../../src/domain/plan/readiness.ts';

export const FIRST_YEAR = 2024;
export const LAST_YEAR = 2045;

/** Public holidays of a place and year as "MMDD", rising, with their substitute days. */
export function libraryDays(place: string, year: number): string[] {
  const [country = '', part] = place.split('-');
  const library = part ? new Holidays(country, part) : new Holidays(country);
  const found = library.getHolidays(year).filter(({ type }) => type === 'public');
  const days = found.map(({ date }) => date.slice(0, 10)).filter((date) => date.startsWith(String(year)));
  return [...new Set(days)].sort().map((date) => date.slice(5).replace('-', ''));
}

function text(): string {
  const lines = HOLIDAY_PLACES.map((place) => {
    const years = Array.from({ length: LAST_YEAR - FIRST_YEAR + 1 }, (_, at) =>
      libraryDays(place, FIRST_YEAR + at).join(''),
    );
    const key = /^[A-Z]+$/.test(place) ? place : `'${place}'`;
    return `  ${key}:\n    '${years.join(' ')}',`;
  });
  return `// Public holidays by place: a word a year from ${FIRST_YEAR} on, four digits (month and day) a holiday. Written by
// tests/support/write-holidays.ts from the library date-holidays, whose data is licensed CC BY 3.0; not by hand.
// Worked figure: a word that begins with 0101 says that New Year's day is one.
import type { HOLIDAY_PLACES } from '../plan/readiness.ts';

export const FIRST_YEAR = ${FIRST_YEAR};
export const LAST_YEAR = ${LAST_YEAR};

export const HOLIDAY_DAYS: Readonly<Record<(typeof HOLIDAY_PLACES)[number], string>> = {
${lines.join('\n')}
};
`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  writeFileSync(new URL('../../src/domain/readiness/holiday-days.ts', import.meta.url), text());
}
