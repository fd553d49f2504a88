/**
 * Tables pasted or chosen as files: what they would change, field by field, and every kind of bad row with its line and
 * column. The plan is two chains that list tea and honey; expected values stand beside the text they come from.
 */
import { describe, expect, test } from 'vitest';
import { problemLine, readBulk, separatorFor, writeBulk } from '../../src/domain/bulk/index.ts';
import type { BulkReading, BulkTable } from '../../src/domain/bulk/types.ts';
import { doorsByWeek, wavesOf } from '../../src/domain/bulk/waves.ts';
import { plainLook } from '../../src/domain/money/look.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { aHand, aListing, anAccount, anItem, aPlan, aWave } from '../support/builders.ts';

const look = plainLook({ currency: 'USD', minorDigits: 2 });
const commas = { ...look, decimal: ',', group: '.' };

const tea = anItem();
const honey = anItem({ id: 'honey', name: 'Honey, dark' });
const plan = aPlan({
  horizonWeeks: 104,
  items: [tea, honey],
  accounts: [
    anAccount({ listings: [aListing(), aListing({ itemId: 'honey' })] }),
    anAccount({ id: 'fern', name: 'Fern & Co', waves: [], listings: [aListing()] }),
  ],
});

const read = (table: BulkTable, text: string, more: { plan?: Plan; look?: typeof look } = {}) =>
  readBulk({ table, text, plan, look, ...more });
const said = (reading: BulkReading) => reading.problems.map(problemLine);
const changed = ({ changes }: BulkReading) =>
  changes.map(({ where, what, before, after }) => `${where}, ${what}: ${before} -> ${after}`);

describe('doors by account and week', () => {
  test('weeks named are set, the others stay; 45 a week with a last week of fewer is one opening', () => {
    const reading = read(
      'doors',
      'account,week,doors\r\nFern & Co,10,45\r\nfern & co,11,45\r\nfern,12,20\r\n',
    );
    expect(said(reading)).toEqual([]);
    expect(changed(reading)).toEqual([
      'Fern & Co, week 10 (2026-05-11): 0 -> 45',
      'Fern & Co, week 11 (2026-05-18): 0 -> 45',
      'Fern & Co, week 12 (2026-05-25): 0 -> 20',
    ]);
    expect(reading.fields).toEqual([
      { path: 'accounts/fern/waves', value: [{ id: 'week-10', openWeek: 10, doors: 110, doorsPerWeek: 45 }] },
    ]);
    expect(reading.leftAlone).toEqual(['Corner']);
    expect(reading.notes).toEqual([
      'Fern & Co: 0 doors in 0 openings become 110 doors in 1 opening, 1 of them new.',
    ]);
  });

  test('a week more beside an opening that stays: it keeps its id', () => {
    const reading = read('doors', 'chain\tweek\tstores\nCorner\t30\t12');
    expect(reading.fields[0]?.value).toEqual([
      aWave(),
      { id: 'week-30', openWeek: 30, doors: 12, doorsPerWeek: 12 },
    ]);
  });

  test('zero doors take an opening out; the same number changes nothing; an empty cell says nothing', () => {
    expect(read('doors', 'account,week,doors\nCorner,4,0').fields).toEqual([
      { path: 'accounts/corner/waves', value: [] },
    ]);
    const same = read('doors', 'account,week,doors\nCorner,4,10\nFern & Co,,');
    expect(same).toMatchObject({ fields: [], changes: [], same: 1, problems: [] });
  });

  test('a column a week, a column a chain, and days instead of weeks', () => {
    const byWeek = read('doors', 'account;9;week 10\nFern & Co;12;8');
    const byChain = read('doors', 'week;Corner;Fern & Co\n9;;12\n10;;8');
    const byDay = read('doors', 'account,date,doors\nFern & Co,2026-05-04,12\nFern & Co,2026-05-17,8');
    for (const reading of [byWeek, byChain, byDay]) {
      expect(said(reading)).toEqual([]);
      expect(reading.fields).toEqual([
        { path: 'accounts/fern/waves', value: [{ id: 'week-9', openWeek: 9, doors: 20, doorsPerWeek: 12 }] },
      ]);
    }
    expect(byWeek.columns.map(({ use }) => use)).toEqual(['chain', 'doors of one week', 'doors of one week']);
  });

  test('bad rows, each with its line and column, and nothing to take over without mending them', () => {
    const text = [
      'account,week,doors,colour',
      'Cornr,9,12,red',
      'Corner,wk9,12,',
      'Corner,104,12,',
      'Corner,0,12,',
      'Corner,9,many,',
      'Corner,9.5,1.5,',
      'Corner,20,5,',
      'Corner,20,6,',
      ',21,5,',
      'Corner,22,5,,and more',
    ].join('\n');
    expect(said(read('doors', text))).toEqual([
      'Line 2, column 1 (account): got “Cornr”; expected the name of a chain of the plan; the nearest is “Corner”.',
      'Line 3, column 2 (week): got “wk9”; expected a week from 1 to 103.',
      'Line 4, column 2 (week): got “104”; expected a week from 1 to 103.',
      'Line 5, column 2 (week): got “0”; expected a week from 1 to 103.',
      'Line 6, column 3 (doors): got “many”; expected a whole number of doors from 0 to 100000.',
      'Line 7, column 2 (week): got “9.5”; expected a week from 1 to 103.',
      'Line 7, column 3 (doors): got “1.5”; expected a whole number of doors from 0 to 100000.',
      'Line 9, column 2 (week): got “20”; expected a week once a chain; line 8 has this one already.',
      'Line 10, column 1 (account): got nothing; expected the name of a chain of the plan.',
      'Line 11, column 5: got “and more”; expected nothing behind the last of 4 columns; a cell with a separator in it is put in quotes.',
    ]);
  });

  test('behind a depot that orders in week 2 at first, 3 weeks from us and 1 from the shelf: week 7 on', () => {
    // Ordered at the end of week 2, it is in the depot in week 6, on the shelf in week 7.
    const depot = {
      keptBy: 'chain' as const,
      transitWeeks: 3,
      openingWeeks: 0,
      fillWeeks: 2,
      coverWeeks: 2,
      minimumOrderUnits: 0,
      orderIn: 'case' as const,
    };
    const ordering = { everyWeeks: 1, firstWeek: 2, daily: false, orderIn: 'case' as const };
    const far = aPlan({ accounts: [anAccount({ waves: [], depot, ordering })] });
    expect(said(read('doors', 'chain,week,doors\nCorner,6,1', { plan: far }))).toEqual([
      'Line 2, column 2 (week): got “6”; expected a week from 7 to 51.',
    ]);
    expect(read('doors', 'chain,week,doors\nCorner,7,1', { plan: far }).problems).toEqual([]);
  });

  test('headings that aren’t there, or are there twice', () => {
    expect(said(read('doors', 'Corner,9,12'))).toEqual([
      'Line 1: got the headings “Corner”, “9”, “12”; expected a first line with headings, among them chain, week, doors.',
    ]);
    expect(said(read('doors', ''))).toEqual([
      'Line 1: got nothing; expected a first line with headings, among them chain, week, doors.',
    ]);
    expect(said(read('doors', 'account,week,doors,stores\nCorner,9,12,13'))).toEqual([
      'Line 1, column 4: got “stores”; expected one column for doors; column 3 is one already.',
    ]);
  });

  test('two accounts of one name are told apart by id', () => {
    const twins = aPlan({ accounts: [anAccount(), anAccount({ id: 'second' })] });
    expect(said(read('doors', 'account,week,doors\nCorner,9,1', { plan: twins }))).toEqual([
      'Line 2, column 1 (account): got “Corner”; expected one chain; 2 are called so: use corner or second, or rename them.',
    ]);
    expect(read('doors', 'account,week,doors\nsecond,9,1', { plan: twins }).fields).toHaveLength(1);
  });

  test('what the plan’s own rules refuse is said before anything is taken over', () => {
    const cutPlan = aPlan({ accounts: [anAccount({ cutWeek: 5 })] });
    expect(said(read('doors', 'account,week,doors\nCorner,4,0\nCorner,9,5', { plan: cutPlan }))).toEqual([
      'accounts/corner/cutWeek: got week 5; expected a week after the first opening, week 9.',
    ]);
  });
});

describe('a price list', () => {
  test('prices, rate of sale and shelf counts; empty cells stay', () => {
    const text =
      'account,item,list price,rate of sale,facings\nCorner,Tea,2.80,7.5,\nCorner,"Honey, dark",2.6,6,3\n';
    const reading = read('prices', text);
    expect(said(reading)).toEqual([]);
    expect(changed(reading)).toEqual([
      'Corner, Tea, list price: 2.60 -> 2.80',
      'Corner, Tea, rate of sale: 6 -> 7.5',
      'Corner, Honey, dark, facings: 2 -> 3',
    ]);
    expect(reading.fields).toEqual([
      { path: 'accounts/corner/listings/tea/list', value: { by: 'price', amount: '2.80' } },
      { path: 'accounts/corner/listings/tea/unitsPerStoreWeek', value: '7.5' },
      { path: 'accounts/corner/listings/honey/facings', value: 3 },
    ]);
    expect(reading.same).toBe(2);
  });

  test('decimal commas, and what could be read two ways', () => {
    expect(changed(read('prices', 'chain;product;list\nCorner;Tea;2,80', { look: commas }))).toEqual([
      'Corner, Tea, list price: 2,60 -> 2,80',
    ]);
    const twice = read('prices', 'account,item,list price\nCorner,Tea,"1,250"');
    expect(twice.twoWays).toEqual(['1,250']);
    expect(changed(twice)).toEqual(['Corner, Tea, list price: 2.60 -> 1,250.00']);
  });

  test('a list price of a typed margin becomes a price, and says what it was', () => {
    const byMargin = aPlan({
      accounts: [anAccount({ listings: [aListing({ list: { by: 'margin', rate: '0.6' } })] })],
    });
    expect(changed(read('prices', 'account,item,list\nCorner,Tea,2.5', { plan: byMargin }))).toEqual([
      'Corner, Tea, list price: a margin of 60 % -> 2.50',
    ]);
  });

  test('bad rows', () => {
    const text = [
      'account,item,list price,shelf price,facings',
      'Corner,Te,2.8,,',
      'Fern & Co,"Honey, dark",2.8,,',
      'Corner,Tea,free,,',
      'Corner,"Honey, dark",0,4.99,0',
      'Corner,tea,2.8,,',
    ].join('\n');
    expect(said(read('prices', text))).toEqual([
      'Line 2, column 2 (item): got “Te”; expected the name of a product of the plan; the nearest is “Tea”.',
      'Line 3, column 2 (item): got “Honey, dark”; expected a product that Fern & Co lists; list it there first.',
      'Line 4, column 3 (list price): got “free”; expected an amount, like 3.40, 36000 or 36k.',
      'Line 5, column 3 (list price): got “0”; expected an amount above 0, up to 1,000,000, with at most 4 decimals, like "3.40".',
      'Line 5, column 4 (shelf price): got “4.99”; expected an empty cell: this shelf price is worked out from the other prices, until another gives way on the ladder.',
      'Line 5, column 5 (facings): got “0”; expected a whole number of facings from 1 to 1000.',
      'Line 6, column 2 (item): got “tea”; expected a product once a chain; line 4 has it already.',
    ]);
    expect(said(read('prices', 'account,item\nCorner,Tea'))).toEqual([
      'Line 1: got the headings “account”, “item”; expected a first line with headings, among them at least one of list price, shelf price, rate of sale, facings, units behind a facing, units in the back, weeks of supply, free cases a store.',
    ]);
  });
});

describe('seasonality', () => {
  test('weeks named are set, a season begins with 1 throughout; percent are read', () => {
    const reading = read('season', 'item,ISO week,factor\nTea,50,1.8\nTea,51,150 %');
    expect(said(reading)).toEqual([]);
    const factors = Array.from({ length: 52 }, () => '1');
    factors[49] = '1.8';
    factors[50] = '1.5';
    expect(reading.fields).toEqual([{ path: 'items/tea/seasonFactors', value: factors }]);
    expect(changed(reading)).toEqual([
      'Tea, ISO week 50: no season -> 1.8',
      'Tea, ISO week 51: no season -> 1.5',
    ]);
    expect(reading.leftAlone).toEqual(['Honey, dark']);
  });

  test('a column an item, pasted from a sheet', () => {
    const reading = read('season', 'Week\tTea\tHoney, dark\n1\t0.8\t1.1\n2\t0.9\t');
    expect(reading.fields.map(({ path }) => path)).toEqual([
      'items/tea/seasonFactors',
      'items/honey/seasonFactors',
    ]);
    expect(reading.columns.map(({ use }) => use)).toEqual([
      'ISO week',
      'factor of one product',
      'factor of one product',
    ]);
  });

  test('bad rows', () => {
    expect(
      said(read('season', 'item,week,factor\nTea,53,1\nTea,1,101\nTea,2,hot\nTea,3,1\nTea,3,2')),
    ).toEqual([
      'Line 2, column 2 (week): got “53”; expected an ISO week from 1 to 52.',
      'Line 3, column 3 (factor): got “101”; expected a number from 0 to 100 with at most 6 decimals; 50 % is "0.5".',
      'Line 4, column 3 (factor): got “hot”; expected a factor, like 1.2; 1 is usual.',
      'Line 6, column 2 (week): got “3”; expected a week once a product.',
    ]);
    // A heading that is no item's is said once, not once a row.
    expect(said(read('season', 'week,Tee\n1,1\n2,1'))).toEqual([
      'Line 1, column 2 (product): got “Tee”; expected the name of a product of the plan; the nearest is “Tea”.',
    ]);
  });
});

describe('doors as waves', () => {
  test.each([
    [
      'one run',
      [
        [10, 45],
        [11, 45],
        [12, 20],
      ],
      ['10: 110 at 45'],
    ],
    [
      'a step down that lasts',
      [
        [1, 5],
        [2, 3],
        [3, 3],
      ],
      ['1: 5 at 5', '2: 6 at 3'],
    ],
    [
      'a step up',
      [
        [1, 3],
        [2, 5],
      ],
      ['1: 3 at 3', '2: 5 at 5'],
    ],
    [
      'a gap',
      [
        [1, 5],
        [3, 5],
      ],
      ['1: 5 at 5', '3: 5 at 5'],
    ],
    ['none', [[1, 0]], []],
  ])('%s', (_, weeks, expected) => {
    const waves = wavesOf(new Map(weeks as [number, number][]), []);
    expect(waves.map((wave) => `${wave.openWeek}: ${wave.doors} at ${wave.doorsPerWeek}`)).toEqual(expected);
  });

  test('waves over each other add up', () => {
    const both = [aWave(), aWave({ id: 'second', openWeek: 3, doors: 5, doorsPerWeek: 2 })];
    expect([...doorsByWeek(both)].sort(([one], [other]) => one - other)).toEqual([
      [3, 2],
      [4, 12],
      [5, 1],
    ]);
  });
});

test('what is written has headings, names in quotes where needed, and the reader’s decimal mark', () => {
  expect(
    writeBulk({ table: 'prices', plan, look: commas }, separatorFor(commas)).split('\r\n').slice(0, 3),
  ).toEqual([
    'chain;product;list price;shelf price;rate of sale;facings;units behind a facing;units in the back;weeks of supply;free cases a store',
    'Corner;Tea;2,6;;6;2;6;0;1;0',
    'Corner;Honey, dark;2,6;;6;2;6;0;1;0',
  ]);
  expect(writeBulk({ table: 'doors', plan, look }, ',')).toBe(
    'chain,week,doors\r\nCorner,4,10\r\nFern & Co,,\r\n',
  );
});

test('a name that a spreadsheet would take for a formula is written with an apostrophe, and read without', () => {
  const odd = aPlan({ accounts: [anAccount({ name: '=1+1', hands: [aHand()] })] });
  const text = writeBulk({ table: 'doors', plan: odd, look }, ',');
  expect(text).toContain("'=1+1,4,10");
  expect(read('doors', text.replace(',10', ',11'), { plan: odd }).fields).toHaveLength(1);
});

test('a text far too long is not walked', () => {
  expect(said(read('doors', 'x'.repeat(5_000_001)))).toEqual([
    'The table: got 6 million characters; expected at most 5 million.',
  ]);
});
