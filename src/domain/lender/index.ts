// The lender's door: everything of the block for one plan and one week. A lender's own terms decide; none of this is
// financial advice. Worked figure: from week 20 the direct cash flow of weeks 20 to 32, balances as of the end of week 19.
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { agedPayables, agedReceivables } from './aged.ts';
import { collateralAt } from './collateral.ts';
import { ledgerOf } from './ledger.ts';
import { downsideOf, dropsOf, failureOf } from './trials.ts';
import { LENDER_WEEKS, type LenderBlock, type LenderTrials } from './types.ts';
import { thirteenWeeks } from './weeks.ts';

export { agedPayables, agedReceivables } from './aged.ts';
export { collateralAt } from './collateral.ts';
export { ledgerOf } from './ledger.ts';
export type * from './types.ts';
export { AGES, LENDER_WEEKS } from './types.ts';
export { thirteenWeeks } from './weeks.ts';

/** Balances for a lender are those of the end of the week before its 13 weeks; of week 0 for week 0. */
export function balancesWeek(fromWeek: number): number {
  return Math.max(0, fromWeek - 1);
}

/** The whole block, the 13 weeks from a week of the plan on. `results` are those of the plan. */
export function lenderFrom(plan: Plan, results: Results, fromWeek: number): LenderBlock {
  const from = Math.max(0, Math.min(fromWeek, results.pass.weeks - 1));
  const at = { plan, results, ledger: ledgerOf(results), week: balancesWeek(from) };
  return {
    weeks: thirteenWeeks(results.pass, from),
    receivables: agedReceivables(at),
    payables: agedPayables(at),
    collateral: collateralAt(at),
    ...lenderTrials(plan, results, at.week),
  };
}

/** The plan with things going wrong: many runs. A customer fails at the end of `week`. */
export function lenderTrials(plan: Plan, results: Results, week: number): LenderTrials {
  return {
    downside: downsideOf(plan, results),
    failure: failureOf(plan, results, week),
    drops: dropsOf(plan, results),
  };
}

/** The 13 weeks with the lowest cash in their middle, as far as the plan has weeks. */
export function weeksAroundLow({ pass, reading }: Results): number {
  const middle = reading.lowestWeek - Math.floor(LENDER_WEEKS / 2);
  return Math.max(0, Math.min(middle, pass.weeks - LENDER_WEEKS));
}
