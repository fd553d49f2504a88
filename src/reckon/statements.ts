// The three statements for machines, by week and by month: money as decimal strings in the plan's currency, each line
// signed as it adds up. Worked figure: "tradeSpend": "-3360.00" under "grossSales": "24000.00" makes "netSales" "20640.00".
import type { Results } from '../domain/results.ts';
import {
  type LineName,
  openingSheet,
  type PeriodKind,
  type PeriodStatements,
  statementsOf,
} from '../domain/statements/index.ts';
import { moneyText } from './weeks.ts';

/** Lines that two statements have are told apart within the model; in print each statement has its own. */
const PRINTED: Partial<Record<LineName, string>> = {
  financingFlow: 'financing',
  operatingIndirect: 'operating',
  addedBackDepreciation: 'depreciation',
};

export function printedLine(line: LineName): string {
  return PRINTED[line] ?? line;
}

export function statementsText(results: Results): unknown {
  return {
    opening: linesText(openingSheet(results), results),
    weekly: periodsText(results, 'week'),
    monthly: periodsText(results, 'month'),
  };
}

function periodsText(results: Results, kind: PeriodKind): unknown[] {
  return statementsOf(results, kind).map(({ period, amounts }: PeriodStatements) => ({
    period: period.key,
    firstDate: period.firstDate,
    fromWeek: period.fromWeek,
    toWeek: period.toWeek,
    profitAndLoss: linesText(amounts.profitAndLoss, results),
    balanceSheet: linesText(amounts.balanceSheet, results),
    cashFlowDirect: linesText(amounts.cashDirect, results),
    cashFlowIndirect: linesText(amounts.cashIndirect, results),
  }));
}

function linesText(
  amounts: Partial<Record<LineName, number>>,
  { minorDigits }: Results,
): Record<string, string> {
  return Object.fromEntries(
    (Object.entries(amounts) as [LineName, number][]).map(([line, amount]) => [
      printedLine(line),
      moneyText(amount, minorDigits),
    ]),
  );
}
