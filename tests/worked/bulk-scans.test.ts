/**
 * Scans pasted or chosen as a file: what they would change, store by store, and every kind of bad row with its line and
 * column. The plan is one chain that lists tea; expected values stand beside the text they come from.
 */
import { describe, expect, test } from 'vitest';
import { problemLine, readBulk, writeBulk } from '../../src/domain/bulk/index.ts';
import type { BulkReading } from '../../src/domain/bulk/types.ts';
import { plainLook } from '../../src/domain/money/look.ts';
import type { Plan, Scan } from '../../src/domain/plan/index.ts';
import { setAt } from '../../src/domain/plan/path.ts';
import { NO_EVIDENCE } from '../../src/domain/plan/plainly.ts';
import { checkPlan } from '../../src/plan-format/check.ts';
import { anItem, aPlan } from '../support/builders.ts';

const look = plainLook({ currency: 'USD', minorDigits: 2 });

const hill: Scan = {
  id: 'hill',
  itemId: 'tea',
  accountId: 'corner',
  store: 'Hill Street',
  firstDate: '2025-10-06',
  opened: true,
  units: [12, null, 7],
  displayWeeks: [2],
  priceWeeks: [],
};
const plan = aPlan({ promise: { ...NO_EVIDENCE, scans: [hill] } });

const read = (text: string, from: Plan = plan): BulkReading =>
  readBulk({ table: 'scans', text, plan: from, look });
const said = (reading: BulkReading) => reading.problems.map(problemLine);
const changed = ({ changes }: BulkReading) =>
  changes.map(({ where, what, before, after }) => `${where}, ${what}: ${before} -> ${after}`);

function scansAfter(reading: BulkReading): Scan[] {
  expect(said(reading)).toEqual([]);
  const next = reading.fields.reduce((made, { path, value }) => setAt(made, path, value), plan);
  expect(checkPlan(next).ok).toBe(true);
  return next.promise.scans;
}

test('what was sold can’t have been sold after today; a week not seen may lie ahead', () => {
  const text = 'store,week,units\nMill Lane,2025-11-03,9\nMill Lane,2025-11-10,8\nMill Lane,2025-11-17,\n';
  const on = (today: string) => said(readBulk({ table: 'scans', text, plan, look, today }));
  expect(on('2025-11-10')).toEqual([]);
  expect(on('2025-11-09')).toEqual([
    'Line 3, column 2 (week): got “2025-11-10”; expected a week that has begun by today, 2025-11-09.',
  ]);
});

describe('weeks of stores', () => {
  test('a new store: weeks not named are not seen, a zero is a zero, a display is flagged', () => {
    const reading = read(
      'store,week,units,on,opening\nMill Lane,2025-11-03,9,,yes\nMill Lane,2025-11-10,0,,\nMill Lane,2025-11-24,14,display,\n',
    );
    expect(scansAfter(reading)[1]).toEqual({
      id: 'store-2',
      itemId: 'tea',
      accountId: null,
      store: 'Mill Lane',
      firstDate: '2025-11-03',
      opened: true,
      units: [9, 0, null, 14],
      displayWeeks: [3],
      priceWeeks: [],
    });
    expect(reading.notes).toEqual(['Mill Lane: a new store, 4 weeks from 2025-11-03; it opened then.']);
    expect(reading.leftAlone).toEqual(['Hill Street']);
  });

  test('a store that is there: weeks named are set, before its first too; the others stay as flagged', () => {
    const reading = read(
      'store;chain;ISO week;sold\nhill street;Corner;2025-W40;5\nhill street;Corner;2025-W42;3\nHill Street;Corner;2025-W43;7\n',
    );
    expect(changed(reading)).toEqual([
      'Hill Street, Corner, 2025-09-29: – -> 5',
      'Hill Street, Corner, 2025-10-13: not seen -> 3',
    ]);
    // The week that is as it was, on display, stays so: one place later now.
    expect(reading.same).toBe(1);
    expect(scansAfter(reading)).toEqual([
      { ...hill, firstDate: '2025-09-29', units: [5, 12, 3, 7], displayWeeks: [3] },
    ]);
  });

  test('without its chain it is another store', () => {
    expect(
      scansAfter(read('store,week,units\nHill Street,2025-10-06,4')).map(({ accountId }) => accountId),
    ).toEqual(['corner', null]);
  });

  test('a column a week, an empty cell is a week not seen', () => {
    const scans = scansAfter(
      read('store\t2025-11-03\t2025-11-10\t2025-11-17\nMill Lane\t4\t\t6\nHigh Row\t1\t2\t3'),
    );
    expect(scans.slice(1).map(({ store, units }) => [store, units])).toEqual([
      ['Mill Lane', [4, null, 6]],
      ['High Row', [1, 2, 3]],
    ]);
  });

  test('what the plan writes changes nothing', () => {
    const text = writeBulk({ table: 'scans', plan, look }, ',');
    expect(text.split('\r\n').slice(0, 3)).toEqual([
      'store,week,units,product,chain,on,opening',
      'Hill Street,2025-10-06,12,Tea,Corner,,yes',
      'Hill Street,2025-10-13,,Tea,Corner,,',
    ]);
    expect(read(text)).toMatchObject({ problems: [], fields: [], changes: [], same: 3 });
  });
});

describe('dates as spreadsheets write them', () => {
  const rows = (...days: string[]) =>
    read(`store,week,units\n${days.map((day) => `Mill Lane,${day},9`).join('\n')}\n`);
  const first = (reading: BulkReading) => scansAfter(reading)[1]?.firstDate;

  test('one that can only be read one way says how all are: with the day first, with the month first', () => {
    for (const mark of ['.', '/', '-']) {
      const days = ['06 10 2025', '13 10 2025', '20 10 2025'].map((day) => day.replaceAll(' ', mark));
      const reading = rows(...days);
      expect(first(reading)).toBe('2025-10-06');
      expect(reading.notes[0]).toBe(`Dates are read with the day first, as “13${mark}10${mark}2025” has it.`);
    }
    // 10/06 alone could be June: 10/13 says that it is October.
    const american = rows('10/06/2025', '10/13/2025');
    expect(first(american)).toBe('2025-10-06');
    expect(american.notes[0]).toContain('month first, as “10/13/2025”');
    expect(first(rows('6.6.2025', '2025-06-13'))).toBe('2025-06-06');
    expect(first(rows('2025/10/6'))).toBe('2025-10-06');
  });

  test('where nothing says which, or rows say different things, each is refused with what it could be', () => {
    expect(said(rows('3/11/2025'))).toEqual([
      'Line 2, column 2 (week): got “3/11/2025”; expected a date that reads one way alone, like 2025-10-06: this could be 2025-11-03 or 2025-03-11.',
    ]);
    const order = 'expected day and month in one order in all of the table, or dates like 2025-10-06.';
    expect(said(rows('13/10/2025', '10/20/2025'))).toEqual([
      `Line 2, column 2 (week): got “13/10/2025”; ${order}`,
      `Line 3, column 2 (week): got “10/20/2025”; ${order}`,
    ]);
    expect(said(rows('31/11/2025', '13.13.2025', '6/10/25'))).toHaveLength(3);
    expect(rows('31/11/2025').fields).toEqual([]);
  });
});

test('bad rows, each with its line and column, and nothing to take over without mending them', () => {
  const reading = read(
    [
      'store,week,units,chain,on,opening',
      'Mill Lane,41,9,,,',
      'Mill Lane,06/10/2025,9,,,',
      'Mill Lane,2025-W54,9,,,',
      'Mill Lane,2025-11-03,nine,,,',
      'Mill Lane,2025-11-03,-2,,,',
      ',2025-11-03,9,,,',
      'Mill Lane,2025-11-03,9,Cornr,,',
      'Mill Lane,2025-11-03,9,,shelf,',
      'Mill Lane,2025-11-03,9,,,maybe',
      'High Row,2025-11-03,9,,,',
      'High Row,2025-11-03,8,,,',
      'High Row,2025-11-05,8,,,',
      'High Row,2025-11-10,8,,,yes',
    ].join('\n'),
  );
  const day = 'expected the first day of a week, like 2025-10-06, or its ISO week, like 2025-W41.';
  const units = 'expected a whole number of units, nothing where the week was not seen, from 0 to 100000.';
  expect(said(reading)).toEqual([
    `Line 2, column 2 (week): got “41”; ${day}`,
    'Line 3, column 2 (week): got “06/10/2025”; expected a date that reads one way alone, like 2025-10-06: this could be 2025-10-06 or 2025-06-10.',
    `Line 4, column 2 (week): got “2025-W54”; ${day}`,
    `Line 5, column 3 (units): got “nine”; ${units}`,
    `Line 6, column 3 (units): got “-2”; ${units}`,
    'Line 7, column 1 (store): got nothing; expected the name of a store, of at most 120 characters.',
    'Line 8, column 4 (chain): got “Cornr”; expected the name of a chain of the plan; the nearest is “Corner”.',
    'Line 9, column 5 (on): got “shelf”; expected “display”, “price”, “both”, or nothing.',
    'Line 10, column 6 (opening): got “maybe”; expected “yes” in the week a store opened, or nothing.',
    'Line 12, column 2 (week): got “2025-11-03”; expected a week once for a store.',
    'Line 13, column 2 (week): got “2025-11-05”; expected whole weeks from 2025-11-03, the first day of another week of this store.',
    'Line 14, column 6 (opening): got “yes”; expected an opening in the store’s first week, 2025-11-03.',
  ]);
});

test('with two products the table has to say which', () => {
  const two = aPlan({ items: [anItem(), anItem({ id: 'mint', name: 'Mint' })] });
  expect(said(read('store,week,units\nHigh Row,2025-11-03,9', two))).toEqual([
    'Line 2: got nothing; expected the name of a product of the plan.',
  ]);
  const reading = read('store,week,units,product\nHigh Row,2025-11-03,9,mint', two);
  expect(reading.fields[0]?.value).toMatchObject([{ itemId: 'mint', units: [9] }]);
});

test('more weeks than a store can have are refused as a whole', () => {
  expect(said(read('store,week,units\nHigh Row,2020-01-06,9\nHigh Row,2025-01-06,9'))).toEqual([
    'The table: got 262 weeks of High Row, from 2020-01-06; expected at most 156 weeks.',
  ]);
});
