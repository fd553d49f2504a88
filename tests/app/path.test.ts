/** Paths: ids stand for places, indexes are accepted, and setting what was got changes nothing (on every field of a plan). */
import { describe, expect, test } from 'vitest';
import { getAt, hasAt, insertAt, isUnder, pathOfKeys, removeAt, setAt } from '../../src/domain/plan/path.ts';
import { accepts, fieldNamesAt } from '../../src/domain/plan/schema-at.ts';
import { examplePlan } from '../storage/store.ts';

const whole = examplePlan('whole');

describe('finding', () => {
  test.each([
    ['name', 'Every part filled'],
    ['accounts/corner/listings/tea/unitsPerStoreWeek', '6'],
    ['accounts/0/listings/0/unitsPerStoreWeek', '6'],
    ['accounts/corner/hands/wholesaler/rule/rate', '0.204'],
    ['accounts/gift/cutWeek', 48],
    ['business/openingBooks/loans/l1/yearlyRate', '0.085'],
    ['items/tea/seasonFactors/51', '1.6'],
    ['accounts/corner/cutWeek', null],
  ])('%s', (path, value) => {
    expect(getAt(whole, path)).toBe(value);
    expect(hasAt(whole, path)).toBe(true);
  });

  test.each([
    'nobody',
    'accounts/nobody',
    'accounts/99',
    'accounts/-1',
    'accounts/1.0',
    'accounts/length',
    'accounts/corner/name/length',
    'accounts/corner/constructor',
    '__proto__',
    'items/tea/seasonFactors/52',
    'name/',
  ])('%s is nowhere', (path) => {
    expect(getAt(whole, path)).toBeUndefined();
  });

  test('an id goes before an index', () => {
    const numbered = {
      list: [
        { id: '1', at: 'first' },
        { id: '0', at: 'second' },
      ],
    };
    expect(getAt(numbered, 'list/0/at')).toBe('second');
    expect(getAt(numbered, 'list/1/at')).toBe('first');
  });
});

test('setting what was got gives an equal plan, on every field; setting another changes that alone', () => {
  const paths = pathsOf(whole, []).map((keys) => pathOfKeys(whole, keys));
  expect(new Set(paths).size).toBe(paths.length);
  expect(paths.length).toBeGreaterThan(400);
  for (const path of paths) {
    expect(setAt(whole, path, getAt(whole, path))).toEqual(whole);
    if (typeof getAt(whole, path) === 'object') continue; // a place's own path goes with its id
    const marked = setAt(whole, path, 'marked');
    expect(getAt(marked, path)).toBe('marked');
    expect(setAt(marked, path, getAt(whole, path))).toEqual(whole);
  }
});

test('what lies beside the path is shared', () => {
  const plan = setAt(whole, 'accounts/corner/waves/first/doors', 61);
  expect(plan.items).toBe(whole.items);
  expect(plan.accounts[1]).toBe(whole.accounts[1]);
  expect(plan.accounts[0]?.hands).toBe(whole.accounts[0]?.hands);
  expect(plan.accounts[0]?.waves[1]).toBe(whole.accounts[0]?.waves[1]);
});

test('places are put in and taken out; what is no list or no place throws', () => {
  const place = { id: 'x', label: 'X', amountPerWeek: '1', fromWeek: 0, untilWeek: null };
  const plan = insertAt(whole, 'business/overheads', 1, place);
  expect(plan.business.overheads.map(({ id }) => id)).toEqual(['rent', 'x', 'helper']);
  expect(removeAt(plan, 'business/overheads/x')).toEqual(whole);
  expect(() => insertAt(whole, 'name', 0, place)).toThrow('not a list');
  expect(() => removeAt(whole, 'business/overheads/x')).toThrow('no place');
  expect(() => removeAt(whole, 'name')).toThrow('not a place');
  expect(() => setAt(whole, 'business/nothing', 1)).toThrow('no field');
});

test('an index names a place whose id is shared, missing or no segment', () => {
  const plan = { list: [{ id: 'a' }, { id: 'a' }, { id: 'b/c' }, {}, { id: 'd' }] };
  const paths = [0, 1, 2, 3, 4].map((index) => pathOfKeys(plan, ['list', index, 'id']));
  expect(paths).toEqual(['list/0/id', 'list/1/id', 'list/2/id', 'list/3/id', 'list/d/id']);
});

test('under means at or below, by whole segments', () => {
  expect(isUnder('accounts/corner/terms', 'accounts/corner')).toBe(true);
  expect(isUnder('accounts/corner', 'accounts/corner')).toBe(true);
  expect(isUnder('accounts/corner-2', 'accounts/corner')).toBe(false);
  expect(isUnder('anything', '')).toBe(true);
});

describe('the schema at a path', () => {
  test.each([
    ['accounts/corner/terms/paymentDays', 45, true],
    ['accounts/corner/terms/paymentDays', 400, false],
    ['accounts/corner/terms/earlyDiscount', null, true],
    ['accounts/corner/terms/earlyDiscount/rate', '1', false],
    ['accounts/corner/hands/wholesaler/rule/rate', '0.3', true],
    ['accounts/corner/hands/shop/rule/rate', '3', true],
    ['accounts/corner/allowances/scan/amountPerUnit', '0.5', true],
    ['accounts/corner/allowances/spoils/amountPerUnit', '0.5', false],
    ['business/funding/bank/feeAmount', '-1', false],
    ['items/tea/seasonFactors/3', '1.2', true],
    ['nowhere', 1, false],
  ])('%s takes %j: %s', (path, value, taken) => {
    expect(accepts(whole, path, value)).toBe(taken);
  });

  test('knows the fields of an object, of a rule as it is stated', () => {
    expect(fieldNamesAt(whole, 'accounts/corner/ramp')).toEqual(['startRate', 'weeks']);
    expect(fieldNamesAt(whole, 'accounts/kiosk/hands/kiosk/rule')).toEqual(['by', 'amount', 'per']);
    expect(fieldNamesAt(whole, 'name')).toEqual([]);
  });
});

type Key = string | number;

/** Every field but ids: a place whose id is set anew is at another path. */
function pathsOf(value: unknown, keys: readonly Key[]): Key[][] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value)
    .filter(([name]) => name !== 'id' && name !== 'itemId')
    .flatMap(([name, each]) => {
      const here = [...keys, Array.isArray(value) ? Number(name) : name];
      return [here, ...pathsOf(each, here)];
    });
}
