/**
 * Kernel against oracle, one rule of the business a plan: what is bought, the books, funding, tax, currencies. Each test
 * also shows that what it is about did happen.
 */
import { describe, expect, test } from 'vitest';
import type { Business, Item, Plan } from '../../src/domain/plan/index.ts';
import {
  aBusiness,
  aCostLine,
  aListing,
  aLoan,
  anAccount,
  anItem,
  aPlan,
  aWave,
} from '../support/builders.ts';
import { agreed, totalFrom } from '../support/oracle/agree.ts';

const busy = anAccount({ waves: [aWave({ doors: 60, doorsPerWeek: 9 })] });
const supply = (changes: Partial<Item['supply']>) => ({ ...anItem().supply, ...changes });
const made = (item: Partial<Item>): Plan => aPlan({ accounts: [busy], items: [anItem(item)] });
const run = (business: Partial<Business>, rest: Partial<Plan> = {}): Plan =>
  aPlan({ accounts: [busy], business: aBusiness(business), ...rest });

describe('supply', () => {
  test('minimum order, batch, and instalments within capacity', () => {
    const pass = agreed(
      made({ supply: supply({ minimumOrderUnits: 1000, batchUnits: 130, capacityUnitsPerWeek: 400 }) }),
    );
    const [units] = pass.units;
    expect(units?.ordered.find((each) => each > 0)).toBe(1040);
    expect(Math.max(...(units?.made ?? []))).toBe(400);
  });

  test('capacity steps up, and is paid for before', () => {
    const step = { capitalAmount: '18000', leadWeeks: 8, lifeWeeks: 90, unitsPerWeek: 500 };
    const capacitySteps = [
      { id: 'one', fromWeek: 8, ...step },
      { id: 'two', fromWeek: 15, ...step, unitsPerWeek: 900, lifeWeeks: 7 },
    ];
    const pass = agreed(made({ supply: supply({ capacityUnitsPerWeek: 100, capacitySteps }) }));
    expect(pass.flows.capital[0]).toBe(-1_800_000);
    expect(pass.flows.capital[7]).toBe(-1_800_000);
    expect(Math.max(...(pass.units[0]?.made ?? []))).toBeGreaterThan(100);
  });

  test('no lead time: made in the week it is ordered', () => {
    const pass = agreed(made({ supply: supply({ leadWeeks: 0, coverWeeks: 0, depositRate: '0.5' }) }));
    expect(pass.units[0]?.made[3]).toBe(108);
    expect(pass.units[0]?.shipped[3]).toBe(108);
  });

  test('no lead time, and a capacity that what landed before uses too', () => {
    const pass = agreed(made({ supply: supply({ leadWeeks: 0, coverWeeks: 3, capacityUnitsPerWeek: 70 }) }));
    expect(Math.max(...(pass.units[0]?.made ?? []))).toBe(70);
  });

  test('deposit with the order, the rest after the supplier’s days, freight and duty in cash, loss in the price', () => {
    const costLines = [
      aCostLine({ rule: { by: 'unit', amount: '1.2345' } }),
      aCostLine({
        id: 'freight',
        label: 'Freight',
        family: 'freight',
        rule: { by: 'shipment', amount: '1777' },
      }),
      aCostLine({
        id: 'duty',
        label: 'Duty',
        family: 'duty',
        rule: { by: 'share', rate: '0.065', of: ['goods'] },
      }),
    ];
    const pass = agreed(
      made({ costLines, lossRate: '0.013', supply: supply({ depositRate: '0.335', supplierDays: 33 }) }),
    );
    const paid = (flow: Float64Array) => flow.findIndex((each) => each < 0);
    expect(paid(pass.flows.inboundFreightAndDuty)).toBe(paid(pass.flows.supplierDeposits) + 2);
    expect(paid(pass.flows.supplierPayments)).toBe(paid(pass.flows.inboundFreightAndDuty) + 4);
  });

  test('opening stock at its book value, orders under way, samples and write-offs', () => {
    const onOrder = [
      { id: 'po-1', landsWeek: 0, units: 300, depositPaidAmount: '100' },
      { id: 'po-2', landsWeek: 5, units: 77, depositPaidAmount: '76.5' },
      { id: 'po-3', landsWeek: 5, units: 50, depositPaidAmount: '0' },
    ];
    const removals = [
      { id: 'fair', week: 1, units: 33, reason: 'samples' as const },
      { id: 'flood', week: 2, units: 100_000, reason: 'writeOff' as const },
    ];
    const pass = agreed(made({ opening: { units: 211, stockAmount: '250.01', onOrder }, removals }));
    expect(pass.units[0]?.gone[1]).toBe(33);
    expect(pass.units[0]?.gone[2]).toBeGreaterThan(400);
    expect(pass.units[0]?.ours[2]).toBe(0);
    expect(pass.balances.stock[2]).toBe(0);
  });
});

describe('tax, books and fixed money', () => {
  test('VAT on sales and purchases, paid by the quarter and refunded', () => {
    const items = [anItem({ costLines: [aCostLine(), aCostLine({ id: 'freight', family: 'freight' })] })];
    const pass = agreed(run({ vat: { salesRate: '0.21', purchasesRate: '0.19' } }, { items }));
    expect(pass.flows.vatSettled[8]).toBeGreaterThan(0);
    expect(Math.min(...pass.flows.vatSettled)).toBeLessThan(0);
  });

  test('base sales beside the plan, and the opening books', () => {
    const dated = (id: string, week: number, amount: string) => ({ id, label: id, week, amount });
    const pass = agreed(
      run({
        openingCashAmount: '-1234.56',
        openingBooks: {
          receivables: [dated('a', 0, '1000'), dated('b', 9, '2000.25')],
          payables: [dated('c', 3, '700')],
          accrued: [dated('d', 6, '99.99')],
          equipment: [{ id: 'e', label: 'Mill', amount: '10000', lifeWeeks: 37 }],
          loans: [],
          paidInAmount: '5000',
        },
        baseSales: { revenueAmountPerWeek: '3333.33', costRate: '0.6175', collectDays: 31, payDays: 13 },
      }),
    );
    expect(pass.openingCash).toBe(-123_456);
    expect(pass.flows.baseCollections[5]).toBe(333_333);
    expect(pass.flows.basePayments[1]).toBe(-205_833);
    expect(pass.balances.equipment[36]).toBe(0);
  });

  test('overheads that begin and end, capital written off over its life', () => {
    const overheads = [
      { id: 'rent', label: 'Rent', amountPerWeek: '812.505', fromWeek: 0, untilWeek: null },
      { id: 'hand', label: 'A hand', amountPerWeek: '600', fromWeek: 4, untilWeek: 9 },
    ];
    const capital = [{ id: 'mould', label: 'Mould', week: 6, amount: '9999.99', lifeWeeks: 23 }];
    const pass = agreed(run({ overheads, capital }));
    expect(pass.flows.overhead[0]).toBe(-81_251);
    expect(pass.flows.overhead[4]).toBe(-141_251);
    expect(pass.profit.depreciation[6]).toBe(-43_478);
  });

  test('cash on the first day not known', () => {
    expect(agreed(run({ openingCashAmount: null })).openingCash).toBe(0);
  });
});

describe('funding', () => {
  test('equity, a loan with a fee and interest-only months, a loan from before', () => {
    const loan = { amount: '20000', yearlyRate: '0.075', interestOnlyMonths: 0, principalMonths: 7 };
    const books = { ...aBusiness().openingBooks, loans: [{ id: 'old', label: 'Old loan', ...loan }] };
    const pass = agreed(
      run({
        openingBooks: books,
        funding: [
          { kind: 'equity', id: 'friends', label: 'Friends', week: 5, amount: '25000' },
          aLoan({ feeAmount: '750', interestOnlyMonths: 3, principalMonths: 5 }),
        ],
      }),
    );
    expect(pass.flows.loanFees[2]).toBe(-75_000);
    expect(pass.flows.principal[5]).toBe(-285_714);
    expect(pass.balances.loans[51]).toBe(0);
  });

  test('an advance on receivables, paid early in part, with VAT on top', () => {
    const terms = { ...anAccount().terms, earlyDiscount: { rate: '0.02', days: 10, takenShare: '0.5' } };
    const plan = run(
      {
        vat: { salesRate: '0.2', purchasesRate: '0.2' },
        funding: [
          {
            kind: 'receivablesAdvance',
            id: 'advance',
            label: 'Advance',
            fromWeek: 7,
            advanceRate: '0.85',
            yearlyRate: '0.14',
          },
        ],
      },
      { accounts: [anAccount({ terms, listings: [aListing({ unitsPerStoreWeek: '9' })] })] },
    );
    const pass = agreed(plan);
    expect(totalFrom(pass.flows.advanceIn, 0, 7)).toBe(0);
    expect(totalFrom(pass.flows.advanceRepaid)).toBeLessThan(0);
    expect(totalFrom(pass.flows.interest)).toBeLessThan(0);
  });
});

test.each([
  ['JPY', 0],
  ['BHD', 3],
  ['CLF', 4],
])('money in %s has %i decimals', (currency, minorDigits) => {
  const allowances = [{ kind: 'spoils' as const, id: 'spoils', rate: '0.0213' }];
  const listings = [aListing({ list: { by: 'price', amount: '261.7377' } })];
  const costLines = [aCostLine({ rule: { by: 'unit', amount: '97.1234' } })];
  const accounts = [anAccount({ allowances, listings, attritionYearlyRate: '0.3', closedStock: 'credited' })];
  const pass = agreed(aPlan({ currency, accounts, items: [anItem({ costLines })] }));
  expect(pass.minorDigits).toBe(minorDigits);
  expect(pass.accounts[0]?.invoiced[3]).toBe(Math.round(120 * 261.7377 * 10 ** minorDigits));
});
