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
