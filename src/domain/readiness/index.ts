// The door of readiness: what has to be ready by when, what is late and what that costs, chances, numbers, calendar files.
// Everything that counts days asks for today; holidays come out of a table. Nothing here is needed by the first screen.
// Worked example: readinessFor(plan, '2026-03-02').next[0] is the id of the gate to work on first.
import type { Plan } from '../plan/index.ts';
import { chancesOf } from './chances.ts';
import { closedDaysOf, KNOWN_YEARS } from './holidays.ts';
import { readinessOf } from './reading.ts';
import type { Chances, Readiness } from './types.ts';

export { USUAL_RUNS, USUAL_SEED } from './chances.ts';
export { asGtin14, caseGtinOf, checkDigitOf, isGtin, isSscc, ssccOf } from './gs1.ts';
export { closedDaysOf, KNOWN_YEARS } from './holidays.ts';
export { type CalendarArgs, calendarOf } from './ical.ts';
export { daysLeftOf, meanOf, varianceOf } from './lead-time.ts';
export { withoutGate } from './leave-out.ts';
export { type ReadinessLine, readinessLine } from './line.ts';
export { type NumberFinding, numberFindings, type PackLevel, packLevels } from './numbers.ts';
export { type Moved, type SlipCosts, slipCost, slipCostsOf, withLaterOpenings } from './slip-cost.ts';
export { CHANNELS, type Channel, PRODUCT_KINDS, type ProductKind } from './starter-sets.ts';
export { type SuggestArgs, type Suggestion, suggestedGates } from './suggest.ts';
export type { Chances, GateReading, Readiness, ResetChance, SlipCost, WaveReading } from './types.ts';

/** The reading of a plan on a day (YYYY-MM-DD). `extraDays`: working days by which gates slip, by id. */
export function readinessFor(
  plan: Plan,
  today: string,
  extraDays: Readonly<Record<string, number>> = {},
): Readiness {
  const closedDays = closedDaysOf(plan.readiness.calendar);
  return readinessOf({ plan, today, closedDays, knownYears: KNOWN_YEARS, extraDays });
}

/** Chances of a plan on a day, by simulation. */
export function chancesFor(
  plan: Plan,
  today: string,
  options: { runs?: number; seed?: number } = {},
): Chances {
  return chancesOf({ plan, today, closedDays: closedDaysOf(plan.readiness.calendar), ...options });
}
