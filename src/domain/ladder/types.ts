// What the ladder room returns for one item on one account's shelf: rungs from landed cost to the shelf price, the
// steps from list price to contribution, and each owner's part of the shelf price. Everything is per unit, in decimals.
import type { Charge, Owner, Stage } from '../allowances/contract.ts';
import type { Decimal } from '../money/decimal.ts';

export interface LandedLine {
  id: string;
  label: string;
  family: 'goods' | 'freight' | 'duty';
  /** Per unit before loss, unrounded. */
  amount: Decimal;
  /** "1,800.00 a shipment of 6,000 units" */
  reason: string;
}

export interface Landed {
  lines: readonly LandedLine[];
  lossRate: Decimal;
  /** Sum of lines / (1 - loss), rounded to 4 decimals. */
  unit: Decimal;
  /** The goods part of `unit` (what the supplier invoices), rounded to 4 decimals; the rest is freight and duty. */
  goods: Decimal;
  freightAndDuty: Decimal;
}

export interface HandResult {
  id: string;
  name: string;
  owner: 'between' | 'theirs';
  buys: Decimal;
  sells: Decimal;
  keeps: Decimal;
  /** keeps / sells; keeps / buys (null when it buys at zero). 6 decimals. */
  marginRate: Decimal;
  markupRate: Decimal | null;
  requiredMarginRate: Decimal | null;
  /** True when it gets less than it says it needs. */
  short: boolean;
  solved: boolean;
}

/** One step of list -> invoice -> net -> contribution. */
export interface Step {
  id: string;
  label: string;
  stage: Stage | 'list' | 'invoice' | 'net' | 'landed' | 'contribution';
  /** True for list, invoice, net and contribution: levels; the rest are what is taken (never negative). */
  isLevel: boolean;
  amount: Decimal;
  owner: Owner;
  reason: string;
}

/** A band of the drawn ladder; bands add up to the shelf price exactly (negative ones hang left). */
export interface Band {
  id: string;
  label: string;
  owner: Owner | 'tax';
  amount: Decimal;
  /** Part of the shelf price, 6 decimals. */
  shareOfShelf: Decimal;
}

/** The integers the weekly pass needs, on the 0.0001 grid. */
export interface LadderForPass {
  invoiceTenThousandths: number;
  landedGoodsTenThousandths: number;
  landedFreightTenThousandths: number;
  /** What the first hand sells at: free fill billed back through a distributor comes at this price. */
  firstHandSellsTenThousandths: number;
  shelfBeforeTaxTenThousandths: number;
  /** In the account's order; id is the allowance's. */
  charges: readonly { id: string; kind: string; charge: Charge }[];
  /** True when the buyer picks up: freight out is zero. */
  pickUp: boolean;
  /** Whether what comes back fit for sale is sold again: not where goods keep only so long. */
  soldAgain: boolean;
}

export interface LadderResult {
  accountId: string;
  itemId: string;
  landed: Landed;
  list: Decimal;
  invoice: Decimal;
  /** Net price in a week without deals ("base week"). */
  net: Decimal;
  contribution: Decimal;
  /** contribution / net, 6 decimals; null when net is zero. */
  contributionRate: Decimal | null;
  /** (list - landed) / list. */
  ladderMarginRate: Decimal;
  /** (list - net) / list. */
  tradeRate: Decimal;
  hands: readonly HandResult[];
  shelfBeforeTax: Decimal;
  tax: Decimal;
  /** What the shopper reads on the tag. */
  shelf: Decimal;
  /** The shelf price before it moved to a price point (same as shelf when it didn't). */
  shelfUnmoved: Decimal;
  steps: readonly Step[];
  bands: readonly Band[];
  /** The rung that gave way: 'list', 'shelf' or a hand's id. */
  solvedRung: string;
  /**
   * How far the solved rung stands above its exact value for being on the 0.0001 grid, zero or positive: the list price
   * (what the first hand pays, where something is passed on) or the shelf price before its move to a price point.
   */
  miss: Decimal;
  forPass: LadderForPass;
}
