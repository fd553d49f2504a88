// What the worker finds out about a claim, followed while its view is open: what would have to be true, how the chance
// hangs on each account, what hangs on one customer. Worked example: one question after five edits within a second.
import { useMemo } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import type { ClaimWork } from '../../domain/promise/claim-work.ts';
import { useFollowing } from '../shared/use-following.ts';

export interface FollowedClaim {
  /** Null until the first answer. */
  work: ClaimWork | null;
  /** The plan that it is of: words of it go with it. */
  plan: Plan;
  /** It is of an earlier state of the plan. */
  older: boolean;
  /** A sentence where it can't be worked out; '' else. */
  trouble: string;
}

export function useClaimWork(plan: Plan): FollowedClaim {
  const job = useMemo(() => ({ kind: 'claimWork' as const, plan }), [plan]);
  const followed = useFollowing(job);
  if (followed === null) return { work: null, plan, older: false, trouble: '' };
  const { answer } = followed;
  const older = followed.job !== job;
  if (!answer.ok) return { work: null, plan, older, trouble: answer.trouble };
  return { work: answer.value, plan: followed.job.plan, older, trouble: '' };
}
