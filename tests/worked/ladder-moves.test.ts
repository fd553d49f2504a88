/**
 * A rung moved while another gives way, worked by hand: which numbers become typed, which one is solved, what the grid
 * keeps from being exact, and what is said where it cannot be. Rules of the product; the arithmetic stands beside.
 */
import { describe, expect, test } from 'vitest';
import { moveRung, type RungMove } from '../../src/domain/ladder/move-rung.ts';
import { mayGiveWay, placeOf, rungsOf } from '../../src/domain/ladder/rungs.ts';
import { moneyStep, stepRung } from '../../src/domain/ladder/step-rung.ts';
import { dec } from '../../src/domain/money/decimal.ts';
import { type Plan, planSchema } from '../../src/domain/plan/index.ts';
import { sentence } from '../../src/domain/problems.ts';
import { aCostLine, aHand, aListing, anAccount, anItem, aPlan } from '../support/builders.ts';
import { got, ladderOf, problemsOf } from '../support/ladders.ts';

const solved = { by: 'solved' } as const;
const price = (amount: string) => ({ by: 'price', amount }) as const;
const margin = (rate: string) => ({ by: 'margin', rate }) as const;
const at = { accountId: 'corner', itemId: 'tea' };

/** Landed 1.00, list 2.60 typed, chain 40 % of its price, shelf solved at 4.3334. */
const start = aPlan();

function moved(plan: Plan, rung: string, to: RungMove['to'], givesWay: string) {
  const result = got(moveRung(plan, { ...at, rung, to, givesWay }));
  expect(planSchema.parse(result.plan)).toEqual(result.plan);
  const account = result.plan.accounts[0];
  const listing = account?.listings[0];
  return { ...result, listing, rules: account?.hands.map(({ rule }) => rule) };
}

function misses(result: {
  misses: readonly { rung: string; amount: { toFixed: (digits: number) => string } }[];
}) {
  return result.misses.map(({ rung, amount }) => [rung, amount.toFixed(6)]);
}

describe('the shelf price moved to 4.99', () => {
  test('the chain gives way: it keeps 2.39', () => {
    const result = moved(start, 'shelf', price('4.99'), 'chain');
    expect(result.listing).toMatchObject({ list: price('2.6'), shelf: price('4.99') });
    expect(result.rules).toEqual([solved]);
    expect(result.ladder.hands[0]?.keeps.toFixed()).toBe('2.39');
    expect(misses(result)).toEqual([]);
  });

  test('our list price gives way: 4.99 x 0.60 = 2.994', () => {
    const result = moved(start, 'shelf', price('4.99'), 'list');
    expect(result.listing).toMatchObject({ list: solved, shelf: price('4.99') });
    expect(result.rules).toEqual([margin('0.4')]);
    expect(result.ladder.list.toFixed()).toBe('2.994');
  });

  test('landed cost gives way: our margin of 61.5385 % stays, 2.994 x 0.384615 = 1.15153731', () => {
    const result = moved(start, 'shelf', price('4.99'), 'landed');
    expect(result.plan.items[0]?.costLines[0]?.rule).toEqual({ by: 'unit', amount: '1.1515' });
    expect(result.ladder.list.toFixed()).toBe('2.994');
    expect(misses(result)).toEqual([['landed', '-0.000037']]);
  });

  test('a chain with price points takes it to its own: typed 5.10 stands, the tag is 4.99', () => {
    const pricePoints = {
      endings: ['0.49', '0.99'],
      listOfPrices: false,
      move: 'nearest',
      absorbedBy: 'lastHand',
    } as const;
    const plan = aPlan({
      accounts: [anAccount({ pricePoints: { ...pricePoints, endings: [...pricePoints.endings] } })],
    });
    const result = moved(plan, 'shelf', price('5.1'), 'chain');
    expect(result.ladder.shelf.toFixed()).toBe('4.99');
    expect(misses(result)).toEqual([['shelf', '-0.110000']]);
  });
});

describe('our margin, a hand and the landed cost moved', () => {
  test('our margin to 50 %, landed giving way: 2.60 x 0.50 = 1.30; the list price stays', () => {
    const result = moved(start, 'list', margin('0.5'), 'landed');
    expect(result.ladder.landed.unit.toFixed()).toBe('1.3');
    expect(result.listing?.list).toEqual(price('2.6'));
    expect(result.ladder.ladderMarginRate.toFixed()).toBe('0.5');
  });

  test('our margin to 50 %, the shelf giving way: list 2.00, shelf 2.00 / 0.60', () => {
    const result = moved(start, 'list', margin('0.5'), 'shelf');
    expect(result.listing).toMatchObject({ list: margin('0.5'), shelf: solved });
    expect(result.ladder.shelf.toFixed()).toBe('3.3334');
    expect(misses(result)).toEqual([['shelf', '0.000067']]);
  });

  test('the chain to 42 %, the shelf giving way: 2.60 / 0.58 = 4.48276', () => {
    const result = moved(start, 'chain', margin('0.42'), 'shelf');
    expect(result.rules).toEqual([margin('0.42')]);
    expect(result.ladder.shelf.toFixed()).toBe('4.4828');
  });

  test('the chain dragged to sell at 5.20, the shelf giving way: by its own style, 2.60 / 5.20 is 50 %', () => {
    expect(moved(start, 'chain', price('5.2'), 'shelf').rules).toEqual([margin('0.5')]);
    const byMarkup = aPlan({
      accounts: [anAccount({ hands: [aHand({ rule: { by: 'markup', rate: '0.5' } })] })],
    });
    expect(moved(byMarkup, 'chain', price('5.2'), 'shelf').rules).toEqual([{ by: 'markup', rate: '1' }]);
    const byFixed = aPlan({
      accounts: [anAccount({ hands: [aHand({ rule: { by: 'fixed', amount: '1', per: 'case' } })] })],
    });
    expect(moved(byFixed, 'chain', price('5.2'), 'shelf').rules).toEqual([
      { by: 'fixed', amount: '2.6', per: 'unit' },
    ]);
  });

  test('landed to 1.30 with freight, duty and loss on it: x = (1.30 x 0.975 - 0.30) / 1.05', () => {
    const item = anItem({
      lossRate: '0.025',
      costLines: [
        aCostLine({ rule: { by: 'unit', amount: '1.2' } }),
        aCostLine({ id: 'sea', label: 'Sea', family: 'freight', rule: { by: 'shipment', amount: '1800' } }),
        aCostLine({
          id: 'duty',
          label: 'Duty',
          family: 'duty',
          rule: { by: 'share', rate: '0.05', of: ['goods'] },
        }),
      ],
    });
    const plan = aPlan({
      items: [item],
      accounts: [anAccount({ listings: [aListing({ list: margin('0.5') })] })],
    });
    const result = moved(plan, 'landed', price('1.3'), 'shelf');
    expect(result.plan.items[0]?.costLines[0]?.rule).toEqual({ by: 'unit', amount: '0.9214' }); // 0.921428...
    expect(result.ladder.landed.unit.toFixed()).toBe('1.3');
    expect(result.ladder.list.toFixed()).toBe('2.6');
  });

  test('a solved list price follows a moving landed cost by its margin when the shelf gives way', () => {
    const plan = aPlan({
      accounts: [anAccount({ listings: [aListing({ list: solved, shelf: price('5') })] })],
    });
    const result = moved(plan, 'landed', price('1.2'), 'shelf'); // margin (3 - 1) / 3, so list 1.2 x 3 = 3.60
    expect(result.listing).toMatchObject({ list: margin('0.666667'), shelf: solved });
    expect(result.ladder.list.toFixed()).toBe('3.6');
    expect(result.ladder.shelf.toFixed()).toBe('6');
  });
});

describe('hands belong to the account, so its other listings follow', () => {
  const two = aPlan({
    items: [anItem(), anItem({ id: 'jam', name: 'Jam' })],
    accounts: [anAccount({ listings: [aListing(), aListing({ itemId: 'jam', list: price('3') })] })],
  });

  test('a hand gives way on tea: jam’s shelf price is typed at what it came to, and jam’s hand keeps what it kept', () => {
    const { plan } = moved(two, 'shelf', price('4.99'), 'chain');
    expect(plan.accounts[0]?.listings[1]).toMatchObject({ list: price('3'), shelf: price('5') });
  });

  test('and back: the hand is typed again, and the shelf gives way on both', () => {
    const between = moved(two, 'shelf', price('4.99'), 'chain').plan;
    const { plan, rules } = moved(between, 'list', price('2.7'), 'shelf');
    expect(rules).toEqual([margin('0.478958')]); // 2.39 / 4.99
    expect(plan.accounts[0]?.listings.map(({ shelf }) => shelf)).toEqual([solved, solved]);
  });
});

describe('locks', () => {
  const locked = (lockedRungs: string[]) =>
    aPlan({ accounts: [anAccount({ listings: [aListing({ lockedRungs })] })] });

  test('what may give way leaves out the moved rung and the locked ones', () => {
    const place = got(placeOf(locked(['list']), at));
    expect(rungsOf(place.account)).toEqual(['landed', 'list', 'chain', 'shelf']);
    expect(mayGiveWay(place, 'shelf')).toEqual(['landed', 'chain']);
  });

  test.each([
    [
      'a locked rung',
      locked(['list']),
      { rung: 'shelf', to: price('4.99'), givesWay: 'list' },
      'accounts/corner/listings/tea/lockedRungs: got list price, locked; expected one of these to give way: landed cost, Chain.',
    ],
    [
      'every other rung locked',
      locked(['list', 'landed', 'chain']),
      { rung: 'shelf', to: price('4.99'), givesWay: 'list' },
      'accounts/corner/listings/tea/lockedRungs: got list price, locked; expected at least one other rung that is not locked.',
    ],
    [
      'the rung that moves',
      start,
      { rung: 'shelf', to: price('4.99'), givesWay: 'shelf' },
      'accounts/corner/listings/tea/lockedRungs: got shelf price, the rung that moves; expected one of these to give way: landed cost, list price, Chain.',
    ],
    [
      'a rung nobody knows',
      start,
      { rung: 'cellar', to: price('4.99'), givesWay: 'list' },
      'accounts/corner/hands: got cellar; expected one of the rungs landed cost, list price, Chain, shelf price.',
    ],
    [
      'a margin of all',
      start,
      { rung: 'chain', to: margin('1'), givesWay: 'list' },
      'accounts/corner/hands/chain/rule/rate: got 1; expected a share from 0 to below 1 (below 100 %) with at most 6 decimals; 42 % is "0.42".',
    ],
    [
      'a shelf price of nothing',
      start,
      { rung: 'shelf', to: price('0'), givesWay: 'list' },
      'accounts/corner/listings/tea/shelf/amount: got 0; expected an amount above 0, up to 1,000,000, with at most 4 decimals, like "3.40".',
    ],
    [
      'a hand sold below what it buys at',
      start,
      { rung: 'chain', to: price('2.5'), givesWay: 'shelf' },
      'accounts/corner/hands/chain/rule: got Chain selling at 2.50; expected a price of at least 2.60, what Chain buys at.',
    ],
    [
      'a list price where landed cost gives way',
      start,
      { rung: 'list', to: price('2.7'), givesWay: 'landed' },
      'accounts/corner/listings/tea/list: got price 2.7; expected our margin, where landed cost gives way: hands and shelf hold the list price.',
    ],
    [
      'an account nobody knows',
      aPlan({ accounts: [] }),
      { rung: 'shelf', to: price('4.99'), givesWay: 'list' },
      'accounts: got corner; expected an account of the plan.',
    ],
  ] as const)('%s', (_, plan, move, words) => {
    expect(problemsOf(moveRung(plan, { ...at, ...move })).map(sentence)).toEqual([words]);
  });

  test('a landed cost below what the other lines come to', () => {
    const sea = aCostLine({
      id: 'sea',
      label: 'Sea',
      family: 'freight',
      rule: { by: 'unit', amount: '0.3' },
    });
    const plan = aPlan({ items: [anItem({ costLines: [aCostLine(), sea] })] });
    expect(
      problemsOf(moveRung(plan, { ...at, rung: 'shelf', to: price('0.5'), givesWay: 'landed' })).map(
        sentence,
      ),
    ).toEqual([
      'items/tea/costLines/goods/rule/amount: got a landed cost of 0.15; expected a landed cost from 0.30, what the other lines come to, with Goods at most 1,000,000.00.',
    ]);
  });

  test('no goods line stated per unit', () => {
    const plan = aPlan({
      items: [anItem({ costLines: [aCostLine({ rule: { by: 'case', amount: '12' } })] })],
    });
    expect(
      problemsOf(moveRung(plan, { ...at, rung: 'landed', to: price('2'), givesWay: 'list' })).map(sentence),
    ).toEqual([
      'items/tea/costLines: got no goods line stated per unit; expected one, so that the landed cost can be moved.',
    ]);
  });
});

describe('steps', () => {
  const step = (plan: Plan, rung: string, way: 'up' | 'down', givesWay: string) =>
    got(stepRung(plan, { ...at, rung, way, givesWay }));

  test.each([
    ['250', '10'],
    ['253', '10'],
    ['2.53', '0.1'],
    ['4.99', '0.2'],
    ['1', '0.05'], // 0.04 lies nearer to 0.05 than to 0.02 by ratio
    ['0.002', '0.0001'],
    ['30000', '1000'],
    ['36000', '2000'], // 1,440 is nearer to 2,000 by ratio
    ['48000', '2000'],
  ])('money of %s steps by %s', (amount, size) => {
    expect(moneyStep(dec(amount)).toFixed()).toBe(size);
  });

  test('a list price of 2.53 steps onto 2.60 and 2.50', () => {
    const plan = aPlan({ accounts: [anAccount({ listings: [aListing({ list: price('2.53') })] })] });
    expect(step(plan, 'list', 'up', 'shelf').ladder.list.toFixed()).toBe('2.6');
    expect(step(plan, 'list', 'down', 'shelf').ladder.list.toFixed()).toBe('2.5');
  });

  test('a margin steps by half a point onto round ones', () => {
    const plan = aPlan({ accounts: [anAccount({ hands: [aHand({ rule: margin('0.333') })] })] });
    expect(step(plan, 'chain', 'up', 'shelf').plan.accounts[0]?.hands[0]?.rule).toEqual(margin('0.335'));
    expect(step(plan, 'chain', 'down', 'shelf').plan.accounts[0]?.hands[0]?.rule).toEqual(margin('0.33'));
  });

  test('a shelf price steps to the chain’s next price point, and says where there is none', () => {
    const pricePoints = {
      endings: ['4.49', '4.99'],
      listOfPrices: true,
      move: 'nearest',
      absorbedBy: 'lastHand',
    } as const;
    const plan = aPlan({
      accounts: [anAccount({ pricePoints: { ...pricePoints, endings: [...pricePoints.endings] } })],
    });
    expect(ladderOf(plan).shelf.toFixed()).toBe('4.49');
    const up = step(plan, 'shelf', 'up', 'list');
    expect(up.ladder.shelf.toFixed()).toBe('4.99');
    expect(
      problemsOf(stepRung(up.plan, { ...at, rung: 'shelf', way: 'up', givesWay: 'list' })).map(sentence),
    ).toEqual(['accounts/corner/pricePoints: got a shelf price of 4.99; expected a price point above it.']);
  });

  test('landed, a fixed amount and a solved hand step too', () => {
    expect(step(start, 'landed', 'up', 'list').ladder.landed.unit.toFixed()).toBe('1.05');
    const fixed = aPlan({
      accounts: [anAccount({ hands: [aHand({ rule: { by: 'fixed', amount: '6', per: 'case' } })] })],
    });
    expect(step(fixed, 'chain', 'up', 'shelf').plan.accounts[0]?.hands[0]?.rule).toEqual({
      by: 'fixed',
      amount: '6.2',
      per: 'case',
    });
    const open = aPlan({
      accounts: [
        anAccount({ hands: [aHand({ rule: solved })], listings: [aListing({ shelf: price('4.99') })] }),
      ],
    });
    expect(step(open, 'chain', 'up', 'list').plan.accounts[0]?.hands[0]?.rule).toEqual(margin('0.48')); // from 47.9 %
  });
});
