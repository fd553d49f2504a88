// What a plan that goes no deeper holds in the fields of a longer look (supply.ts, conduct.ts): none of it.
// Worked figure: an account with these terms orders every week, by the case, straight from us.
import type { Account, Business, Item } from './index.ts';

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
} satisfies Partial<Account>;

/** What a lender advances where nobody typed it: common practice, no source; a lender's own terms decide. */
export const USUAL_LENDER = {
  receivablesRate: '0.8',
  stockRate: '0.5',
} satisfies Business['lender'];
