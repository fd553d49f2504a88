// The journal: every event the weekly pass can book, as one debit and one credit. Nothing changes a balance but
// post(), so the books balance by construction; the pass asserts it all the same. `flow` names the cash flow an event
// is, `profit` the part of the result it belongs to. Worked figure: freight of 1,240 cents: Dr retained, Cr cash.
import type { BalanceName, FlowName, ProfitName } from './types.ts';

interface Entry {
  dr: BalanceName;
  cr: BalanceName;
  flow?: FlowName;
  profit?: ProfitName;
}

const cashOut = (flow: FlowName, profit: ProfitName): Entry => ({ dr: 'retained', cr: 'cash', flow, profit });
const accrue = (profit: ProfitName): Entry => ({ dr: 'retained', cr: 'accrued', profit });
const payAccrued = (flow: FlowName): Entry => ({ dr: 'accrued', cr: 'cash', flow });

/** Event name to its two sides. PASS.md says in words when each is booked and for how much. */
export const EVENTS = {
  equityIn: { dr: 'cash', cr: 'paidIn', flow: 'equityIn' },
  loanIn: { dr: 'cash', cr: 'loans', flow: 'loanIn' },
  loanFee: cashOut('loanFees', 'financing'),
  interestAccrued: accrue('financing'),
  interestPaid: payAccrued('interest'),
  principalPaid: { dr: 'loans', cr: 'cash', flow: 'principal' },
  advanceIn: { dr: 'cash', cr: 'loans', flow: 'advanceIn' },
  advanceRepaid: { dr: 'loans', cr: 'cash', flow: 'advanceRepaid' },
  depositPaid: { dr: 'deposits', cr: 'cash', flow: 'supplierDeposits' },
  receiptDeposit: { dr: 'stock', cr: 'deposits' },
  receiptPayable: { dr: 'stock', cr: 'payables' },
  receiptFreight: { dr: 'stock', cr: 'cash', flow: 'inboundFreightAndDuty' },
  receiptRush: { dr: 'stock', cr: 'cash', flow: 'rushFreight' },
  supplierPaid: { dr: 'payables', cr: 'cash', flow: 'supplierPayments' },
  invoiced: { dr: 'receivables', cr: 'retained', profit: 'invoiced' },
  costOfSales: { dr: 'retained', cr: 'stock', profit: 'costOfSales' },
  freeGoods: { dr: 'retained', cr: 'stock', profit: 'tradeMoney' },
  freightOut: cashOut('freightOut', 'sellingCosts'),
  dropsPaid: cashOut('freightOut', 'sellingCosts'),
  palletsPaid: cashOut('freightOut', 'sellingCosts'),
  pickAndPack: cashOut('pickAndPack', 'sellingCosts'),
  returnsFreight: cashOut('returnsFreight', 'sellingCosts'),
  deductionAccrued: accrue('tradeMoney'),
  wrongDeducted: accrue('tradeMoney'),
  discountAccrued: accrue('tradeMoney'),
  claimAccrued: accrue('tradeMoney'),
  shortCharged: accrue('tradeMoney'),
  brokerAccrued: accrue('sellingCosts'),
  royaltyAccrued: accrue('sellingCosts'),
  returnCredited: accrue('tradeMoney'),
  returnToStock: { dr: 'stock', cr: 'retained', profit: 'costOfSales' },
  slottingPaid: cashOut('slotting', 'tradeMoney'),
  openingFeePaid: cashOut('openingFees', 'tradeMoney'),
  displayPaid: { dr: 'deposits', cr: 'cash', flow: 'displayBuild' },
  displayOpened: { dr: 'retained', cr: 'deposits', profit: 'tradeMoney' },
  displayFee: cashOut('displayFees', 'tradeMoney'),
  remitted: { dr: 'cash', cr: 'receivables', flow: 'remittances' },
  remittedLess: { dr: 'accrued', cr: 'receivables' },
  recovered: { dr: 'cash', cr: 'retained', flow: 'recovered', profit: 'tradeMoney' },
  badDebt: { dr: 'retained', cr: 'receivables', profit: 'other' },
  brokerPaid: payAccrued('broker'),
  royaltyPaid: payAccrued('royalty'),
  claimPaid: payAccrued('claimsPaid'),
  guaranteeHeld: { dr: 'retained', cr: 'accrued', profit: 'invoiced' },
  guaranteeAccepted: { dr: 'accrued', cr: 'retained', profit: 'invoiced' },
  writtenOff: { dr: 'retained', cr: 'stock', profit: 'other' },
  vatOnSale: { dr: 'receivables', cr: 'accrued' },
  vatOnPayable: { dr: 'accrued', cr: 'payables' },
  vatOnFreight: { dr: 'accrued', cr: 'cash', flow: 'inboundFreightAndDuty' },
  vatPaid: payAccrued('vatSettled'),
  vatRefunded: { dr: 'cash', cr: 'accrued', flow: 'vatSettled' },
  overhead: cashOut('overhead', 'overhead'),
  capitalPaid: { dr: 'equipment', cr: 'cash', flow: 'capital' },
  depreciation: { dr: 'retained', cr: 'equipment', profit: 'depreciation' },
  baseInvoiced: { dr: 'receivables', cr: 'retained', profit: 'invoiced' },
  baseCost: { dr: 'retained', cr: 'payables', profit: 'costOfSales' },
  baseCollected: { dr: 'cash', cr: 'receivables', flow: 'baseCollections' },
  basePaid: { dr: 'payables', cr: 'cash', flow: 'basePayments' },
  openingCollected: { dr: 'cash', cr: 'receivables', flow: 'openingCollections' },
  openingPayablePaid: { dr: 'payables', cr: 'cash', flow: 'openingPayments' },
  openingAccruedPaid: { dr: 'accrued', cr: 'cash', flow: 'openingPayments' },
} as const satisfies Record<string, Entry>;

export type EventName = keyof typeof EVENTS;
