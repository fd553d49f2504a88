// What the weekly pass returns: flows and balances by week, units by item, and what is read off them. Money is whole
// minor units of the currency (cents) held in doubles, always below 2^53; units are whole.

/** Every cash flow by name, signed: in positive, out negative. The order is the order of the printed table. */
export const FLOW_NAMES = [
  'equityIn',
  'loanIn',
  'advanceIn',
  'remittances',
  'recovered',
  'baseCollections',
  'openingCollections',
  'vatSettled',
  'supplierDeposits',
  'supplierPayments',
  'inboundFreightAndDuty',
  'rushFreight',
  'basePayments',
  'openingPayments',
  'freightOut',
  'pickAndPack',
  'returnsFreight',
  'slotting',
  'displayBuild',
  'displayFees',
  'openingFees',
  'claimsPaid',
  'broker',
  'royalty',
  'interest',
  'loanFees',
  'overhead',
  'capital',
  'principal',
  'advanceRepaid',
] as const;
export type FlowName = (typeof FLOW_NAMES)[number];

/** Week-end balances: the first five add up to the last five. */
export const BALANCE_NAMES = [
  'cash',
  'receivables',
  'stock',
  'deposits',
  'equipment',
  'payables',
  'accrued',
  'loans',
  'paidIn',
  'retained',
] as const;
export type BalanceName = (typeof BALANCE_NAMES)[number];

/** Units of one item; `made` to `demand` are of the week, `ours` to `backlog` stand at its end. */
export const UNIT_NAMES = [
  'made',
  'ordered',
  'rushed',
  'shipped',
  'fillShipped',
  'received',
  'demand',
  'sold',
  'lost',
  'returned',
  'gone',
  'ours',
  'inTransit',
  'inStores',
  'atDepot',
  'backlog',
  'onOrder',
] as const;
export type UnitName = (typeof UNIT_NAMES)[number];

export interface PassResult {
  weeks: number;
  minorDigits: number;
  /** [flow][week] */
  flows: Record<FlowName, Float64Array>;
  /** [balance][week] */
  balances: Record<BalanceName, Float64Array>;
  /** Lowest cash within each week: money goes out before it comes in. */
  low: Float64Array;
  /** [item][name][week] */
  units: Record<UnitName, Float64Array>[];
  /** Per account, [week]: doors open, cash received, cash paid for it directly (slotting, display, freight, fees). */
  accounts: AccountWeeks[];
  /** Profit and loss parts by week, minor units: what `retained` is made of. */
  profit: Record<ProfitName, Float64Array>;
  openingCash: number;
  openingUnits: number[];
  /** Units of orders that no capacity within reach could take, by item. */
  unplacedUnits: number[];
}

export interface AccountWeeks {
  doors: Float64Array;
  invoiced: Float64Array;
  remitted: Float64Array;
  sold: Float64Array;
  lost: Float64Array;
  receivables: Float64Array;
  /** Units that a credit limit held back in the week's shipping. */
  heldBack: Float64Array;
}

export const PROFIT_NAMES = [
  'invoiced',
  'tradeMoney',
  'costOfSales',
  'sellingCosts',
  'overhead',
  'depreciation',
  'financing',
  'other',
] as const;
export type ProfitName = (typeof PROFIT_NAMES)[number];

/** What is read off a pass. Weeks are counted from 0; money is minor units. */
export interface RolloutReading {
  lowestCash: number;
  lowestWeek: number;
  /** max(0, -lowest) with opening cash in and new funding out, and its first week (null when none is needed). */
  cashNeed: number;
  cashNeedWeek: number | null;
  /** Depth from zero of the path that starts at zero cash, without new funding. */
  depthFromZero: number;
  /** First week after which cash stays at or above its opening; null when it never does within the horizon. */
  backAboveOpeningWeek: number | null;
  /** The low falls in the last four weeks: the floor is not seen. */
  floorNotSeen: boolean;
  firstLostWeek: number | null;
  lostUnits: number;
  demandUnits: number;
  soldUnits: number;
  fillRate: number | null;
  firstPaymentWeek: number | null;
  firstOpeningWeek: number | null;
  bufferAmount: number;
  daysInventory: number | null;
  daysReceivable: number | null;
  daysPayable: number | null;
  cashCycleDays: number | null;
  endCash: number;
  mostStockWeeks: number | null;
  /** What most of the money went on up to the lowest week. */
  ends: 'stock' | 'opening' | 'shipping' | 'overhead' | 'funding';
}
