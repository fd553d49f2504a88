// Where a posting of the weekly pass leads: the field it rests on, and the figure that has its unit price. A posting
// names an account and an item by their place in the plan, or neither.
// Worked figure: freightOut of Corner and Tea leads to the ladder's step "Freight out"; slotting to accounts/corner/slotting.
import type { EventName } from '../rollout/events.ts';
import { listingKey, type Place, placeOf, stepKey } from './place.ts';
import type { ExplanationLine, FigureKey, ListingFigure } from './types.ts';
import type { Scene } from './write.ts';

export interface Entry {
  event: EventName;
  account: number;
  item: number;
  /** Whole minor units, as posted. */
  amount: number;
}

export interface Source {
  path: string | null;
  explains: FigureKey | null;
  owner: ExplanationLine['owner'];
}

interface EntryAt {
  scene: Scene;
  place: Place | null;
  /** "accounts/corner", or "accounts" of a posting that is no one account's. */
  account: string;
  /** "items/tea", or "items". */
  item: string;
  itemId: string | null;
}

export function sourceOf(scene: Scene, { event, account, item }: Entry): Source {
  const ofAccount = scene.plan.accounts[account];
  const ofItem = scene.plan.items[item];
  return SOURCES[event]({
    scene,
    place: ofAccount && ofItem ? placeOf(scene, ofAccount.id, ofItem.id) : null,
    account: ofAccount ? `accounts/${ofAccount.id}` : 'accounts',
    item: ofItem ? `items/${ofItem.id}` : 'items',
    itemId: ofItem?.id ?? null,
  });
}

/** "Corner, Tea", as far as the posting names them. */
export function whose(scene: Scene, { account, item }: Pick<Entry, 'account' | 'item'>): string {
  const names = [scene.plan.accounts[account]?.name, scene.plan.items[item]?.name];
  return names.filter((name) => name !== undefined).join(', ');
}

type Owner = ExplanationLine['owner'];
type SourceOf = (at: EntryAt) => Source;

/** A field of the account; where the posting names none, the list of accounts. */
const account =
  (owner: Owner, field: string): SourceOf =>
  (at) => ({
    path: at.account === 'accounts' ? at.account : `${at.account}/${field}`,
    explains: null,
    owner,
  });

const business =
  (owner: Owner, field: string): SourceOf =>
  () => ({
    path: `business/${field}`,
    explains: null,
    owner,
  });

/** Goods: a field of the item's supply, and what a unit costs. */
const goods =
  (owner: Owner, field: string): SourceOf =>
  (at) => ({
    path: at.itemId === null ? 'items' : `${at.item}/${field}`,
    explains: landedKey(at.scene, at.itemId),
    owner,
  });

const listing =
  (owner: Owner, figure: ListingFigure, field: string): SourceOf =>
  (at) => ({
    path: at.place ? null : account(owner, field)(at).path,
    explains: at.place ? listingKey(at.place, figure) : null,
    owner,
  });

/** The ladder's step of a kind of allowance, or the account's field where it has none. */
const step =
  (owner: Owner, kind: string, field: string): SourceOf =>
  (at) => {
    const found = at.place?.account.allowances.find((terms) => terms.kind === kind);
    if (!at.place || !found) return account(owner, field)(at);
    return { path: null, explains: stepKey(at.place, found.id), owner };
  };

export function landedKey({ results }: Scene, itemId: string | null): FigureKey | null {
  const ladder = results.ladders.find((each) => each.itemId === itemId);
  return ladder
    ? { of: 'listing', accountId: ladder.accountId, itemId: ladder.itemId, figure: 'landed' }
    : null;
}

/** Slotting off remittances is the account's; other claims are an item's, from allowances or promotions. */
const claim: SourceOf = (at) => {
  if (!at.place) return account('theirs', 'slotting')(at);
  const { account: own } = at.place;
  const field =
    own.promotions.length > 0
      ? 'promotions'
      : own.freeFill.settled === 'billedBack'
        ? 'freeFill/settled'
        : 'allowances';
  return { path: `${at.account}/${field}`, explains: null, owner: 'theirs' };
};

const discount: SourceOf = (at) => ({
  path: at.place ? null : `${at.account}/terms`,
  explains: at.place ? stepKey(at.place, 'earlyDiscount') : null,
  owner: 'theirs',
});

/** What leaves unsold: planned removals of an item, or what an account's way of sale loses. */
const writeOff: SourceOf = (at) =>
  at.place
    ? account('atRisk', 'sale')(at)
    : { ...goods('atRisk', 'removals')(at), explains: landedKey(at.scene, at.itemId) };

/** Loans of the opening books and loans agreed: where they are. */
const loans: SourceOf = ({ scene }) => ({
  path: scene.plan.business.funding.length > 0 ? 'business/funding' : 'business/openingBooks/loans',
  explains: null,
  owner: 'between',
});

const wear: SourceOf = ({ scene: { plan } }) => {
  const owned = plan.business.openingBooks.equipment.length > 0;
  const bought = plan.business.capital.length > 0;
  return {
    path: bought || !owned ? 'business/capital' : 'business/openingBooks/equipment',
    explains: null,
    owner: 'atRisk',
  };
};

const SOURCES: Record<EventName, SourceOf> = {
  equityIn: business('ours', 'funding'),
  loanIn: business('atRisk', 'funding'),
  loanFee: business('between', 'funding'),
  interestAccrued: loans,
  interestPaid: loans,
  principalPaid: loans,
  advanceIn: business('atRisk', 'funding'),
  advanceRepaid: business('between', 'funding'),
  depositPaid: goods('atRisk', 'supply/depositRate'),
  receiptDeposit: goods('atRisk', 'supply/depositRate'),
  receiptPayable: goods('atRisk', 'supply/supplierDays'),
  receiptFreight: goods('atRisk', 'costLines'),
  receiptRush: goods('atRisk', 'supply/expedite/extraAmountPerUnit'),
  supplierPaid: goods('atRisk', 'supply/supplierDays'),
  invoiced: listing('ours', 'invoice', 'listings'),
  costOfSales: listing('atRisk', 'landed', 'listings'),
  freeGoods: listing('theirs', 'landed', 'listings'),
  freightOut: step('between', 'freightOut', 'allowances'),
  dropsPaid: account('between', 'delivery/amountPerDrop'),
  palletsPaid: account('between', 'delivery/amountPerPallet'),
  pickAndPack: step('between', 'pickAndPack', 'allowances'),
  returnsFreight: step('between', 'expectedReturns', 'allowances'),
  deductionAccrued: listing('theirs', 'net', 'allowances'),
  wrongDeducted: account('theirs', 'disputed/wrongRate'),
  discountAccrued: discount,
  claimAccrued: claim,
  shortCharged: account('theirs', 'service/chargeRate'),
  brokerAccrued: step('between', 'broker', 'allowances'),
  royaltyAccrued: step('between', 'royalty', 'allowances'),
  returnCredited: step('theirs', 'expectedReturns', 'closedStock'),
  returnToStock: step('atRisk', 'expectedReturns', 'closedStock'),
  slottingPaid: account('theirs', 'slotting/amount'),
  openingFeePaid: account('theirs', 'openingFees'),
  displayPaid: account('atRisk', 'display/buildAmountPerDoor'),
  displayOpened: account('atRisk', 'display/buildAmountPerDoor'),
  displayFee: account('theirs', 'display/feeAmountPerStoreWeek'),
  remitted: account('ours', 'terms/paymentDays'),
  remittedLess: account('theirs', 'allowances'),
  recovered: account('ours', 'disputed/recoveredShare'),
  badDebt: account('atRisk', 'terms/badDebtRate'),
  brokerPaid: account('between', 'allowances'),
  royaltyPaid: account('between', 'allowances'),
  claimPaid: account('theirs', 'allowances'),
  guaranteeHeld: account('atRisk', 'sale'),
  guaranteeAccepted: account('ours', 'sale'),
  writtenOff: writeOff,
  vatOnSale: business('tax', 'vat/salesRate'),
  vatOnPayable: business('tax', 'vat/purchasesRate'),
  vatOnFreight: business('tax', 'vat/purchasesRate'),
  vatPaid: business('tax', 'vat'),
  vatRefunded: business('tax', 'vat'),
  overhead: business('between', 'overheads'),
  capitalPaid: business('atRisk', 'capital'),
  depreciation: wear,
  baseInvoiced: business('ours', 'baseSales/revenueAmountPerWeek'),
  baseCost: business('atRisk', 'baseSales/costRate'),
  baseCollected: business('ours', 'baseSales/collectDays'),
  basePaid: business('atRisk', 'baseSales/payDays'),
  openingCollected: business('atRisk', 'openingBooks/receivables'),
  openingPayablePaid: business('between', 'openingBooks/payables'),
  openingAccruedPaid: business('between', 'openingBooks/accrued'),
};
