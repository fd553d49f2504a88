/**
 * The first example's four statements, month by month, worked out a second time by a general-purpose spreadsheet library
 * (HyperFormula 3, a development dependency) from what was typed: prices, rates, terms, doors; only units ordered, shipped
 * and sold are the model's. Every line of every month has to agree to the cent with what reckon prints.
 */
import { describe, expect, test } from 'vitest';
import { DEMOS } from '../../demo-catalog/index.ts';
import { statementsText } from '../../src/reckon/statements.ts';
import { planOfText, subjectOf } from '../support/explained.ts';
import { type WorkbookMonth, workbookOf } from '../support/workbook-engine.ts';

const demo = DEMOS.find(({ id }) => id === 'demo-pays-but-runs-dry');
const plan = planOfText(JSON.stringify(await demo?.load()));
const { results } = subjectOf(plan);
const [units] = results.pass.units;
if (!units) throw new Error('the example has no item');
const book = workbookOf(plan, {
  ordered: [...units.ordered],
  shipped: [...units.shipped],
  fill: [...units.fillShipped],
  sold: [...units.sold],
});

type Lines = Record<string, string>;
type Printed = { monthly: ({ period: string } & Record<string, Lines>)[] };
const { monthly } = JSON.parse(JSON.stringify(statementsText(results))) as Printed;
const STATEMENTS = ['profitAndLoss', 'balanceSheet', 'cashFlowDirect', 'cashFlowIndirect'] as const;

/** Every line of every month that differs, in words; a line the workbook leaves out has to be nothing. */
function differences(months: readonly WorkbookMonth[]): string[] {
  return months.flatMap(({ month, statements }, at) => {
    const period = `${Math.floor(month / 100)}-${String(month % 100).padStart(2, '0')}`;
    const ours = monthly[at];
    if (ours?.period !== period) return [`month ${at}: ${ours?.period} and ${period}`];
    return STATEMENTS.flatMap((statement) =>
      Object.entries(ours[statement] ?? {}).flatMap(([line, printed]) => {
        const cents = BigInt(printed.replace('.', ''));
        const theirs = statements[statement]?.[line] ?? 0;
        if (Number.isInteger(theirs) && BigInt(theirs) === cents) return [];
        return [`${period} ${statement} ${line}: ${printed}, spreadsheet ${theirs / 100}`];
      }),
    );
  });
}

test('what the formulas take for granted of this plan is so', () => {
  const [item] = plan.items;
  const orders = [...units.ordered].filter((ordered) => ordered > 0);
  // One instalment an order, landing its lead time later: no order is larger than a week's capacity.
  expect(Math.max(...orders)).toBeLessThanOrEqual(item?.supply.capacityUnitsPerWeek ?? 0);
  expect([...units.made].slice(7)).toEqual([...units.ordered].slice(0, -7));
  // Fills ship whole, so that half of each is free; nothing comes back, is written off or settled otherwise.
  expect([...units.fillShipped].filter((fill) => fill > 0)).toEqual([540, 540, 540, 540]);
  const { claimsPaid, returnsFreight, openingFees, vatSettled, interest } = results.pass.flows;
  const others = [claimsPaid, returnsFreight, openingFees, vatSettled, interest, results.pass.profit.other];
  expect(others.every((series) => series.every((amount) => amount === 0))).toBe(true);
});

test('HyperFormula: every line of every month agrees to the cent', () => {
  expect(monthly).toHaveLength(18);
  expect(differences(book.months)).toEqual([]);
});

describe('and would not if an input were read otherwise', () => {
  test.each([
    ['spoilsRate', 15_001],
    ['collectWeeks', 8],
    ['supplierWeeks', 1],
    ['slottingPerDoor', 180_01],
    ['scanBackPrice', 17_981],
    ['openingCash', 60_000_01],
  ])('%s %i', (name, value) => {
    expect(differences(book.monthsWith(name, value)).length).toBeGreaterThan(5);
  });

  test('and does again once it is read as typed', () => {
    expect(differences(book.monthsWith('doors', plan.accounts[0]?.waves[0]?.doors ?? 0))).toEqual([]);
  });
});
