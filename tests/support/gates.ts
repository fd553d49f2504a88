/**
 * Builders for what has to be ready. Tuesday 3 March 2026 is "today" where a test doesn't say otherwise.
 * Worked figure: aGate('labels', 5) takes 5 working days whatever happens, and holds back every opening's shipping.
 */
import type { Gate, Plan, Readiness } from '../../src/domain/plan/index.ts';
import { noReadiness } from '../../src/domain/plan/plainly.ts';
import { aPlan } from './builders.ts';

export function aGate(id: string, days: number, changes: Partial<Gate> = {}): Gate {
  return {
    id,
    name: id,
    leadDays: { optimistic: days, likely: days, pessimistic: days },
    after: [],
    owner: '',
    evidence: '',
    state: { is: 'notStarted' },
    holds: { by: 'market' },
    before: 'shipping',
    starter: null,
    ...changes,
  };
}

/** A plan with these gates; no holidays counted unless `calendar` says so. */
export function gated(
  gates: Gate[],
  changes: Partial<Omit<Readiness, 'gates'>> = {},
  plan: Partial<Plan> = {},
): Plan {
  const none = noReadiness('other');
  return aPlan({ readiness: { ...none, ...changes, gates }, ...plan });
}
