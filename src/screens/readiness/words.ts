// Readiness in words: how a gate stands, what it holds back, by when it has to begin. Days here are working days.
// Worked example: "starts by 9 Mar, 3 days to spare"; past its latest start "3 days late".
import type { Gate, Plan } from '../../domain/plan/index.ts';
import type { GateReading, Readiness, ReadinessLine } from '../../domain/readiness/index.ts';
import type { VerdictState } from '../../domain/results.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

/** Less than a working week to spare is tight: common practice, no source. */
const TIGHT_DAYS = 5;

export const STATES: readonly { value: Gate['state']['is']; label: string }[] = [
  { value: 'notStarted', label: 'not started' },
  { value: 'underWay', label: 'under way' },
  { value: 'done', label: 'done' },
];

export const BEFORE: readonly { value: Gate['before']; label: string }[] = [
  { value: 'ordering', label: 'we order or make the goods' },
  { value: 'shipping', label: 'goods leave us' },
  { value: 'shelf', label: 'they stand on the shelf' },
];

export function dayCount(days: number, say: ScreenSay): string {
  return days === 1 ? '1 day' : `${say.count(days)} days`;
}

/** The mark beside a gate; null where there is nothing to judge: it is done, or holds nothing back that is to come. */
export function markOf({ state, slack, late }: GateReading): VerdictState | null {
  if (state === 'done' || slack === null) return null;
  if (late) return 'fails';
  return slack < TIGHT_DAYS ? 'tight' : 'holds';
}

/** How much room there is. */
export function roomWords({ state, slack, late }: GateReading, say: ScreenSay): string {
  if (state === 'done') return 'done';
  if (slack === null) return 'holds nothing back';
  if (late) return slack < 0 ? `${dayCount(-slack, say)} late` : 'late';
  return slack === 0 ? 'no day to spare' : `${dayCount(slack, say)} to spare`;
}

/** By when it has to begin, or to be done where it is under way. */
export function byWhen({ state, latestStart, latestFinish }: GateReading, say: ScreenSay): string {
  if (state === 'done') return 'done';
  if (state === 'underWay') return latestFinish === null ? 'under way' : `done by ${say.date(latestFinish)}`;
  return latestStart === null ? 'no date' : `start by ${say.date(latestStart)}`;
}

/** The day a list is in the order of: when it has to begin, or to end where it has begun; null for none. */
export function sortDay({ state, latestStart, latestFinish }: GateReading): string | null {
  return state === 'underWay' ? latestFinish : latestStart;
}

export function ownerWords(owner: string): string {
  return owner.trim() === '' ? 'nobody yet' : owner;
}

/** Everybody who owns a gate, in the order of the alphabet; '' last, for those that nobody owns. */
export function ownersOf(plan: Plan): string[] {
  const owners = [...new Set(plan.readiness.gates.map(({ owner }) => owner.trim()))];
  return owners.sort((a, b) => (a === '' ? 1 : b === '' ? -1 : a.localeCompare(b, 'en')));
}

/** "Corner, opening 2": an opening by its "account/wave". */
export function openingName(plan: Plan, key: string): string {
  const [accountId = '', waveId = ''] = key.split('/');
  const account = plan.accounts.find(({ id }) => id === accountId);
  const index = account?.waves.findIndex(({ id }) => id === waveId) ?? -1;
  if (account === undefined || index === -1) return '';
  return account.waves.length === 1 ? account.name : `${account.name}, opening ${index + 1}`;
}

/** What a gate holds back itself. */
export function holdsWords(plan: Plan, { holds }: Gate): string {
  if (holds.by === 'market') return 'every opening';
  if (holds.by === 'waves') {
    return holds.waveIds.map((id) => openingName(plan, `${holds.accountId}/${id}`)).join('; ');
  }
  return holds.accountIds.map((id) => plan.accounts.find((each) => each.id === id)?.name ?? '').join(', ');
}

/** The mark of the whole: late where an opening is; tight where something has little room. */
export function markOfWhole(readiness: Readiness, { state }: ReadinessLine): VerdictState {
  if (state === 'none') return 'unknown';
  if (state === 'late') return 'fails';
  const rooms = readiness.gates.flatMap(({ slack }) => (slack === null ? [] : [slack]));
  return rooms.some((slack) => slack < TIGHT_DAYS) ? 'tight' : 'holds';
}

/** Chances to 5 %, as everywhere; only what never or always happened is 0 or 100 %. */
export function chanceWords(chance: number): string {
  if (chance === 0) return 'never in the runs';
  if (chance === 1) return 'in every run';
  const fives = Math.round(chance * 20) * 5;
  if (fives === 0) return 'below 5\u00a0%';
  return fives === 100 ? 'above 95\u00a0%' : `${fives}\u00a0%`;
}
