// What the fields of a plan mean together, checked once the shape is right: ids, references, ladders, dates, takes.
// Each rule reports every place it finds; no rule changes anything. What only arithmetic can tell (a solved rung that
// fits nowhere, a product too large) is found by the evaluation.
// Worked example: a wave that opens in week 0 behind one transit week is "accounts/corner/waves/first/openWeek: got
// week 0, and a delivery takes 1 week; expected a week from 1 to 51."
import type { Problem } from '../problems.ts';
import type { Plan } from './index.ts';
import { conductProblems } from './rules/conduct.ts';
import { accountDates, businessDates, itemDates } from './rules/dates.ts';
import { repeatedIds } from './rules/ids.ts';
import { ladderProblems } from './rules/ladders.ts';
import { amountProblems } from './rules/money.ts';
import { offerProblems } from './rules/offers.ts';
import { orderingProblems } from './rules/ordering.ts';
import { promiseProblems } from './rules/promise.ts';
import { readinessProblems } from './rules/readiness.ts';
import { basisProblems, referenceProblems } from './rules/references.ts';
import { singleProblems } from './rules/singles.ts';
import { supplyProblems } from './rules/supply.ts';

/** Every problem of a plan of the right shape, in the order of the plan within each rule; empty when it is sound. */
export function checkRules(plan: Plan): Problem[] {
  return [
    ...repeatedIds(plan),
    ...referenceProblems(plan),
    ...ladderProblems(plan),
    ...itemDates(plan),
    ...accountDates(plan),
    ...conductProblems(plan),
    ...orderingProblems(plan),
    ...businessDates(plan),
    ...amountProblems(plan),
    ...singleProblems(plan),
    ...offerProblems(plan),
    ...supplyProblems(plan),
    ...promiseProblems(plan),
    ...readinessProblems(plan),
    ...basisProblems(plan),
  ];
}
