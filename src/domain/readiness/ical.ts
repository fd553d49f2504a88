// Readiness as a calendar file (iCalendar, RFC 5545): an event for every gate, from its latest start to its latest finish, one
// for every shelf date and reset. Reminders ride in it; there is no server. A file made later replaces the events of one
// made before: the same UIDs, a higher SEQUENCE (RFC 5546); a gate that is done comes as cancelled.
// Worked figure: UID "spring-tea.gate.labels@firstfill.invalid", SEQUENCE minutes since the start of 2020.
import { addDays, dayNumber } from '../calendar.ts';
import type { Gate, Plan } from '../plan/index.ts';
import { contentLine, escaped } from './ical-text.ts';
import type { GateReading, Readiness, WaveReading } from './types.ts';

export interface CalendarArgs {
  plan: Plan;
  readiness: Readiness;
  /** The moment it is made, in UTC: "2026-03-02T09:30:00Z". */
  stamp: string;
  /** Only the gates of this owner ('' is nobody's); null: all, with shelf dates and resets. */
  owner: string | null;
}

/** The whole file. Throws when the stamp isn't a moment in UTC from 2020 on, which is a bug. */
export function calendarOf({ plan, readiness, stamp, owner }: CalendarArgs): string {
  const made = madeAt(stamp);
  const gates = plan.readiness.gates.flatMap((gate, at) => {
    const reading = readiness.gates[at];
    return reading && (owner === null || gate.owner === owner) ? [gateEvent(plan, gate, reading)] : [];
  });
  const dates =
    owner === null ? [...readiness.waves.map((wave) => waveEvent(plan, wave)), ...resetEvents(plan)] : [];
  return [
    contentLine('BEGIN', 'VCALENDAR'),
    contentLine('VERSION', '2.0'),
    contentLine('PRODID', '-//Firstfill//Readiness//EN'),
    contentLine('CALSCALE', 'GREGORIAN'),
    contentLine('METHOD', 'PUBLISH'),
    contentLine('X-WR-CALNAME', escaped(owner ? `${plan.name}: ${owner}` : plan.name)),
    ...[...gates, ...dates].map((event) => eventText(event, made)),
    contentLine('END', 'VCALENDAR'),
  ].join('');
}

interface Made {
  stamp: string;
  sequence: number;
}

/** No clock here: the sequence is the minutes from 2020 to the stamp, so it grows with every file and fits 32 bits. */
function madeAt(stamp: string): Made {
  const match = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2}):(\d{2})(?:\.\d+)?Z$/.exec(stamp);
  if (!match) throw new Error(`"${stamp}" is not a moment in UTC`);
  const [, date = '', hours = '', minutes = '', seconds = ''] = match;
  const sequence = (dayNumber(date) - dayNumber('2020-01-01')) * 1440 + Number(hours) * 60 + Number(minutes);
  if (sequence < 0) throw new Error(`"${stamp}" is before 2020`);
  return { stamp: `${date.replace(/-/g, '')}T${hours}${minutes}${seconds}Z`, sequence };
}

interface Event {
  uid: string;
  /** First and last day, YYYY-MM-DD. */
  first: string;
  last: string;
  summary: string;
  description: string;
  cancelled: boolean;
  owner: string;
  /** Days before its first day that a reminder comes. */
  alarmDays: readonly number[];
}

function gateEvent(plan: Plan, gate: Gate, reading: GateReading): Event {
  const { state, owner, name, evidence } = gate;
  const isDone = state.is === 'done';
  // What is late, or due for nothing, stands where the work is: from today on.
  const asked = reading.late ? null : reading.latestStart;
  const first = (isDone ? state.date : (asked ?? reading.start)) ?? plan.startDate;
  const finish = (isDone ? state.date : asked ? reading.latestFinish : reading.finish) ?? first;
  const waits = plan.readiness.gates.filter(({ id }) => gate.after.includes(id)).map((before) => before.name);
  const lines = [
    reading.late
      ? `Late by ${dayCount(-(reading.slack ?? 0))}. Latest start was ${reading.latestStart}.`
      : '',
    reading.slack !== null && !reading.late ? `${dayCount(reading.slack)} of slack.` : '',
    waits.length > 0 ? `After: ${waits.join(', ')}.` : '',
    owner ? `Owner: ${owner}.` : '',
    evidence ? `Shown by: ${evidence}` : '',
  ];
  return {
    uid: uidOf(plan, 'gate', gate.id),
    first,
    last: [first, finish].sort()[1] ?? first,
    summary: reading.late ? `Late: ${name}` : name,
    description: lines.filter((line) => line !== '').join('\n'),
    cancelled: isDone,
    owner,
    alarmDays: isDone ? [] : [7, 1],
  };
}

function waveEvent(plan: Plan, wave: WaveReading): Event {
  const { name, doors, shelfDate, earliest, slipWeeks, shipDate } = wave;
  const late =
    slipWeeks > 0
      ? `As things stand ${earliest}, ${slipWeeks === 1 ? '1 week' : `${slipWeeks} weeks`} late.`
      : '';
  return {
    uid: uidOf(plan, 'wave', `${wave.accountId}.${wave.waveId}`),
    first: shelfDate,
    last: shelfDate,
    summary: `On the shelf: ${name}, ${doors === 1 ? '1 door' : `${doors} doors`}`,
    description: [`Goods leave us in the week of ${shipDate}.`, late]
      .filter((line) => line !== '')
      .join('\n'),
    cancelled: false,
    owner: '',
    alarmDays: [7],
  };
}

function resetEvents(plan: Plan): Event[] {
  return plan.readiness.resets.map(({ id, label, date, accountId }) => {
    const account = plan.accounts.find((each) => each.id === accountId)?.name;
    return {
      uid: uidOf(plan, 'reset', id),
      first: date,
      last: date,
      summary: account ? `${label}: ${account}` : label,
      description: 'Shelves are set anew.',
      cancelled: false,
      owner: '',
      alarmDays: [14],
    };
  });
}

function dayCount(days: number): string {
  return days === 1 ? '1 working day' : `${days} working days`;
}

/** The name under "invalid" is reserved (RFC 2606): no host of anybody's. */
function uidOf(plan: Plan, kind: string, id: string): string {
  return `${plan.id}.${kind}.${id}@firstfill.invalid`;
}

/** All-day events: the end is the day after the last (RFC 5545, 3.6.1), and they leave nobody busy. */
function eventText(event: Event, { stamp, sequence }: Made): string {
  const dateText = (date: string) => date.replace(/-/g, '');
  return [
    contentLine('BEGIN', 'VEVENT'),
    contentLine('UID', event.uid),
    contentLine('DTSTAMP', stamp),
    contentLine('LAST-MODIFIED', stamp),
    contentLine('SEQUENCE', String(sequence)),
    contentLine('DTSTART;VALUE=DATE', dateText(event.first)),
    contentLine('DTEND;VALUE=DATE', dateText(addDays(event.last, 1))),
    contentLine('SUMMARY', escaped(event.summary)),
    ...(event.description === '' ? [] : [contentLine('DESCRIPTION', escaped(event.description))]),
    ...(event.owner === '' ? [] : [contentLine('CONTACT', escaped(event.owner))]),
    contentLine('STATUS', event.cancelled ? 'CANCELLED' : 'CONFIRMED'),
    contentLine('TRANSP', 'TRANSPARENT'),
    ...event.alarmDays.flatMap((days) => [
      contentLine('BEGIN', 'VALARM'),
      contentLine('ACTION', 'DISPLAY'),
      contentLine('TRIGGER', `-P${days}D`),
      contentLine('DESCRIPTION', escaped(event.summary)),
      contentLine('END', 'VALARM'),
    ]),
    contentLine('END', 'VEVENT'),
  ].join('');
}
