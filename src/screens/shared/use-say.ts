// The way of writing figures for the open plan: its currency, its first day, the reader's locale.
// Worked figure: in a plan in dollars that starts on 2 March 2026, useSay().week(9) is "week 9 (May 4)" in en-US.
import { dayNumber } from '../../domain/calendar.ts';
import type { SayFor } from '../../domain/evaluate.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { type ScreenSay, screenSay } from './screen-say.ts';
import { usePlan } from './session-context.ts';

/** Figures of the open plan. */
export function useSay(): ScreenSay {
  return sayOf(usePlan());
}

/** Figures of a plan. */
export function sayOf({ currency, startDate }: Pick<Plan, 'currency' | 'startDate'>): ScreenSay {
  return screenSay({ currency, startDay: dayNumber(startDate) });
}

/** For evaluate: verdicts' sentences are written as screens write. */
export const sayFor: SayFor = ({ currency, startDay }) => screenSay({ currency, startDay });
