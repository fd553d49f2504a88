// A moment as a person reads it: the day and the time, in the reader's own clock. Worked example: "2 Mar 2026, 14:05".
import { browserLocale } from './screen-say.ts';

export function momentText(milliseconds: number): string {
  const locale = browserLocale();
  const language = /^en\b/.test(locale) ? locale : 'en-GB';
  return new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short' }).format(milliseconds);
}
