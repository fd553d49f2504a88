/**
 * The three statements on random plans, by week, month, quarter and 4-5-4 period: they agree with each other, with the
 * pass and with its journal, to the minor unit; what is gathered into longer periods is what the weeks had.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EVENTS, type EventName } from '../../src/domain/rollout/events.ts';
import { replay } from '../../src/domain/rollout/index.ts';
import type { BalanceName, FlowName, ProfitName } from '../../src/domain/rollout/types.ts';
import { assertAgree } from '../../src/domain/statements/amounts.ts';
import {
  ledgerOf,
  openingSheet,
  PERIOD_KINDS,
  type PeriodStatements,
  STATEMENT_LINES,
  STATEMENT_NAMES,
  statementsOf,
} from '../../src/domain/statements/index.ts';
import { FLOW_LINES, FLOW_SECTIONS, LINES, type LineName } from '../../src/domain/statements/lines.ts';
import { arbitraryPlan, PLAN_RUNS, PLAN_SEED } from '../support/arbitrary-plan.ts';
import { kernelOf, pricedPlan } from '../support/oracle/compare.ts';

const runs = fc
  .sample(arbitraryPlan(), { seed: PLAN_SEED, numRuns: PLAN_RUNS })
  .map((plan) => kernelOf(pricedPlan(plan)));

type Amounts = PeriodStatements['amounts'];
const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);
/** NaN where a line is missing, so that nothing equals it. */
const line = (amounts: Amounts, statement: keyof Amounts, name: LineName) =>
  amounts[statement][name] ?? Number.NaN;

/** Every period in which two figures that must be one are not, in words. */
function apart(
  kind: (typeof PERIOD_KINDS)[number],
  law: (at: { amounts: Amounts; before: Partial<Record<LineName, number>> }) => [string, number, number][],
): string[] {
  return runs.flatMap((run, plan) => {
    let before = openingSheet(run);
    return statementsOf(run, kind).flatMap(({ period, amounts }) => {
      const faults = law({ amounts, before }).filter(([, left, right]) => left !== right);
      before = amounts.balanceSheet;
      return faults.map(([claim, left, right]) => `plan ${plan}, ${period.key}: ${claim}: ${left}, ${right}`);
    });
  });
}

describe.each(PERIOD_KINDS)(`by %s, on ${PLAN_RUNS} random plans, seed ${PLAN_SEED}`, (kind) => {
  test('the balance sheet balances, line by line added up here', () => {
    const faults = apart(kind, ({ amounts }) => {
      const of = (name: LineName) => line(amounts, 'balanceSheet', name);
      const have = of('cash') + of('receivables') + of('stock') + of('deposits') + of('equipment');
      const owe = of('payables') + of('accruedCosts') + of('vatOwed') + of('loans');
      return [
        ['assets', have, of('assets')],
        ['liabilities', owe, of('liabilities')],
        ['both sides', have, owe + of('paidIn') + of('retained')],
        ['its foot', of('liabilitiesAndEquity'), of('assets')],
      ];
    });
    expect(faults).toEqual([]);
  });

  test('the result is what retained moved by, and the parts of the result come to it', () => {
    const faults = apart(kind, ({ amounts, before }) => {
      const of = (name: LineName) => line(amounts, 'profitAndLoss', name);
      const moved = line(amounts, 'balanceSheet', 'retained') - (before.retained ?? Number.NaN);
      const parts =
        of('grossSales') + of('tradeSpend') + of('costOfSales') + of('sellingCosts') + of('overhead');
      return [
        ['retained', moved, of('result')],
        ['parts', parts + of('depreciation') + of('financing') + of('other'), of('result')],
      ];
    });
    expect(faults).toEqual([]);
  });

  test('direct cash is indirect cash, section by section, and both lead from cash to cash', () => {
    const faults = apart(kind, ({ amounts, before }) => {
      const direct = (name: LineName) => line(amounts, 'cashDirect', name);
      const indirect = (name: LineName) => line(amounts, 'cashIndirect', name);
      const moved = line(amounts, 'balanceSheet', 'cash') - (before.cash ?? Number.NaN);
      return [
        ['operating', direct('operating'), indirect('operatingIndirect')],
        ['investing', direct('investing'), indirect('investing')],
        ['financing', direct('financingFlow'), indirect('financingFlow')],
        ['direct', direct('operating') + direct('investing') + direct('financingFlow'), moved],
        ['opening', direct('openingCash'), before.cash ?? Number.NaN],
        ['closing', indirect('closingCash'), line(amounts, 'balanceSheet', 'cash')],
      ];
    });
    expect(faults).toEqual([]);
  });

  test('periods hold every week once, and add up to what the weeks had', () => {
    for (const run of runs) {
      const weeks = statementsOf(run, 'week');
      const periods = statementsOf(run, kind);
      const held = periods.flatMap(({ period: { fromWeek, toWeek } }) =>
        Array.from({ length: toWeek - fromWeek + 1 }, (_, at) => fromWeek + at),
      );
      expect(held).toEqual(weeks.map((_, week) => week));
      for (const name of ['grossSales', 'tradeSpend', 'result'] as const) {
        const of = (all: PeriodStatements[]) =>
          total(all.map(({ amounts }) => line(amounts, 'profitAndLoss', name)));
        expect(of(periods)).toBe(of(weeks));
      }
    }
  });
});

test('each part of the result, each section of cash is what the journal posted for it', () => {
  const entries = EVENTS as Record<
    EventName,
    { dr: BalanceName; cr: BalanceName; flow?: FlowName; profit?: ProfitName }
  >;
  for (const run of runs) {
    const sums = { result: 0, operating: 0, investing: 0, financingFlow: 0 };
    replay(run, ({ event, amount }) => {
      const { dr, cr, flow } = entries[event];
      if (cr === 'retained') sums.result += amount;
      if (dr === 'retained') sums.result -= amount;
      if (flow) sums[FLOW_SECTIONS[FLOW_LINES[flow]]] += dr === 'cash' ? amount : -amount;
    });
    const periods = statementsOf(run, 'quarter');
    expect(total(periods.map(({ amounts }) => line(amounts, 'profitAndLoss', 'result')))).toBe(sums.result);
    for (const section of ['operating', 'investing', 'financingFlow'] as const) {
      expect(total(periods.map(({ amounts }) => line(amounts, 'cashDirect', section)))).toBe(sums[section]);
    }
  }
});

test('every flow stands in a section that its other side belongs to', () => {
  const belongs: Record<string, readonly BalanceName[]> = {
    operating: ['receivables', 'stock', 'deposits', 'payables', 'accrued', 'retained'],
    investing: ['equipment'],
    financingFlow: ['loans', 'paidIn'],
  };
  for (const [event, entry] of Object.entries(EVENTS)) {
    if (!('flow' in entry)) continue;
    const other = entry.dr === 'cash' ? entry.cr : entry.dr;
    expect(belongs[FLOW_SECTIONS[FLOW_LINES[entry.flow]]], event).toContain(other);
  }
});

test('every line is in a statement, or in a sum that is', () => {
  const shown = new Set(STATEMENT_NAMES.flatMap((name) => STATEMENT_LINES[name]));
  expect((Object.keys(LINES) as LineName[]).filter((name) => !shown.has(name))).toEqual([]);
});

test.each(['cash', 'receivables', 'stock', 'payables', 'accrued', 'loans', 'retained', 'equipment'] as const)(
  'a minor unit too much of %s is found out',
  (name) => {
    const ledger = ledgerOf(runs[0] ?? expect.fail('no plans'));
    const series = ledger.pass.balances[name].slice();
    series[3] = (series[3] ?? 0) + 1;
    const pass = { ...ledger.pass, balances: { ...ledger.pass.balances, [name]: series } };
    expect(() => assertAgree({ ...ledger, pass }, { fromWeek: 2, toWeek: 3 })).toThrow(/, weeks 2 to 3/);
    expect(() => assertAgree(ledger, { fromWeek: 2, toWeek: 3 })).not.toThrow();
  },
);
