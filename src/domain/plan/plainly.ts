// What a plan that goes no deeper holds in the fields of a longer look (supply.ts, conduct.ts, promise.ts, readiness.ts,
// offer-terms.ts): none of it. Worked figure: an account with these terms orders every week, by the case, straight from us.
import type { Account, Business, Evidence, Item, Plan, Readiness } from './index.ts';

type Supply = Item['supply'];

export const PLAIN_SUPPLY = {
  line: null,
  sources: [],
  priceBreaks: [],
  shelfLife: null,
  expedite: null,
  purchaseCurrency: null,
} satisfies Partial<Supply>;

export const PLAIN_CONDUCT = {
  cuts: [],
  exitMarkdownRate: '0',
  voidRate: '0',
  ordering: { everyWeeks: 1, firstWeek: 0, daily: false, orderIn: 'case' },
  depot: null,
  delivery: null,
  service: null,
  disputed: null,
  creditLimitAmount: null,
  standing: null,
} satisfies Partial<Account>;

/** What a lender advances where nobody typed it: common practice, no source; a lender's own terms decide. */
export const USUAL_LENDER = {
  receivablesRate: '0.8',
  stockRate: '0.5',
} satisfies Business['lender'];

/** Before any evidence. Opening weeks and spreads are judgement (no source): shown as guesses, to be changed. */
export const NO_EVIDENCE = {
  scans: [],
  openingWeeks: 4,
  reorders: [],
  runRate: null,
  priors: [],
  claim: null,
  spreads: {
    rateOfSaleRate: null,
    doors: 'asStanding',
    rampRate: '0.3',
    latenessDays: 7,
    goodsRate: '0.05',
    deductionsRate: '0.01',
    voidRate: '0.03',
    sharedRate: '0.3',
  },
} satisfies Evidence;
/**
 * Before anything is known of who owns the company: the founder does. The rest is judgement, no source: a sale at one year's
 * net sales, a running royalty counted for three years, an investor who wants a quarter a year.
 */
export const PLAIN_OWNERSHIP = {
  founderRate: '1',
  poolRate: '0',
  rounds: [],
  exit: { by: 'revenue', multiple: '1' },
  royaltyYears: '3',
  wantedYearlyRate: '0.25',
  leastFounderRate: null,
  mostPaidAmount: null,
} satisfies Plan['ownership'];

/** Whose holidays a plan counts until somebody says so; the countries of the EU have no common ones. */
const USUAL_HOLIDAYS = { US: 'US', CA: 'CA', UK: 'GB-ENG', EU: null, other: null } as const;

/** Nothing to get ready yet, worked Monday to Friday. */
export function noReadiness(market: Plan['market']): Readiness {
  return {
    calendar: { workDays: [1, 2, 3, 4, 5], holidays: USUAL_HOLIDAYS[market], closed: [] },
    resets: [],
    gates: [],
  };
}
