// The cash flows and balances of the weekly pass in words: what each is called, whose money it is, what it means.
// Worked figure: freightOut is "Freight out", money between us and the chain.
import type { BalanceName, FlowName } from '../rollout/types.ts';
import type { ExplanationLine } from './types.ts';

export interface Words {
  label: string;
  owner: ExplanationLine['owner'];
  meaning: string;
}

const words = (label: string, owner: Words['owner'], meaning: string): Words => ({ label, owner, meaning });

export const FLOW_WORDS: Record<FlowName, Words> = {
  equityIn: words('Equity paid in', 'ours', 'Money paid in for a part of the business.'),
  loanIn: words('Loans paid out to us', 'atRisk', 'Borrowed money as it arrives.'),
  advanceIn: words(
    'Advances on receivables',
    'atRisk',
    'Cash now for part of each invoice, until it is collected.',
  ),
  remittances: words('Chains pay', 'ours', 'What chains remit for our invoices, less what they take off.'),
  recovered: words(
    'Deductions won back',
    'ours',
    'What chains pay back of deductions they had no right to. It counts when it is there, not before.',
  ),
  baseCollections: words('Sales beside the plan, collected', 'ours', 'What customers outside this plan pay.'),
  openingCollections: words(
    'Old receivables, collected',
    'ours',
    'What was owed to us before the plan began.',
  ),
  vatSettled: words(
    'Value added tax',
    'tax',
    'Tax charged on our invoices less tax we paid, settled by the quarter.',
  ),
  supplierDeposits: words(
    'Deposits to suppliers',
    'atRisk',
    'The part of a purchase order paid when it is placed.',
  ),
  supplierPayments: words('Suppliers paid', 'atRisk', 'The rest of what suppliers invoice, when it is due.'),
  inboundFreightAndDuty: words('Freight and duty in', 'atRisk', 'Paid when goods land at our door.'),
  rushFreight: words(
    'Rush orders',
    'atRisk',
    'What air freight or overtime costs on top, paid when goods land.',
  ),
  basePayments: words('Sales beside the plan, their cost', 'atRisk', 'What sales outside this plan cost us.'),
  openingPayments: words('Old bills paid', 'between', 'What we owed before the plan began.'),
  freightOut: words('Freight out', 'between', 'Carrying goods to the chain, paid when they leave.'),
  pickAndPack: words('Pick and pack', 'between', 'Taking orders off our shelves and making them ready.'),
  returnsFreight: words('Freight back', 'between', 'Carrying returned goods back to us.'),
  slotting: words('Slotting', 'theirs', 'What chains take for a place on their shelves.'),
  displayBuild: words('Displays', 'atRisk', 'Building displays and bringing them to the stores.'),
  displayFees: words('Display fees', 'theirs', 'What chains take each week for a display’s place.'),
  openingFees: words('Opening fees', 'theirs', 'What chains take for listing or opening.'),
  claimsPaid: words('Claims paid in cash', 'theirs', 'Claims that found no remittance to be taken off.'),
  broker: words('Broker’s commission', 'between', 'Paid in the month after it was earned.'),
  royalty: words('Royalty', 'between', 'Paid after the quarter it was earned in.'),
  interest: words('Interest', 'between', 'On loans and advances, paid by the month.'),
  loanFees: words('Loan fees', 'between', 'Taken by the lender when a loan is paid out.'),
  overhead: words('Overhead', 'between', 'Rent, wages and what else goes on each week.'),
  capital: words('Equipment and capacity', 'atRisk', 'What is bought to last, capacity steps too.'),
  principal: words('Loans repaid', 'between', 'The borrowed sum going back, by the month.'),
  advanceRepaid: words('Advances repaid', 'between', 'Advances going back as their invoices are collected.'),
};

export const BALANCE_WORDS: Record<BalanceName | 'low', Words> = {
  cash: words('Cash', 'ours', 'Cash at the end of the week.'),
  low: words('Lowest cash', 'ours', 'The lowest cash within the week: money goes out before it comes in.'),
  receivables: words('Receivables', 'atRisk', 'Invoiced, and not yet collected.'),
  stock: words('Stock', 'atRisk', 'Goods that are ours, at landed cost.'),
  deposits: words('Deposits', 'atRisk', 'Paid ahead for goods and displays still to come.'),
  equipment: words('Equipment', 'atRisk', 'What was bought to last, less its wear so far.'),
  payables: words('Payables', 'between', 'Owed to suppliers for goods received.'),
  accrued: words(
    'Accrued',
    'between',
    'Selling costs, claims, interest and tax earned by others and not yet paid.',
  ),
  loans: words('Loans', 'between', 'Borrowed, and not yet paid back.'),
  paidIn: words('Paid in', 'ours', 'What owners have put in.'),
  retained: words('Retained', 'ours', 'What the business has kept of its results so far.'),
};
