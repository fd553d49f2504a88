// What readiness gives: when each gate must start, what it does to the openings behind it, and what is next. Dates are
// written YYYY-MM-DD; days of slack and lead time are working days; money is minor units of the plan's currency.
// Worked figure: a gate of 5 days that must be done by Friday 13 March has its latest start on Monday 9 March.
import type { Gate } from '../plan/index.ts';

/** Days that are not worked, as day numbers (calendar.ts). */
export type ClosedDays = (year: number) => readonly number[];

export interface GateReading {
  id: string;
  name: string;
  owner: string;
  state: Gate['state']['is'];
  /** Working days it still takes: as the mean of its range, rounded up; 0 when done. */
  daysLeft: number;
  /** First and last day of work when all goes as expected from today; null when done. */
  start: string | null;
  finish: string | null;
  /** Last day by which its work has to begin, and to end, for no opening to move; null when it holds back nothing that is to come, or is done. */
  latestStart: string | null;
  latestFinish: string | null;
  /** Working days it can still lose; below 0 it is late by so many. null as above. */
  slack: number | null;
  late: boolean;
  /** On the longest chain to the opening that suffers most. */
  critical: boolean;
  /** Openings it holds back, itself or through gates after it, as "account/wave". */
  holds: readonly string[];
}

export interface WaveReading {
  accountId: string;
  waveId: string;
  name: string;
  openWeek: number;
  doors: number;
  /** First day of the opening week. */
  shelfDate: string;
  /** First day of the week in which goods leave us, and in which the last order for them is placed with our supplier. */
  shipDate: string;
  orderDate: string;
  /** First day of the earliest week that today's state allows; not before shelfDate. */
  earliest: string;
  /** Weeks between the two. */
  slipWeeks: number;
  /** The gate that sets `earliest`, or null where nothing holds it back. */
  heldBy: string | null;
  /** Its longest chain, first to last gate still to be done. */
  critical: readonly string[];
  /** The first of its account's reset dates on or after `earliest`; null where none is known. */
  nextReset: string | null;
}

/** What a plan loses by opening later than planned; money in minor units, differences (later less planned). */
export interface SlipCost {
  cashNeed: number;
  lowestCash: number;
  contribution: number;
  /** The same as a loss per week of the slip, 0 or more; null where nothing slips. */
  contributionPerWeek: number | null;
}

export interface Readiness {
  today: string;
  gates: readonly GateReading[];
  waves: readonly WaveReading[];
  /** Ids of gates that are critical for the opening that suffers most, first to last. */
  critical: readonly string[];
  /** Gates to be done next, by latest start: they can begin now, and are not done. */
  next: readonly string[];
  late: readonly string[];
  /** Dates whose holidays aren't known are counted as worked from this year on, or before; null: none. */
  holidaysUnknown: readonly number[];
}

export interface ResetChance {
  resetId: string;
  label: string;
  date: string;
  accountId: string;
  waveId: string;
  /** 0 to 1: share of runs in which the opening can be on the shelf by that date. */
  chance: number;
}

export interface Chances {
  runs: number;
  resets: readonly ResetChance[];
  /** Share of runs in which the opening keeps its shelf date; and its earliest date in half and nine of ten runs. */
  waves: readonly { accountId: string; waveId: string; chance: number; half: string; nineOfTen: string }[];
  /** How often a gate lay on the longest chain of any opening, 0 to 1. */
  gates: readonly { id: string; criticalShare: number }[];
}
