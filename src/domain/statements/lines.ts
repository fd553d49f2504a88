// The lines of the statements, by name, and what each is made of: a part of the result, cash flows, a balance, the change
// of one, or other lines. The records are typed by the pass's own names, so that a flow, a balance or a part of the
// result that is added there cannot be forgotten here: this file does not compile until it has a place.
// Worked figure: net sales are gross sales 24,000.00 and trade spend −3,360.00: 20,640.00.
import type { BalanceName, FlowName, ProfitName } from '../rollout/types.ts';

export const STATEMENT_NAMES = ['profitAndLoss', 'balanceSheet', 'cashDirect', 'cashIndirect'] as const;
export type StatementName = (typeof STATEMENT_NAMES)[number];

/** Each part of the result as a line of the profit and loss, or added back into one. */
export const PROFIT_LINES = {
  invoiced: 'grossSales',
  tradeMoney: 'tradeSpend',
  costOfSales: 'costOfSales',
  sellingCosts: 'sellingCosts',
  overhead: 'overhead',
  depreciation: 'depreciation',
  financing: 'financing',
  other: 'other',
} as const satisfies Record<ProfitName, string>;

/** Each cash flow's line in the direct statement. Interest and loan fees are operating: they lower the result. */
export const FLOW_LINES = {
  remittances: 'fromCustomers',
  recovered: 'fromCustomers',
  baseCollections: 'fromCustomers',
  openingCollections: 'fromCustomers',
  supplierDeposits: 'toSuppliers',
  supplierPayments: 'toSuppliers',
  inboundFreightAndDuty: 'toSuppliers',
  rushFreight: 'toSuppliers',
  basePayments: 'toSuppliers',
  openingPayments: 'oldBills',
  slotting: 'toChains',
  displayBuild: 'toChains',
  displayFees: 'toChains',
  openingFees: 'toChains',
  claimsPaid: 'toChains',
  freightOut: 'sellingPaid',
  pickAndPack: 'sellingPaid',
  returnsFreight: 'sellingPaid',
  broker: 'sellingPaid',
  royalty: 'sellingPaid',
  overhead: 'overheadPaid',
  interest: 'interestPaid',
  loanFees: 'interestPaid',
  vatSettled: 'taxSettled',
  capital: 'invested',
  equityIn: 'fromOwners',
  loanIn: 'fromLenders',
  advanceIn: 'fromLenders',
  principal: 'fromLenders',
  advanceRepaid: 'fromLenders',
} as const satisfies Record<FlowName, string>;
type FlowLine = (typeof FLOW_LINES)[FlowName];

/** Which cash flow each line of the direct statement belongs to. */
export const FLOW_SECTIONS = {
  fromCustomers: 'operating',
  toSuppliers: 'operating',
  oldBills: 'operating',
  toChains: 'operating',
  sellingPaid: 'operating',
  overheadPaid: 'operating',
  interestPaid: 'operating',
  taxSettled: 'operating',
  invested: 'investing',
  fromOwners: 'financingFlow',
  fromLenders: 'financingFlow',
} as const satisfies Record<FlowLine, 'operating' | 'investing' | 'financingFlow'>;

/** Where each balance stands on the balance sheet. */
export const BALANCE_SIDES = {
  cash: 'assets',
  receivables: 'assets',
  stock: 'assets',
  deposits: 'assets',
  equipment: 'assets',
  payables: 'liabilities',
  accrued: 'liabilities',
  loans: 'liabilities',
  paidIn: 'equity',
  retained: 'equity',
} as const satisfies Record<BalanceName, 'assets' | 'liabilities' | 'equity'>;

/** What a line's amount is. */
export type Source =
  | { by: 'profit'; profit: ProfitName; sign: 1 | -1 }
  | { by: 'flows'; flows: readonly FlowName[] }
  /** At the period's end, or at the end of the week before it. */
  | { by: 'balance'; balance: BalanceName; at: 'end' | 'start' }
  /** The accrued balance's two parts: value added tax, and the rest. */
  | { by: 'accrued'; part: 'vat' | 'rest' }
  /** What a change of a balance does to cash: more stock is less cash, more owed is more. */
  | { by: 'change'; balance: BalanceName }
  | { by: 'sum'; lines: readonly LineName[] };

const flowsOf = (line: FlowLine): Source => ({
  by: 'flows',
  flows: (Object.keys(FLOW_LINES) as FlowName[]).filter((flow) => FLOW_LINES[flow] === line),
});
const sectionOf = (section: (typeof FLOW_SECTIONS)[FlowLine]): Source => ({
  by: 'sum',
  lines: (Object.keys(FLOW_SECTIONS) as FlowLine[]).filter((line) => FLOW_SECTIONS[line] === section),
});
const sideOf = (side: (typeof BALANCE_SIDES)[BalanceName]): Source => ({
  by: 'sum',
  lines: (Object.keys(BALANCE_SIDES) as BalanceName[])
    .filter((name) => BALANCE_SIDES[name] === side)
    .flatMap((name): LineName[] => (name === 'accrued' ? ['accruedCosts', 'vatOwed'] : [name])),
});
const profit = (name: ProfitName): Source => ({ by: 'profit', profit: name, sign: 1 });
const balance = (name: BalanceName): Source => ({ by: 'balance', balance: name, at: 'end' });
const change = (name: BalanceName): Source => ({ by: 'change', balance: name });
const sum = (...lines: readonly LineName[]): Source => ({ by: 'sum', lines });

export type LineName =
  | (typeof PROFIT_LINES)[ProfitName]
  | FlowLine
  | (typeof FLOW_SECTIONS)[FlowLine]
  | Exclude<BalanceName, 'accrued'>
  | 'changeReceivables'
  | 'changeStock'
  | 'changeDeposits'
  | 'changePayables'
  | 'changeAccrued'
  | 'netSales'
  | 'result'
  | 'netCash'
  | 'grossMargin'
  | 'assets'
  | 'accruedCosts'
  | 'vatOwed'
  | 'liabilities'
  | 'equity'
  | 'liabilitiesAndEquity'
  | 'openingCash'
  | 'addedBackDepreciation'
  | 'operatingIndirect'
  | 'closingCash';

export const LINES: Record<LineName, Source> = {
  grossSales: profit('invoiced'),
  tradeSpend: profit('tradeMoney'),
  netSales: sum('grossSales', 'tradeSpend'),
  costOfSales: profit('costOfSales'),
  grossMargin: sum('netSales', 'costOfSales'),
  sellingCosts: profit('sellingCosts'),
  overhead: profit('overhead'),
  depreciation: profit('depreciation'),
  financing: profit('financing'),
  other: profit('other'),
  result: sum('grossMargin', 'sellingCosts', 'overhead', 'depreciation', 'financing', 'other'),

  cash: balance('cash'),
  receivables: balance('receivables'),
  stock: balance('stock'),
  deposits: balance('deposits'),
  equipment: balance('equipment'),
  assets: sideOf('assets'),
  payables: balance('payables'),
  accruedCosts: { by: 'accrued', part: 'rest' },
  vatOwed: { by: 'accrued', part: 'vat' },
  loans: balance('loans'),
  liabilities: sideOf('liabilities'),
  paidIn: balance('paidIn'),
  retained: balance('retained'),
  equity: sideOf('equity'),
  liabilitiesAndEquity: sum('liabilities', 'equity'),

  fromCustomers: flowsOf('fromCustomers'),
  toSuppliers: flowsOf('toSuppliers'),
  oldBills: flowsOf('oldBills'),
  toChains: flowsOf('toChains'),
  sellingPaid: flowsOf('sellingPaid'),
  overheadPaid: flowsOf('overheadPaid'),
  interestPaid: flowsOf('interestPaid'),
  taxSettled: flowsOf('taxSettled'),
  operating: sectionOf('operating'),
  invested: flowsOf('invested'),
  investing: sectionOf('investing'),
  fromOwners: flowsOf('fromOwners'),
  fromLenders: flowsOf('fromLenders'),
  financingFlow: sectionOf('financingFlow'),
  openingCash: { by: 'balance', balance: 'cash', at: 'start' },
  netCash: sum('operating', 'investing', 'financingFlow'),
  closingCash: sum('openingCash', 'netCash'),

  addedBackDepreciation: { by: 'profit', profit: 'depreciation', sign: -1 },
  changeReceivables: change('receivables'),
  changeStock: change('stock'),
  changeDeposits: change('deposits'),
  changePayables: change('payables'),
  changeAccrued: change('accrued'),
  operatingIndirect: sum(
    'result',
    'addedBackDepreciation',
    'changeReceivables',
    'changeStock',
    'changeDeposits',
    'changePayables',
    'changeAccrued',
  ),
};

/** A statement as it is read, from the first line to the last. */
export const STATEMENT_LINES: Record<StatementName, readonly LineName[]> = {
  profitAndLoss: [
    'grossSales',
    'tradeSpend',
    'netSales',
    'costOfSales',
    'grossMargin',
    'sellingCosts',
    'overhead',
    'depreciation',
    'financing',
    'other',
    'result',
  ],
  balanceSheet: [
    ...linesOfSum('assets'),
    ...linesOfSum('liabilities'),
    ...linesOfSum('equity'),
    'liabilitiesAndEquity',
  ],
  cashDirect: cashStatement(linesOfSum('operating')),
  cashIndirect: cashStatement(linesOfSum('operatingIndirect')),
};

function linesOfSum(total: LineName): LineName[] {
  const source = LINES[total];
  return source.by === 'sum' ? [...source.lines, total] : [total];
}

function cashStatement(operating: readonly LineName[]): LineName[] {
  return [
    ...operating,
    ...linesOfSum('investing'),
    ...linesOfSum('financingFlow'),
    'netCash',
    'openingCash',
    'closingCash',
  ];
}
