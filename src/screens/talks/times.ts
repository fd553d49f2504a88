// When something was said, in the reader's own clock. Worked example: "14:05" today, "2 Mar 2026, 14:05" in the list.
import { momentText } from '../shared/moment.ts';
import { browserLocale } from '../shared/screen-say.ts';

export function timeText(atSeconds: number): string {
  const shape = { hour: '2-digit', minute: '2-digit' } as const;
  return new Intl.DateTimeFormat(browserLocale(), shape).format(atSeconds * 1000);
}

export function dayText(atSeconds: number): string {
  return momentText(atSeconds * 1000);
}
