// Seven numbers to a whole plan (back.ts goes the other way). It is an ordinary plan: every default is noted in it with
// its source, and whoever wants more opens it and types over them. Worked figure: 4.99 on the tag at a 42 % margin leaves
// a list price of 2.8942 and, less allowances of 10 %, an invoice price of 2.6048.
import { dec, round4 } from '../money/decimal.ts';
import type { Account, Item, Plan } from '../plan/index.ts';
import { NO_EVIDENCE, noReadiness, PLAIN_OWNERSHIP, PLAIN_SUPPLY, USUAL_LENDER } from '../plan/plainly.ts';
import { fine, type Outcome, trouble } from '../problems.ts';
import { askingNothing } from './account.ts';
import { checkSeven } from './check.ts';
import {
  ACCOUNT_ID,
  DEFAULTS,
  DISTRIBUTOR_ID,
  ITEM_ID,
  QUICK_THRESHOLDS,
  quickBasis,
  quickDoorsPerWeek,
  quickInvoice,
  SHOP_ID,
} from './defaults.ts';
import type { Region } from './regions.ts';
import type { SevenNumbers } from './seven.ts';

export interface QuickArgs {
  seven: SevenNumbers;
  region: Region;
  /** YYYY-MM-DD */
  startDate: string;
  planId: string;
}

/**
 * The plan of the numbers typed so far. It needs the first three; while one of the others is missing a stand-in that
 * decides nothing holds its place (nothing down, 1 store, 1 a week): show only what shownWith() names.
 */
export function quickPlan(args: QuickArgs): Outcome<Plan> {
  const { seven, region } = args;
  const problems = checkSeven(seven);
  const { shelfPrice, landedPerUnit, retailerMarginRate } = seven;
  if (problems.length > 0 || shelfPrice === null || landedPerUnit === null || retailerMarginRate === null) {
    return trouble(...problems);
  }
  const stores = seven.stores ?? 1;
  const { distributor } = seven;
  const invoice = quickInvoice({ shelfPrice, retailerMarginRate, distributor, region });
  const productName = seven.productName.trim() || 'Our product';
  const chainName = seven.chainName.trim() || 'The chain';
  return fine({
    version: 3,
    id: args.planId,
    name: `${productName}, ${chainName}`.slice(0, 120),
    lesson: '',
    currency: region.currency,
    market: region.market,
    perishableFood: false,
    shelfTax: region.tax,
    startDate: args.startDate,
    horizonWeeks: DEFAULTS.horizonWeeks,
    items: [quickItem(productName, landedPerUnit)],
    accounts: [
      quickAccount({
        seven,
        chainName,
        stores,
        freight: round4(invoice.times(DEFAULTS.freightRate)).toFixed(),
      }),
    ],
    business: quickBusiness(seven.cash),
    promise: NO_EVIDENCE,
    readiness: noReadiness(region.market),
    offers: [],
    ownership: PLAIN_OWNERSHIP,
    thresholds: QUICK_THRESHOLDS,
    basis: quickBasis({ region, distributor, stores, invoice }),
  });
}

function quickItem(name: string, landedPerUnit: string): Item {
  return {
    id: ITEM_ID,
    name,
    caseUnits: DEFAULTS.caseUnits,
    palletCases: 100,
    pack: null,
    numbers: null,
    shipmentUnits: 10_000,
    costLines: [
      { id: 'landed', label: 'Landed', family: 'goods', rule: { by: 'unit', amount: landedPerUnit } },
    ],
    lossRate: '0',
    supply: {
      leadWeeks: DEFAULTS.leadWeeks,
      coverWeeks: 0,
      minimumOrderUnits: 0,
      batchUnits: 1,
      capacityUnitsPerWeek: null,
      capacitySteps: [],
      depositRate: DEFAULTS.depositRate,
      supplierDays: 0,
      ...PLAIN_SUPPLY,
    },
    opening: { units: 0, stockAmount: '0', onOrder: [] },
    seasonFactors: null,
    removals: [],
  };
}

function quickAccount(from: {
  seven: SevenNumbers;
  chainName: string;
  stores: number;
  freight: string;
}): Account {
  const { seven, stores } = from;
  const account = askingNothing({
    id: ACCOUNT_ID,
    name: from.chainName,
    hands: quickHands(seven, from.chainName),
    listings: [quickListing(seven)],
  });
  return {
    ...account,
    waves: [
      {
        id: 'first',
        openWeek: DEFAULTS.firstOpenWeek,
        doors: stores,
        doorsPerWeek: quickDoorsPerWeek(stores),
      },
    ],
    allowances: [
      { kind: 'offInvoice', id: 'off-invoice', rate: DEFAULTS.allowanceRate, on: 'list', passedOn: false },
      { kind: 'freightOut', id: 'freight', amount: from.freight, per: 'unit' },
    ],
    slotting: { amount: seven.moneyDownPerStore ?? '0', per: 'door', settled: 'atOpening' },
  };
}

function quickHands(seven: SevenNumbers, chainName: string): Account['hands'] {
  const chain: Account['hands'][number] = {
    id: SHOP_ID,
    name: chainName,
    rule: { by: 'margin', rate: seven.retailerMarginRate ?? '0' },
    requiredMarginRate: null,
  };
  if (!seven.distributor) return [chain];
  const rule = { by: 'margin' as const, rate: DEFAULTS.distributorMarginRate };
  return [{ id: DISTRIBUTOR_ID, name: 'Distributor', rule, requiredMarginRate: null }, chain];
}

function quickListing(seven: SevenNumbers): Account['listings'][number] {
  return {
    itemId: ITEM_ID,
    list: { by: 'solved' },
    shelf: { by: 'price', amount: seven.shelfPrice ?? '0' },
    lockedRungs: [],
    unitsPerStoreWeek: seven.unitsPerStoreWeek ?? '1',
    facings: 1,
    depthUnits: DEFAULTS.caseUnits,
    backStockUnits: 0,
    coverWeeks: DEFAULTS.shelfCoverWeeks,
    freeCasesPerDoor: seven.freeFill ? 1 : 0,
    replaces: null,
  };
}

function quickBusiness(cash: string | null): Plan['business'] {
  const none = { receivables: [], payables: [], accrued: [], equipment: [], loans: [] };
  // What is in the bank was paid in; an overdraft was not.
  const paidInAmount = cash !== null && dec(cash).gt(0) ? cash : '0';
  return {
    openingCashAmount: cash,
    openingBooks: { ...none, paidInAmount },
    baseSales: null,
    overheads: [],
    capital: [],
    lines: [],
    lender: USUAL_LENDER,
    funding: [],
    vat: null,
  };
}
