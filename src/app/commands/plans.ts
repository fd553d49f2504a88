// Commands about a plan as a whole. The new id is passed in: nothing here makes one.
// Worked example: duplicatePlan(spring, { id: 'p2', name: 'Spring, cheaper' }) is the same plan under another id and name.
import type { Plan } from '../../domain/plan/index.ts';
import { fine, type Outcome } from '../../domain/problems.ts';

export function duplicatePlan(plan: Plan, { id, name }: { id: string; name: string }): Outcome<Plan> {
  return fine({ ...plan, id, name });
}

export function renamePlan(plan: Plan, { name }: { name: string }): Outcome<Plan> {
  return fine({ ...plan, name });
}
