/** Addresses and views: every address reads back as its route, odd ones are lost in words, and Back closes a sheet first. */
import * as fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { hashOf, PLAN_VIEWS, parseRoute, type Route } from '../../src/app/route.ts';
import { freshDatabase } from '../storage/store.ts';
import { around, settled, started, withPlan } from './harness.ts';

describe('addresses', () => {
  test.each([
    ['#/plans', { view: 'plans', sheet: null }],
    ['#/seven', { view: 'seven', sheet: null }],
    ['#/p/spring/front', { view: 'front', planId: 'spring', sheet: null }],
    ['#/p/spring/roll-out', { view: 'roll-out', planId: 'spring', sheet: null }],
    ['#/p/spring/statements', { view: 'statements', planId: 'spring', sheet: null }],
    ['#/p/spring/table', { view: 'table', planId: 'spring', accountId: null, sheet: null }],
    [
      '#/p/spring/table/corner?sheet=said',
      { view: 'table', planId: 'spring', accountId: 'corner', sheet: 'said' },
    ],
    ['#/p/spring/ladder', { view: 'ladder', planId: 'spring', accountId: null, itemId: null, sheet: null }],
    [
      '#/p/spring/ladder/corner/tea',
      { view: 'ladder', planId: 'spring', accountId: 'corner', itemId: 'tea', sheet: null },
    ],
    [
      '#/p/spring/deal/corner?sheet=where',
      { view: 'deal', planId: 'spring', accountId: 'corner', sheet: 'where' },
    ],
  ] as const)('%s', (hash, route) => {
    expect(parseRoute(hash)).toEqual(route);
    expect(hashOf(route)).toBe(hash);
  });

  test.each([
    '',
    '#',
    '#/',
    '#/p',
    '#/p/x',
    '#/p/x/nowhere',
    '#/plans/x',
    '#/p/x/cash/y',
    '#/p/x/deal/a/b',
    '#/p/x/table/a/b',
    '#/p//front',
    '#/p/%/front',
    '#x',
  ])('%j names nothing', (hash) => {
    expect(parseRoute(hash)).toEqual({ view: 'lost', hash, sheet: null });
  });

  test('any ids and sheet read back as they were written', () => {
    const text = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 });
    const sheet = fc.option(text, { nil: null });
    const routes: fc.Arbitrary<Route> = fc.oneof(
      fc.record({ view: fc.constantFrom('plans' as const, 'seven' as const), sheet }),
      fc.record({ view: fc.constantFrom(...PLAN_VIEWS), planId: text, sheet }),
      fc.record({
        view: fc.constantFrom('deal' as const, 'table' as const),
        planId: text,
        accountId: fc.option(text, { nil: null }),
        sheet,
      }),
      fc.record({
        view: fc.constant('ladder' as const),
        planId: text,
        accountId: text,
        itemId: fc.option(text, { nil: null }),
        sheet,
      }),
    );
    fc.assert(
      fc.property(routes, (route) => {
        expect(parseRoute(hashOf(route))).toEqual(route);
      }),
      { seed: 20260302 },
    );
  });
});

describe('going about', () => {
  beforeEach(freshDatabase);

  test('Back closes the sheet first; its own button takes that very step back', async () => {
    const own = around();
    const session = await withPlan(own);
    const { length } = own.entries;
    session.openSheet('where');
    session.openSheet('deeper');
    expect(own.entries).toHaveLength(length + 1);
    expect(session.route.value.sheet).toBe('deeper');
    session.closeSheet();
    expect(session.route.value).toEqual({ view: 'front', planId: 'small', sheet: null });
    expect(own.entries).toHaveLength(length);
    session.openSheet('where');
    own.deps.history.back();
    expect(session.route.value.sheet).toBeNull();
  });

  test('a sheet that was opened by its address is closed in place', async () => {
    const own = around(undefined, '#/p/example-a/cash?sheet=where');
    const session = await withPlan(around());
    await settled(session);
    const linked = await started(own);
    linked.closeSheet();
    expect(own.entries).toEqual([{ hash: '#/p/example-a/cash', isSheet: false }]);
    expect(linked.route.value.sheet).toBeNull();
  });

  test('a link to another plan opens it', async () => {
    const own = around();
    const session = await withPlan(own);
    own.visit('#/p/example-b/cash');
    expect(session.route.value.view).toBe('cash');
    await settled(session);
    expect(session.plan.value?.id).toBe('example-b');
  });

  test('going to where we are adds no entry', async () => {
    const own = around();
    const session = await withPlan(own);
    const { length } = own.entries;
    session.go(session.route.value);
    expect(own.entries).toHaveLength(length);
  });
});
