/** Commands are pure: a plan and arguments in, a plan out, what they don't touch shared; references go with what is removed. */
import { describe, expect, test } from 'vitest';
import {
  addAccount,
  addAllowance,
  addFee,
  addHand,
  addListing,
  addWave,
  removeAccount,
  removeAllowance,
  removeFee,
  removeHand,
  removeListing,
  removeWave,
} from '../../src/app/commands/accounts.ts';
import { addFunding, addOverhead, removeFunding, removeOverhead } from '../../src/app/commands/business.ts';
import {
  addPlace,
  movePlace,
  noteAt,
  removePlace,
  setField,
  setFields,
} from '../../src/app/commands/field.ts';
import { addCostLine, addItem, removeCostLine, removeItem } from '../../src/app/commands/items.ts';
import { duplicatePlan, renamePlan } from '../../src/app/commands/plans.ts';
import { lockRung, solveFor, unlockRung } from '../../src/app/commands/rungs.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { type Outcome, sentence } from '../../src/domain/problems.ts';
import { checkPlan } from '../../src/plan-format/gate.ts';
import { examplePlan } from '../storage/store.ts';
import { aHand, aListing, anAccount, anItem } from '../support/builders.ts';

const whole = examplePlan('whole');
const frozen = JSON.stringify(whole);

function made(outcome: Outcome<Plan>): Plan {
  if (!outcome.ok) throw new Error(outcome.problems.map(sentence).join(' '));
  expect(JSON.stringify(whole)).toBe(frozen);
  return outcome.value;
}

/** The plan a command makes, which has to be sound too. */
function sound(outcome: Outcome<Plan>): Plan {
  const plan = made(outcome);
  const checked = checkPlan(plan);
  if (!checked.ok) throw new Error(checked.problems.map(sentence).join(' '));
  return plan;
}

function accountOf(plan: Plan, id: string) {
  const account = plan.accounts.find((each) => each.id === id);
  if (!account) throw new Error(`no account ${id}`);
  return account;
}

describe('added and removed again, the plan is the same', () => {
  const wave = { id: 'third', openWeek: 40, doors: 5, doorsPerWeek: 5 };
  const fee = { id: 'demo', label: 'Demo day', amount: '200', per: 'chain' as const };
  const allowance = { kind: 'spoils' as const, id: 'more', rate: '0.01' };
  const overhead = { id: 'phone', label: 'Phone', amountPerWeek: '10', fromWeek: 0, untilWeek: null };
  const funding = { kind: 'equity' as const, id: 'aunt', label: 'Aunt', week: 2, amount: '500' };
  const costLine = {
    id: 'label',
    label: 'Label',
    family: 'goods' as const,
    rule: { by: 'unit' as const, amount: '0.02' },
  };

  test.each<readonly [string, (plan: Plan) => Outcome<Plan>, (plan: Plan) => Outcome<Plan>]>([
    [
      'account',
      (plan) => addAccount(plan, { account: anAccount({ id: 'new' }), notes: [] }),
      (plan) => removeAccount(plan, { accountId: 'new' }),
    ],
    [
      'hand',
      (plan) =>
        addHand(plan, {
          accountId: 'corner',
          hand: aHand({ id: 'agent', rule: { by: 'margin', rate: '0.05' } }),
          index: 1,
        }),
      (plan) => removeHand(plan, { accountId: 'corner', handId: 'agent' }),
    ],
    [
      'listing',
      (plan) => addListing(plan, { accountId: 'kiosk', listing: aListing({ itemId: 'honey' }) }),
      (plan) => removeListing(plan, { accountId: 'kiosk', itemId: 'honey' }),
    ],
    [
      'wave',
      (plan) => addWave(plan, { accountId: 'corner', wave }),
      (plan) => removeWave(plan, { accountId: 'corner', waveId: 'third' }),
    ],
    [
      'allowance',
      (plan) => addAllowance(plan, { accountId: 'corner', allowance }),
      (plan) => removeAllowance(plan, { accountId: 'corner', allowanceId: 'more' }),
    ],
    [
      'fee',
      (plan) => addFee(plan, { accountId: 'corner', fee }),
      (plan) => removeFee(plan, { accountId: 'corner', feeId: 'demo' }),
    ],
    [
      'item',
      (plan) => addItem(plan, { item: anItem({ id: 'jam' }), notes: [] }),
      (plan) => removeItem(plan, { itemId: 'jam' }),
    ],
    [
      'cost line',
      (plan) => addCostLine(plan, { itemId: 'tea', costLine }),
      (plan) => removeCostLine(plan, { itemId: 'tea', costLineId: 'label' }),
    ],
    [
      'overhead',
      (plan) => addOverhead(plan, { overhead }),
      (plan) => removeOverhead(plan, { overheadId: 'phone' }),
    ],
    [
      'funding',
      (plan) => addFunding(plan, { funding }),
      (plan) => removeFunding(plan, { fundingId: 'aunt' }),
    ],
  ])('%s', (_, add, remove) => {
    const added = sound(add(whole));
    expect(added).not.toEqual(whole);
    expect(sound(remove(added))).toEqual(whole);
  });
});

describe('fields', () => {
  test('one is set, its note and those below it are dropped, the rest is shared', () => {
    const path = 'accounts/corner/terms/latenessDays';
    expect(noteAt(whole, path)?.kind).toBe('guess');
    const plan = sound(setField(whole, { path, value: 5 }));
    expect(noteAt(plan, path)).toBeNull();
    expect(plan.basis).toHaveLength(whole.basis.length - 1);
    expect(plan.items).toBe(whole.items);
    const terms = sound(
      setField(whole, { path: 'accounts/corner/terms', value: { ...accountOf(whole, 'corner').terms } }),
    );
    expect(noteAt(terms, path)).toBeNull();
  });

  test('several are one plan', () => {
    const changes = [
      { path: 'name', value: 'Both' },
      { path: 'accounts/1/waves/all/doors', value: 40 },
    ];
    const plan = sound(setFields(whole, { changes }));
    expect([plan.name, accountOf(plan, 'gift').waves[0]?.doors]).toEqual(['Both', 40]);
  });

  test('a field that is not there throws', () => {
    expect(() => setField(whole, { path: 'accounts/nobody/name', value: 'x' })).toThrow('no field');
    expect(() => setField(whole, { path: 'accounts/corner/constructor', value: 'x' })).toThrow('no field');
  });

  test('a place is added where it belongs, moved and removed', () => {
    const place = { id: 'mid', openWeek: 20, doors: 5, doorsPerWeek: 5 };
    const added = sound(addPlace(whole, { listPath: 'accounts/corner/waves', index: 1, place }));
    expect(accountOf(added, 'corner').waves.map(({ id }) => id)).toEqual(['first', 'mid', 'second']);
    const moved = sound(movePlace(added, { path: 'accounts/corner/waves/mid', toIndex: 2 }));
    expect(accountOf(moved, 'corner').waves.map(({ id }) => id)).toEqual(['first', 'second', 'mid']);
    expect(sound(removePlace(moved, { path: 'accounts/corner/waves/mid' }))).toEqual(whole);
  });
});

describe('what is removed takes its references along', () => {
  test('an account takes the notes about it', () => {
    const plan = sound(removeAccount(whole, { accountId: 'corner' }));
    expect(plan.basis.map(({ path }) => path)).toEqual(['items/tea/caseUnits']);
  });

  test('an item takes its listings and notes', () => {
    const { kiosk: _, ...others } = { kiosk: 0, corner: 1, gift: 1 };
    const without = sound(removeAccount(whole, { accountId: 'kiosk' }));
    const plan = sound(removeItem(without, { itemId: 'tea' }));
    expect(plan.items.map(({ id }) => id)).toEqual(['honey']);
    expect(plan.accounts.map(({ listings }) => listings.map(({ itemId }) => itemId))).toEqual(
      Object.keys(others).map(() => ['honey']),
    );
    expect(plan.basis.map(({ path }) => path)).not.toContain('items/tea/caseUnits');
  });

  test('an item that is all an account lists stays, and says which account', () => {
    const outcome = removeItem(whole, { itemId: 'tea' });
    expect(!outcome.ok && outcome.problems.map(sentence)).toEqual([
      'accounts/kiosk/listings: got the removal of the only item it lists; expected another listed item first.',
    ]);
  });

  test('a cost line is no base any more; a share of it alone goes too', () => {
    const plan = sound(removeCostLine(whole, { itemId: 'tea', costLineId: 'carton' }));
    const duty = plan.items[0]?.costLines.find(({ id }) => id === 'duty');
    expect(duty?.rule).toMatchObject({ of: ['goods'] });
    // A deposit is a part of what the goods cost: with one paid, they can't come to cost nothing.
    const items = plan.items.map((item) => ({ ...item, opening: { ...item.opening, onOrder: [] } }));
    const bare = sound(removeCostLine({ ...plan, items }, { itemId: 'tea', costLineId: 'goods' }));
    expect(bare.items[0]?.costLines.map(({ id }) => id)).toEqual(['pallet', 'truck']);
  });

  test('a hand takes its locks', () => {
    const locked = made(lockRung(whole, { accountId: 'corner', itemId: 'tea', rung: 'wholesaler' }));
    const plan = sound(removeHand(locked, { accountId: 'corner', handId: 'wholesaler' }));
    expect(accountOf(plan, 'corner').listings[0]?.lockedRungs).toEqual(['shelf']);
    expect(noteAt(plan, 'accounts/corner/hands/wholesaler/rule/rate')).toBeNull();
  });
});

describe('rungs', () => {
  const shown = {
    prices: { tea: { list: '2.4835', shelf: '4.99' }, honey: { list: '4.97', shelf: '9.99' } },
    handMarginRates: { wholesaler: '0.204', shop: '0.375' },
  };
  const corner = { accountId: 'corner', itemId: 'tea' };

  test('are locked once and unlocked', () => {
    const once = sound(lockRung(whole, { ...corner, rung: 'shop' }));
    const twice = sound(lockRung(once, { ...corner, rung: 'shop' }));
    expect(accountOf(twice, 'corner').listings[0]?.lockedRungs).toEqual(['shelf', 'shop']);
    expect(sound(unlockRung(twice, { ...corner, rung: 'shop' }))).toEqual(whole);
  });

  test('the shelf price gives way once it is unlocked; the list price stays where it was shown', () => {
    const locked = solveFor(whole, { ...corner, rung: 'shelf', shown });
    expect(!locked.ok && locked.problems.map(sentence)).toEqual([
      'accounts/corner/listings/tea/lockedRungs: got "shelf", a locked rung, to be solved; expected a rung that is not locked.',
    ]);
    const free = sound(unlockRung(whole, { ...corner, rung: 'shelf' }));
    const plan = sound(solveFor(free, { ...corner, rung: 'shelf', shown }));
    const [tea, honey] = accountOf(plan, 'corner').listings;
    expect([tea?.list, tea?.shelf]).toEqual([{ by: 'price', amount: '2.4835' }, { by: 'solved' }]);
    expect(honey).toBe(accountOf(whole, 'corner').listings[1]);
  });

  test('a hand gives way for every item of the account, and back again', () => {
    const plan = sound(solveFor(whole, { ...corner, rung: 'shop', shown }));
    const account = accountOf(plan, 'corner');
    expect(account.hands[1]?.rule).toEqual({ by: 'solved' });
    expect(account.listings.map(({ list }) => list)).toEqual([
      { by: 'price', amount: '2.4835' },
      { by: 'price', amount: '4.97' },
    ]);
    const back = sound(solveFor(plan, { ...corner, rung: 'list', shown }));
    expect(accountOf(back, 'corner').hands[1]?.rule).toEqual({ by: 'margin', rate: '0.375' });
    expect(accountOf(back, 'corner').listings.map(({ list }) => list.by)).toEqual(['solved', 'solved']);
  });
});

describe('whole plans', () => {
  test('a duplicate differs in id and name alone', () => {
    const copy = sound(duplicatePlan(whole, { id: 'p2', name: 'Copy' }));
    expect({ ...copy, id: whole.id, name: whole.name }).toEqual(whole);
  });

  test('a new name', () => {
    expect(sound(renamePlan(whole, { name: 'New' })).name).toBe('New');
  });
});

describe('what speaks for the plan', () => {
  test('a chain that goes leaves what its stores sold, as of no chain', () => {
    const plan = sound(removeAccount(whole, { accountId: 'corner' }));
    expect(plan.promise.scans.map(({ units }) => units)).toEqual(
      whole.promise.scans.map(({ units }) => units),
    );
    expect([...plan.promise.scans, ...plan.promise.reorders].map(({ accountId }) => accountId)).toEqual([
      null,
      null,
      null,
    ]);
  });

  test('a product that goes takes its scans, reorders and priors with it', () => {
    const { scans, reorders, priors } = made(removeItem(withHoneyToo(), { itemId: 'tea' })).promise;
    expect([scans, reorders, priors]).toEqual([[], [], []]);
  });
});

/** Every account that lists tea lists honey beside it, so that tea can go. */
function withHoneyToo(): Plan {
  return {
    ...whole,
    accounts: whole.accounts.map((account) => ({
      ...account,
      listings: account.listings.some(({ itemId }) => itemId === 'honey')
        ? account.listings
        : [...account.listings, aListing({ itemId: 'honey' })],
    })),
  };
}
