// What goes on beside the shelves: funding and its interest (step 1), the suppliers' invoices, base sales, and in step 9
// broker, interest, royalty, VAT, overhead, fees, capital, principal, in this order. Worked figure: a loan of 60,000 at
// 9 % owes round(6,000,000 x 0.09 x 7 / 365) = 10,356 cents for the week, paid in the first week of the next month.
import { quarterEndDay } from '../calendar.ts';
import { minorOf, rateOf } from '../money/decimal.ts';
import { mulDiv } from '../money/integer.ts';
import { E, post } from './books.ts';
import { loanTerms } from './compile-business.ts';
import type { DatedSum } from './compiled.ts';
import { addDue, type State } from './state.ts';

/** Before week 0: the loans there are, and the advances agreed. */
export function prepareFunding(state: State): void {
  const { business, months, weeks } = state.compiled;
  const startMonth = months[0] ?? 0;
  for (const terms of business.openingLoans) state.loans.push({ terms, left: terms.amount, startMonth });
  for (const offer of business.funding) {
    if (offer.kind !== 'receivablesAdvance') continue;
    for (let w = offer.fromWeek; w < weeks; w++) state.advanceRates[w] = rateOf(offer.advanceRate);
    state.advanceYearlyRate = rateOf(offer.yearlyRate);
  }
}

/** Step 1: money in, and the week's interest on what is owed. Returns the money that came in. */
export function fundingStep(state: State, week: number): number {
  const { business, minorDigits, months } = state.compiled;
  const { books } = state;
  let moneyIn = 0;
  for (const offer of business.funding) {
    if (offer.kind === 'receivablesAdvance' || offer.week !== week) continue;
    const amount = minorOf(offer.amount, minorDigits);
    moneyIn += amount;
    if (offer.kind === 'equity') {
      post(books, E.equityIn, amount);
      continue;
    }
    post(books, E.loanIn, amount);
    post(books, E.loanFee, minorOf(offer.feeAmount, minorDigits));
    state.loans.push({ terms: loanTerms(offer, minorDigits), left: amount, startMonth: months[week] ?? 0 });
  }
  return moneyIn;
}

/** The week's interest, accrued after step 1's money is in; paid from the next month on. */
export function accrueInterest(state: State): number {
  let interest = 0;
  for (const loan of state.loans) interest += weekInterest(loan.left, loan.terms.yearlyRate);
  interest += weekInterest(state.advanceLeft, state.advanceYearlyRate);
  post(state.books, E.interestAccrued, interest);
  return interest;
}

function weekInterest(amount: number, yearlyRateMillionths: number): number {
  return mulDiv(amount, yearlyRateMillionths * 7, 365_000_000);
}

/** Base sales beside the plan: invoiced and owed for this week, collected and paid on their own weeks. */
export function baseSalesStep(state: State, week: number): void {
  const base = state.compiled.business.base;
  if (base) {
    post(state.books, E.baseInvoiced, base.revenue);
    post(state.books, E.baseCost, base.cost);
    addDue(state.baseDue, week + base.collectWeeks, base.revenue);
    addDue(state.basePayDue, week + base.payWeeks, base.cost);
  }
  post(state.books, E.baseCollected, state.baseDue[week] ?? 0);
  post(state.books, E.basePaid, state.basePayDue[week] ?? 0);
}

/** Step 9 beside the accounts, in the order named above. */
export function payStanding(state: State, week: number, owed: { broker: number; interest: number }): void {
  const { books, compiled } = state;
  const { business } = compiled;
  for (let i = 0; i < state.items.length; i++) {
    post(books, E.supplierPaid, state.items[i]?.payableDue[week] ?? 0, -1, i);
  }
  post(books, E.openingCollected, sumAt(business.receivables, week));
  post(books, E.openingPayablePaid, sumAt(business.payables, week));
  post(books, E.openingAccruedPaid, sumAt(business.accrued, week));
  const newMonth = week > 0 && compiled.months[week] !== compiled.months[week - 1];
  if (newMonth) payMonthly(state, owed);
  payQuarterly(state, week);
  post(books, E.overhead, business.overhead[week] ?? 0);
  payFees(state, week);
  post(books, E.capitalPaid, sumAt(business.capital, week));
  if (newMonth) payPrincipal(state, week);
  depreciate(state, week);
}

export function sumAt(sums: readonly DatedSum[], week: number): number {
  let total = 0;
  for (const sum of sums) if (sum.week === week) total += sum.amount;
  return total;
}

/** Broker and interest owed from before this week. */
function payMonthly(state: State, owed: { broker: number; interest: number }): void {
  // More credits than sales in a month leave nothing to pay; the rest is carried.
  const broker = Math.max(0, owed.broker);
  post(state.books, E.brokerPaid, broker);
  state.brokerOwed -= broker;
  post(state.books, E.interestPaid, owed.interest);
  state.interestOwed -= owed.interest;
}

/** Royalty and VAT of a quarter: in the week that holds its end plus 30 days. */
function payQuarterly(state: State, week: number): void {
  const { startDay } = state.compiled;
  const dueNow = (quarter: number) => Math.floor((quarterEndDay(quarter) + 30 - startDay) / 7) === week;
  for (const [quarter, amount] of state.royaltyOwed) {
    if (!dueNow(quarter)) continue;
    state.royaltyOwed.delete(quarter);
    if (amount >= 0) post(state.books, E.royaltyPaid, amount);
    else state.royaltyOwed.set(quarter + 1, (state.royaltyOwed.get(quarter + 1) ?? 0) + amount);
  }
  for (const [quarter, amount] of state.vatOwed) {
    if (!dueNow(quarter)) continue;
    state.vatOwed.delete(quarter);
    if (amount >= 0) post(state.books, E.vatPaid, amount);
    else post(state.books, E.vatRefunded, -amount);
  }
}

/** Slotting and fees paid in cash or claimed, displays built and opened. */
function payFees(state: State, week: number): void {
  state.compiled.accounts.forEach((account, a) => {
    if (!account.hasFixedSums) return;
    post(state.books, E.slottingPaid, sumAt(account.slottingCash, week), a);
    post(state.books, E.openingFeePaid, sumAt(account.openingFees, week), a);
    post(state.books, E.displayPaid, sumAt(account.displayPaid, week), a);
    post(state.books, E.displayOpened, sumAt(account.displayOpened, week), a);
    post(state.books, E.displayFee, account.displayFees[week] ?? 0, a);
  });
}

/** Slotting off remittances is a claim from the opening week on, before that week's remittance. */
export function claimSlotting(state: State, week: number): void {
  state.compiled.accounts.forEach((account, a) => {
    if (!account.hasFixedSums) return;
    const amount = sumAt(account.slottingClaims, week);
    if (amount === 0) return;
    post(state.books, E.claimAccrued, amount, a);
    state.accounts[a]?.claims.push({ amount, fromWeek: week });
  });
}

/** Equal monthly parts after the interest-only months, to the last unit. */
function payPrincipal(state: State, week: number): void {
  const month = state.compiled.months[week] ?? 0;
  for (const loan of state.loans) {
    const { amount, interestOnlyMonths, principalMonths } = loan.terms;
    const part = month - loan.startMonth - interestOnlyMonths;
    if (part < 1 || part > principalMonths) continue;
    const due = mulDiv(amount, part, principalMonths) - mulDiv(amount, part - 1, principalMonths);
    post(state.books, E.principalPaid, due);
    loan.left -= due;
  }
}

/** Straight line by week over each life, from the week of payment. */
function depreciate(state: State, week: number): void {
  for (const { amount, lifeWeeks, week: from } of state.compiled.business.fixtures) {
    const age = week - from;
    if (age < 0 || age >= lifeWeeks) continue;
    const part = mulDiv(amount, age + 1, lifeWeeks) - mulDiv(amount, age, lifeWeeks);
    post(state.books, E.depreciation, part);
  }
}
