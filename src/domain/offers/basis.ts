// What offers are computed on: one future of the plan as weekly series, taken off a pass without any new funding, so that
// every offer meets the same plan. The books of the plan itself stay as they are; an offer's flows are laid over their cash.
// Money is whole minor units. Worked figure: 1,000 a week for 52 weeks at a multiple of 2 sells for 104,000.
import { monthIndexOf, quarterEndDay, quarterIndexOf } from '../calendar.ts';
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import type { Compiled } from '../rollout/compiled.ts';
import { runPass } from '../rollout/pass.ts';
import type { PassResult } from '../rollout/types.ts';
import { keptBy } from './kept.ts';

const YEAR_WEEKS = 52;

export interface Basis {
  weeks: number;
  minorDigits: number;
  startDay: number;
  /** By week: units shoppers bought, units that left us. */
  unitsSold: Float64Array;
  unitsShipped: Float64Array;
  /** Invoiced less trade money; what customers paid; what suppliers were paid (positive). */
  netSales: Float64Array;
  collected: Float64Array;
  supplierBills: Float64Array;
  invoices: { amounts: Float64Array; collectWeeks: number; badDebtRate: number }[];
  accounts: { id: string; doors: Float64Array; orderWeek: number | null }[];
  /** Without new funding: at the week's end, and the lowest within it. */
  cash: Float64Array;
  low: Float64Array;
  openingCash: number;
  /** Net sales, and profit before financing, of the last 52 weeks (fewer are scaled to a year). */
  yearRevenue: number;
  yearProfit: number;
  /** Loans of the opening books still owed at the end. */
  debt: number;
  royaltyYears: number;
}

/** The plan as it stands. */
export function basisOf(
  plan: Plan,
  { compiled, free, pass }: Pick<Results, 'compiled' | 'free' | 'pass'>,
): Basis {
  const { business } = compiled;
  const bare = { ...compiled, business: { ...business, funding: [] } };
  const unfunded =
    business.funding.length === 0
      ? pass
      : runPass({ compiled: bare, shippable: free.shippable, recorder: null });
  return basisFrom(plan, compiled, unfunded);
}

/** Any pass of the plan without new funding, one draw of a range for instance. */
export function basisFrom(plan: Plan, compiled: Compiled, unfunded: PassResult): Basis {
  const { weeks, minorDigits, flows, profit, balances } = unfunded;
  const netSales = added(weeks, [profit.invoiced, profit.tradeMoney]);
  const profitParts = [
    profit.invoiced,
    profit.tradeMoney,
    profit.costOfSales,
    profit.sellingCosts,
    profit.overhead,
    profit.depreciation,
    profit.other,
  ];
  const bills = added(weeks, [flows.supplierDeposits, flows.supplierPayments]);
  return {
    weeks,
    minorDigits,
    startDay: compiled.startDay,
    unitsSold: added(
      weeks,
      unfunded.units.map(({ sold }) => sold),
    ),
    unitsShipped: added(
      weeks,
      unfunded.units.map(({ shipped }) => shipped),
    ),
    netSales,
    collected: added(weeks, [flows.remittances, flows.recovered, flows.baseCollections]),
    supplierBills: bills.map((bill) => Math.max(0, -bill)),
    invoices: unfunded.accounts.map(({ invoiced }, at) => ({
      amounts: invoiced,
      collectWeeks: compiled.accounts[at]?.collectWeeks ?? 0,
      badDebtRate: (compiled.accounts[at]?.badDebtRate ?? 0) / 1e6,
    })),
    accounts: plan.accounts.map(({ id }, at) => ({
      id,
      doors: unfunded.accounts[at]?.doors ?? new Float64Array(weeks),
      orderWeek: orderWeekOf(compiled, at),
    })),
    cash: balances.cash,
    low: unfunded.low,
    openingCash: unfunded.openingCash,
    yearRevenue: lastYear(netSales),
    yearProfit: lastYear(added(weeks, profitParts)),
    debt: balances.loans[weeks - 1] ?? 0,
    royaltyYears: Number(plan.ownership.royaltyYears),
  };
}

/** The same future with every unit and every sale times a factor: what is paid on them, not the plan's own cash. */
export function scaledSales(basis: Basis, factor: number): Basis {
  const times = (series: Float64Array) => series.map((value) => value * factor);
  return {
    ...basis,
    unitsSold: times(basis.unitsSold),
    unitsShipped: times(basis.unitsShipped),
    netSales: times(basis.netSales),
    collected: times(basis.collected),
    supplierBills: times(basis.supplierBills),
    invoices: basis.invoices.map((each) => ({ ...each, amounts: times(each.amounts) })),
  };
}

/** Days and quarters: a picture of offers asks for the same ones many thousand times. */
const MOST_DATES = 5000;
const monthOfDay = keptBy(MOST_DATES, monthIndexOf);
const quarterOfDay = keptBy(MOST_DATES, quarterIndexOf);
const endOfQuarter = keptBy(MOST_DATES, quarterEndDay);

/** First week, not before `from`, that starts in the given month (as monthIndexOf counts them). */
export function weekOfMonth(basis: Basis, month: number, from: number): number {
  let week = from;
  while (monthOf(basis, week) < month) week++;
  return week;
}

/** The month of a week's first day. */
export function monthOf({ startDay }: Basis, week: number): number {
  return monthOfDay(startDay + 7 * week);
}

export function quarterOf({ startDay }: Basis, week: number): number {
  return quarterOfDay(startDay + 7 * week);
}

/** The week that holds a quarter's end and 30 days (PASS.md, Dates). */
export function weekAfterQuarter({ startDay }: Basis, quarter: number): number {
  return Math.floor((endOfQuarter(quarter) + 30 - startDay) / 7);
}

export function sumOf(series: Float64Array, from = 0): number {
  let total = 0;
  for (let w = from; w < series.length; w++) total += series[w] ?? 0;
  return total;
}

function added(weeks: number, parts: readonly Float64Array[]): Float64Array {
  const out = new Float64Array(weeks);
  for (const part of parts) for (let w = 0; w < weeks; w++) out[w] = (out[w] ?? 0) + (part[w] ?? 0);
  return out;
}

function lastYear(series: Float64Array): number {
  const counted = Math.min(YEAR_WEEKS, series.length);
  return (sumOf(series, series.length - counted) * YEAR_WEEKS) / counted;
}

/** The week at whose end an account's first fill is ordered; 0 where its doors run already; null where it has none. */
function orderWeekOf(compiled: Compiled, account: number): number | null {
  const cohorts = compiled.accounts[account]?.cohorts ?? [];
  if (cohorts.some((cohort) => (compiled.cohorts[cohort]?.openWeek ?? 0) < 0)) return 0;
  let first: number | null = null;
  for (const { fillsByWeek } of compiled.items) {
    const at = fillsByWeek.findIndex((cells) =>
      cells.some((cell) => cohorts.includes(compiled.cells[cell]?.cohort ?? -1)),
    );
    if (at >= 0 && (first === null || at - 1 < first)) first = at - 1;
  }
  return first === null ? null : Math.max(0, first);
}
