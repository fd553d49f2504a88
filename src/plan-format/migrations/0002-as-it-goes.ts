// Version 3 says how a roll-out really goes: pack sizes, several suppliers, depots, order rhythm, charges for short
// deliveries, what speaks for it, what has to be ready, and rival offers of money. A plan of version 2 knew none of it,
// and means none of it.
// Worked figure: a display whose lift stays as it is gets "liftEndRate": null.
import type { Migration } from './index.ts';

type Fields = Record<string, unknown>;

export const asItGoes: Migration = {
  from: 2,
  what: 'the roll-out as it really goes',
  migrate: ({ items, accounts, business, ...plan }) => ({
    ...plan,
    items: (items as Fields[]).map(item),
    accounts: (accounts as Fields[]).map(account),
    business: { ...(business as Fields), lines: [], lender: { receivablesRate: '0.8', stockRate: '0.5' } },
    promise: noEvidence(),
    readiness: noReadiness(plan['market']),
    offers: [],
    ownership: {
      founderRate: '1',
      poolRate: '0',
      rounds: [],
      exit: { by: 'revenue', multiple: '1' },
      royaltyYears: '3',
      wantedYearlyRate: '0.25',
      leastFounderRate: null,
      mostPaidAmount: null,
    },
    version: 3,
  }),
};

function item(before: Fields): Fields {
  return {
    ...before,
    pack: null,
    numbers: null,
    supply: {
      ...(before['supply'] as Fields),
      line: null,
      sources: [],
      priceBreaks: [],
      shelfLife: null,
      expedite: null,
      purchaseCurrency: null,
    },
  };
}

function account(before: Fields): Fields {
  const display = before['display'] as Fields | null;
  return {
    ...before,
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
    display: display && { ...display, liftEndRate: null },
    promotions: (before['promotions'] as Fields[]).map((each) => ({
      ...each,
      itemIds: null,
      sisterShare: '0',
    })),
  };
}

function noEvidence(): Fields {
  return {
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
  };
}

function noReadiness(market: unknown): Fields {
  const holidays = { US: 'US', CA: 'CA', UK: 'GB-ENG' }[String(market)] ?? null;
  return { calendar: { workDays: [1, 2, 3, 4, 5], holidays, closed: [] }, resets: [], gates: [] };
}
