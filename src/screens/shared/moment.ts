// A moment as a person reads it: the day and the time, in the reader's own clock. Worked example: "2 Mar 2026, 14:05".
import { browserLocale } from './screen-say.ts';

export function momentText(milliseconds: number): string {
  const locale = browserLocale();
  const language = /^en\b/.test(locale) ? locale : 'en-GB';
  return new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short' }).format(milliseconds);
}

/** Today's date where the person is, written YYYY-MM-DD. */
export function today(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
