/**
 * Commands about the roll-out as it really goes: a part is added with notes about what in it is guessed, taken out with
 * them; a production line goes with its references, a listing with the promotions that are of nothing else.
 */
import { expect, test } from 'vitest';
import { removeListing } from '../../src/app/commands/accounts.ts';
import { addLineFor, removeLine } from '../../src/app/commands/business.ts';
import { addPart, addPlace, noteAt, setField } from '../../src/app/commands/field.ts';
import { removeItem } from '../../src/app/commands/items.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { getAt } from '../../src/domain/plan/path.ts';
import { type Outcome, sentence } from '../../src/domain/problems.ts';
import { checkPlan } from '../../src/plan-format/gate.ts';
import { examplePlan } from '../storage/store.ts';

const whole = examplePlan('whole');

function sound(outcome: Outcome<Plan>): Plan {
  const checked = outcome.ok ? checkPlan(outcome.value) : outcome;
  if (!checked.ok) throw new Error(checked.problems.map(sentence).join(' '));
  return checked.value;
}

const guess = (path: string) => ({ path, kind: 'guess' as const, source: 'Ask.', low: null, high: null });

test('a part comes with its notes, and goes with them', () => {
  const [account] = whole.accounts;
  const path = `accounts/${account?.id}/service`;
  const value = { leastFillRate: '0.95', chargeRate: '0.03', lagWeeks: 4 };
  const without = sound(addPart(whole, { path, value: null, notes: [] }));
  const added = sound(addPart(without, { path, value, notes: [guess(`${path}/chargeRate`)] }));
  expect(getAt(added, path)).toEqual(value);
  expect(noteAt(added, `${path}/chargeRate`)?.kind).toBe('guess');
  const out = sound(addPart(added, { path, value: null, notes: [] }));
  expect(out).toEqual(without);
});

test('a place comes with its notes', () => {
  const [item] = whole.items;
  const listPath = `items/${item?.id}/supply/priceBreaks`;
  const place = { id: 'many', fromUnits: 100_000, goodsFactor: '0.9' };
  const path = `${listPath}/many/goodsFactor`;
  const added = sound(addPlace(whole, { listPath, index: 0, place, notes: [guess(path)] }));
  expect(noteAt(added, path)?.source).toBe('Ask.');
});

test('typing one factor of a guessed season drops the note about all of them', () => {
  const [item] = whole.items;
  const path = `items/${item?.id}/seasonFactors`;
  const value = Array.from({ length: 52 }, () => '1');
  const seasonal = sound(addPart(whole, { path, value, notes: [guess(path)] }));
  expect(noteAt(seasonal, path)?.kind).toBe('guess');
  expect(noteAt(sound(setField(seasonal, { path: `${path}/27`, value: '1.3' })), path)).toBeNull();
});

test('a new line is made for a product, and what was made on it is free again once it is taken out', () => {
  const [item] = whole.items;
  const path = `items/${item?.id}/supply/line`;
  const line = { id: 'press', name: 'Press', hoursPerShift: 40, shifts: 2, steps: [] };
  const place = { unitsPerHour: 500, yieldRate: '0.98', hoursShare: null };
  const notes = [guess(`${path}/unitsPerHour`)];
  const before = sound(setField(whole, { path, value: null }));
  const added = sound(addLineFor(before, { line, itemId: item?.id ?? '', place, notes }));
  expect(getAt(added, path)).toEqual({ ...place, lineId: 'press' });
  expect(sound(removeLine(added, { path: 'business/lines/press' }))).toEqual(before);
});

test('a listing, or a product, takes its own promotions along and leaves those of others', () => {
  const account = whole.accounts.find(({ listings }) => listings.length > 1);
  const [first, second] = account?.listings ?? [];
  if (!account || !first || !second) throw new Error('no account of two items in the example');
  const blank = {
    label: 'Half off',
    fromWeek: 20,
    weeks: 2,
    depthRate: '0.1',
    fundedShare: '1',
    fundedBy: 'scanBack' as const,
    buyInWeeks: 0,
    lagWeeks: 4,
    liftRate: '0.5',
    sisterShare: '0',
    dipShare: '0',
    dipWeeks: 0,
  };
  const promotions = [
    { ...blank, id: 'own', itemIds: [first.itemId] },
    { ...blank, id: 'both', itemIds: [first.itemId, second.itemId] },
    { ...blank, id: 'all', itemIds: null },
  ];
  const path = `accounts/${account.id}/promotions`;
  const notes = [...whole.basis, guess(`${path}/own/liftRate`)];
  const plan = sound({
    ok: true,
    value: { ...(setField(whole, { path, value: promotions }) as { value: Plan }).value, basis: notes },
  });
  const left = sound(removeListing(plan, { accountId: account.id, itemId: first.itemId }));
  const ids = (getAt(left, path) as Plan['accounts'][number]['promotions']).map(({ id, itemIds }) => [
    id,
    itemIds,
  ]);
  expect(ids).toEqual([
    ['both', [second.itemId]],
    ['all', null],
  ]);
  expect(noteAt(left, `${path}/own/liftRate`)).toBeNull();
  const alone = { ...plan, accounts: plan.accounts.filter(({ id }) => id === account.id) };
  const gone = sound(removeItem(sound({ ok: true, value: alone }), { itemId: first.itemId }));
  expect(getAt(gone, path)).toEqual(getAt(left, path));
});
