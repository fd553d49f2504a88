// Net price and contribution in a week of a deal: the base week's less the scan-backs and bill-backs that run in it.
// Worked figure: net 2.548 and a scan-back of 0.40 in weeks 10 to 13 leave 2.148 in week 12.
import { kindOf } from '../allowances/index.ts';
import { type Decimal, ZERO } from '../money/decimal.ts';
import { onGrid } from '../money/grid.ts';
import { priceText } from '../money/plain.ts';
import type { LadderResult, Step } from './types.ts';

/** What one unit brings in the given week of the plan (from 0), and the deal money taken off it. */
export function netInDealWeek({ ladder, week }: { ladder: LadderResult; week: number }): {
  net: Decimal;
  contribution: Decimal;
  steps: readonly Step[];
} {
  const steps = dealSteps(ladder, (fromWeek, untilWeek) => week >= fromWeek && week < untilWeek);
  const taken = steps.reduce((sum, { amount }) => sum.plus(amount), ZERO);
  return { net: ladder.net.minus(taken), contribution: ladder.contribution.minus(taken), steps };
}

/** Every scan-back and bill-back of a ladder, to be shown beside its steps; none of them is in the base week's net price. */
export function stepsInDealWeeks(ladder: LadderResult): readonly Step[] {
  return dealSteps(ladder, (fromWeek, untilWeek) => untilWeek > fromWeek);
}

function dealSteps(
  { forPass }: LadderResult,
  runs: (fromWeek: number, untilWeek: number) => boolean,
): Step[] {
  return forPass.charges.flatMap(({ id, kind, charge }): Step[] => {
    if (charge.settles !== 'claim' || !runs(charge.fromWeek, charge.untilWeek)) return [];
    const { label, stage, owner } = kindOf({ kind });
    const amount = onGrid(charge.priceTenThousandths);
    const per = charge.per === 'unitSold' ? 'unit scanned' : 'unit shipped';
    const reason = `${priceText(amount)} a ${per} in weeks ${charge.fromWeek} to ${charge.untilWeek - 1}`;
    return [{ id, label, stage, isLevel: false, amount, owner, reason }];
  });
}
