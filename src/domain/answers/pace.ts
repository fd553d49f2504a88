// How fast doors may open so that cash stays above the buffer: all openings spread over more weeks, or a lid on the doors
// a week. Every number is a run of the whole model, and all doors still open within the plan.
// Worked figure: openings in weeks 10, 14 and 20, spread over 15 weeks instead of 10: 10, 16 and 25.
import type { Plan } from '../plan/index.ts';
import { checkRules } from '../plan/rules.ts';
import type { RolloutReading } from '../rollout/types.ts';
import { wholePlan } from '../talks/run.ts';
import { halve, isSteadyUpTo, lastOfFirstStretch, remembering, type Tried } from './search.ts';
import type { DoorsAWeek, WaveSpacing } from './types.ts';

/** Spreads tried between the plan's own and the longest. */
const SPREAD_STEPS = 16;

/** The least spread that holds; null without a second opening week, or where cash at hand isn't known. */
export function waveSpacing(plan: Plan): WaveSpacing | null {
  const [first, last] = openingEnds(plan);
  const plannedWeeks = last - first;
  if (!(plannedWeeks > 0) || plan.business.openingCashAmount === null) return null;
  const readings = new Map<number, RolloutReading>();
  const tried = remembering((weeks) => {
    const reading = readingOf(spread(plan, weeks));
    if (reading !== null) readings.set(weeks, reading);
    return reading !== null && isAboveBuffer(reading);
  });
  const triedTo = longestSpread(plan, plannedWeeks);
  const weeks = firstThatHolds(tried, plannedWeeks, triedTo);
  const there = at(readings, weeks ?? triedTo);
  const isFirst = weeks === null || weeks === plannedWeeks;
  const next = isFirst ? null : at(readings, weeks - 1);
  const holds = weeks === null ? !tried.holds(triedTo) : tried.holds(weeks);
  return {
    plannedWeeks,
    weeks,
    triedTo,
    ...there,
    lowestNext: next?.lowestThere ?? null,
    bufferNext: next?.bufferThere ?? null,
    confirmed: holds && (isFirst || !tried.holds(weeks - 1)),
    steady: weeks === null || [...tried.seen].every(([value, held]) => held === value >= weeks),
  };
}

/** From `least` up in steps; where one holds, the least between it and the one before that doesn't. */
function firstThatHolds(tried: Tried, least: number, most: number): number | null {
  if (tried.holds(least)) return least;
  const step = Math.max(1, Math.ceil((most - least) / SPREAD_STEPS));
  for (let fails = least; fails < most; fails += step) {
    const next = Math.min(most, fails + step);
    if (tried.holds(next)) return halve(tried, next, fails);
  }
  return null;
}

/** The plan with all openings in the same proportions, so many weeks from the first to the last. */
export function spread(plan: Plan, weeks: number): Plan {
  const [first, last] = openingEnds(plan);
  const moved = (week: number) => first + Math.round(((week - first) * weeks) / (last - first));
  const accounts = plan.accounts.map((account) => ({
    ...account,
    waves: account.waves.map((wave) => ({ ...wave, openWeek: moved(wave.openWeek) })),
  }));
  return { ...plan, accounts };
}

/** The most weeks of a spread with which every door still opens within the plan; at least the plan's own. */
function longestSpread(plan: Plan, plannedWeeks: number): number {
  let longest = plannedWeeks;
  while (opensInside(spread(plan, longest + 1))) longest++;
  return longest;
}

function openingEnds({ accounts }: Plan): [first: number, last: number] {
  const weeks = accounts.flatMap(({ waves }) => waves.map(({ openWeek }) => openWeek));
  return [Math.min(...weeks), Math.max(...weeks)];
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
  if (!opensInside(plan) || checkRules({ ...plan, basis: [] }).length > 0) return null;
  const results = wholePlan(plan);
  return results.ok ? results.value.reading : null;
}

function opensInside({ accounts, horizonWeeks }: Plan): boolean {
  return accounts.every(({ waves }) =>
    waves.every(
      ({ openWeek, doors, doorsPerWeek }) => openWeek + Math.ceil(doors / doorsPerWeek) <= horizonWeeks,
    ),
  );
}

/** As the cash verdict holds: the lowest cash is seen, and at or above the run's own buffer. */
export function isAboveBuffer({ lowestCash, bufferAmount, floorNotSeen }: RolloutReading): boolean {
  return lowestCash >= 0 && lowestCash >= bufferAmount && !floorNotSeen;
}
