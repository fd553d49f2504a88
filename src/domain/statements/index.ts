// The door of the statements: results in, the profit and loss, the balance sheet and the cash flow (direct and indirect)
// of each period out. Everything is whole minor units, sums of rounded documents; STATEMENT_LINES has the order to read
// them in. Worked figure: opening cash 60,000.00, net cash −4,200.00 in March: closing cash 55,800.00.
import { amountOfLine, assertAgree } from './amounts.ts';
import { type Ledger, ledgerOf, type Run } from './ledger.ts';
import { type LineName, STATEMENT_LINES, STATEMENT_NAMES, type StatementName } from './lines.ts';
import { type Period, type PeriodKind, periodsOf } from './periods.ts';

export { amountOfLine, assertAgree } from './amounts.ts';
export { type Ledger, ledgerOf } from './ledger.ts';
export { LINES, type LineName, STATEMENT_LINES, STATEMENT_NAMES, type StatementName } from './lines.ts';
export { PERIOD_KINDS, type Period, type PeriodKind, periodsOf } from './periods.ts';

export interface PeriodStatements {
  period: Period;
  /** [statement][line]: whole minor units, signed as they add up. */
  amounts: Record<StatementName, Partial<Record<LineName, number>>>;
}

/** All statements of all periods of a kind. Throws when they disagree by a minor unit: a bug, whatever the plan. */
export function statementsOf(run: Run, kind: PeriodKind): PeriodStatements[] {
  const ledger = ledgerOf(run);
  const { compiled, pass } = run;
  return periodsOf({ kind, startDay: compiled.startDay, weeks: pass.weeks }).map((period) => {
    assertAgree(ledger, period);
    return { period, amounts: allAmounts(ledger, period) };
  });
}

/** The balance sheet of the plan's first morning. */
export function openingSheet(run: Run): Partial<Record<LineName, number>> {
  return amountsOf(ledgerOf(run), 'balanceSheet', { fromWeek: 0, toWeek: -1 });
}

function allAmounts(ledger: Ledger, period: Period): PeriodStatements['amounts'] {
  return Object.fromEntries(
    STATEMENT_NAMES.map((name) => [name, amountsOf(ledger, name, period)]),
  ) as PeriodStatements['amounts'];
}

function amountsOf(
  ledger: Ledger,
  statement: StatementName,
  weeks: { fromWeek: number; toWeek: number },
): Partial<Record<LineName, number>> {
  return Object.fromEntries(
    STATEMENT_LINES[statement].map((line) => [line, amountOfLine(ledger, line, weeks)]),
  );
}
