// Figures inside sentences on the command line: the same on every machine, dates as ISO 8601.
import { isoDateOf } from '../domain/calendar.ts';
import type { SayFor } from '../domain/evaluate.ts';
import { plainSay } from '../domain/verdicts/say.ts';

export const sayFor: SayFor = ({ minorDigits, startDay }) => plainSay({ minorDigits, startDay, dateOf: isoDateOf });
