// The lender's door: everything of the block for one plan and one week. A lender's own terms decide; none of this is
// financial advice. Worked figure: from week 20 the direct cash flow of weeks 20 to 32, balances as of the end of week 19.
import type { Plan } from '../plan/index.ts';
import { fine, type Outcome } from '../problems.ts';
import type { Results } from '../results.ts';
import { wholePlan } from '../talks/run.ts';
import { agedPayables, agedReceivables } from './aged.ts';
import { collateralAt } from './collateral.ts';
import { ledgerOf } from './ledger.ts';
import { downsideOf, dropsOf, failureOf } from './trials.ts';
import { LENDER_WEEKS, type LenderBlock } from './types.ts';
import { thirteenWeeks } from './weeks.ts';

export { ledgerOf } from './ledger.ts';
export type * from './types.ts';
export { AGES, LENDER_WEEKS } from './types.ts';

export interface LenderArgs {
  plan: Plan;
  /** First of the 13 weeks; balances are those of the end of the week before it (of week 0 for week 0). */
  fromWeek: number;
}

/** The whole block. Problems where the plan can't be computed. */
export function lenderBlock({ plan, fromWeek }: LenderArgs): Outcome<LenderBlock> {
  const results = wholePlan(plan);
  return results.ok ? fine(lenderFrom(plan, results.value, fromWeek)) : results;
}

/** The same with the plan's results at hand. */
export function lenderFrom(plan: Plan, results: Results, fromWeek: number): LenderBlock {
  const ledger = ledgerOf(results);
  const from = Math.max(0, Math.min(fromWeek, results.pass.weeks - 1));
  const week = Math.max(0, from - 1);
  const at = { plan, results, ledger, week };
  return {
    weeks: thirteenWeeks(results.pass, from),
    receivables: agedReceivables(at),
    payables: agedPayables(at),
    collateral: collateralAt(at),
    downside: downsideOf(plan, results),
    failure: failureOf(plan, results),
    drops: dropsOf(plan, results),
  };
}

/** The 13 weeks with the lowest cash in their middle, as far as the plan has weeks. */
export function weeksAroundLow({ pass, reading }: Results): number {
  const middle = reading.lowestWeek - Math.floor(LENDER_WEEKS / 2);
  return Math.max(0, Math.min(middle, pass.weeks - LENDER_WEEKS));
}
