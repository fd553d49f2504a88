/**
 * Seven numbers to a plan: the plan is sound, every default in it is noted with a source, the numbers come back out,
 * and what rests on a stand-in is never among what may be shown.
 */
import { describe, expect, test } from 'vitest';
import { ladderFor } from '../../src/domain/ladder/ladder.ts';
import { type Plan, planSchema } from '../../src/domain/plan/index.ts';
import { getAt, hasAt, setAt } from '../../src/domain/plan/path.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import { sentence } from '../../src/domain/problems.ts';
import {
  missingFor,
  NO_NUMBERS,
  otherRegion,
  quickPlan,
  REGIONS,
  type Region,
  regionOf,
  SEVEN_PATHS,
  type SevenNumbers,
  sevenOf,
  shownWith,
  withSeven,
} from '../../src/domain/quick/index.ts';

const us = regionOf('US') as Region;
const seven: SevenNumbers = {
  shelfPrice: '4.99',
  landedPerUnit: '1.1',
  retailerMarginRate: '0.42',
  moneyDownPerStore: '250',
  stores: 60,
  unitsPerStoreWeek: '6',
  cash: '36000',
  freeFill: true,
  distributor: false,
  productName: 'Plum jam',
  chainName: 'Corner Basket',
};

function planOf(numbers: SevenNumbers, region: Region = us): Plan {
  const made = quickPlan({ seven: numbers, region, startDate: '2026-03-02', planId: 'quick' });
  if (!made.ok) throw new Error(made.problems.map(sentence).join(' '));
  return made.value;
}

function ladderOf(plan: Plan) {
  const [account] = plan.accounts;
  const [item] = plan.items;
  const listing = account?.listings[0];
  if (!account || !item || !listing) throw new Error('a quick plan has one of each');
  const ladder = ladderFor({ plan, account, listing, item });
  if (!ladder.ok) throw new Error(ladder.problems.map(sentence).join(' '));
  return ladder.value;
}

describe('the plan', () => {
  test.each(REGIONS.map((region) => [region.name, region] as const))('is sound in %s', (_, region) => {
    for (const distributor of [false, true]) {
      const plan = planOf({ ...seven, distributor }, region);
      expect(planSchema.parse(plan)).toEqual(plan);
      expect(checkRules(plan).map(sentence)).toEqual([]);
      expect([plan.currency, plan.market]).toEqual([region.currency, region.market]);
    }
  });

  test('4.99 at a 42 % margin: list 2.8942, invoice 2.6048, freight and picking 0.1302', () => {
    const ladder = ladderOf(planOf(seven));
    expect(ladder.list.toString()).toBe('2.8942');
    expect(ladder.invoice.toString()).toBe('2.6048');
    // 2.6048 - 1.10 - 0.1302
    expect(ladder.contribution.toString()).toBe('1.3746');
  });

  test('a distributor takes 20.4 % of its own price: 2.8942 x 0.796 = 2.3038', () => {
    expect(ladderOf(planOf({ ...seven, distributor: true })).list.toNumber()).toBeCloseTo(2.3038, 3);
  });

  test('HMRC, VAT-inclusive prices: the tax in a price at 20 % is a sixth of it', () => {
    const ladder = ladderOf(planOf({ ...seven, shelfPrice: '6' }, regionOf('GB') as Region));
    expect(ladder.tax.toString()).toBe('1');
    expect(ladder.shelfBeforeTax.toString()).toBe('5');
  });

  test.each([
    ['FI', '0.255'],
    ['CH', '0.081'],
    ['DE', '0.19'],
    ['NO', '0.25'],
    ['JP', '0.1'],
  ])('the standard VAT rate of %s is the share %s (national law, 2025)', (id, rate) => {
    expect(regionOf(id)?.tax).toEqual({ rate, shown: 'inPrice' });
  });

  test('the first case of each store is free, or paid', () => {
    expect(planOf(seven).accounts[0]?.listings[0]?.freeCasesPerDoor).toBe(1);
    expect(planOf({ ...seven, freeFill: false }).accounts[0]?.listings[0]?.freeCasesPerDoor).toBe(0);
  });

  test('somewhere else the currency is asked for', () => {
    expect([regionOf('XX'), planOf(seven, otherRegion('KES')).currency]).toEqual([null, 'KES']);
  });
});

describe('its defaults', () => {
  const plan = planOf({ ...seven, distributor: true });

  test('each is noted at a field that is there, with words', () => {
    for (const note of plan.basis) {
      expect(hasAt(plan, note.path), note.path).toBe(true);
      expect(note.source.length, note.path).toBeGreaterThan(5);
    }
  });

  test('each guess stands between its plausible ends, and the ends differ', () => {
    const guesses = plan.basis.filter(({ kind }) => kind === 'guess');
    expect(guesses.length).toBe(14);
    for (const { path, low, high } of guesses) {
      const value = Number(getAt(plan, path));
      expect(Number(low), path).toBeLessThanOrEqual(value);
      expect(Number(high), path).toBeGreaterThanOrEqual(value);
      expect(low, path).not.toBe(high);
    }
  });

  test('a published one names who, when and where', () => {
    const published = plan.basis.filter(({ kind }) => kind === 'published').map(({ source }) => source);
    expect(published.some((source) => /US Census Bureau, 2023, United States/.test(source))).toBe(true);
  });

  test('rent and wages are said to be left out', () => {
    expect(plan.basis.find(({ path }) => path === 'business/overheads')?.source).toBe(
      'Rent and wages are not in this yet.',
    );
  });
});

describe('while numbers are being typed', () => {
  const ladderOnly = { ...NO_NUMBERS, shelfPrice: '4.99', landedPerUnit: '1.1', retailerMarginRate: '0.42' };
  const withDeal = { ...ladderOnly, moneyDownPerStore: '0', stores: 60, unitsPerStoreWeek: '6' };

  test('each verdict says what it misses', () => {
    expect(missingFor('ladder', { ...ladderOnly, landedPerUnit: null })).toEqual(['landedPerUnit']);
    expect(missingFor('deal', ladderOnly)).toEqual(['moneyDownPerStore', 'stores', 'unitsPerStoreWeek']);
    expect(missingFor('cash', withDeal)).toEqual(['cash']);
    expect(missingFor('promise', NO_NUMBERS)).toEqual([]);
  });

  test('only what rests on typed numbers may be shown; without cash there is a need and no verdict', () => {
    expect(shownWith(NO_NUMBERS)).toEqual([]);
    expect(shownWith(ladderOnly)).toEqual(['ladder']);
    expect(shownWith(withDeal)).toEqual(['ladder', 'deal', 'cashNeed']);
    expect(shownWith({ ...withDeal, cash: '0' })).toEqual(['ladder', 'deal', 'cashNeed', 'cashVerdict']);
    expect(planOf(withDeal).business.openingCashAmount).toBeNull();
  });

  test('three numbers make the same ladder as seven: no stand-in reaches it', () => {
    expect(ladderOf(planOf(ladderOnly)).contribution.toString()).toBe(
      ladderOf(planOf(seven)).contribution.toString(),
    );
  });

  test.each([
    [{ retailerMarginRate: '1' }, 'retailerMarginRate', 'below 100 %'],
    [{ shelfPrice: '0' }, 'shelfPrice', 'above 0'],
    [{ stores: 0 }, 'stores', 'from 1'],
    [{ unitsPerStoreWeek: '0' }, 'unitsPerStoreWeek', 'above 0'],
    [{ landedPerUnit: '-1' }, 'landedPerUnit', 'from 0'],
    [{ cash: 'lots' }, 'cash', 'an amount'],
    [{ shelfPrice: null }, 'shelfPrice', 'as on the tag'],
  ])('%j is refused by name', (change, path, words) => {
    const made = quickPlan({
      seven: { ...seven, ...change },
      region: us,
      startDate: '2026-03-02',
      planId: 'quick',
    });
    expect(made.ok).toBe(false);
    if (made.ok) return;
    expect(made.problems.map((problem) => problem.path)).toEqual([path]);
    expect(made.problems.map(sentence).join()).toContain(words);
  });
});

describe('back again', () => {
  test.each([true, false])('the numbers are read back as typed (distributor: %s)', (distributor) => {
    const numbers = { ...seven, distributor, freeFill: distributor };
    expect(sevenOf(planOf(numbers))).toEqual(numbers);
  });

  test('a plan of another shape holds more than seven numbers say', () => {
    const plan = planOf(seven);
    const [account] = plan.accounts;
    if (!account) throw new Error('one account');
    expect(sevenOf({ ...plan, accounts: [account, { ...account, id: 'second' }] })).toBeNull();
    expect(sevenOf({ ...plan, accounts: [{ ...account, slotting: null }] })).toBeNull();
    const list = { by: 'price' as const, amount: '3' };
    const shelf = { by: 'solved' as const };
    const turned = account.listings.map((each) => ({ ...each, list, shelf }));
    expect(sevenOf({ ...plan, accounts: [{ ...account, listings: turned }] })).toBeNull();
  });

  test('other numbers keep what was typed beside them; defaults that follow from them follow', () => {
    const path = 'accounts/chain/terms/paymentDays';
    const typed = setAt(planOf(seven), path, 60);
    const basis = typed.basis.filter((note) => note.path !== path);
    const changed = withSeven(
      { ...typed, basis },
      { ...seven, stores: 350, shelfPrice: '5.99', distributor: true },
    );
    if (!changed.ok) throw new Error('sound numbers');
    expect(getAt(changed.value, path)).toBe(60);
    expect(getAt(changed.value, 'accounts/chain/waves/first/doorsPerWeek')).toBe(44);
    expect(getAt(changed.value, SEVEN_PATHS.stores)).toBe(350);
    const fresh = planOf({ ...seven, stores: 350, shelfPrice: '5.99', distributor: true });
    const byPath = (plan: Plan) =>
      plan.basis.filter((note) => note.path !== path).sort((a, b) => (a.path < b.path ? -1 : 1));
    expect(byPath(changed.value)).toEqual(byPath(fresh));
    expect(setAt(changed.value, path, 30)).toEqual({
      ...fresh,
      name: changed.value.name,
      basis: changed.value.basis,
    });
    expect(checkRules(changed.value)).toEqual([]);
  });

  test('a default that was typed over stays typed', () => {
    const path = 'accounts/chain/waves/first/doorsPerWeek';
    const plan = setAt(planOf(seven), path, 5);
    const changed = withSeven(
      { ...plan, basis: plan.basis.filter((note) => note.path !== path) },
      { ...seven, stores: 350 },
    );
    expect(changed.ok && getAt(changed.value, path)).toBe(5);
  });
});
