// The answers' door: what limits, what lifts it, and what the whole model was searched for. ANSWERS.md says it in words.
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { fundsItself, neverCloses } from './closing.ts';
import { latestOrders } from './latest-orders.ts';
import { doorsAWeek, waveSpacing } from './pace.ts';
import type { AnswerSolves } from './types.ts';

export { bindingOf } from './binding.ts';
export { changedPlan, pathsOfChange } from './change-plan.ts';
export { liftsFrom, liftsOf } from './lifts.ts';
export type * from './types.ts';
export { changeWords } from './words.ts';

/** Every search beside the most doors and the least opening cash (rollout/solve.ts). `results` are those of the plan. */
export function answerSolves(plan: Plan, results: Results): AnswerSolves {
  return {
    latestOrders: latestOrders(plan, results),
    waveSpacing: waveSpacing(plan),
    doorsAWeek: doorsAWeek(plan),
    neverCloses: neverCloses(plan),
    fundsItself: fundsItself(plan, results),
  };
}
