// The lender's block for machines: 13 weeks around the lowest cash, who owes since when, what could stand behind a loan,
// and the plan with things going wrong. Worked figure: { "eligibleReceivables": "52000.00", "onReceivables": "41600.00" }.
import {
  AGES,
  type Aged,
  type AgedLine,
  type LenderBlock,
  lenderFrom,
  weeksAroundLow,
} from '../domain/lender/index.ts';
import type { FlowLine, Trial } from '../domain/lender/types.ts';
import type { Plan } from '../domain/plan/index.ts';
import type { Results } from '../domain/results.ts';
import { moneyText } from './weeks.ts';

type Money = (amount: number) => string;

export function lenderText(plan: Plan, results: Results): unknown {
  const money: Money = (amount) => moneyText(amount, results.minorDigits);
  const block = lenderFrom(plan, results, weeksAroundLow(results));
  const { collateral, downside, failure, drops } = block;
  const { week, ...amounts } = collateral;
  return {
    cashFlow: cashFlowText(block, money),
    receivables: agedText(block.receivables, money),
    payables: agedText(block.payables, money),
    collateral: {
      week,
      receivablesRate: plan.business.lender.receivablesRate,
      stockRate: plan.business.lender.stockRate,
      ...Object.fromEntries(Object.entries(amounts).map(([name, amount]) => [name, money(amount)])),
    },
    downside: downside && trialText(downside.there, money),
    failure: failure && {
      accountId: failure.accountId,
      week: failure.week,
      receivable: money(failure.receivable),
      ...trialText(failure.there, money),
    },
    drops: drops.map(({ there, dealAmount, ...drop }) => ({
      ...drop,
      dealAmount: money(dealAmount),
      ...trialText(there, money),
    })),
  };
}

function cashFlowText({ weeks }: LenderBlock, money: Money) {
  const flows = (lines: readonly FlowLine[]) =>
    Object.fromEntries(lines.map(({ flow, amounts }) => [flow, amounts.map(money)]));
  return {
    fromWeek: weeks.fromWeek,
    untilWeek: weeks.untilWeek,
    opens: weeks.opens.map(money),
    receipts: flows(weeks.receipts),
    payments: flows(weeks.payments),
    funding: flows(weeks.funding),
    low: weeks.low.map(money),
    closes: weeks.closes.map(money),
  };
}

function agedText({ week, lines, total }: Aged, money: Money) {
  const amounts = ({ ages, unknown, sum }: AgedLine) => ({
    ...Object.fromEntries(AGES.map((age) => [age, money(ages[age])])),
    unknown: money(unknown),
    sum: money(sum),
  });
  return {
    week,
    lines: lines.map((line) => ({ of: line.kind, id: line.id, ...amounts(line) })),
    total: amounts(total),
  };
}

function trialText(trial: Trial, money: Money) {
  return {
    cashNeed: { amount: money(trial.cashNeed), week: trial.cashNeedWeek },
    lowestCash: { amount: money(trial.lowestCash), week: trial.lowestWeek },
    unitsLost: trial.unitsLost,
  };
}
