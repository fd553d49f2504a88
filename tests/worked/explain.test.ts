/**
 * "Where from?" of every figure: on every demo plan, on quick plans, on the plan of every field and on random plans, the
 * lines of every key add up to its figure to the last digit, every line leads on to another figure or to a field that is
 * there, following them never runs in a circle, and each address reads back. Below that, explanations worked by hand.
 * A sum that has to come out exactly is checked against the results, which other rooms made.
 */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { DEMOS } from '../../demo-catalog/index.ts';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate, type SayFor } from '../../src/domain/evaluate.ts';
import {
  explain,
  keyOfSheet,
  keyOfText,
  keysOf,
  keyText,
  sheetOfKey,
} from '../../src/domain/explain/index.ts';
import { TERMS } from '../../src/domain/explain/meanings.ts';
import type { Explanation, FigureKey } from '../../src/domain/explain/types.ts';
import { dec } from '../../src/domain/money/decimal.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { hasAt } from '../../src/domain/plan/path.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import {
  NO_NUMBERS,
  quickPlan,
  type Region,
  regionOf,
  type SevenNumbers,
} from '../../src/domain/quick/index.ts';
import type { Results } from '../../src/domain/results.ts';
import { plainSay, type Say } from '../../src/domain/verdicts/say.ts';
import { parsePlanText } from '../../src/plan-format/index.ts';
import { arbitraryPlan, PLAN_SEED } from '../support/arbitrary-plan.ts';
import { aHand, aListing, anAccount, anItem, aPlan } from '../support/builders.ts';
import { readText } from '../support/source-files.ts';

interface Subject {
  plan: Plan;
  results: Results;
  say: Say;
}

const sayFor: SayFor = ({ minorDigits, startDay }) => plainSay({ minorDigits, startDay, dateOf: isoDateOf });

function subjectOf(plan: Plan): Subject {
  expect(checkRules(plan)).toEqual([]);
  const outcome = evaluate(plan, sayFor);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const { currency, minorDigits, compiled } = outcome.value;
  return {
    plan,
    results: outcome.value,
    say: sayFor({ currency, minorDigits, startDay: compiled.startDay }),
  };
}

function planOfText(text: string): Plan {
  const read = parsePlanText(text);
  if (!read.ok) throw new Error(JSON.stringify(read));
  return read.value;
}

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

function explained(subject: Subject, key: FigureKey): Explanation {
  const found = explain({ ...subject, key });
  if (!found) throw new Error(`${keyText(key)} explains nothing`);
  return found;
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
    'the plan of every field': async () => planOfText(readText('tests/formats/v1/whole.json')),
    'no accounts': async () => aPlan({ accounts: [] }),
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

  test.each(['demo-pays-but-runs-dry', 'the plan of every field', 'no accounts'])(
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

test('payments that gather several causes are taken apart; only commission and royalty carry credits over', () => {
  const subject = subjectOf(planOfText(readText('tests/formats/v1/whole.json')));
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
  expect(carried.filter((flow) => flow !== 'broker' && flow !== 'royalty')).toEqual([]);
  const named = [...labels].sort();
  expect(named.filter((label) => /^Broker|^Royalty|^Supplier paid|^Tax/.test(label)).length).toBeGreaterThan(
    4,
  );
});

describe('worked by hand', () => {
  // Landed 1.00 + 0.20 freight; list 2.60 less 10 % off-invoice 0.26 is 2.34; spoils 2 % is 0.0468, net 2.2932; broker
  // 5 % is 0.117: contribution 2.2932 − 1.20 − 0.1170 = 0.9762. The chain at 40 % of its price: 2.60 ÷ 0.6 = 4.3334 (up).
  const plan = aPlan({
    items: [
      anItem({
        costLines: [
          { id: 'goods', label: 'Goods', family: 'goods', rule: { by: 'unit', amount: '1' } },
          { id: 'freight', label: 'Sea freight', family: 'freight', rule: { by: 'case', amount: '2.4' } },
        ],
      }),
    ],
    accounts: [
      anAccount({
        hands: [aHand({ requiredMarginRate: '0.38' })],
        allowances: [
          { kind: 'offInvoice', id: 'standing', rate: '0.1', on: 'list', passedOn: false },
          { kind: 'spoils', id: 'spoils', rate: '0.02' },
          { kind: 'broker', id: 'broker', rate: '0.05', onFreeGoods: false },
        ],
        slotting: { amount: '150', per: 'door', settled: 'atOpening' },
      }),
    ],
    basis: [
      {
        path: 'accounts/corner/allowances/spoils/rate',
        kind: 'guess',
        source: 'Two in a hundred',
        low: '0',
        high: '0.05',
      },
    ],
  });
  let subject: Subject;
  beforeAll(() => {
    subject = subjectOf(plan);
  });
  const of = (key: FigureKey) => explained(subject, key);
  const shown = ({ lines }: Explanation) => lines.map(({ label, value }) => `${label} ${value}`);

  test('contribution: the net price less landed cost and the broker', () => {
    const found = of({ of: 'listing', accountId: 'corner', itemId: 'tea', figure: 'contribution' });
    expect(found.formula).toBe('2.2932 − 1.20 − 0.1170 = 0.9762');
    expect(found.value).toBe('0.98');
    expect(shown(found)).toEqual(['Net price 2.2932', 'Landed cost −1.20', 'Broker’s commission −0.1170']);
    expect(found.lines.map(({ owner }) => owner)).toEqual(['ours', 'atRisk', 'between']);
  });

  test('a case price leads to its amount and to the units in a case', () => {
    const found = of({ of: 'costLine', itemId: 'tea', lineId: 'freight' });
    expect(found.formula).toBe('2.40 a case of 12 units = 0.20');
    expect(found.lines.map(({ path }) => path)).toEqual([
      'items/tea/costLines/freight/rule/amount',
      'items/tea/caseUnits',
    ]);
  });

  test('a guess says so, what was typed does not', () => {
    const found = of({ of: 'step', accountId: 'corner', itemId: 'tea', stepId: 'spoils' });
    expect(found.formula).toBe('2 % of invoice 2.34 = 0.0468');
    expect(found.lines[0]?.basis).toEqual({ kind: 'guess', source: 'Two in a hundred' });
    expect(
      of({ of: 'step', accountId: 'corner', itemId: 'tea', stepId: 'broker' }).lines[0]?.basis,
    ).toBeNull();
  });

  test('the shelf price solved from the list price: the chain’s margin, and the step of the price grid', () => {
    const found = of({ of: 'listing', accountId: 'corner', itemId: 'tea', figure: 'shelfBeforeTax' });
    expect(shown(found)).toEqual(['List price 2.60', 'Chain keeps 1.7334']);
    const chain = of({ of: 'hand', accountId: 'corner', itemId: 'tea', handId: 'chain' });
    expect(chain.value).toBe('40 %');
    expect(chain.caution).toBe('The same money is a markup of 66.6692 % on its buying price.');
    expect(shown(chain)).toEqual([
      'Margin on its own selling price 40 %',
      'Buys at 2.60',
      'Says it needs 38 %',
    ]);
  });

  test('money down per door, and the line it is made of', () => {
    const found = of({ of: 'deal', accountId: 'corner', figure: 'moneyDownPerDoor' });
    expect(shown(found)).toEqual(['Slotting 150.00', 'Doors 10']);
    const slotting = of({ of: 'fixedLine', accountId: 'corner', lineId: 'slotting' });
    expect(slotting.exact).toBe('1500');
    expect(slotting.lines[0]?.path).toBe('accounts/corner/slotting/amount');
  });

  test('payback: ten doors bring 58.572 a week, 1,500 is back after 25.61 weeks', () => {
    const found = of({ of: 'deal', accountId: 'corner', figure: 'paybackWeeks' });
    expect(found.exact).toBe('25.6095');
    expect(found.formula).toBe('−35.70 after 25 weeks, 22.87 after 26: crosses zero at 25.6095');
  });

  test('a remittance: what is due, and what is taken off it', () => {
    const { firstPaymentWeek } = subject.results.reading;
    if (firstPaymentWeek === null) throw new Error('nothing is paid');
    const found = of({
      of: 'flow',
      run: 'plan',
      flow: 'remittances',
      fromWeek: firstPaymentWeek,
      toWeek: firstPaymentWeek,
    });
    // The fill of 10 doors, 12 units each at 2.34 is 280.80; 2 % of that is 5.62 (5.616).
    expect(found.lines.flatMap(({ label, adds }) => (adds === null ? [] : [`${label} ${adds}`]))).toEqual([
      'Invoices due, Corner 280.8',
      'Deductions of these invoices, Corner -5.62',
    ]);
    expect(found.exact).toBe('275.18');
  });

  test('names of what is gone explain nothing; addresses that are none read as none', () => {
    const gone: FigureKey[] = [
      { of: 'listing', accountId: 'corner', itemId: 'coffee', figure: 'net' },
      { of: 'hand', accountId: 'corner', itemId: 'tea', handId: 'nobody' },
      { of: 'step', accountId: 'corner', itemId: 'tea', stepId: 'coop' },
      { of: 'deal', accountId: 'elsewhere', figure: 'paybackWeeks' },
      { of: 'fixedLine', accountId: 'corner', lineId: 'display-build' },
      { of: 'week', run: 'plan', week: 52, figure: 'cash' },
      { of: 'flow', run: 'plan', flow: 'overhead', fromWeek: 3, toWeek: 99 },
    ];
    for (const key of gone) expect(explain({ ...subject, key })).toBeNull();
    const texts = [
      '',
      'deal',
      'deal/corner',
      'deal/corner/paybackWeek',
      'flow/plan/overhead/9/3',
      'week/plan/-1/cash',
    ];
    for (const text of [
      ...texts,
      'toString/a',
      'cash/constructor',
      'step/a/b/c/d',
      'deal/a%2Fb/paybackWeeks',
    ]) {
      expect(keyOfText(text)).toBeNull();
    }
    expect(keyOfSheet('inputs')).toBeNull();
  });
});

test('figures are written in the reader’s own grouping and decimal mark', () => {
  const comma = (text: string) => text.replace('.', ',');
  const german: SayFor = (args) => {
    const plain = plainSay({ ...args, dateOf: isoDateOf });
    return {
      ...plain,
      price: (amount) => comma(plain.price(amount)),
      number: (value) => comma(plain.number(value)),
      percent: (share) => comma(plain.percent(share)),
      count: (value) => plain.count(value).replace(/\B(?=(\d{3})+$)/g, '.'),
    };
  };
  const plan = aPlan({
    accounts: [anAccount({ listings: [aListing({ list: { by: 'price', amount: '12345.678' } })] })],
  });
  const subject = { ...subjectOf(plan), say: german({ currency: 'USD', minorDigits: 2, startDay: 0 }) };
  const found = explained(subject, {
    of: 'listing',
    accountId: 'corner',
    itemId: 'tea',
    figure: 'ladderMarginRate',
  });
  expect(found.lines.map(({ value }) => value)).toEqual(['12.345,6780', '1,00']);
  expect(found.formula).toBe('(12.345,6780 − 1,00) ÷ 12.345,6780 = 99,9919 %');
});

test('every trade word has a sentence of its own', () => {
  for (const { word, meaning } of Object.values(TERMS)) {
    expect(meaning).toMatch(/^[A-Z].*[.]$/);
    expect(meaning.length).toBeLessThan(140);
    expect(word).not.toBe('');
  }
  expect(new Set(Object.values(TERMS).map(({ word }) => word)).size).toBe(Object.keys(TERMS).length);
});
