/**
 * Rival offers at the ends of what a plan can hold: terms of every kind drawn from the least, the most and the usual, on sales
 * with weeks below zero, with rounds next to worth nothing and next to all. No figure is not a number or without end, every
 * payment is whole, and the owners share the whole sale, none of them less than nothing. The seed is in the title.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Basis } from '../../src/domain/offers/basis.ts';
import type { FieldNote } from '../../src/domain/offers/contract.ts';
import { impliedOf } from '../../src/domain/offers/implied.ts';
import { OFFER_KINDS, type OfferPart } from '../../src/domain/offers/list.ts';
import { resultOf } from '../../src/domain/offers/result.ts';
import { runOffer } from '../../src/domain/offers/run.ts';
import { turningPoints } from '../../src/domain/offers/turning.ts';
import type { Ownership } from '../../src/domain/plan/offer-terms.ts';
import { rivalOffer } from '../../src/domain/plan/offer-terms.ts';
import { aPlan } from '../support/builders.ts';
import { anOffer, anOwnership, aSteadyBasis } from '../support/offers.ts';

const seed = fc.readConfigureGlobal().seed ?? 0;
const MOST_SUM = '100000000000';

/** Shares that may not be the whole. */
const BELOW_ONE = new Set(['partRate', 'poolRate', 'discountRate', 'feeRate']);

const MOST_MONTHS: Readonly<Record<string, number>> = { maturityMonths: 120, principalMonths: 360 };

/** Least, usual and most of a field; where a sum must be above 0, the least that is. */
function endsOf({ key, unit, orNone = false, choices = [] }: FieldNote): readonly unknown[] {
  const none = orNone ? [null] : [];
  if (key === 'yearlyRate') return ['0', '0.000001', '0.12', '100'];
  if (key === 'interestOnlyMonths') return [0, 1, 240];
  switch (unit) {
    case 'share':
      return BELOW_ONE.has(key) ? ['0', '0.2', '0.49'] : ['0', '0.05', '1'];
    case 'sum':
      return [...none, key === 'capAmount' ? '0.01' : '0', '5000', MOST_SUM];
    case 'perUnit':
      return ['0', '0.0001', '0.5', '1000000'];
    case 'times':
      return [...none, '0', '0.000001', '1.5', '100'];
    case 'weeks':
      return [null, 0, 1, 51, 52, 519];
    case 'months':
      return [1, 24, MOST_MONTHS[key] ?? 240];
    case 'days':
      return [7, 90, 365];
    case 'switch':
      return [true, false];
    case 'choice':
      return choices.map(({ value }) => value);
    case 'when':
      return [0, 51, 400].map((week) => ({ by: 'week', week }));
    case 'tranches':
      return [];
  }
}

const tranches = fc
  .array(fc.tuple(fc.constantFrom('0', '0.01', '40000', MOST_SUM), fc.constantFrom(0, 3, 51, 60)), {
    maxLength: 3,
  })
  .map((all) => all.map(([amount, week], at) => ({ id: `t${at}`, amount, when: { by: 'week', week } })));

function partOf(id: string): fc.Arbitrary<OfferPart> {
  return fc.constantFrom(...OFFER_KINDS).chain((kind) => {
    const terms = kind.fields.map((field) => [
      field.key,
      field.unit === 'tranches' ? tranches : fc.constantFrom(...endsOf(field)),
    ]);
    const drawn = fc.record(Object.fromEntries(terms) as Record<string, fc.Arbitrary<unknown>>);
    return drawn.map((own) => ({ ...kind.blank(id), ...own }) as OfferPart);
  });
}

const rounds = fc
  .array(
    fc.record({
      week: fc.constantFrom(0, 10, 51),
      amount: fc.constantFrom('0', '100000', MOST_SUM),
      preMoneyAmount: fc.constantFrom('0.01', '900000', MOST_SUM),
      poolRate: fc.constantFrom('0', '0.1', '0.999999'),
    }),
    { maxLength: 2 },
  )
  .map((all): Ownership['rounds'] => all.map((each, at) => ({ ...each, id: `r${at}`, label: 'Round' })));

/** Two weeks in which trade money is more than sales, and one in which more is credited than invoiced. */
function roughBasis(royaltyYears: number): Basis {
  const steady = aSteadyBasis();
  const netSales = steady.netSales.slice();
  netSales[4] = -9_000_000;
  netSales[51] = -1_000_000;
  const amounts = new Float64Array(52).fill(100_000);
  amounts[3] = -5000;
  const invoices = [{ amounts, collectWeeks: 5, badDebtRate: 0.1 }];
  return { ...steady, netSales, royaltyYears, invoices, supplierBills: amounts.map(Math.abs) };
}

/** Paths to what is no number, or has no end. */
function strays(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, each]) => strays(each, `${path}/${key}`));
}

describe(`offers at the ends of what may be typed, seed ${seed}`, () => {
  const drawn = fc.record({
    parts: fc.tuple(partOf('a'), partOf('b')),
    years: fc.constantFrom('0', '3', '100'),
    founderRate: fc.constantFrom('0', '0.5', '1'),
    rounds,
  });

  test('numbers, whole payments, and a sale shared to the last unit', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(drawn, ({ parts, years, founderRate, rounds: later }) => {
        const offer = anOffer(parts);
        expect(rivalOffer.safeParse(offer).success).toBe(true);
        const ownership = anOwnership({
          royaltyYears: years,
          wantedYearlyRate: years,
          founderRate,
          poolRate: '0',
          rounds: later,
        });
        const plan = aPlan({ offers: [offer], ownership });
        const basis = roughBasis(Number(years));
        const run = runOffer(basis, offer, ownership);
        const other = runOffer(basis, anOffer([], { id: 'nothing' }), ownership);
        const result = resultOf(plan, run, { cashNeed: 0, cashNeedWeek: null });
        const turned = turningPoints(plan, [run, other]);
        expect(strays({ result, implied: impliedOf(plan, run), turned })).toEqual([]);
        expect(result.flows.every(({ amount }) => Number.isInteger(amount))).toBe(true);
        expect(result.holdings.every(({ amount }) => amount >= 0)).toBe(true);
        const shared = result.holdings.reduce((sum, { amount }) => sum + amount, 0);
        const { toOwners } = result.founder.sale;
        expect(Math.abs(shared - toOwners)).toBeLessThanOrEqual(Math.max(1, 1e-12 * toOwners));
      }),
      { numRuns: 800 },
    );
  });
});
