/**
 * Statements worked out by hand, and what reckon prints of them added up from the printed texts alone.
 *
 * One store opens in week 0 (2 March 2026) and takes its fill of 12 at once; shoppers buy next to nothing. Made at once at
 * 1.00, the supplier paid in 14 days (week 2). Invoice 12 x 2.60 = 31.20; spoils 2 % = 0.62; broker 5 % = 1.56, paid in
 * the first week of April (week 5); freight out 12 x 0.05 = 0.60; collected after 30 days (week 5): 31.20 - 0.62 = 30.58.
 * Overhead 10.00 a week. Shelving of 52.00 in week 1 wears by 1.00 a week. Owners pay in 20.00 in week 6.
 * March has weeks 0 to 4, April 5 to 8; the retail calendar's March is the same five weeks, its April weeks 5 to 8.
 */
import { describe, expect, test } from 'vitest';
import { DEMOS } from '../../demo-catalog/index.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Results } from '../../src/domain/results.ts';
import { openingSheet, type PeriodKind, statementsOf } from '../../src/domain/statements/index.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { statementsText } from '../../src/reckon/statements.ts';
import { weeksOf } from '../../src/reckon/weeks.ts';
import { aBusiness, aListing, anAccount, anItem, aPlan, aWave } from '../support/builders.ts';
import { subjectOf } from '../support/explained.ts';

const { supply } = anItem();
const { terms } = anAccount();
const plan = aPlan({
  horizonWeeks: 9,
  items: [anItem({ supply: { ...supply, leadWeeks: 0, coverWeeks: 0, supplierDays: 14 } })],
  accounts: [
    anAccount({
      waves: [aWave({ openWeek: 0, doors: 1, doorsPerWeek: 1 })],
      listings: [aListing({ unitsPerStoreWeek: '0.000001' })],
      terms: { ...terms, transitWeeks: 0 },
      allowances: [
        { kind: 'spoils', id: 'spoils', rate: '0.02' },
        { kind: 'broker', id: 'broker', rate: '0.05', onFreeGoods: false },
        { kind: 'freightOut', id: 'freight', amount: '0.05', per: 'unit' },
      ],
    }),
  ],
  business: aBusiness({
    openingCashAmount: '100',
    openingBooks: { ...aBusiness().openingBooks, paidInAmount: '100' },
    overheads: [{ id: 'rent', label: 'Rent', amountPerWeek: '10', fromWeek: 0, untilWeek: null }],
    capital: [{ id: 'shelving', label: 'Shelving', week: 1, amount: '52', lifeWeeks: 52 }],
    funding: [{ kind: 'equity', id: 'owners', label: 'Owners', week: 6, amount: '20' }],
  }),
});

const { results } = subjectOf(plan);
const [march, april] = statementsOf(results, 'month');

test('by hand: profit and loss', () => {
  expect(march?.amounts.profitAndLoss).toEqual({
    grossSales: 31_20,
    tradeSpend: -62,
    netSales: 30_58,
    costOfSales: -12_00,
    grossMargin: 18_58,
    sellingCosts: -2_16,
    overhead: -50_00,
    depreciation: -4_00,
    financing: 0,
    other: 0,
    result: -37_58,
  });
  expect(april?.amounts.profitAndLoss).toMatchObject({ netSales: 0, overhead: -40_00, result: -44_00 });
});

test('by hand: balance sheet', () => {
  expect(march?.amounts.balanceSheet).toEqual({
    // 100.00 - 12.00 supplier - 0.60 freight - 50.00 overhead - 52.00 shelving
    cash: -14_60,
    receivables: 31_20,
    stock: 0,
    deposits: 0,
    equipment: 48_00,
    assets: 64_60,
    payables: 0,
    accruedCosts: 2_18,
    vatOwed: 0,
    loans: 0,
    liabilities: 2_18,
    paidIn: 100_00,
    retained: -37_58,
    equity: 62_42,
    liabilitiesAndEquity: 64_60,
  });
  // -14.60 + 30.58 - 1.56 - 40.00 + 20.00
  expect(april?.amounts.balanceSheet).toMatchObject({ cash: -5_58, equipment: 44_00, retained: -81_58 });
  expect(openingSheet(results)).toMatchObject({ cash: 100_00, assets: 100_00, paidIn: 100_00, retained: 0 });
});

test('by hand: cash flow, direct and indirect', () => {
  expect(march?.amounts.cashDirect).toMatchObject({
    fromCustomers: 0,
    toSuppliers: -12_00,
    sellingPaid: -60,
    overheadPaid: -50_00,
    operating: -62_60,
    investing: -52_00,
    financingFlow: 0,
    netCash: -114_60,
    openingCash: 100_00,
    closingCash: -14_60,
  });
  expect(march?.amounts.cashIndirect).toMatchObject({
    result: -37_58,
    addedBackDepreciation: 4_00,
    changeReceivables: -31_20,
    changeAccrued: 2_18,
    operatingIndirect: -62_60,
  });
  expect(april?.amounts.cashDirect).toMatchObject({
    fromCustomers: 30_58,
    sellingPaid: -1_56,
    operating: -10_98,
    fromOwners: 20_00,
    netCash: 9_02,
    closingCash: -5_58,
  });
  expect(april?.amounts.cashIndirect).toMatchObject({
    changeReceivables: 31_20,
    changeAccrued: -2_18,
    operatingIndirect: -10_98,
  });
});

test('by hand: weeks go to the period of their first day', () => {
  const weeksIn = (kind: PeriodKind) =>
    statementsOf(results, kind).map(
      ({ period: { key, fromWeek, toWeek } }) => `${key}: ${fromWeek} to ${toWeek}`,
    );
  expect(weeksIn('month')).toEqual(['2026-03: 0 to 4', '2026-04: 5 to 8']);
  expect(weeksIn('quarter')).toEqual(['2026-Q1: 0 to 4', '2026-Q2: 5 to 8']);
  expect(weeksIn('retail')).toEqual(['2026-P02: 0 to 4', '2026-P03: 5 to 8']);
  expect(weeksIn('week').slice(0, 2)).toEqual(['0: 0 to 0', '1: 1 to 1']);
});

interface Printed {
  opening: Record<string, string>;
  weekly: PrintedPeriod[];
  monthly: PrintedPeriod[];
}
type PrintedPeriod = { firstDate: string; fromWeek: number; toWeek: number } & Record<
  'profitAndLoss' | 'balanceSheet' | 'cashFlowDirect' | 'cashFlowIndirect',
  Record<string, string>
>;

const minor = (text: string | undefined): bigint => {
  if (!/^-?\d+(?:\.\d+)?$/.test(text ?? '')) throw new Error(`"${text}" is no sum`);
  return BigInt((text ?? '').replace('.', ''));
};
const sum = (parts: readonly bigint[]) => parts.reduce((total, part) => total + part, 0n);

function printed(results: Results): Printed {
  return JSON.parse(JSON.stringify(statementsText(results))) as Printed;
}

describe.each(DEMOS.map(({ id }) => id))('what reckon prints of %s', (id) => {
  const found = DEMOS.find((demo) => demo.id === id);
  const load = async () => {
    const parsed = parsePlanText(JSON.stringify(await found?.load()));
    if (!parsed.ok) throw new Error(`${id} is no plan`);
    const computed = evaluate(parsed.value, sayFor);
    if (!computed.ok) throw new Error(`${id} can't be computed`);
    const weeks = weeksOf(parsed.value, computed.value) as {
      balances: Record<string, string>;
      flows: Record<string, string>;
    }[];
    return { weeks, ...printed(computed.value) };
  };

  test('months are the sums of their weeks, and both come to the weekly series', async () => {
    const { weeks, weekly, monthly, opening } = await load();
    expect(weekly).toHaveLength(weeks.length);
    let cash = minor(opening['cash']);
    for (const month of monthly) {
      const inside = weekly.slice(month.fromWeek, month.toWeek + 1);
      for (const statement of ['profitAndLoss', 'cashFlowDirect', 'cashFlowIndirect'] as const) {
        for (const [line, amount] of Object.entries(month[statement])) {
          if (line === 'openingCash' || line === 'closingCash') continue;
          expect(sum(inside.map((week) => minor(week[statement][line]))), line).toBe(minor(amount));
        }
      }
      expect(month.balanceSheet).toEqual(inside.at(-1)?.balanceSheet);
      const balances = weeks[month.toWeek]?.balances ?? {};
      for (const name of ['cash', 'receivables', 'stock', 'payables', 'loans', 'retained']) {
        expect(month.balanceSheet[name]).toBe(balances[name]);
      }
      const flows = weeks
        .slice(month.fromWeek, month.toWeek + 1)
        .flatMap((week) => Object.values(week.flows));
      expect(minor(month.cashFlowDirect['netCash'])).toBe(sum(flows.map(minor)));
      expect(minor(month.cashFlowDirect['openingCash'])).toBe(cash);
      cash += sum(flows.map(minor));
      expect(month.cashFlowDirect['operating']).toBe(month.cashFlowIndirect['operating']);
    }
  });
});
