/**
 * Builders of rival offers: parts of the common kinds, an offer of them, an ownership, and a basis of constant sales.
 * Worked figure: aSteadyBasis() sells 1,000 units and 2,600.00 a week for 52 weeks, with 100,000 in the bank throughout.
 */
import { dayNumber } from '../../src/domain/calendar.ts';
import type { Basis } from '../../src/domain/offers/basis.ts';
import type { Tranche, When } from '../../src/domain/offers/contract.ts';
import type { OfferPart } from '../../src/domain/offers/list.ts';
import type { Ownership, RivalOffer } from '../../src/domain/plan/offer-terms.ts';
import { PLAIN_OWNERSHIP } from '../../src/domain/plan/plainly.ts';

type Of<K extends OfferPart['kind']> = Extract<OfferPart, { kind: K }>;
type Changes<K extends OfferPart['kind']> = Partial<Of<K>> & { amount?: string; when?: When };

const tranchesOf = ({
  amount = '40000',
  when = { by: 'week', week: 0 },
}: {
  amount?: string;
  when?: When;
}): Tranche[] => [{ id: 'now', amount, when }];

export function equityPart(changes: Changes<'equity'> = {}): Of<'equity'> {
  const { amount: _amount, when: _when, ...rest } = changes;
  return {
    kind: 'equity',
    id: 'stake',
    tranches: tranchesOf(changes),
    partRate: '0.2',
    preference: 'none',
    preferenceMultiple: '1',
    poolRate: '0',
    proRata: false,
    ...rest,
  };
}

export function loanPart(changes: Changes<'termLoan'> = {}): Of<'termLoan'> {
  const { amount: _amount, when: _when, ...rest } = changes;
  return {
    kind: 'termLoan',
    id: 'loan',
    tranches: tranchesOf(changes),
    feeRate: '0',
    feeAmount: '0',
    yearlyRate: '0.12',
    interestOnlyMonths: 0,
    principalMonths: 24,
    repaid: 'equalPayments',
    balloonRate: '0',
    ...rest,
  };
}

export function royaltyPart(changes: Changes<'unitRoyalty'> & { later?: string } = {}): Of<'unitRoyalty'> {
  const { amount: _amount, when: _when, later = '0', ...rest } = changes;
  return {
    kind: 'unitRoyalty',
    id: 'royalty',
    tranches: tranchesOf(changes),
    unit: 'sold',
    amountPerUnit: '1',
    laterAmountPerUnit: later,
    untilMultiple: null,
    capMultiple: null,
    untilWeek: null,
    minimumAmountPerQuarter: '0',
    paid: 'monthly',
    ...rest,
  };
}

export function sharePart(changes: Changes<'revenueShare'> = {}): Of<'revenueShare'> {
  const { amount: _amount, when: _when, ...rest } = changes;
  return {
    kind: 'revenueShare',
    id: 'share',
    tranches: tranchesOf(changes),
    of: 'netSales',
    rate: '0.05',
    capMultiple: '1.5',
    paid: 'monthly',
    ...rest,
  };
}

export function anOffer(parts: OfferPart[], changes: Partial<RivalOffer> = {}): RivalOffer {
  return { id: 'offer', name: 'An offer', from: '', parts, log: [], ...changes };
}

export function anOwnership(changes: Partial<Ownership> = {}): Ownership {
  return { ...PLAIN_OWNERSHIP, ...changes };
}

/** Constant sales from week 0; 100,000.00 in the bank, which nothing of the plan moves. */
export function aSteadyBasis(
  args: { weeks?: number; unitsPerWeek?: number; netSalesPerWeek?: number } = {},
): Basis {
  const { weeks = 52, unitsPerWeek = 1000, netSalesPerWeek = 2600 } = args;
  const every = (value: number) => new Float64Array(weeks).fill(value);
  return {
    weeks,
    minorDigits: 2,
    startDay: dayNumber('2026-03-02'),
    unitsSold: every(unitsPerWeek),
    unitsShipped: every(unitsPerWeek),
    netSales: every(netSalesPerWeek * 100),
    collected: every(netSalesPerWeek * 100),
    supplierBills: every(0),
    invoices: [],
    accounts: [],
    cash: every(10_000_000),
    low: every(10_000_000),
    openingCash: 10_000_000,
    yearRevenue: netSalesPerWeek * 100 * 52,
    yearProfit: 0,
    debt: 0,
    royaltyYears: 3,
  };
}
