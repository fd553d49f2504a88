// What a lender asks of a plan, as plain data: 13 weeks of cash, who owes since when, what could stand behind a loan, and
// the same plan with things going wrong. Amounts are whole minor units, weeks count from 0.
// Worked figure: 60,000 of receivables not over 90 days old at 80 % and 30,000 of stock at 50 % are 63,000.
import type { FlowName } from '../rollout/types.ts';

export const LENDER_WEEKS = 13;

/** The direct cash flow of up to 13 weeks. */
export interface ThirteenWeeks {
  fromWeek: number;
  /** First week after them: fewer than 13 at the plan's end. */
  untilWeek: number;
  /** By week: what cash opens with, in and out by flow, the lowest within the week, what it closes with. */
  opens: number[];
  receipts: FlowLine[];
  payments: FlowLine[];
  funding: FlowLine[];
  low: number[];
  closes: number[];
}

export interface FlowLine {
  flow: FlowName;
  /** Signed, by week; and their sum. */
  amounts: number[];
  sum: number;
}

/** Days since the invoice date: 0 to 30, 31 to 60, 61 to 90, over 90. */
export const AGES = ['to30', 'to60', 'to90', 'over90'] as const;
export type Age = (typeof AGES)[number];

export interface AgedLine {
  /** Account, item, or null for what isn't one's: sales beside the plan, the opening books. */
  id: string | null;
  kind: 'account' | 'item' | 'base' | 'opening';
  /** Of the opening books the invoice date is not known: their amount stands in `unknown` alone. */
  ages: Record<Age, number>;
  unknown: number;
  sum: number;
}

export interface Aged {
  /** At the end of this week. */
  week: number;
  lines: AgedLine[];
  /** Adds up to the balance of that week's end. */
  total: AgedLine;
}

/** What could stand behind a loan at a week's end, by two advance rates. */
export interface Collateral {
  week: number;
  receivables: number;
  /** Over 90 days from invoice date, or of unknown date: nothing is lent on those. */
  tooOld: number;
  /** Deductions, claims and expected returns open against the accounts. */
  claims: number;
  eligibleReceivables: number;
  /** Finished goods in our own hands, at landed cost. */
  stock: number;
  onReceivables: number;
  onStock: number;
  amount: number;
}

/** The plan's own run beside one where something goes wrong. */
export interface Trial {
  cashNeed: number;
  cashNeedWeek: number | null;
  lowestCash: number;
  lowestWeek: number;
  /** Cash at the plan's end. */
  endCash: number;
  unitsLost: number;
}

/** A fifth less sold everywhere, everybody pays 15 days later; goods are bought on the plan's forecast. */
export interface Downside {
  plan: Trial;
  there: Trial;
}

/** One account fails: what it owes is never paid, its doors close. */
export interface CustomerFailure {
  accountId: string;
  week: number;
  /** What it owes then. */
  receivable: number;
  plan: Trial;
  there: Trial;
}

/** One account drops us so many weeks after its first opening. */
export interface ReviewDrop {
  accountId: string;
  reviewWeeks: number;
  week: number;
  /** The deal up to there, goods left on shelves counted; negative is a loss. Minor units. */
  dealAmount: number;
  there: Trial;
}

export interface LenderTrials {
  /** Null where the plan can't be computed so. */
  downside: Downside | null;
  failure: CustomerFailure | null;
  drops: ReviewDrop[];
}

export interface LenderBlock extends LenderTrials {
  weeks: ThirteenWeeks;
  receivables: Aged;
  payables: Aged;
  collateral: Collateral;
}
