// Which document each posting of a week stands on. Typed by the journal's own events: one that is added there has to be
// given its document here before anything compiles. Worked figure: deductions stand on the invoice they are taken off.
import type { EventName } from '../rollout/events.ts';

/** In the order they are shown. */
export const DOCUMENT_KINDS = [
  'order',
  'goods',
  'supplier',
  'invoice',
  'claim',
  'remittance',
  'collection',
  'chain',
  'delivery',
  'bill',
  'funding',
  'books',
] as const;
export type DocumentKind = (typeof DOCUMENT_KINDS)[number];

export const KIND_WORDS: Record<DocumentKind, readonly [label: string, meaning: string]> = {
  order: ['Purchase order', 'what is ordered this week, and what is paid ahead for it'],
  goods: ['Goods received', 'what landed, and how it is paid'],
  supplier: ['Payment to suppliers', 'goods received earlier, less their deposit'],
  invoice: ['Invoice', 'what it asks, and what will be taken off when it is paid'],
  claim: ['Claim', 'earned by the chain this week, taken off a later remittance'],
  remittance: ['Remittance', 'what fell due, what the chain took off, what it paid'],
  collection: ['Collection', 'what comes in beside remittances'],
  chain: ['Payment to a chain', 'slotting, fees, displays, and claims paid in cash'],
  delivery: ['Delivery', 'carrying and picking, paid as goods leave or come back'],
  bill: ['Bill paid', 'what the business pays beside goods and chains'],
  funding: ['Funding', 'what owners and lenders put in, and what goes back'],
  books: ['Booked without cash', 'costs as they are earned or used up'],
};

/** What makes one document: all of an account, of an account and item, of an item, of a kind of posting, or all there is. */
export type DocumentBy = 'account' | 'place' | 'item' | 'event' | 'all';

export const DOCUMENTS_BY: Record<DocumentKind, DocumentBy> = {
  order: 'item',
  goods: 'item',
  supplier: 'event',
  invoice: 'place',
  claim: 'place',
  remittance: 'account',
  collection: 'event',
  chain: 'account',
  delivery: 'account',
  bill: 'event',
  funding: 'event',
  books: 'all',
};

export const DOCUMENT_OF: Record<EventName, DocumentKind> = {
  equityIn: 'funding',
  loanIn: 'funding',
  loanFee: 'funding',
  interestAccrued: 'books',
  interestPaid: 'bill',
  principalPaid: 'funding',
  advanceIn: 'funding',
  advanceRepaid: 'funding',
  depositPaid: 'order',
  receiptDeposit: 'goods',
  receiptPayable: 'goods',
  receiptFreight: 'goods',
  receiptRush: 'goods',
  supplierPaid: 'supplier',
  invoiced: 'invoice',
  costOfSales: 'books',
  freeGoods: 'books',
  freightOut: 'delivery',
  pickAndPack: 'delivery',
  returnsFreight: 'delivery',
  dropsPaid: 'delivery',
  palletsPaid: 'delivery',
  deductionAccrued: 'invoice',
  wrongDeducted: 'invoice',
  discountAccrued: 'invoice',
  claimAccrued: 'claim',
  shortCharged: 'claim',
  brokerAccrued: 'books',
  royaltyAccrued: 'books',
  returnCredited: 'claim',
  returnToStock: 'books',
  slottingPaid: 'chain',
  openingFeePaid: 'chain',
  displayPaid: 'chain',
  displayOpened: 'books',
  displayFee: 'chain',
  recovered: 'collection',
  remitted: 'remittance',
  remittedLess: 'remittance',
  badDebt: 'remittance',
  brokerPaid: 'bill',
  royaltyPaid: 'bill',
  claimPaid: 'chain',
  guaranteeHeld: 'books',
  guaranteeAccepted: 'books',
  writtenOff: 'books',
  vatOnSale: 'invoice',
  vatOnPayable: 'goods',
  vatOnFreight: 'goods',
  vatPaid: 'bill',
  vatRefunded: 'bill',
  overhead: 'bill',
  capitalPaid: 'bill',
  depreciation: 'books',
  baseInvoiced: 'invoice',
  baseCost: 'books',
  baseCollected: 'collection',
  basePaid: 'supplier',
  openingCollected: 'collection',
  openingPayablePaid: 'supplier',
  openingAccruedPaid: 'bill',
};

/** A document's name within its week, for addresses: its kind, and the places of its account and item in the plan's lists. */
export function documentId(kind: DocumentKind, account: number, item: number): string {
  const place = (index: number) => (index < 0 ? 'all' : String(index));
  const of: Record<DocumentBy, string> = {
    account: place(account),
    place: `${place(account)}-${place(item)}`,
    item: place(item),
    event: '',
    all: 'all',
  };
  return `${kind}-${of[DOCUMENTS_BY[kind]]}`;
}
