// Where a gate's dates come from: what it waits for and how long it takes give the day it ends; the first date that it, or
// what waits for it, is due for gives the day it has to. Worked example: done by 6 Mar, before goods are ordered on 9 Mar.
import type { VNode } from 'preact';
import type { Gate, Plan } from '../../domain/plan/index.ts';
import type { Readiness, WaveReading } from '../../domain/readiness/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { usePlan } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { dayCount, openingName } from './words.ts';

export function DatesFrom({ gate, readiness }: { gate: Gate; readiness: Readiness }): VNode {
  const plan = usePlan();
  const say = useSay();
  return (
    <ul class="ff-slip-moves">
      {linesOf({ plan, gate, readiness, say }).map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

interface LinesArgs {
  plan: Plan;
  gate: Gate;
  readiness: Readiness;
  say: ScreenSay;
}

/** Sentences, from what it waits for to the days that aren't worked. */
export function linesOf(args: LinesArgs): string[] {
  const { plan, gate, readiness, say } = args;
  const reading = readiness.gates.find(({ id }) => id === gate.id);
  if (reading === undefined || reading.start === null || reading.finish === null) return [];
  const before = readiness.gates.filter(
    ({ id, finish }) => gate.after.includes(id) && finish !== null && finish < (reading.start ?? ''),
  );
  const last = before.sort((a, b) => (b.finish ?? '').localeCompare(a.finish ?? ''))[0];
  const begins =
    last === undefined || last.finish === null
      ? `Waits for nothing that is still to be done: it can begin on ${say.date(reading.start)}.`
      : `Waits for ${last.name}, which ends on ${say.date(last.finish)}: it can begin on ${say.date(reading.start)}.`;
  const left = gate.state.is === 'underWay' ? 'as typed' : 'from the three figures below';
  const ends = `${capital(dayCount(reading.daysLeft, say))} of work, ${left}: it ends on ${say.date(reading.finish)}.`;
  return [begins, ends, ...dueLines(args), ...workLines(plan, readiness, say)];
}

function dueLines({ plan, gate, readiness, say }: LinesArgs): string[] {
  const reading = readiness.gates.find(({ id }) => id === gate.id);
  if (reading?.latestFinish == null || reading.latestStart === null) return [];
  const day = reading.latestFinish;
  const own = dueOf(plan, gate, readiness);
  // Work that ends on the eve, or on the last worked day before it, is in time.
  const follows = readiness.gates
    .filter(({ id }) => plan.readiness.gates.some((each) => each.id === id && each.after.includes(gate.id)))
    .filter(({ latestStart }) => latestStart !== null && latestStart > day)
    .sort((a, b) => (a.latestStart ?? '').localeCompare(b.latestStart ?? ''))[0];
  const isOwn = own !== null && (follows?.latestStart == null || own.date <= follows.latestStart);
  const why =
    isOwn && own !== null
      ? `${openingName(plan, own.key)} ${DUE_WORDS[gate.before]} on ${say.date(own.date)}`
      : follows?.latestStart == null
        ? ''
        : `${follows.name} has to begin by ${say.date(follows.latestStart)}`;
  const room = `it has to end by ${say.date(day)}, so to begin by ${say.date(reading.latestStart)}.`;
  return [why === '' ? capital(room) : `${capital(why)}: ${room}`];
}

const DUE_WORDS: Readonly<Record<Gate['before'], string>> = {
  ordering: 'is ordered or made for',
  shipping: 'has its goods leave us',
  shelf: 'stands on the shelf',
};

/** The first date that the gate itself is due for. */
function dueOf(plan: Plan, gate: Gate, readiness: Readiness): { key: string; date: string } | null {
  const dateOf = (wave: WaveReading): string =>
    gate.before === 'ordering' ? wave.orderDate : gate.before === 'shipping' ? wave.shipDate : wave.shelfDate;
  const own = readiness.waves
    .filter((wave) => isHeld(gate, wave))
    .map((wave) => ({ key: `${wave.accountId}/${wave.waveId}`, date: dateOf(wave) }))
    .filter(({ key }) => openingName(plan, key) !== '')
    .sort((a, b) => a.date.localeCompare(b.date));
  return own[0] ?? null;
}

function isHeld({ holds }: Gate, { accountId, waveId }: WaveReading): boolean {
  if (holds.by === 'market') return true;
  if (holds.by === 'accounts') return holds.accountIds.includes(accountId);
  return holds.accountId === accountId && holds.waveIds.includes(waveId);
}

function workLines(plan: Plan, readiness: Readiness, say: ScreenSay): string[] {
  const { workDays, holidays, closed } = plan.readiness.calendar;
  const count = `${workDays.length} ${workDays.length === 1 ? 'day' : 'days'} of the week`;
  const free = holidays === null ? 'no public holidays' : 'public holidays left out';
  const away = closed.length === 0 ? '' : `, ${closed.length} times we close left out`;
  return [
    `Worked on ${count}, ${free}${away}; today is ${say.date(readiness.today)}, its own work still counts.`,
  ];
}

function capital(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
