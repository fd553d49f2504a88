// Everything a quick plan takes for granted, in one place, with where it comes from. A guess has plausible ends, at which
// the verdicts are run again to find the one they lean on. "Common practice" has no publication behind it and says so.
// Worked figure: a rate of sale that starts at half and is full in week 8 sells 0.5 + 0.5 x 4/8 = 0.75 of it in week 4.
import { type Decimal, dec, ONE, round4 } from '../money/decimal.ts';
import type { BasisNote, Plan } from '../plan/index.ts';
import { type Region, taxSource } from './regions.ts';

export const ITEM_ID = 'product';
export const ACCOUNT_ID = 'chain';
export const DISTRIBUTOR_ID = 'distributor';
export const SHOP_ID = 'shop';

const PRACTICE = 'Common practice, no source';

export const DEFAULTS = {
  caseUnits: 12,
  horizonWeeks: 52,
  termWeeks: 52,
  distributorMarginRate: '0.204',
  rampStartRate: '0.5',
  rampWeeks: 8,
  allowanceRate: '0.1',
  freightRate: '0.05',
  firstOpenWeek: 12,
  openingWeeks: 8,
  paymentDays: 30,
  latenessDays: 10,
  leadWeeks: 6,
  depositRate: '0.5',
  transitWeeks: 1,
  /** Without supply ahead, full cases a door and a week in transit leave shelves empty half the time. */
  shelfCoverWeeks: 2,
} as const;

export const QUICK_THRESHOLDS: Plan['thresholds'] = {
  ladderFloorRate: '0.2',
  ladderTightPoints: '0.03',
  dealTightRatio: '1.25',
  cashBufferWeeks: 4,
  promiseFailsBelowRate: '0.2',
  promiseTightBelowRate: '0.5',
};

/** Invoice price of the plan to be, before it is a plan: the tag less tax, less each hand's margin, less allowances. */
export function quickInvoice(from: {
  shelfPrice: string;
  retailerMarginRate: string;
  distributor: boolean;
  region: Region;
}): Decimal {
  const { tax } = from.region;
  const beforeTax =
    tax.shown === 'inPrice' ? dec(from.shelfPrice).div(ONE.plus(tax.rate)) : dec(from.shelfPrice);
  const chainPays = beforeTax.times(ONE.minus(from.retailerMarginRate));
  const list = from.distributor ? chainPays.times(ONE.minus(DEFAULTS.distributorMarginRate)) : chainPays;
  return list.times(ONE.minus(DEFAULTS.allowanceRate));
}

/** Doors a week that open all stores in about eight weeks. */
export function quickDoorsPerWeek(stores: number): number {
  return Math.ceil(stores / DEFAULTS.openingWeeks);
}

/** Every default of a quick plan, at its place in the plan. */
export function quickBasis(from: {
  region: Region;
  distributor: boolean;
  stores: number;
  invoice: Decimal;
}): BasisNote[] {
  const chain = `accounts/${ACCOUNT_ID}`;
  const listing = `${chain}/listings/${ITEM_ID}`;
  return [
    practice('currency', `The currency of the region, ${from.region.name}`),
    { path: 'shelfTax/rate', kind: 'published', source: taxSource(from.region), low: null, high: null },
    practice(`items/${ITEM_ID}/caseUnits`, PRACTICE),
    practice(`${listing}/depthUnits`, `One case in each store at its opening. ${PRACTICE}`),
    practice('horizonWeeks', `A year. ${PRACTICE}`),
    practice(`${chain}/deal/termWeeks`, `A year. ${PRACTICE}`),
    ...routeNotes(from.distributor),
    ...chainGuesses(chain),
    ...openingGuesses(chain, from.stores),
    ...costGuesses(chain, from.invoice),
    ...supplyGuesses(),
    practice('business/overheads', 'Rent and wages are not in this yet.'),
    practice(
      'business/vat',
      'Tax between businesses is not in this yet; it is no cost, but it can deepen the hole.',
    ),
  ];
}

function routeNotes(distributor: boolean): BasisNote[] {
  const hands = `accounts/${ACCOUNT_ID}/hands`;
  if (!distributor) return [practice(hands, 'Direct to the chain, no distributor between')];
  return [
    {
      path: `${hands}/${DISTRIBUTOR_ID}/rule/rate`,
      kind: 'published',
      source: 'Gross margin of wholesalers, US Census Bureau, 2023, United States',
      low: null,
      high: null,
    },
  ];
}

function chainGuesses(chain: string): BasisNote[] {
  return [
    guess(`${chain}/ramp/startRate`, 'The rate of sale starts at half', '0.25', '1'),
    guess(`${chain}/ramp/weeks`, 'It is full in week 8', '0', '26'),
    guess(`${chain}/terms/paymentDays`, 'Paid in 30 days', '14', '60'),
    guess(`${chain}/terms/latenessDays`, 'Paid 10 days late', '0', '30'),
    guess(`${chain}/terms/transitWeeks`, 'A week on the way to the store', '0', '3'),
    guess(`${chain}/attritionYearlyRate`, 'No store is lost', '0', '0.2'),
    guess(
      `${chain}/listings/${ITEM_ID}/coverWeeks`,
      'Each store orders up to two weeks of supply beyond the delivery',
      '1',
      '4',
    ),
  ];
}

function openingGuesses(chain: string, stores: number): BasisNote[] {
  const slow = Math.ceil(stores / 26);
  return [
    guess(`${chain}/waves/first/openWeek`, 'The first stores open in week 12', '8', '20'),
    guess(`${chain}/waves/first/doorsPerWeek`, 'Stores open over 8 weeks', String(slow), String(stores)),
  ];
}

function costGuesses(chain: string, invoice: Decimal): BasisNote[] {
  const part = (rate: string) => round4(invoice.times(rate)).toFixed();
  return [
    guess(`${chain}/allowances/off-invoice/rate`, 'Allowances of 10 % of list', '0.05', '0.2'),
    guess(
      `${chain}/allowances/freight/amount`,
      'Freight and picking, 5 % of invoice',
      part('0.03'),
      part('0.1'),
    ),
  ];
}

function supplyGuesses(): BasisNote[] {
  const supply = `items/${ITEM_ID}/supply`;
  return [
    guess(`${supply}/leadWeeks`, 'Production takes 6 weeks', '3', '12'),
    guess(`${supply}/depositRate`, 'Half down with the order', '0.3', '1'),
    guess(`${supply}/minimumOrderUnits`, 'No minimum order', '0', '5000'),
  ];
}

function practice(path: string, source: string): BasisNote {
  return { path, kind: 'practice', source, low: null, high: null };
}

function guess(path: string, source: string, low: string, high: string): BasisNote {
  return { path, kind: 'guess', source, low, high };
}
