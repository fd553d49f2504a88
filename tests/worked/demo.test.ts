/**
 * The demo catalog: every file is a sound plan, gives the verdicts it is shown for, and its lesson is true. Each lesson
 * is checked by changing the one thing it is about. Figures are the product's own on invented plans: they hold the
 * examples still, they do not prove the model (tests/outside does).
 */
import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DEMOS } from '../../demo-catalog/index.ts';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Account, Plan } from '../../src/domain/plan/index.ts';
import { getAt } from '../../src/domain/plan/path.ts';
import { sentence } from '../../src/domain/problems.ts';
import type { Results } from '../../src/domain/results.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { oddNumbers } from '../support/deals.ts';

const STATES: Record<string, string> = {
  'demo-pays-but-runs-dry': 'holds holds fails tight',
  'demo-free-fill-by-distributor': 'holds tight holds unknown',
  'demo-gift-shops-keystone': 'holds holds tight unknown',
  'demo-beauty-chain-returns': 'holds fails tight unknown',
  'demo-margin-not-markup': 'fails holds holds unknown',
  'demo-third-chain': 'holds holds tight unknown',
  'demo-twelve-chains': 'holds holds fails unknown',
};

async function planOf(id: string): Promise<Plan> {
  const demo = DEMOS.find((each) => each.id === id);
  if (!demo) throw new Error(`no demo ${id}`);
  const read = parsePlanText(JSON.stringify(await demo.load()));
  if (!read.ok) throw new Error(`${id}: ${JSON.stringify(read)}`);
  return read.value;
}

function resultsOf(plan: Plan): Results {
  const results = evaluate(plan, (args) => plainSay({ ...args, dateOf: isoDateOf }));
  if (!results.ok) throw new Error(results.problems.map(sentence).join(' '));
  return results.value;
}

const statesOf = ({ verdicts }: Results) =>
  [verdicts.ladder, verdicts.deal, verdicts.cash, verdicts.promise].map(({ state }) => state).join(' ');
const withAccounts = (plan: Plan, change: (account: Account) => Partial<Account>): Plan => ({
  ...plan,
  accounts: plan.accounts.map((account) => ({ ...account, ...change(account) })),
});

describe.each(DEMOS.map((demo) => [demo.id, demo] as const))('%s', (id, demo) => {
  test('is a sound plan that says its name and its lesson, one sentence', async () => {
    const plan = await planOf(id);
    expect([plan.id, plan.name, plan.lesson]).toEqual([demo.id, demo.name, demo.lesson]);
    expect(demo.lesson).toMatch(/^[^.!?]+(?:\d\.\d[^.!?]*)?\.$/);
  });

  test('stands in the format and the words of today, so that the app may show it unread', async () => {
    const { plan } = JSON.parse(JSON.stringify(await demo.load())) as { plan: unknown };
    const order = 'npx tsx tests/formats/write-demos.ts, then npx biome check --write demo-catalog';
    expect(JSON.stringify(plan, null, 1), order).toBe(JSON.stringify(await planOf(id), null, 1));
  });

  test('gives its four verdicts, and no figure that is none', async () => {
    const results = resultsOf(await planOf(id));
    expect(statesOf(results)).toBe(STATES[id]);
    const { ladders, deals, reading, verdicts } = results;
    expect(oddNumbers({ ladders, deals, reading, verdicts })).toEqual([]);
  });

  test('names its guesses with ends on both sides, for the verdicts to lean on', async () => {
    const plan = await planOf(id);
    const guesses = plan.basis.filter(({ kind }) => kind === 'guess');
    expect(guesses.length).toBeGreaterThan(2);
    for (const { path, low, high } of guesses) {
      const value = Number(getAt(plan, path));
      expect([Number(low) <= value, value <= Number(high), low !== high], path).toEqual([true, true, true]);
    }
  });
});

describe('the catalog', () => {
  test('opens with a deal that pays and cash that fails', async () => {
    expect(STATES[DEMOS[0]?.id ?? '']).toBe('holds holds fails tight');
  });

  test('has every file of its folder, each its own scenario: six currencies, six verdict lines among them', async () => {
    const files = readdirSync('demo-catalog').filter((name) => name.endsWith('.json'));
    expect(files.length).toBe(DEMOS.length);
    const plans = await Promise.all(DEMOS.map(({ id }) => planOf(id)));
    expect(new Set(plans.map(({ currency }) => currency)).size).toBe(6);
    expect(new Set(Object.values(STATES)).size).toBe(6);
  });
});

describe('the lessons', () => {
  test('pays but runs dry: back in week 28 of 52, short by 31,416 in week 26, eight weeks after the first payment', async () => {
    const plan = await planOf('demo-pays-but-runs-dry');
    const { deals, reading } = resultsOf(plan);
    expect(deals[0]?.paybackWeeks?.ceil().toString()).toBe('28');
    expect([reading.lowestCash, reading.lowestWeek, reading.firstPaymentWeek]).toEqual([-3_141_601, 26, 18]);
    const enough = { ...plan, business: { ...plan.business, openingCashAmount: '91416.01' } };
    expect(resultsOf(enough).reading.lowestCash).toBe(0);
  });

  test('free fill billed back: 8,422.27 for crackers that landed at 4,451.62; free of charge the deal holds', async () => {
    const plan = await planOf('demo-free-fill-by-distributor');
    const { deals, ladders } = resultsOf(plan);
    const line = deals[0]?.fixedLines.find(({ id }) => id === 'free-fill-crackers');
    const landed = ladders[0]?.landed.unit.times(24 * 120);
    expect([line?.amount.toFixed(2), landed?.toFixed(2)]).toEqual(['8422.27', '4451.62']);
    const free = withAccounts(plan, () => ({ freeFill: { settled: 'free', lagWeeks: 0 } }));
    expect(statesOf(resultsOf(free))).toBe('holds holds holds unknown');
  });

  test('keystone: each shop keeps half before tax, nothing is put down, the low is in November', async () => {
    const { deals, ladders, reading } = resultsOf(await planOf('demo-gift-shops-keystone'));
    expect(ladders.map(({ hands }) => hands.at(-1)?.marginRate.toString())).toEqual(Array(6).fill('0.5'));
    expect(deals.map(({ nothingDown }) => nothingDown)).toEqual([true, true, true]);
    // week 22 of a plan from 2026-06-01 begins on 2026-11-02
    expect([reading.lowestWeek, reading.ends]).toEqual([22, 'stock']);
  });

  test('returns: a ladder margin of 72.7 %, a break-even above the planned rate; sold for good the deal holds', async () => {
    const plan = await planOf('demo-beauty-chain-returns');
    const { deals, ladders } = resultsOf(plan);
    expect(ladders[0]?.ladderMarginRate.toFixed(3)).toBe('0.727');
    expect(deals[0]?.items[0]?.breakEvenUnitsPerStoreWeek?.toFixed(2)).toBe('0.93');
    const forGood = withAccounts(plan, () => ({ sale: { by: 'shipment' } }));
    expect(resultsOf(forGood).verdicts.deal.state).toBe('holds');
    const noFines = withAccounts(plan, ({ allowances }) => ({
      allowances: allowances.filter(({ kind }) => kind !== 'chargebacks'),
    }));
    expect(resultsOf(noFines).verdicts.deal.state).toBe('tight');
    expect(resultsOf(withAccounts(plan, () => ({ display: null }))).verdicts.deal.state).not.toBe('fails');
  });

  test('margin and markup: 35 % of its price to the chain fails, 35 % on its cost holds', async () => {
    const plan = await planOf('demo-margin-not-markup');
    const asMarkup = withAccounts(plan, ({ hands }) => ({
      hands: hands.map((hand) =>
        hand.id === 'ninefold'
          ? { ...hand, rule: { by: 'markup', rate: '0.35' }, requiredMarginRate: null }
          : hand,
      ),
    }));
    expect(resultsOf(plan).verdicts.ladder.value).toBe('0.175816');
    expect(resultsOf(asMarkup).verdicts.ladder.state).toBe('holds');
  });

  test('a third chain: beside the first two it stays above zero, alone it runs dry', async () => {
    const plan = await planOf('demo-third-chain');
    const { reading } = resultsOf(plan);
    expect(reading.lowestCash).toBe(646_554);
    const openingBooks = { ...plan.business.openingBooks, receivables: [] };
    const business = { ...plan.business, baseSales: null, openingBooks };
    const alone = { ...plan, accounts: plan.accounts.filter(({ id }) => id === 'almersfeld'), business };
    expect(resultsOf(alone).verdicts.cash.state).toBe('fails');
    const withoutIt = { ...plan, accounts: plan.accounts.filter(({ id }) => id !== 'almersfeld') };
    expect(resultsOf(withoutIt).verdicts.cash.state).toBe('holds');
  });

  test('twelve chains: short in week 39; without the second shift it is not, and loses 365,000 units more; with one chain ten weeks later neither', async () => {
    const plan = await planOf('demo-twelve-chains');
    const { deals, reading } = resultsOf(plan);
    expect(deals.every(({ paybackWeeks }) => paybackWeeks !== null)).toBe(true);
    expect([reading.lowestCash, reading.lowestWeek, reading.lostUnits]).toEqual([-1_293_375, 39, 14_499]);
    const lines = plan.business.lines.map((line) => ({ ...line, steps: [] }));
    const oneShift = resultsOf({ ...plan, business: { ...plan.business, lines } }).reading;
    expect(oneShift.lowestCash).toBeGreaterThan(0);
    expect(Math.round((oneShift.lostUnits - reading.lostUnits) / 1000)).toBe(365);
    const later = resultsOf(
      withAccounts(plan, ({ id, waves }) => ({
        waves: id === 'eddlestow' ? waves.map((wave) => ({ ...wave, openWeek: wave.openWeek + 10 })) : waves,
      })),
    ).reading;
    expect(later.lowestCash).toBeGreaterThan(0);
    expect(later.lostUnits).toBeLessThan(reading.lostUnits);
  });
});
