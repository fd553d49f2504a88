// Loans and leases as dated flows. A loan in equal parts is the plan's own loan of PASS.md to the minor unit: interest by
// week on what is owed, paid in the first week that starts in the next month. One in equal payments is the annuity: a month's
// interest is a twelfth of the yearly rate of what is owed, rounded; the last payment takes what rounding left.
// Worked figure: 60,000 at 12 % over 12 equal payments is 5,330.93 a month.

import { mulDiv } from '../money/integer.ts';
import { type Arrived, type Came, monthsAfter } from './arrivals.ts';
import { type Basis, monthOf } from './basis.ts';
import type { DatedFlow, PartOutcome } from './contract.ts';
import { pmt } from './money-over-time.ts';

export interface LoanText {
  feeRate: string;
  feeAmount: string;
  yearlyRate: string;
  interestOnlyMonths: number;
  principalMonths: number;
  repaid: 'equalParts' | 'equalPayments';
  balloonRate: string;
}

export function loanOutcome(loan: LoanText, came: Arrived, basis: Basis): PartOutcome {
  const minor = 10 ** basis.minorDigits;
  const flows: DatedFlow[] = [...came.flows];
  let owed = 0;
  came.money.forEach((each, at) => {
    const fee =
      Math.round(each.amount * Number(loan.feeRate)) +
      (at === 0 ? Math.round(Number(loan.feeAmount) * minor) : 0);
    if (fee > 0) flows.push(out(each.week, fee, 'fee'));
    const repaid =
      loan.repaid === 'equalParts' ? equalParts(loan, each, basis) : equalPayments(loan, each, basis);
    flows.push(...repaid.flows);
    owed += repaid.owed;
  });
  return { flows, never: came.never, owed, settles: 0, stake: null };
}

interface Repaid {
  flows: DatedFlow[];
  /** At the end of the horizon: principal, and interest earned on it and not yet paid. */
  owed: number;
}

function equalParts(loan: LoanText, { week: start, amount }: Came, basis: Basis): Repaid {
  const rate = Math.round(Number(loan.yearlyRate) * 1e6);
  const balloon = Math.round(amount * Number(loan.balloonRate));
  const months = loan.principalMonths;
  const parts = new Map<number, number>();
  let last = start;
  for (let i = 1; i <= months; i++) {
    const spread = amount - balloon;
    const part = mulDiv(spread, i, months) - mulDiv(spread, i - 1, months);
    last = monthsAfter(basis, start, loan.interestOnlyMonths + i);
    parts.set(last, (parts.get(last) ?? 0) + part + (i === months ? balloon : 0));
  }
  const flows: DatedFlow[] = [];
  let left = amount;
  let accrued = 0;
  let owed = 0;
  for (let w = start; left > 0 || accrued > 0; w++) {
    if (w > start && monthOf(basis, w) !== monthOf(basis, w - 1) && accrued > 0) {
      flows.push(out(w, accrued, 'interest'));
      accrued = 0;
    }
    accrued += mulDiv(left, rate * 7, 365_000_000);
    const part = parts.get(w) ?? 0;
    if (part > 0) flows.push(out(w, part, 'principal'));
    left -= part;
    if (w === basis.weeks - 1) owed = left + accrued;
  }
  return { flows, owed };
}

function equalPayments(loan: LoanText, { week: start, amount }: Came, basis: Basis): Repaid {
  const rate = Number(loan.yearlyRate) / 12;
  const balloon = Math.round(amount * Number(loan.balloonRate));
  const months = loan.principalMonths;
  const payment = Math.round(-pmt(rate, months, amount, -balloon));
  const flows: DatedFlow[] = [];
  let left = amount;
  let owed = 0;
  let before = start;
  for (let m = 1; m <= loan.interestOnlyMonths + months; m++) {
    const week = monthsAfter(basis, start, m);
    const interest = Math.round(left * rate);
    // The horizon ends between two payments: of the month's interest its weeks until then.
    if (before < basis.weeks && week >= basis.weeks)
      owed = left + Math.round((interest * (basis.weeks - before)) / (week - before));
    before = week;
    const isLast = m === loan.interestOnlyMonths + months;
    const repays = m <= loan.interestOnlyMonths ? 0 : payment - interest;
    const principal = isLast ? left : Math.max(0, Math.min(left, repays));
    if (interest > 0) flows.push(out(week, interest, 'interest'));
    if (principal > 0) flows.push(out(week, principal, 'principal'));
    left -= principal;
  }
  return { flows, owed };
}

export interface LeaseText {
  depositAmount: string;
  monthlyAmount: string;
  months: number;
  residualAmount: string;
}

/** Paid in advance from the week the equipment comes; what is still to be paid at the end counts in full as owed. */
export function leaseOutcome(lease: LeaseText, came: Arrived, basis: Basis): PartOutcome {
  const first = came.money[0]?.week;
  if (first === undefined) return { flows: [], never: came.never, owed: 0, settles: 0, stake: null };
  const minor = (text: string) => Math.round(Number(text) * 10 ** basis.minorDigits);
  const flows: DatedFlow[] = [...came.flows, out(first, minor(lease.depositAmount), 'payment')];
  for (let m = 0; m < lease.months; m++) {
    flows.push(out(monthsAfter(basis, first, m), minor(lease.monthlyAmount), 'payment'));
  }
  flows.push(out(monthsAfter(basis, first, lease.months), minor(lease.residualAmount), 'payment'));
  const paid = flows.filter(({ amount }) => amount !== 0);
  const owed = paid.reduce((sum, { week, amount }) => sum - (week >= basis.weeks ? amount : 0), 0);
  return { flows: paid, never: came.never, owed, settles: 0, stake: null };
}

function out(week: number, amount: number, what: DatedFlow['what']): DatedFlow {
  return { week, amount: -amount, what, early: false };
}
