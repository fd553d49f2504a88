/**
 * Which line of law a chain's terms cross, by market. The lines themselves are outside facts: 30 days for perishable and
 * 60 for other food (Directive (EU) 2019/633, Article 3(1)(a)); 60 days between businesses (Directive 2011/7/EU, Article
 * 3(5)); payments for a better position (UK Groceries Supply Code of Practice, paragraph 12, gov.uk); promotional money on
 * proportionally equal terms (16 CFR Part 240). Numbers of articles and paragraphs are from memory but for the Code's 12.
 */
import { describe, expect, test } from 'vitest';
import { cautionsOf } from '../../src/domain/cautions.ts';
import type { Account, Plan } from '../../src/domain/plan/index.ts';
import { anAccount, aPlan } from '../support/builders.ts';

interface Case {
  market: Plan['market'];
  food: boolean;
  days: number;
  changes: Partial<Account>;
}

function dealCautions({ market, food, days, changes }: Case): string[] {
  const account = anAccount({ ...changes });
  const accounts = [{ ...account, terms: { ...account.terms, paymentDays: days } }];
  return cautionsOf(aPlan({ market, perishableFood: food, accounts }))
    .filter(({ place }) => place === 'deal')
    .map(({ sentence }) => sentence);
}

const ADVICE = 'Computed, not advice. A licensed professional should confirm terms.';
const plain = { slotting: null, openingFees: [], display: null, promotions: [], allowances: [] };
const paid = { ...plain, slotting: { amount: '250', per: 'door', settled: 'atOpening' } as const };

describe('a line is shown when the terms cross it in that market', () => {
  test.each([
    ['EU', true, 30, []],
    ['EU', true, 31, ['31 days is past 30, the EU line for perishable food']],
    ['EU', false, 60, []],
    ['EU', false, 61, ['61 days is past 60']],
    ['UK', true, 60, []],
    ['UK', true, 61, ['61 days is past 60: in the UK']],
    ['US', true, 120, []],
    ['other', true, 120, []],
  ] as const)('%s, food %s, paid after %i days', (market, food, days, starts) => {
    const found = dealCautions({ market, food, days, changes: plain }).filter((each) => each !== ADVICE);
    expect(found).toHaveLength(starts.length);
    starts.forEach((start, index) => {
      expect(found[index]).toContain(start);
    });
  });

  test('money for the listing: US, EU food and UK each have their own line, Canada none', () => {
    const lines = (market: Plan['market']) => dealCautions({ market, food: true, days: 30, changes: paid });
    expect(lines('US')[0]).toContain('16 CFR 240');
    expect(lines('EU')[0]).toContain('agreed beforehand');
    expect(lines('UK')[0]).toContain('Groceries Supply Code, 9');
    expect(lines('CA')).toEqual([ADVICE]);
  });

  test('a display fee in the UK meets the Code’s paragraph 12', () => {
    const display = {
      buildAmountPerDoor: '0',
      freightAmountPerDoor: '0',
      buildWeeks: 2,
      feeAmountPerStoreWeek: '5',
      weeks: 8,
      liftRate: '0',
      liftEndRate: null,
    };
    const found = dealCautions({ market: 'UK', food: false, days: 30, changes: { ...plain, display } });
    expect(found[0]).toContain('Groceries Supply Code, 12');
  });
});

test('every plan says that the shelf price is the chain’s, and the EU and the UK what agreeing one is', () => {
  const shelf = (market: Plan['market']) =>
    cautionsOf(aPlan({ market })).find(({ place }) => place === 'ladder')?.sentence ?? '';
  for (const market of ['US', 'CA', 'EU', 'UK', 'other'] as const) {
    expect(shelf(market)).toContain('The shelf price is the chain’s to set.');
    expect(shelf(market).includes('hardcore restriction')).toBe(market === 'EU' || market === 'UK');
  }
});

describe('at the table the lines are short, name their source and follow the draft', () => {
  const table = {
    objective: { by: 'firstYear' },
    targetAmount: null,
    walkAwayAmount: null,
    limits: [],
    order: [],
    reviewWeeks: 26,
    inPlay: [],
    draft: [],
    log: [],
  } satisfies NonNullable<Account['table']>;
  const atTable = (market: Plan['market'], days: number, changes: Partial<Account>) => {
    const account = anAccount(changes);
    const accounts = [{ ...account, terms: { ...account.terms, paymentDays: days } }];
    return cautionsOf(aPlan({ market, perishableFood: true, accounts })).filter(
      ({ place }) => place === 'talks',
    );
  };

  test.each([
    ['EU', 60, plain, ['60 days: past 30', '2019/633']],
    ['EU', 30, paid, ['agreed beforehand', '2019/633']],
    ['UK', 61, plain, ['61 days: past 60', 'Late Payment Regulations 2013']],
    ['US', 30, paid, ['proportionally equal terms', '16 CFR 240']],
  ] as const)('%s, paid after %i days', (market, days, changes, parts) => {
    const [line, ...others] = atTable(market, days, changes);
    expect(others).toEqual([]);
    expect(line?.accountId).toBe('corner');
    for (const part of parts) expect(line?.sentence).toContain(part);
  });

  test('nothing is said while no line is crossed', () => {
    expect(atTable('EU', 30, plain)).toEqual([]);
    expect(atTable('US', 120, { ...plain, table })).toEqual([]);
  });

  test('a shelf price in the draft or in play: its own line, and in the EU the hardcore restriction', () => {
    const draft = [{ term: 'shelf:tea', value: '4.99' }];
    const drafted = atTable('EU', 30, { ...plain, table: { ...table, draft } });
    expect(drafted.map(({ sentence }) => sentence.includes('2022/720'))).toEqual([true]);
    const inPlay = atTable('US', 30, { ...plain, table: { ...table, inPlay: ['shelf'] } });
    expect(inPlay.map(({ sentence }) => sentence.includes('don’t agree one'))).toEqual([true]);
  });

  test('each is short enough for two lines of a phone at the least size', () => {
    const all = (['EU', 'UK', 'US'] as const).flatMap((market) =>
      atTable(market, 90, {
        ...paid,
        sale: { by: 'scan', shrinkRate: '0.02' },
        table: { ...table, inPlay: ['shelf'] },
      }),
    );
    expect(all.length).toBeGreaterThan(6);
    for (const { sentence } of all) expect(sentence.length).toBeLessThanOrEqual(140);
  });
});

test('where offers of money are compared: no advice, licences differ, the paper decides', () => {
  const money = cautionsOf(aPlan()).filter(({ place }) => place === 'money');
  expect(money.map(({ id }) => id.split(' ').at(-1))).toEqual(['advice', 'lending', 'papers']);
  expect(money[0]?.sentence).toContain('not securities, tax or legal advice');
  expect(money[0]?.sentence).toContain('Licensed counsel');
});
