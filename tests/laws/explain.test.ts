/**
 * "Where from?" of every figure: on every demo plan, on quick plans, on the plan of every field, on ladders that give way
 * at each rung and on random plans, the lines of every key add up to its figure to the last digit, every line leads on to
 * another figure or to a field that is there, following them never runs in a circle, and each address reads back. Sums
 * are checked against the results, which other rooms made.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEMOS } from '../../demo-catalog/index.ts';
import { keyOfSheet, keysOf, keyText, sheetOfKey } from '../../src/domain/explain/index.ts';
import type { Explanation, FigureKey } from '../../src/domain/explain/types.ts';
import { dec } from '../../src/domain/money/decimal.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { hasAt } from '../../src/domain/plan/path.ts';
import {
  NO_NUMBERS,
  quickPlan,
  type Region,
  regionOf,
  type SevenNumbers,
} from '../../src/domain/quick/index.ts';
import { arbitraryPlan, PLAN_SEED } from '../support/arbitrary-plan.ts';
import { aHand, aListing, anAccount, aPlan } from '../support/builders.ts';
import { explained, planOfText, type Subject, subjectOf } from '../support/explained.ts';
import { readText } from '../support/source-files.ts';

const SEVEN: SevenNumbers = {
  ...NO_NUMBERS,
  shelfPrice: '4.99',
  landedPerUnit: '1.1',
  retailerMarginRate: '0.42',
  moneyDownPerStore: '250',
  stores: 60,
  unitsPerStoreWeek: '6',
  cash: '36000',
};

function quick(changes: Partial<SevenNumbers>, regionId = 'US'): Plan {
  const region = regionOf(regionId) as Region;
  const made = quickPlan({
    seven: { ...SEVEN, ...changes },
    region,
    startDate: '2026-03-02',
    planId: 'quick',
  });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

/** Weeks worth looking into: the first, the lows, the end, and the weeks in which months and quarters are settled. */
function weeksOf({ results }: Subject): number[] {
  const { weeks } = results.pass;
  const { lowestWeek, cashNeedWeek, firstPaymentWeek } = results.reading;
  const named = [0, 1, lowestWeek, cashNeedWeek ?? 0, firstPaymentWeek ?? 0, weeks - 1];
  const settled = (['royalty', 'vatSettled', 'broker', 'interest', 'claimsPaid', 'openingFees'] as const).map(
    (flow) => results.pass.flows[flow].findIndex((amount) => amount !== 0),
  );
  return [...new Set([...named, ...settled])].filter((week) => week >= 0 && week < weeks);
}

/** What is wrong with the explanation of one key, in words; '' when nothing is. */
function faultOf(subject: Subject, key: FigureKey): string {
  const name = keyText(key);
  const found = explained(subject, key);
  const read = keyOfSheet(sheetOfKey(key));
  if (JSON.stringify(read) !== JSON.stringify(key)) return `${name} reads back as ${JSON.stringify(read)}`;
  const adding = found.lines.filter(({ adds }) => adds !== null);
  const sum = adding.reduce((total, { adds }) => total.plus(adds ?? '0'), dec(0));
  if (adding.length > 0 && found.exact === null) return `${name}: adds up to nothing known`;
  if (adding.length > 0 && !sum.eq(found.exact ?? 'NaN'))
    return `${name}: ${sum.toFixed()} is not ${found.exact}`;
  const words = JSON.stringify([
    found.title,
    found.value,
    found.meaning,
    found.formula,
    found.caution,
    found.lines,
  ]);
  if (/NaN|Infinity|undefined|\bnull\b(?!,|\})|\[object/.test(words)) return `${name}: ${words}`;
  if (found.title === '' || found.meaning === '' || found.formula === '' || found.value === '') {
    return `${name}: something is left unsaid: ${words}`;
  }
  if (found.lines.length === 0 && found.exact !== '0') return `${name}: no lines for ${found.exact}`;
  return found.lines.map((line) => lineFault(subject, name, line)).find((fault) => fault !== '') ?? '';
}

function lineFault({ plan }: Subject, name: string, line: Explanation['lines'][number]): string {
  if (line.label === 'Rounding') return '';
  if (line.path === null && line.explains === null) return `${name}: "${line.label}" leads nowhere`;
  if (line.path !== null && !hasAt(plan, line.path)) return `${name}: no field ${line.path}`;
  const note = plan.basis.find(({ path }) => path === line.path);
  if ((note?.source ?? null) !== (line.basis?.source ?? null))
    return `${name}: ${line.path} is noted otherwise`;
  return '';
}

/** Follows every line from every key; a figure met on its own way down is a circle. */
function circlesOf(subject: Subject, keys: readonly FigureKey[]): string[] {
  const done = new Set<string>();
  const circles: string[] = [];
  const visit = (key: FigureKey, trail: readonly string[]): void => {
    const name = keyText(key);
    if (trail.includes(name)) circles.push([...trail.slice(trail.indexOf(name)), name].join(' > '));
    if (done.has(name) || trail.includes(name)) return;
    done.add(name);
    for (const { explains } of explained(subject, key).lines) if (explains) visit(explains, [...trail, name]);
  };
  for (const key of keys) visit(key, []);
  return circles;
}

function faultsOf(plan: Plan): string[] {
  const subject = subjectOf(plan);
  const keys = keysOf({ ...subject, weeks: weeksOf(subject) });
  return keys.map((key) => faultOf(subject, key)).filter((fault) => fault !== '');
}

const TO_99 = { endings: ['0.99'], listOfPrices: false, move: 'nearest' as const };
const WHOLESALER = { id: 'wholesaler', name: 'Wholesaler', requiredMarginRate: '0.1' };

/** Ladders that give way at each rung, and move to price points either way. */
const LADDERS: Record<string, () => Promise<Plan>> = {
  'a price point that the chain absorbs': async () =>
    aPlan({ accounts: [anAccount({ pricePoints: { ...TO_99, absorbedBy: 'lastHand' } })] }),
  'a price point that is ours to absorb, list price by a margin': async () =>
    aPlan({
      accounts: [
        anAccount({
          pricePoints: { ...TO_99, absorbedBy: 'us' },
          listings: [aListing({ list: { by: 'margin', rate: '0.55' } })],
          allowances: [{ kind: 'offInvoice', id: 'passed', rate: '0.05', on: 'list', passedOn: true }],
        }),
      ],
    }),
  'a typed shelf price moved to a point, tax in it, list price solved over passed-on discounts in series':
    async () =>
      aPlan({
        shelfTax: { rate: '0.19', shown: 'inPrice' },
        accounts: [
          anAccount({
            pricePoints: { ...TO_99, absorbedBy: 'lastHand' },
            hands: [aHand({ ...WHOLESALER, rule: { by: 'markup', rate: '0.22' } }), aHand()],
            listings: [aListing({ list: { by: 'solved' }, shelf: { by: 'price', amount: '5.49' } })],
            allowances: [
              { kind: 'offInvoice', id: 'one', rate: '0.1', on: 'list', passedOn: true },
              { kind: 'offInvoice', id: 'two', rate: '0.05', on: 'running', passedOn: true },
              { kind: 'freightAllowance', id: 'truck', amountPerUnit: '0.05', pickUp: true },
              { kind: 'freightOut', id: 'freight', amount: '1.8', per: 'case' },
            ],
          }),
        ],
      }),
  'a hand that gives way, between a fixed sum a case and a margin': async () =>
    aPlan({
      accounts: [
        anAccount({
          hands: [
            aHand({
              ...WHOLESALER,
              id: 'importer',
              name: 'Importer',
              rule: { by: 'fixed', amount: '1.2', per: 'case' },
            }),
            aHand({ ...WHOLESALER, rule: { by: 'solved' } }),
            aHand(),
          ],
          listings: [aListing({ shelf: { by: 'price', amount: '5.49' } })],
        }),
      ],
    }),
};

const RUNS = 25;

describe('every figure', () => {
  const plans: Record<string, () => Promise<Plan>> = {
    'quick, direct': async () => quick({}),
    'quick, by a distributor, free fill, tax in the tag': async () =>
      quick({ distributor: true, freeFill: true }, 'DE'),
    'quick, in yen, no cash typed': async () =>
      quick({ shelfPrice: '498', landedPerUnit: '110', moneyDownPerStore: '25000', cash: null }, 'JP'),
    'quick, nothing down': async () => quick({ moneyDownPerStore: '0' }),
    'quick, units that lose': async () => quick({ landedPerUnit: '4' }),
    'the plan of every field': async () => planOfText(readText('tests/formats/v2/whole.json')),
    'no accounts': async () => aPlan({ accounts: [] }),
    ...LADDERS,
    ...Object.fromEntries(
      DEMOS.map(({ id, load }) => [id, async () => planOfText(JSON.stringify(await load()))] as const),
    ),
  };

  test.each(Object.entries(plans))(
    '%s: lines add up and lead on',
    async (_, load) => {
      const plan = await load();
      expect(faultsOf(plan)).toEqual([]);
    },
    60_000,
  );

  test.each(['demo-pays-but-runs-dry', 'the plan of every field', 'no accounts', ...Object.keys(LADDERS)])(
    '%s: no circles',
    async (name) => {
      const subject = subjectOf(await (plans[name] as () => Promise<Plan>)());
      // of the cash path, week by week, the last week leads to all before it
      const keys = keysOf({ ...subject, weeks: [] });
      expect(circlesOf(subject, keys).slice(0, 5)).toEqual([]);
    },
    60_000,
  );

  test(`random plans (seed ${PLAN_SEED}): lines add up and lead on`, () => {
    const drawn = fc.sample(arbitraryPlan(), { numRuns: RUNS, seed: PLAN_SEED });
    for (const plan of drawn) expect(faultsOf(plan)).toEqual([]);
  }, 120_000);

  test(`random plans (seed ${PLAN_SEED}): no circles`, () => {
    for (const plan of fc.sample(arbitraryPlan(), { numRuns: 8, seed: PLAN_SEED })) {
      const subject = subjectOf(plan);
      expect(circlesOf(subject, keysOf({ ...subject, weeks: [] })).slice(0, 5)).toEqual([]);
    }
  }, 120_000);
});

test('payments that gather several causes are taken apart, and nothing is left over where no credits are carried', () => {
  const subject = subjectOf(planOfText(readText('tests/formats/v2/whole.json')));
  const { weeks, flows } = subject.results.pass;
  const labels = new Set<string>();
  const carried: string[] = [];
  for (const flow of Object.keys(flows) as (keyof typeof flows)[]) {
    for (let week = 0; week < weeks; week++) {
      if (flows[flow][week] === 0) continue;
      const { lines } = explained(subject, { of: 'flow', run: 'plan', flow, fromWeek: week, toWeek: week });
      for (const { label } of lines) labels.add(label);
      if (lines.some(({ label }) => label.endsWith('carried over'))) carried.push(flow);
    }
  }
  expect(carried).toEqual([]);
  const named = [...labels].sort();
  expect(named.filter((label) => /^Broker|^Royalty|^Supplier paid|^Tax/.test(label)).length).toBeGreaterThan(
    4,
  );
});
