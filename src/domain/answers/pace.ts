// How fast doors may open so that cash stays above the buffer: weeks put between one opening week and the next, or a lid
// on the doors a week. Every number is a run of the whole model, and all doors still open within the plan.
// Worked figure: openings in weeks 10, 14 and 20 with 3 weeks more between them: 10, 17 and 26.
import type { Plan } from '../plan/index.ts';
import { checkRules } from '../plan/rules.ts';
import type { RolloutReading } from '../rollout/types.ts';
import { wholePlan } from '../talks/run.ts';
import { isSteadyUpTo, lastOfFirstStretch, remembering, type Tried } from './search.ts';
import type { DoorsAWeek, WaveSpacing } from './types.ts';

/** No more weeks than these are put between two openings. */
const MOST_EXTRA_WEEKS = 26;

/** The least extra weeks that hold; null without a second opening week, or where cash at hand isn't known. */
export function waveSpacing(plan: Plan): WaveSpacing | null {
  const weeks = openingWeeks(plan);
  if (weeks.length < 2 || plan.business.openingCashAmount === null) return null;
  let before: RolloutReading | null = null;
  let triedTo = 0;
  for (let extra = 0; extra <= MOST_EXTRA_WEEKS; extra++) {
    const reading = readingOf(spaced(plan, extra));
    if (reading === null) break;
    triedTo = extra;
    if (isAboveBuffer(reading)) {
      return {
        extraWeeks: extra,
        triedTo,
        lowestThere: reading.lowestCash,
        bufferThere: reading.bufferAmount,
        lowestNext: before?.lowestCash ?? null,
        bufferNext: before?.bufferAmount ?? null,
        confirmed: before === null || !isAboveBuffer(before),
      };
    }
    before = reading;
  }
  if (before === null) return null;
  const none = {
    extraWeeks: null,
    triedTo,
    lowestNext: null,
    bufferNext: null,
    confirmed: !isAboveBuffer(before),
  };
  return { ...none, lowestThere: before.lowestCash, bufferThere: before.bufferAmount };
}

/** The plan with so many weeks more between each opening week and the one after it, over all accounts. */
export function spaced(plan: Plan, extraWeeks: number): Plan {
  const weeks = openingWeeks(plan);
  const accounts = plan.accounts.map((account) => ({
    ...account,
    waves: account.waves.map((wave) => ({
      ...wave,
      openWeek: wave.openWeek + extraWeeks * weeks.indexOf(wave.openWeek),
    })),
  }));
  return { ...plan, accounts };
}

function openingWeeks({ accounts }: Plan): number[] {
  const weeks = new Set(accounts.flatMap(({ waves }) => waves.map(({ openWeek }) => openWeek)));
  return [...weeks].sort((one, other) => one - other);
}

/** The most doors a week that hold; null where every wave opens in one week, or cash at hand isn't known. */
export function doorsAWeek(plan: Plan): DoorsAWeek | null {
  const waves = plan.accounts.flatMap((account) => account.waves);
  const planned = Math.max(0, ...waves.map(({ doors, doorsPerWeek }) => Math.min(doors, doorsPerWeek)));
  if (planned < 2 || plan.business.openingCashAmount === null) return null;
  const readings = new Map<number, RolloutReading>();
  const tried = remembering((doors) => {
    const reading = readingOf(atMost(plan, doors));
    if (reading !== null) readings.set(doors, reading);
    return reading !== null && isAboveBuffer(reading);
  });
  const least = leastPace(plan);
  if (least > planned) return null;
  if (tried.holds(planned)) return found({ planned, readings, tried, doors: planned });
  if (!tried.holds(least)) {
    const steady = lookedThrough(tried, least, planned);
    const there = at(readings, least);
    const confirmed = !tried.holds(least);
    return { planned, doorsPerWeek: null, ...there, lowestNext: null, bufferNext: null, confirmed, steady };
  }
  return found({ planned, readings, tried, doors: lastOfFirstStretch(tried, least, planned) });
}

interface FoundArgs {
  planned: number;
  readings: ReadonlyMap<number, RolloutReading>;
  tried: Tried;
  doors: number;
}

function found({ planned, readings, tried, doors }: FoundArgs): DoorsAWeek {
  const isAll = doors === planned;
  const next = at(readings, doors + 1);
  return {
    planned,
    doorsPerWeek: doors,
    ...at(readings, doors),
    lowestNext: isAll ? null : next.lowestThere,
    bufferNext: isAll ? null : next.bufferThere,
    confirmed: tried.holds(doors) && (isAll || !tried.holds(doors + 1)),
    steady: isSteadyUpTo(tried, doors),
  };
}

/** The plan with no wave opening more doors a week than these. */
export function atMost(plan: Plan, doors: number): Plan {
  const accounts = plan.accounts.map((account) => ({
    ...account,
    waves: account.waves.map((wave) => ({ ...wave, doorsPerWeek: Math.min(wave.doorsPerWeek, doors) })),
  }));
  return { ...plan, accounts };
}

/** The slowest pace with which every door still opens within the plan. */
function leastPace({ accounts, horizonWeeks }: Plan): number {
  let least = 1;
  for (const { waves } of accounts) {
    for (const { doors, openWeek } of waves)
      least = Math.max(least, Math.ceil(doors / Math.max(1, horizonWeeks - openWeek)));
  }
  return least;
}

/** False when some pace between does hold although the slowest doesn't. */
function lookedThrough({ holds }: Tried, least: number, most: number): boolean {
  const step = Math.max(1, Math.ceil((most - least) / 8));
  for (let doors = least + step; doors < most; doors += step) if (holds(doors)) return false;
  return true;
}

function at(readings: ReadonlyMap<number, RolloutReading>, doors: number) {
  const reading = readings.get(doors);
  return { lowestThere: reading?.lowestCash ?? 0, bufferThere: reading?.bufferAmount ?? 0 };
}

/** Null where the plan does not allow it: a wave would open past its end. */
function readingOf(plan: Plan): RolloutReading | null {
  const opensInside = plan.accounts.every(({ waves }) =>
    waves.every(
      ({ openWeek, doors, doorsPerWeek }) => openWeek + Math.ceil(doors / doorsPerWeek) <= plan.horizonWeeks,
    ),
  );
  if (!opensInside || checkRules({ ...plan, basis: [] }).length > 0) return null;
  const results = wholePlan(plan);
  return results.ok ? results.value.reading : null;
}

/** As the cash verdict holds: the lowest cash is seen, and at or above the run's own buffer. */
export function isAboveBuffer({ lowestCash, bufferAmount, floorNotSeen }: RolloutReading): boolean {
  return lowestCash >= 0 && lowestCash >= bufferAmount && !floorNotSeen;
}
