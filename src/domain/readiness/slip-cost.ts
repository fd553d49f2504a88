// What a later opening costs: the plan with its openings moved, run again beside the plan as it is. Contribution is that of
// the first 52 weeks, so an opening a week later has a week less of it.
// Worked figure: two weeks later, 1,200 less contribution: 600 a week.
import { standingOf } from '../answers/lifts.ts';
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { wholePlan } from '../talks/run.ts';
import type { Readiness, SlipCost, WaveReading } from './types.ts';

export interface Moved {
  accountId: string;
  waveId: string;
  weeks: number;
}

/** Openings so many weeks later. One that would open after the plan's last week is left out: the plan doesn't see it. */
export function withLaterOpenings(plan: Plan, moved: readonly Moved[]): Plan {
  const weeksOf = (accountId: string, waveId: string) =>
    moved.find((each) => each.accountId === accountId && each.waveId === waveId)?.weeks ?? 0;
  return {
    ...plan,
    accounts: plan.accounts.map((account) => ({
      ...account,
      waves: account.waves
        .map((wave) => ({ ...wave, openWeek: wave.openWeek + weeksOf(account.id, wave.id) }))
        .filter(({ openWeek }) => openWeek < plan.horizonWeeks),
    })),
  };
}

/** The cost of these openings coming later, all others as planned; null where nothing moves, or the plan can't be computed then. */
export function slipCost(plan: Plan, results: Results, moved: readonly Moved[]): SlipCost | null {
  const weeks = Math.max(0, ...moved.map((each) => each.weeks));
  if (weeks === 0) return null;
  const later = wholePlan(withLaterOpenings(plan, moved));
  if (!later.ok) return null;
  const [planned, there] = [standingOf(results), standingOf(later.value)];
  const contribution = there.contribution - planned.contribution;
  return {
    cashNeed: there.cashNeed - planned.cashNeed,
    lowestCash: there.lowestCash - planned.lowestCash,
    contribution,
    contributionPerWeek: Math.max(0, Math.round(-contribution / weeks)),
  };
}

export interface SlipCosts {
  /** Everything as late as readiness says; null where nothing is. */
  all: SlipCost | null;
  /** By opening, in the order of the reading: itself alone as late; no cost where it is in time. */
  waves: readonly { accountId: string; waveId: string; weeks: number; cost: SlipCost | null }[];
}

/** Runs the plan once for every opening that slips, and once for all together. */
export function slipCostsOf(plan: Plan, results: Results, { waves }: Pick<Readiness, 'waves'>): SlipCosts {
  const moved = waves.map(movedBy);
  return {
    all: slipCost(plan, results, moved),
    waves: moved.map((each) => ({ ...each, cost: slipCost(plan, results, [each]) })),
  };
}

function movedBy({ accountId, waveId, slipWeeks }: WaveReading): Moved {
  return { accountId, waveId, weeks: slipWeeks };
}
