// An account that asks for nothing yet: the terms every new chain starts with, quick plan or not.
// Worked figure: paid in 30 days and 10 late, a week in transit, half the rate of sale at first and all of it in week 8.
import type { Account } from '../plan/index.ts';
import { PLAIN_CONDUCT } from '../plan/plainly.ts';
import { DEFAULTS } from './defaults.ts';

/** What a new account must say of itself; the rest are defaults, to be noted as such by the caller. */
export type AccountStart = Pick<Account, 'id' | 'name' | 'hands' | 'listings'>;

export function askingNothing(start: AccountStart): Account {
  return {
    ...start,
    priority: 1,
    pricePoints: null,
    waves: [],
    runningDoors: [],
    attritionYearlyRate: '0',
    cutWeek: null,
    closedStock: 'kept',
    ramp: { startRate: DEFAULTS.rampStartRate, weeks: DEFAULTS.rampWeeks },
    terms: {
      paymentDays: DEFAULTS.paymentDays,
      latenessDays: DEFAULTS.latenessDays,
      earlyDiscount: null,
      transitWeeks: DEFAULTS.transitWeeks,
      shortage: 'backlog',
      badDebtRate: '0',
    },
    ...PLAIN_CONDUCT,
    sale: { by: 'shipment' },
    allowances: [],
    slotting: null,
    freeFill: { settled: 'free', lagWeeks: 0 },
    openingFees: [],
    display: null,
    promotions: [],
    deal: { termWeeks: DEFAULTS.termWeeks, hurdleAmount: '0' },
    table: null,
  };
}
