// Ready or not: back from the shelf date of every opening to the latest start of every gate, and forward from today to the
// earliest shelf date that the gates allow. Pure: today is passed in, holidays too.
// Worked figure: today Monday 2 March, artwork 10 days, then labels 5, due before shipping on Monday 16 March: 10 worked
// days are left for 15, labels end on Friday 20 March, the opening comes one week later.
import { dayNumber, isoDateOf } from '../calendar.ts';
import type { Gate, Plan } from '../plan/index.ts';
import { daysLeftOf } from './lead-time.ts';
import { chainTo, type Step, type StepTimes, timesOf } from './network.ts';
import { type Opening, openingsOf } from './opening-dates.ts';
import type { ClosedDays, GateReading, Readiness, WaveReading } from './types.ts';
import { type WorkDays, workDaysFrom } from './work-days.ts';

export interface ReadinessArgs {
  plan: Plan;
  /** YYYY-MM-DD; its own work still counts. */
  today: string;
  closedDays: ClosedDays;
  /** Years whose holidays are known; others count as worked, and are named in the result. */
  knownYears: { from: number; until: number } | null;
  /** Working days more than its lead time that a gate takes, by id: what if it slips. */
  extraDays?: Readonly<Record<string, number>>;
}

/** The whole reading. Gates that are done take no time; an opening that nothing holds back keeps its date. */
export function readinessOf(args: ReadinessArgs): Readiness {
  const { plan, today, closedDays, extraDays = {} } = args;
  const { gates, calendar } = plan.readiness;
  const days = workDaysFrom(dayNumber(today), calendar, closedDays);
  const openings = openingsOf(plan);
  const steps = stepsOf(gates, openings, days, extraDays);
  const times = timesOf(steps);
  const finish = new Map([...times].map(([id, { earliestFinish }]) => [id, earliestFinish]));
  const waves = openings.map((opening) => waveReading({ plan, opening, steps, finish, days }));
  const worst = waves
    .filter(({ margin }) => margin !== null)
    .sort((x, y) => (x.margin ?? 0) - (y.margin ?? 0))[0];
  const critical = worst?.reading.critical ?? [];
  const held = holdsOf(gates, openings);
  const readings = gates.map((gate) =>
    gateReading({
      gate,
      time: times.get(gate.id) as StepTimes,
      days,
      critical,
      holds: held.get(gate.id) ?? [],
    }),
  );
  return {
    today,
    gates: readings,
    waves: waves.map(({ reading }) => reading),
    critical,
    next: nextOf(gates, readings),
    late: readings.filter(({ late }) => late).map(({ id }) => id),
    holidaysUnknown: unknownYears(args, readings, openings),
  };
}

/** A gate is due before the first of the dates it holds back; one that holds back nothing is due for what waits for it only. */
function stepsOf(
  gates: readonly Gate[],
  openings: readonly Opening[],
  days: WorkDays,
  extraDays: Readonly<Record<string, number>>,
): Step[] {
  return gates.map((gate) => {
    const dues = openings
      .filter((opening) => opening.gates.includes(gate.id))
      .map((opening) => days.placeOf(opening.due[gate.before]));
    return {
      id: gate.id,
      time: daysLeftOf(gate, extraDays[gate.id] ?? 0),
      // What is done waits for nothing any more.
      after: gate.state.is === 'done' ? [] : gate.after,
      due: gate.state.is === 'done' || dues.length === 0 ? null : Math.min(...dues),
    };
  });
}

/** Weeks an opening has to move so that a gate that ends at place `finish` is done before its date. */
function weeksLate(finish: number, due: number, days: WorkDays): number {
  if (finish <= 0) return 0;
  const lastDay = days.dayAt(Math.ceil(finish) - 1);
  return Math.max(0, Math.ceil((lastDay + 1 - due) / 7));
}

interface WaveArgs {
  plan: Plan;
  opening: Opening;
  steps: readonly Step[];
  finish: ReadonlyMap<string, number>;
  days: WorkDays;
}

/** The reading, and the working days it can still lose (its tightest gate's); null where nothing holds it back any more. */
function waveReading(args: WaveArgs): { reading: WaveReading; margin: number | null } {
  const { plan, opening, steps, finish, days } = args;
  const slipWeeks = slipWeeksOf(plan, opening, finish, days);
  const open = tightest(plan, opening, finish, days);
  const earliest = opening.due.shelf + 7 * slipWeeks;
  const resets = plan.readiness.resets
    .filter(({ accountId }) => accountId === null || accountId === opening.accountId)
    .map(({ date }) => date)
    .filter((date) => date >= isoDateOf(earliest))
    .sort();
  const { accountId, waveId, name, openWeek, doors, due } = opening;
  const reading = {
    accountId,
    waveId,
    name,
    openWeek,
    doors,
    shelfDate: isoDateOf(due.shelf),
    shipDate: isoDateOf(due.shipping),
    orderDate: isoDateOf(due.ordering),
    earliest: isoDateOf(earliest),
    slipWeeks,
    heldBy: open?.id ?? null,
    critical: open ? chainTo(open.id, steps, finish) : [],
    nextReset: resets[0] ?? null,
  };
  return { reading, margin: open?.margin ?? null };
}

/** Weeks later that an opening comes, given when its gates finish (in places of worked days from today). */
export function slipWeeksOf(
  plan: Plan,
  opening: Opening,
  finish: ReadonlyMap<string, number>,
  days: WorkDays,
): number {
  let weeks = 0;
  for (const gate of plan.readiness.gates) {
    if (!opening.gates.includes(gate.id)) continue;
    weeks = Math.max(weeks, weeksLate(finish.get(gate.id) ?? 0, opening.due[gate.before], days));
  }
  return weeks;
}

/** The gate an opening waits for longest, and the working days between its finish and its date. */
export function tightest(
  plan: Plan,
  opening: Opening,
  finish: ReadonlyMap<string, number>,
  days: WorkDays,
): { id: string; margin: number } | null {
  let found: { id: string; margin: number } | null = null;
  for (const { id, before } of plan.readiness.gates) {
    const ends = finish.get(id) ?? 0;
    if (!opening.gates.includes(id) || ends <= 0) continue;
    const margin = days.placeOf(opening.due[before]) - ends;
    if (found === null || margin < found.margin) found = { id, margin };
  }
  return found;
}

/** By gate, the openings it holds back: its own, and those of gates that wait for it. */
function holdsOf(gates: readonly Gate[], openings: readonly Opening[]): Map<string, string[]> {
  const key = ({ accountId, waveId }: Opening) => `${accountId}/${waveId}`;
  const held = new Map(
    gates.map(({ id }) => [id, new Set(openings.filter((each) => each.gates.includes(id)).map(key))]),
  );
  const steps = gates.map(({ id, after }) => ({ id, time: 1, after }));
  const ordered = [...timesOf(steps).keys()].reverse();
  const byId = new Map(gates.map((gate) => [gate.id, gate]));
  for (const id of ordered) {
    for (const before of byId.get(id)?.after ?? []) {
      for (const wave of held.get(id) ?? []) held.get(before)?.add(wave);
    }
  }
  const inPlanOrder = openings.map(key);
  return new Map([...held].map(([id, waves]) => [id, inPlanOrder.filter((wave) => waves.has(wave))]));
}

interface GateArgs {
  gate: Gate;
  time: StepTimes;
  days: WorkDays;
  critical: readonly string[];
  holds: readonly string[];
}

function gateReading({ gate, time, days, critical, holds }: GateArgs): GateReading {
  const { id, name, owner, state } = gate;
  const isDone = state.is === 'done';
  const dateAt = (place: number) => isoDateOf(days.dayAt(place));
  const asked = !isDone && Number.isFinite(time.latestFinish);
  const length = time.earliestFinish - time.earliestStart;
  // What takes no time happens on the day that what it waits for ends.
  const first = length > 0 ? time.earliestStart : Math.max(0, time.earliestStart - 1);
  return {
    id,
    name,
    owner,
    state: state.is,
    daysLeft: length,
    start: isDone ? null : dateAt(first),
    finish: isDone ? null : dateAt(Math.max(first, time.earliestFinish - 1)),
    latestStart: asked ? dateAt(length > 0 ? time.latestStart : time.latestStart - 1) : null,
    latestFinish: asked ? dateAt(time.latestFinish - 1) : null,
    slack: asked ? time.slack : null,
    late: asked && time.slack < 0,
    critical: critical.includes(id),
    holds,
  };
}

/** Gates that can be worked on today, the most pressing first. */
function nextOf(gates: readonly Gate[], readings: readonly GateReading[]): string[] {
  const done = new Set(gates.filter(({ state }) => state.is === 'done').map(({ id }) => id));
  const slackOf = ({ slack }: GateReading) => slack ?? Number.POSITIVE_INFINITY;
  return readings
    .filter(
      ({ id, state }, at) =>
        state !== 'done' && gates[at]?.after.every((before) => done.has(before)) && !done.has(id),
    )
    .sort((x, y) => (slackOf(x) === slackOf(y) ? 0 : slackOf(x) - slackOf(y)))
    .map(({ id }) => id);
}

function unknownYears(
  { plan, today, knownYears }: ReadinessArgs,
  readings: readonly GateReading[],
  openings: readonly Opening[],
): number[] {
  if (knownYears === null || plan.readiness.calendar.holidays === null || readings.length === 0) return [];
  const dates = [
    today,
    ...openings.map(({ due }) => isoDateOf(due.shelf)),
    ...readings.flatMap(({ finish }) => finish ?? []),
  ];
  const years = [...new Set(dates.map((date) => Number(date.slice(0, 4))))].sort((x, y) => x - y);
  return years.filter((year) => year < knownYears.from || year > knownYears.until);
}
