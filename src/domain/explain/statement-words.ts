// The lines of the statements in words: what each is called, whose money it is, what it means.
// Worked figure: netSales is "Net sales": gross sales less what the trade takes off them.
import type { LineName, StatementName } from '../statements/lines.ts';
import { BALANCE_WORDS, type Words } from './flow-words.ts';

const words = (label: string, owner: Words['owner'], meaning: string): Words => ({ label, owner, meaning });

export const STATEMENT_WORDS: Record<StatementName, string> = {
  profitAndLoss: 'Profit and loss',
  balanceSheet: 'Balance sheet',
  cashDirect: 'Cash flow, direct',
  cashIndirect: 'Cash flow, indirect',
};

const { accrued: _both, low: _within, ...BALANCES } = BALANCE_WORDS;

export const LINE_WORDS: Record<LineName, Words> = {
  ...BALANCES,
  grossSales: words('Gross sales', 'ours', 'What our invoices ask, less what is held under a guarantee.'),
  tradeSpend: words(
    'Trade spend',
    'theirs',
    'What chains take off or ask for: deductions, claims, free goods, slotting, displays, fees.',
  ),
  netSales: words('Net sales', 'ours', 'Gross sales less trade spend.'),
  costOfSales: words('Cost of sales', 'atRisk', 'What was sold, at its average landed cost.'),
  grossMargin: words('Gross margin', 'ours', 'Net sales less cost of sales.'),
  sellingCosts: words(
    'Selling costs',
    'between',
    'Freight out, picking, freight back, broker and royalty, as they are earned.',
  ),
  overhead: words('Overhead', 'between', 'Rent, wages and what else goes on each week.'),
  depreciation: words('Depreciation', 'atRisk', 'What was bought to last, spread evenly over its life.'),
  financing: words('Financing', 'between', 'Interest as it is earned, and loan fees.'),
  other: words('Other', 'atRisk', 'Write-offs, samples, shrink, and invoices that are never paid.'),
  result: words(
    'Result before income tax',
    'ours',
    'What is left of the sales once all of this is paid for; income tax is outside the plan.',
  ),

  assets: words('Assets', 'ours', 'What the business has.'),
  accruedCosts: words(
    'Accrued costs and claims',
    'between',
    'Selling costs, deductions, claims and interest earned by others and not yet paid.',
  ),
  vatOwed: words(
    'Value added tax owed',
    'tax',
    'Tax charged on invoices less tax paid, not yet settled; below zero it is to come back.',
  ),
  liabilities: words('Liabilities', 'between', 'What the business owes.'),
  equity: words('Equity', 'ours', 'What owners have put in and the business has kept.'),
  liabilitiesAndEquity: words(
    'Liabilities and equity',
    'between',
    'What is owed and what is owned: it comes to the assets.',
  ),

  fromCustomers: words('From customers', 'ours', 'What customers pay, less what they take off.'),
  toSuppliers: words('To suppliers', 'atRisk', 'Deposits, goods, freight and duty in.'),
  oldBills: words('Old bills', 'between', 'What was owed before the plan began.'),
  toChains: words('To chains', 'theirs', 'Slotting, displays, fees, and claims paid in cash.'),
  sellingPaid: words('Selling costs paid', 'between', 'Freight out, picking, freight back, broker, royalty.'),
  overheadPaid: words('Overhead paid', 'between', 'Rent, wages and what else goes on each week.'),
  interestPaid: words('Interest and loan fees', 'between', 'They lower the result, so they are operating.'),
  taxSettled: words('Value added tax settled', 'tax', 'Paid, or refunded, by the quarter.'),
  operating: words('Cash from operations', 'ours', 'What the running business brings or takes in cash.'),
  invested: words('Equipment and capacity', 'atRisk', 'What is bought to last.'),
  investing: words('Cash from investing', 'atRisk', 'What goes into things that last.'),
  fromOwners: words('From owners', 'ours', 'Equity paid in.'),
  fromLenders: words('From lenders', 'between', 'Loans and advances, less what goes back.'),
  financingFlow: words(
    'Cash from financing',
    'between',
    'What owners and lenders put in, less what goes back.',
  ),
  netCash: words('Change in cash', 'ours', 'Operations, investing and financing together.'),
  openingCash: words('Cash at the start', 'ours', 'Cash at the end of the period before.'),
  closingCash: words('Cash at the end', 'ours', 'Cash at the end of the period.'),

  addedBackDepreciation: words(
    'Depreciation, added back',
    'atRisk',
    'It lowers the result and costs no cash.',
  ),
  changeReceivables: words('Change in receivables', 'atRisk', 'What more is owed to us is not yet cash.'),
  changeStock: words('Change in stock', 'atRisk', 'Cash that became goods, or came back from them.'),
  changeDeposits: words('Change in deposits', 'atRisk', 'Paid ahead for goods and displays still to come.'),
  changePayables: words('Change in payables', 'between', 'What more we owe suppliers is cash we still have.'),
  changeAccrued: words(
    'Change in accrued, tax included',
    'between',
    'What more others have earned of us is cash we still have.',
  ),
  operatingIndirect: words(
    'Cash from operations',
    'ours',
    'The result, less what of it is not cash: it comes to the direct statement’s figure.',
  ),
};
