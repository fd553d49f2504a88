// The business around the products as dated whole sums: opening books, overheads, capital, what funds it.
// Worked figure: overhead of 1,500 a week from week 4 until week 8 is 150,000 cents in each of weeks 4 to 7.
import { dec, minorOf, rateOf } from '../money/decimal.ts';
import type { Business, Plan } from '../plan/index.ts';
import type { CompiledBusiness, DatedSum, LoanTerms } from './compiled.ts';

function sumOf(sums: readonly DatedSum[]): number {
  return sums.reduce((total, sum) => total + sum.amount, 0);
}

export function compileBusiness(plan: Plan, digits: number): CompiledBusiness {
  const { business, items, horizonWeeks } = plan;
  const books = business.openingBooks;
  const dated = (entries: readonly { week: number; amount: string }[]): DatedSum[] =>
    entries.map(({ week, amount }) => ({ week, amount: minorOf(amount, digits) }));
  const receivables = dated(books.receivables);
  const payables = dated(books.payables);
  const accrued = dated(books.accrued);
  const lines = business.lines.flatMap((line) => line.steps);
  const steps = [...items.flatMap((item) => item.supply.capacitySteps), ...lines];
  const stepCapital = steps.map((step) => ({
    week: Math.max(0, step.fromWeek - step.leadWeeks),
    amount: minorOf(step.capitalAmount, digits),
    lifeWeeks: step.lifeWeeks,
  }));
  const bought = business.capital.map(({ week, amount, lifeWeeks }) => ({
    week,
    amount: minorOf(amount, digits),
    lifeWeeks,
  }));
  const owned = books.equipment.map(({ amount, lifeWeeks }) => ({
    week: 0,
    amount: minorOf(amount, digits),
    lifeWeeks,
  }));
  const openingLoans = books.loans.map((loan) => loanTerms({ ...loan, week: 0, feeAmount: '0' }, digits));
  const deposits = items
    .flatMap((item) => item.opening.onOrder)
    .map((order) => minorOf(order.depositPaidAmount, digits));
  return {
    openingCash: business.openingCashAmount === null ? 0 : minorOf(business.openingCashAmount, digits),
    opening: {
      receivables: sumOf(receivables),
      stock: items.reduce((total, item) => total + minorOf(item.opening.stockAmount, digits), 0),
      deposits: deposits.reduce((total, amount) => total + amount, 0),
      equipment: sumOf(owned),
      payables: sumOf(payables),
      accrued: sumOf(accrued),
      loans: sumOf(openingLoans),
      paidInAmount: minorOf(books.paidInAmount, digits),
    },
    receivables,
    payables,
    accrued,
    fixtures: [...owned, ...bought, ...stepCapital],
    capital: [...bought, ...stepCapital].map(({ week, amount }) => ({ week, amount })),
    overhead: overheadByWeek(business, horizonWeeks, digits),
    base: baseSales(business, digits),
    funding: business.funding,
    openingLoans,
    vat: business.vat && {
      sales: rateOf(business.vat.salesRate),
      purchases: rateOf(business.vat.purchasesRate),
    },
  };
}

function overheadByWeek(business: Business, weeks: number, digits: number): Float64Array {
  const out = new Float64Array(weeks);
  for (const line of business.overheads) {
    const amount = minorOf(line.amountPerWeek, digits);
    const until = Math.min(weeks, line.untilWeek ?? weeks);
    for (let w = line.fromWeek; w < until; w++) out[w] = (out[w] ?? 0) + amount;
  }
  return out;
}

function baseSales(business: Business, digits: number): CompiledBusiness['base'] {
  const base = business.baseSales;
  if (!base) return null;
  const revenue = minorOf(base.revenueAmountPerWeek, digits);
  return {
    revenue,
    cost: dec(revenue).times(base.costRate).toDecimalPlaces(0).toNumber(),
    collectWeeks: Math.ceil(base.collectDays / 7),
    payWeeks: Math.floor(base.payDays / 7),
  };
}

interface LoanText {
  week: number;
  amount: string;
  feeAmount: string;
  yearlyRate: string;
  interestOnlyMonths: number;
  principalMonths: number;
}

/** A loan's terms in whole numbers. */
export function loanTerms(loan: LoanText, digits: number): LoanTerms {
  return {
    week: loan.week,
    amount: minorOf(loan.amount, digits),
    fee: minorOf(loan.feeAmount, digits),
    yearlyRate: rateOf(loan.yearlyRate),
    interestOnlyMonths: loan.interestOnlyMonths,
    principalMonths: loan.principalMonths,
  };
}
