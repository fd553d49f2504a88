// What is computed of rival offers, as plain data for screens and the command line. Money is whole minor units, weeks count
// from 0, shares and rates are numbers (0.174 is 17.4 %). "The funder" is whoever makes the offer, all its parts together.
// Worked figure: 100,000 in, 60,000 of royalty and 90,000 still to come paid: multiple 1.5.
import type { DatedFlow, NeverComes } from './contract.ts';
import type { Return } from './money-over-time.ts';

export type * from './future-types.ts';

/** A flow of an offer, and the part it is of. */
export type OfferFlow = DatedFlow & { partId: string };

/** An owner's part of the company and of its sale. */
export interface Holding {
  id: string;
  /** 'founder', 'others', 'pool', a part's id, a round's id. */
  kind: 'founder' | 'others' | 'pool' | 'part' | 'round';
  name: string;
  /** Of the shares, 0 to 1. */
  rate: number;
  /** Of the sale at the end of the horizon. */
  amount: number;
}

/** Who owns what after an event: money for shares, a conversion, a round. The first row is today. */
export interface DilutionRow {
  week: number;
  what: 'today' | 'offer' | 'round' | 'sale';
  /** The part's or the round's id; '' today and at the sale. */
  id: string;
  name: string;
  /** What the company is worth by that event's price, before and after its money; null where nothing prices it. */
  preMoney: number | null;
  postMoney: number | null;
  shares: { id: string; kind: Holding['kind']; name: string; rate: number }[];
}

/** The sale at the end of the horizon that everybody's part is judged by. */
export interface Sale {
  /** Price of the business, without cash and debt. */
  price: number;
  /** Cash at the end under the offer, below 0 where it ran out; loans and the offer's own debts. */
  cash: number;
  debt: number;
  owed: number;
  /** What owners share: never below 0. */
  toOwners: number;
}

export interface Founder {
  /** Of the shares at the end of the horizon. */
  rate: number;
  /** Of the sale, after preferences. */
  amount: number;
  sale: Sale;
}

/**
 * Whether an offer covers a cash need: the plan's, or the one that 50, 80, 95 of 100 draws of the range don't pass.
 * `left`: the plan's lowest cash under the offer, or what so many draws don't fall below; under 0 it is short by that.
 */
export interface Cover {
  name: 'plan' | 'p50' | 'p80' | 'p95';
  need: number;
  left: number;
  covers: boolean;
}

/** What an ask for a part of the company says it is worth, by this plan. Null where a figure can't be made. */
export interface Implied {
  partId: string;
  /** 'price': shares are bought at it. 'cap': the most that they come to; `partRate` is then the least. */
  by: 'price' | 'cap';
  amount: number;
  partRate: number;
  preMoney: number;
  postMoney: number;
  /** Post-money over a year of today’s sales (the promise’s run rate), of the plan’s net sales or profit of its last 52 weeks. */
  timesRunRate: number | null;
  timesPlanRevenue: number | null;
  timesPlanProfit: number | null;
  /** Sale price at the horizon at which this investor makes the wanted return, and the net sales that takes at the plan's multiple. */
  wantedYearlyRate: number;
  salePriceNeeded: number | null;
  timesRevenueNeeded: number | null;
}

/** Asked money against what the plan needs. */
export interface Carries {
  moneyIn: number;
  cashNeed: number;
  cashNeedWeek: number | null;
  /** First week whose lowest cash is below zero with this money; null: none within the horizon. */
  runsOutWeek: number | null;
  /** Weeks it carries: to that week, or the whole horizon. */
  weeks: number;
}

export interface OfferResult {
  id: string;
  name: string;
  from: string;
  /** Kinds of its parts, in order: "equity", or "equity + unitRoyalty" for a combination. */
  kind: string;
  flows: OfferFlow[];
  never: (NeverComes & { partId: string })[];
  moneyIn: number;
  /** By week: at its end, and the lowest within it. */
  cash: number[];
  low: number[];
  lowestCash: number;
  lowestWeek: number;
  /** On the plan; of draws see `coversIn`. */
  cover: Cover;
  carries: Carries;
  /** By calendar year of the payment; the last years may lie after the horizon. Positive. */
  paidByYear: { year: number; amount: number }[];
  /** Dated payments, all of them; what else is counted when the company is sold: running royalties, payout of shares. */
  paid: number;
  settles: number;
  payout: number;
  /** The three together. */
  totalPaid: number;
  irr: Return;
  /** totalPaid / moneyIn; null without money. For advances, which come and go, it is little above 1 by nature. */
  multiple: number | null;
  /** Fees and interest paid within the horizon, royalties and shares of what is sold in it, for each unit sold in it; null when none is sold. */
  perUnit: number | null;
  founder: Founder;
  holdings: Holding[];
  dilution: DilutionRow[];
  /** Rounds that don’t happen: what converts at them, and their pool, would take all of their pre-money. */
  failedRounds: string[];
}

/** What an offer's cost per unit does to one ladder and one deal. Decimals as text. */
export interface OfferOnLadder {
  accountId: string;
  itemId: string;
  contribution: string;
  contributionWith: string;
  rate: number | null;
  rateWith: number | null;
}

export interface OfferOnDeal {
  accountId: string;
  firstYear: string;
  firstYearWith: string;
  paybackWeeks: number | null;
  paybackWeeksWith: number | null;
  breakEvenRatio: number | null;
  breakEvenRatioWith: number | null;
}

export const AXES = ['units', 'exit', 'growth'] as const;
export type Axis = (typeof AXES)[number];

/**
 * Where two offers come out equal. On `units`: units sold in all, by what the funder is paid on them. On `exit`: price of the
 * business, minor units, by the founder's money. On `growth`: times the plan's rates of sale, by the founder's money.
 */
export interface TurningPoint {
  between: [string, string];
  on: Axis;
  at: number;
  /** Units sold in the plan's weeks there; null on `exit`, where they are the plan's own. */
  units: number | null;
  /** Which of the two is better for the founder below it, and above it. */
  below: string;
  above: string;
}

/** A line of the picture: the axis's places, and one offer's outcome at each. */
export interface AxisSeries {
  on: Axis;
  /** Units, minor units of price, or times. */
  places: number[];
  /** At each place, the units sold in the plan's weeks; null on `exit`. */
  units: (number | null)[];
  /** The plan's own place. */
  here: number;
  /** What a line shows: paid to the funder (lower is better), or the founder's money (higher is better). */
  shows: 'paid' | 'founder';
  lines: { offerId: string; values: number[] }[];
}

/** The value of one term of one part at which an offer comes out as asked, or why none does. */
export type Counter =
  | {
      found: true;
      partId: string;
      key: string;
      from: string | null;
      /** On the term's own grid, on the side that is ours; `miss`: figure less wanted there, of the founder's or what is paid. */
      value: string;
      miss: number;
    }
  | { found: false; partId: string; key: string; why: 'noPart' }
  | { found: false; partId: string; key: string; why: 'notReached'; reach: CounterReach | null };

/** What the figure is over all a term may be, and what was wanted of it: minor units, or a share. */
export interface CounterReach {
  low: number;
  high: number;
  wanted: number;
}

/** What a counter is to reach. */
export type CounterGoal =
  | { by: 'equals'; offerId: string }
  | { by: 'founderRate'; rate: number }
  | { by: 'paidAtMost'; amount: number };
