// What lifts a plan, put into it: the same change the model was run with, as one edit.
// Worked example: putChange(plan, { kind: 'waveLater', accountId: 'corner', waveId: 'first', weeks: 4 }) opens it in week 14
// instead of 10.
import { type Change, changedPlan, pathsOfChange } from '../../domain/answers/index.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { getAt } from '../../domain/plan/path.ts';
import type { Outcome } from '../../domain/problems.ts';
import { setFields } from './field.ts';

/** Fields that the change leaves as they are keep their basis notes. */
export function putChange(plan: Plan, change: Change): Outcome<Plan> {
  const there = changedPlan(plan, change);
  const changes = pathsOfChange(plan, change)
    .map((path) => ({ path, value: getAt(there, path) }))
    .filter(({ path, value }) => value !== getAt(plan, path));
  return setFields(plan, { changes });
}
