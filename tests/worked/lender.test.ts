/**
 * The lender's block, by hand on the closed form of answers.test.ts (one door, 10 a week at 2.60, paid four weeks later, 30.00
 * at hand), and what must tie to the balance sheet on random plans.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/domain/evaluate.ts';
import { agedPayables, agedReceivables, ageOf } from '../../src/domain/lender/aged.ts';
import { collateralAt } from '../../src/domain/lender/collateral.ts';
import { ledgerOf, lenderFrom } from '../../src/domain/lender/index.ts';
import { dropsOf, failureAt } from '../../src/domain/lender/trials.ts';
import type { AgedLine } from '../../src/domain/lender/types.ts';
import { thirteenWeeks } from '../../src/domain/lender/weeks.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import type { Results } from '../../src/domain/results.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { arbitraryPlan, PLAN_RUNS, PLAN_SEED } from '../support/arbitrary-plan.ts';
import { aBusiness, aListing, anAccount, anItem, aPlan, aWave, oneDoor } from '../support/builders.ts';

function resultsOf(plan: Plan): Results {
  expect(checkRules(plan)).toEqual([]);
  const outcome = evaluate(plan, sayFor);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

function agesAt(plan: Plan, week: number) {
  const results = resultsOf(plan);
  const args = { plan, results, ledger: ledgerOf(results), week };
  return { receivables: agedReceivables(args), payables: agedPayables(args), collateral: collateralAt(args) };
}

const ages = ({ ages: { to30, to60, to90, over90 } }: AgedLine) => [to30, to60, to90, over90];

describe('ages from the invoice date', () => {
  test.each([
    [0, 'to30'],
    [30, 'to30'],
    [31, 'to60'],
    [60, 'to60'],
    [61, 'to90'],
    [90, 'to90'],
    [91, 'over90'],
  ])('%i days: %s', (days, age) => {
    expect(ageOf(days)).toBe(age);
  });

  test('paid in 98 days, 14 invoices of 26.00 are open: 0 to 28 days, 35 to 56, 63 to 84, 91', () => {
    const account = anAccount({
      ...oneDoor().accounts[0],
      terms: { ...anAccount().terms, paymentDays: 98, transitWeeks: 0 },
    });
    const { receivables } = agesAt(oneDoor({ accounts: [account] }), 30);
    expect(ages(receivables.total)).toEqual([5 * 2600, 4 * 2600, 4 * 2600, 2600]);
    expect(receivables.lines.map(({ id }) => id)).toEqual(['corner']);
  });

  test('half of each invoice taken early within 10 days is gone after two weeks', () => {
    const [account] = oneDoor().accounts;
    const earlyDiscount = { rate: '0.02', days: 10, takenShare: '0.5' };
    const terms = { ...anAccount().terms, paymentDays: 28, transitWeeks: 0, earlyDiscount };
    const { receivables } = agesAt(oneDoor({ accounts: [anAccount({ ...account, terms })] }), 30);
    expect(ages(receivables.total)).toEqual([2 * 2600 + 2 * 1300, 0, 0, 0]);
  });

  test('a supplier’s invoices are dated the first day: paid in 42 days, six of 10.00, 6 to 41 days old', () => {
    const [item] = oneDoor().items;
    const supply = { ...anItem({ ...item }).supply, supplierDays: 42 };
    const { payables } = agesAt(oneDoor({ items: [anItem({ ...item, supply })] }), 30);
    expect(ages(payables.total)).toEqual([4 * 1000, 2 * 1000, 0, 0]);
  });

  test('the opening books have no invoice date', () => {
    const dated = (week: number) => [{ id: `due${week}`, label: 'Before', week, amount: '500' }];
    const openingBooks = {
      ...aBusiness().openingBooks,
      receivables: [...dated(2), ...dated(9)],
      payables: dated(7),
    };
    const plan = oneDoor({ business: aBusiness({ openingCashAmount: '30', openingBooks }) });
    const { receivables, payables } = agesAt(plan, 5);
    expect([receivables.total.unknown, receivables.total.sum]).toEqual([50000, 50000 + 4 * 2600]);
    expect(payables.total).toMatchObject({ unknown: 50000, sum: 50000 });
  });
});

describe('what stands behind a loan', () => {
  test('four invoices of 26.00 less spoils of 2 % at 80 %, and 24 units at 1.00 at 50 %', () => {
    const [account] = oneDoor().accounts;
    const spoils = { kind: 'spoils' as const, id: 'spoils', rate: '0.02' };
    const opening = { units: 24, stockAmount: '24', onOrder: [] };
    // 24 units are at hand from the first day, and cover makes the plan keep them: the next three weeks' needs.
    const supply = { ...anItem().supply, leadWeeks: 0, coverWeeks: 3 };
    const plan = oneDoor({
      accounts: [anAccount({ ...account, allowances: [spoils] })],
      items: [anItem({ caseUnits: 1, supply, opening })],
    });
    const results = resultsOf(plan);
    const ours = results.pass.units[0]?.ours[20] ?? 0;
    const { collateral } = agesAt(plan, 20);
    expect(ours).toBe(30);
    expect(collateral).toEqual({
      week: 20,
      receivables: 10400,
      tooOld: 0,
      claims: 208,
      eligibleReceivables: 10192,
      stock: 3000,
      // 101.92 x 0.8 = 81.536; 30.00 x 0.5
      onReceivables: 8154,
      onStock: 1500,
      amount: 9654,
    });
  });

  test('nothing is lent on what is over 90 days old', () => {
    const [account] = oneDoor().accounts;
    const terms = { ...anAccount().terms, paymentDays: 98, transitWeeks: 0 };
    const { collateral } = agesAt(oneDoor({ accounts: [anAccount({ ...account, terms })] }), 30);
    expect(collateral).toMatchObject({
      receivables: 14 * 2600,
      tooOld: 2600,
      eligibleReceivables: 13 * 2600,
    });
  });
});

describe('things going wrong', () => {
  /**
   * Eight sold a week instead of ten, paid in 43 days: seven weeks. Bought on the plan's ten in week 1, two of them left
   * over: eight a week from week 2. Lows: 20, 10, 2, -6, -14, -22, -30, then -38 before the first 26.00 come.
   */
  test('a fifth less sold, paid 15 days later: lowest −38.00 in week 7', () => {
    const plan = oneDoor();
    const { downside } = lenderFrom(plan, resultsOf(plan), 0);
    expect(downside?.plan).toMatchObject({ lowestCash: -2000, lowestWeek: 4 });
    expect(downside?.there).toMatchObject({ lowestCash: -3800, lowestWeek: 7, cashNeed: 3800 });
  });

  /** Four invoices are open at the end of week 3; from week 4 on nobody pays and nothing is bought: 30 - 4 x 10. */
  test('the account fails at the end of week 3, owing 104.00: lowest −10.00 for good', () => {
    const plan = oneDoor();
    const { failure } = lenderFrom(plan, resultsOf(plan), 4);
    expect(failure).toMatchObject({ accountId: 'corner', week: 3, receivable: 10400 });
    expect(failure?.there).toMatchObject({ lowestCash: -1000, lowestWeek: 3 });
  });

  test('where nobody owes anything yet, who owes most at any week’s end fails then', () => {
    const accounts = oneDoor().accounts.map((account) => ({
      ...account,
      waves: [aWave({ openWeek: 8, doors: 1, doorsPerWeek: 1 })],
    }));
    const plan = oneDoor({ accounts });
    const { failure } = lenderFrom(plan, resultsOf(plan), 0);
    expect(failure).toMatchObject({ accountId: 'corner', week: 11, receivable: 10400 });
  });

  test('failing in week 19, past the low of week 4, it leaves the plan’s own low', () => {
    const plan = oneDoor();
    const failed = failureAt(plan, resultsOf(plan), { accountId: 'corner', week: 19 });
    expect(failed?.there).toMatchObject({ lowestCash: -2000, lowestWeek: 4, cashNeed: 2000 });
  });

  test('dropped 26 weeks after opening, with no forecast to be wrong about: the pass of a plan cut then', () => {
    const plan = oneDoor({ business: aBusiness({ openingCashAmount: '0' }) });
    const [drop] = dropsOf(plan, resultsOf(plan));
    const cut = { ...plan, accounts: plan.accounts.map((account) => ({ ...account, cutWeek: 26 })) };
    const { reading } = resultsOf(cut);
    expect(drop).toMatchObject({ accountId: 'corner', week: 26, reviewWeeks: 26 });
    // 260 units sold at 1.60; the ten of the last fill are the chain's, paid and kept
    expect(drop?.dealAmount).toBe(26 * 1600);
    expect(drop?.there).toMatchObject({ lowestCash: reading.lowestCash, lowestWeek: reading.lowestWeek });
  });

  /**
   * Six weeks of lead: what is on order when the account fails was ordered on a forecast that still had it, and comes. A
   * plan that had known of it would have bought some 5 to 6 weeks' sale less: at least 600 units at 1.00.
   */
  test('goods on order when it happens come all the same', () => {
    const listing = aListing({ unitsPerStoreWeek: '12', coverWeeks: 0 });
    const terms = { ...anAccount().terms, paymentDays: 365 };
    const plan = aPlan({
      items: [anItem({ supply: { ...anItem().supply, leadWeeks: 6, coverWeeks: 0 } })],
      accounts: [anAccount({ listings: [listing], terms, waves: [aWave({ openWeek: 8 })] })],
    });
    const failed = failureAt(plan, resultsOf(plan), { accountId: 'corner', week: 29 });
    const foreseen = { ...plan, accounts: plan.accounts.map((each) => ({ ...each, cutWeek: 30 })) };
    const { lowestCash } = resultsOf(foreseen).reading;
    expect(lowestCash - (failed?.there.lowestCash ?? 0)).toBeGreaterThanOrEqual(60000);
  });
});

describe(`on ${PLAN_RUNS} random plans, seed ${PLAN_SEED}`, () => {
  const plans = fc.sample(arbitraryPlan(), { seed: PLAN_SEED, numRuns: PLAN_RUNS });

  test('ages add up to the balance sheet, week by week; 13 weeks to the cash of their last', () => {
    const faults: string[] = [];
    plans.forEach((plan, place) => {
      const outcome = evaluate(plan, sayFor);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      const { pass } = outcome.value;
      const ledger = ledgerOf(outcome.value);
      for (let week = 0; week < pass.weeks; week += 3) {
        const args = { plan, results: outcome.value, ledger, week };
        const told = (what: string, one: number, other: number | undefined) => {
          if (one !== other) faults.push(`plan ${place}, week ${week}, ${what}: ${one} and ${other}`);
        };
        const receivables = agedReceivables(args);
        told('receivables', receivables.total.sum, pass.balances.receivables[week]);
        told('payables', agedPayables(args).total.sum, pass.balances.payables[week]);
        for (const { kind, id, sum } of receivables.lines) {
          const a = plan.accounts.findIndex((account) => account.id === id);
          if (kind === 'account') told(`${id}`, sum, pass.accounts[a]?.receivables[week]);
        }
        const weeks = thirteenWeeks(pass, week);
        const moved = [...weeks.receipts, ...weeks.payments, ...weeks.funding].reduce(
          (all, { sum }) => all + sum,
          0,
        );
        told('cash', (weeks.opens[0] ?? 0) + moved, weeks.closes.at(-1));
      }
    });
    expect(faults.slice(0, 12)).toEqual([]);
  });
});
