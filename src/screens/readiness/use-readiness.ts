// The plan's readiness as of today, worked out anew when the plan changes; what it costs and how likely it is comes from the
// worker. Worked example: a gate stepped to five days more moves its opening in the same frame, its cost a moment later.
import { useMemo } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import { type Readiness, readinessFor } from '../../domain/readiness/index.ts';
import { today } from '../shared/moment.ts';
import { type Followed, useFollowing } from '../shared/use-following.ts';

/** `slip`: working days that a gate takes more than planned, in a what-if. */
export function useReadiness(plan: Plan, slip: { gateId: string; days: number } | null = null): Readiness {
  const now = today();
  const { startDate, horizonWeeks, accounts, items, readiness } = plan;
  return useMemo(
    () => readinessFor(plan, now, slip === null ? {} : { [slip.gateId]: slip.days }),
    [startDate, horizonWeeks, accounts, items, readiness, now, slip?.gateId, slip?.days],
  );
}

const NONE: Readonly<Record<string, number>> = {};

/** What opening later costs: each opening alone, and all together. Null while it is worked out for the first time. */
export function useSlipCosts(
  plan: Plan,
  extraDays: Readonly<Record<string, number>> = NONE,
): Followed<CostJob> | null {
  const now = today();
  const job = useMemo(
    (): CostJob => ({ kind: 'slipCosts', plan, today: now, extraDays }),
    [plan, now, extraDays],
  );
  return useFollowing(job);
}

export type CostJob = {
  kind: 'slipCosts';
  plan: Plan;
  today: string;
  extraDays: Readonly<Record<string, number>>;
};
export type ChancesJob = { kind: 'readyChances'; plan: Plan; today: string };

export function useChances(plan: Plan): Followed<ChancesJob> | null {
  const now = today();
  const job = useMemo((): ChancesJob => ({ kind: 'readyChances', plan, today: now }), [plan, now]);
  return useFollowing(job);
}
