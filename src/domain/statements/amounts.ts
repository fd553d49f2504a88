// The amount of a statement's line over weeks, and what must be true of every period: each is a sum of whole documents, so
// nothing is rounded here. Worked figure: receivables rose from 4,200.00 to 5,000.00: their change is −800.00 of cash.
import type { BalanceName } from '../rollout/types.ts';
import { balanceAt, type Ledger, sumOfWeeks, vatOwedAt } from './ledger.ts';
import { BALANCE_SIDES, LINES, type LineName } from './lines.ts';

/** Weeks of the plan, both counted in. */
export interface Weeks {
  fromWeek: number;
  toWeek: number;
}

/** Whole minor units, signed as the statement adds it up: costs and cash out are negative. */
export function amountOfLine(ledger: Ledger, line: LineName, weeks: Weeks): number {
  const source = LINES[line];
  const { fromWeek, toWeek } = weeks;
  const { pass } = ledger;
  switch (source.by) {
    case 'profit':
      return positiveZero(source.sign * sumOfWeeks(pass.profit[source.profit], fromWeek, toWeek));
    case 'flows':
      return source.flows.reduce((sum, flow) => sum + sumOfWeeks(pass.flows[flow], fromWeek, toWeek), 0);
    case 'balance':
      return balanceAt(ledger, source.balance, source.at === 'start' ? fromWeek - 1 : toWeek);
    case 'accrued': {
      const vat = vatOwedAt(ledger, toWeek);
      return source.part === 'vat' ? vat : balanceAt(ledger, 'accrued', toWeek) - vat;
    }
    case 'change':
      return positiveZero(cashSignOf(source.balance) * changeOf(ledger, source.balance, weeks));
    case 'sum':
      return source.lines.reduce((sum, each) => sum + amountOfLine(ledger, each, weeks), 0);
  }
}

/** What more of a balance does to cash: an asset takes it, a debt brings it. */
export function cashSignOf(balance: BalanceName): 1 | -1 {
  return BALANCE_SIDES[balance] === 'assets' ? -1 : 1;
}

function changeOf(ledger: Ledger, balance: BalanceName, { fromWeek, toWeek }: Weeks): number {
  return balanceAt(ledger, balance, toWeek) - balanceAt(ledger, balance, fromWeek - 1);
}

/** Of −0 and 0, the one that is written without a sign. */
function positiveZero(amount: number): number {
  return amount === 0 ? 0 : amount;
}

/**
 * The statements of a period agree with each other to the minor unit: the balance sheet balances, the result is the
 * change in what is retained, direct and indirect cash from operations are one, and each section is what its balances
 * moved. Throws when not: that is a bug, whatever the plan.
 */
export function assertAgree(ledger: Ledger, weeks: Weeks): void {
  const of = (line: LineName) => amountOfLine(ledger, line, weeks);
  const change = (balance: BalanceName) => changeOf(ledger, balance, weeks);
  const claims: readonly (readonly [claim: string, left: number, right: number])[] = [
    ['assets, and liabilities with equity', of('assets'), of('liabilitiesAndEquity')],
    ['result, and change in retained', of('result'), change('retained')],
    ['operating cash direct, and indirect', of('operating'), of('operatingIndirect')],
    ['investing, and equipment with its wear', of('investing'), -change('equipment') + of('depreciation')],
    ['financing, and loans with paid in', of('financingFlow'), change('loans') + change('paidIn')],
    ['closing cash, and the cash balance', of('closingCash'), balanceAt(ledger, 'cash', weeks.toWeek)],
  ];
  for (const [claim, left, right] of claims) {
    if (left !== right) {
      throw new Error(`${claim}: ${left} and ${right}, weeks ${weeks.fromWeek} to ${weeks.toWeek}`);
    }
  }
}
