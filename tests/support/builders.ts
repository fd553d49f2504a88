/**
 * One builder per noun of a plan. Each gives a small valid one; a test names only what it is about. Defaults for tests
 * live here and nowhere else, and none of them is a default of the product.
 * Worked figure: aPlan() is one tea at 1.00 landed, listed by one chain at 2.60 with a 40 % margin: shelf 4.3333.
 */
import type { Funding } from '../../src/domain/funding/index.ts';
import type {
  Account,
  Business,
  Hand,
  Item,
  Listing,
  Plan,
  Thresholds,
} from '../../src/domain/plan/index.ts';
import {
  NO_EVIDENCE,
  noReadiness,
  PLAIN_CONDUCT,
  PLAIN_OWNERSHIP,
  PLAIN_SUPPLY,
  USUAL_LENDER,
} from '../../src/domain/plan/plainly.ts';

export type CostLine = Item['costLines'][number];
export type Wave = Account['waves'][number];
export type Promotion = Account['promotions'][number];

/** A plan with one item and one account; no tax, no overhead, 100,000 in the bank. */
export function aPlan(changes: Partial<Plan> = {}): Plan {
  return {
    version: 3,
    id: 'plan',
    name: 'Test plan',
    lesson: '',
    currency: 'USD',
    market: 'US',
    perishableFood: false,
    shelfTax: { rate: '0', shown: 'atTill' },
    startDate: '2026-03-02',
    horizonWeeks: 52,
    items: [anItem()],
    accounts: [anAccount()],
    business: aBusiness(),
    promise: NO_EVIDENCE,
    readiness: noReadiness('US'),
    offers: [],
    ownership: PLAIN_OWNERSHIP,
    thresholds: someThresholds(),
    basis: [],
    ...changes,
  };
}

/** Tea at 1.00 a unit landed, twelve to a case, made in two weeks without a lid, nothing in stock. */
export function anItem(changes: Partial<Item> = {}): Item {
  return {
    id: 'tea',
    name: 'Tea',
    caseUnits: 12,
    palletCases: 50,
    pack: null,
    numbers: null,
    shipmentUnits: 6000,
    costLines: [aCostLine()],
    lossRate: '0',
    supply: {
      leadWeeks: 2,
      coverWeeks: 2,
      minimumOrderUnits: 0,
      batchUnits: 1,
      capacityUnitsPerWeek: null,
      capacitySteps: [],
      depositRate: '0',
      supplierDays: 0,
      ...PLAIN_SUPPLY,
    },
    opening: { units: 0, stockAmount: '0', onOrder: [] },
    seasonFactors: null,
    removals: [],
    ...changes,
  };
}

/** Goods at 1.00 a unit. */
export function aCostLine(changes: Partial<CostLine> = {}): CostLine {
  return { id: 'goods', label: 'Goods', family: 'goods', rule: { by: 'unit', amount: '1' }, ...changes };
}

/** One chain of its own stores: 10 doors from week 4, tea at 2.60, a 40 % margin, paid in 30 days. */
export function anAccount(changes: Partial<Account> = {}): Account {
  return {
    id: 'corner',
    name: 'Corner',
    priority: 1,
    hands: [aHand()],
    pricePoints: null,
    listings: [aListing()],
    waves: [aWave()],
    runningDoors: [],
    attritionYearlyRate: '0',
    cutWeek: null,
    ...PLAIN_CONDUCT,
    closedStock: 'kept',
    ramp: { startRate: '1', weeks: 0 },
    terms: {
      paymentDays: 30,
      latenessDays: 0,
      earlyDiscount: null,
      transitWeeks: 1,
      shortage: 'backlog',
      badDebtRate: '0',
    },
    sale: { by: 'shipment' },
    allowances: [],
    slotting: null,
    freeFill: { settled: 'free', lagWeeks: 0 },
    openingFees: [],
    display: null,
    promotions: [],
    deal: { termWeeks: 52, hurdleAmount: '0' },
    table: null,
    ...changes,
  };
}

/** The chain itself, at a 40 % margin on its selling price. */
export function aHand(changes: Partial<Hand> = {}): Hand {
  return {
    id: 'chain',
    name: 'Chain',
    rule: { by: 'margin', rate: '0.4' },
    requiredMarginRate: null,
    ...changes,
  };
}

/** Tea at a list price of 2.60, the shelf price solved; 6 units per store and week. */
export function aListing(changes: Partial<Listing> = {}): Listing {
  return {
    itemId: 'tea',
    list: { by: 'price', amount: '2.6' },
    shelf: { by: 'solved' },
    lockedRungs: [],
    unitsPerStoreWeek: '6',
    facings: 2,
    depthUnits: 6,
    backStockUnits: 0,
    coverWeeks: 1,
    freeCasesPerDoor: 0,
    replaces: null,
    ...changes,
  };
}

/** Ten doors, all in week 4. */
export function aWave(changes: Partial<Wave> = {}): Wave {
  return { id: 'first', openWeek: 4, doors: 10, doorsPerWeek: 10, ...changes };
}

/** A two-week 20 % promotion from week 20, all of it funded by us, with a lift of half. */
export function aPromotion(changes: Partial<Promotion> = {}): Promotion {
  return {
    id: 'spring',
    label: 'Spring',
    fromWeek: 20,
    weeks: 2,
    depthRate: '0.2',
    fundedShare: '1',
    fundedBy: 'scanBack',
    buyInWeeks: 0,
    lagWeeks: 4,
    liftRate: '0.5',
    itemIds: null,
    sisterShare: '0',
    dipShare: '0',
    dipWeeks: 0,
    ...changes,
  };
}

/** 100,000 in the bank, paid in; nothing owed, nothing else running. */
export function aBusiness(changes: Partial<Business> = {}): Business {
  return {
    openingCashAmount: '100000',
    openingBooks: {
      receivables: [],
      payables: [],
      accrued: [],
      equipment: [],
      loans: [],
      paidInAmount: '100000',
    },
    baseSales: null,
    overheads: [],
    capital: [],
    lines: [],
    lender: USUAL_LENDER,
    funding: [],
    vat: null,
    ...changes,
  };
}

export function someThresholds(changes: Partial<Thresholds> = {}): Thresholds {
  return {
    ladderFloorRate: '0.2',
    ladderTightPoints: '0.03',
    dealTightRatio: '1.25',
    cashBufferWeeks: 4,
    promiseFailsBelowRate: '0.2',
    promiseTightBelowRate: '0.5',
    ...changes,
  };
}

/** A loan of 50,000 in week 2 at 9 % a year, paid off over two years. */
export function aLoan(changes: Partial<Extract<Funding, { kind: 'loan' }>> = {}): Funding {
  return {
    kind: 'loan',
    id: 'loan',
    label: 'Loan',
    week: 2,
    amount: '50000',
    feeAmount: '0',
    yearlyRate: '0.09',
    interestOnlyMonths: 0,
    principalMonths: 24,
    ...changes,
  };
}

/**
 * The closed form of the answers: one door from week 0, ten units a week, no lead time, no transit, bought for cash at 1.00,
 * sold at 2.60 and paid four weeks later, 30.00 at hand and no buffer asked for.
 */
export function oneDoor(changes: Partial<Plan> = {}): Plan {
  const supply = { ...anItem().supply, leadWeeks: 0, coverWeeks: 0 };
  const listing = aListing({ unitsPerStoreWeek: '10', facings: 1, depthUnits: 10, coverWeeks: 0 });
  const account = anAccount({
    listings: [listing],
    waves: [aWave({ openWeek: 0, doors: 1, doorsPerWeek: 1 })],
    terms: { ...anAccount().terms, paymentDays: 28, transitWeeks: 0 },
  });
  return aPlan({
    items: [anItem({ caseUnits: 1, supply })],
    accounts: [account],
    business: aBusiness({ openingCashAmount: '30' }),
    thresholds: someThresholds({ cashBufferWeeks: 0 }),
    ...changes,
  });
}
