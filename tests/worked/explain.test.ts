/**
 * Explanations worked by hand on a small plan: the formula with its numbers, the lines in their order, what a guess says,
 * the documents behind a payment; names that are gone; the reader's own decimal mark; the trade words.
 * (That every figure of every plan adds up and leads on is tests/laws/explain.test.ts.)
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { isoDateOf } from '../../src/domain/calendar.ts';
import type { SayFor } from '../../src/domain/evaluate.ts';
import { explain, keyOfSheet, keyOfText } from '../../src/domain/explain/index.ts';
import { TERMS } from '../../src/domain/explain/meanings.ts';
import type { Explanation, FigureKey } from '../../src/domain/explain/types.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { aHand, aListing, anAccount, anItem, aPlan } from '../support/builders.ts';
import { explained, type Subject, subjectOf } from '../support/explained.ts';

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
      'Invoice of week 3 (2026-03-23), Corner, Tea 280.8',
      'Spoils allowance, Corner -5.62',
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
