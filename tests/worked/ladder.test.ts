/**
 * The ladder worked by hand: the whole way from list price to contribution, whose money the shelf price is, what is passed
 * on, price points and who absorbs them, landed cost, and what is said where there is no answer. Rules of the trade
 * (common practice, no source); the arithmetic stands beside each figure.
 */
import { describe, expect, test } from 'vitest';
import type { Allowance } from '../../src/domain/allowances/index.ts';
import { netInDealWeek, stepsInDealWeeks } from '../../src/domain/ladder/deal-week.ts';
import { landedOf } from '../../src/domain/ladder/landed.ts';
import { movedToPoint, nextPoint, type PricePoints } from '../../src/domain/ladder/price-points.ts';
import type { LadderResult } from '../../src/domain/ladder/types.ts';
import { sentence } from '../../src/domain/problems.ts';
import { aCostLine, aHand, aListing, anAccount, anItem, aPlan } from '../support/builders.ts';
import { got, ladderOf, outcomeOf, priced, problemsOf } from '../support/ladders.ts';

const solved = { by: 'solved' } as const;
const margin = (rate: string) => ({ by: 'margin', rate }) as const;
const price = (amount: string) => ({ by: 'price', amount }) as const;

function stepTable({ steps }: LadderResult): [string, string][] {
  return steps.map(({ id, amount }) => [id, amount.toFixed()]);
}

function bandTable({ bands }: LadderResult): [string, string, string][] {
  return bands.map(({ id, owner, amount }) => [id, owner, amount.toFixed()]);
}

const everyKind: Allowance[] = [
  { kind: 'offInvoice', id: 'off', rate: '0.1', on: 'list', passedOn: false },
  { kind: 'freightAllowance', id: 'freight', amountPerUnit: '0.1', pickUp: false },
  { kind: 'spoils', id: 'spoils', rate: '0.02' },
  { kind: 'coop', id: 'coop', rate: '0.03' },
  { kind: 'dataFee', id: 'data', rate: '0.015' },
  { kind: 'chargebacks', id: 'charge', rate: '0.01' },
  {
    kind: 'expectedReturns',
    id: 'returns',
    rate: '0.04',
    resaleableShare: '0.5',
    freightBackPerUnit: '0.3',
    lagWeeks: 8,
  },
  { kind: 'scanBack', id: 'scan', amountPerUnit: '0.4', fromWeek: 10, weeks: 4, lagWeeks: 4 },
  { kind: 'billBack', id: 'bill', amountPerUnit: '0.2', fromWeek: 12, weeks: 4, lagWeeks: 4 },
  { kind: 'freightOut', id: 'out', amount: '1.8', per: 'case' },
  { kind: 'pickAndPack', id: 'pick', amount: '1', per: 'case' },
  { kind: 'broker', id: 'broker', rate: '0.05', onFreeGoods: false },
  { kind: 'royalty', id: 'royalty', amountPerUnit: '0', rate: '0.04', onFreeGoods: false },
];

const terms = { ...anAccount().terms, earlyDiscount: { rate: '0.02', days: 10, takenShare: '0.8' } };

const whole = priced({
  landed: '1',
  list: price('3'),
  hands: [margin('0.4')],
  shelf: solved,
  account: { allowances: everyKind, terms },
});

describe('from list price to contribution, with every kind of allowance', () => {
  test('each step on the base it says', () => {
    expect(stepTable(ladderOf(whole))).toEqual([
      ['list', '3'],
      ['off', '0.3'], // 10 % of 3.00
      ['freight', '0.1'],
      ['invoice', '2.6'],
      ['earlyDiscount', '0.0416'], // 2.60 x 2 % x 80 %
      ['spoils', '0.052'], // 2 % of 2.60
      ['coop', '0.078'], // 3 % of 2.60
      ['data', '0.039'], // 1.5 % of 2.60
      ['charge', '0.026'], // 1 % of 2.60
      ['returns', '0.096'], // 4 % of (2.60 + 0.30 - 0.50)
      ['net', '2.2674'], // 2.60 - 0.3326
      ['landed', '1'],
      ['out', '0.15'], // 1.80 / 12
      ['pick', '0.0833'], // 1.00 / 12
      ['broker', '0.1248'], // 5 % of 2.60 less the 4 % credited back
      ['royalty', '0.0998'], // 4 % of 2.496 = 0.09984
      ['contribution', '0.8095'], // 2.2674 - 1.4579
    ]);
  });

  test('whose money the shelf price of 5.00 is', () => {
    expect(bandTable(ladderOf(whole))).toEqual([
      ['landed', 'atRisk', '1'],
      ['ours', 'ours', '0.8095'],
      ['givenBack', 'theirs', '0.7326'], // 0.30 + 0.10 + 0.3326
      ['sellingCosts', 'between', '0.4579'],
      ['hand-0', 'theirs', '2'], // 40 % of 5.00
    ]);
  });

  test('rates: ladder margin on list, trade rate on list, contribution on net', () => {
    const ladder = ladderOf(whole);
    expect(ladder.ladderMarginRate.toFixed()).toBe('0.666667'); // 2.00 / 3.00
    expect(ladder.tradeRate.toFixed()).toBe('0.2442'); // 0.7326 / 3.00
    expect(ladder.contributionRate?.toFixed()).toBe('0.357017'); // 0.8095 / 2.2674
  });

  test.each([
    [9, [], '2.2674'],
    [10, ['scan'], '1.8674'],
    [12, ['scan', 'bill'], '1.6674'],
    [14, ['bill'], '2.0674'],
    [16, [], '2.2674'],
  ])('scan-backs and bill-backs are taken in their own weeks only: week %d', (week, ids, net) => {
    const deal = netInDealWeek({ ladder: ladderOf(whole), week });
    expect(deal.steps.map(({ id }) => id)).toEqual(ids);
    expect(deal.net.toFixed()).toBe(net);
    expect(stepsInDealWeeks(ladderOf(whole)).map(({ id }) => id)).toEqual(['scan', 'bill']);
  });

  test('with pick-up there is no freight out, for the ladder and for the weekly pass', () => {
    const pickUp = everyKind.map((each) =>
      each.kind === 'freightAllowance' ? { ...each, pickUp: true } : each,
    );
    const plan = priced({
      landed: '1',
      list: price('3'),
      hands: [margin('0.4')],
      shelf: solved,
      account: { allowances: pickUp },
    });
    const { steps, forPass } = ladderOf(plan);
    expect(steps.find(({ id }) => id === 'out')?.amount.toFixed()).toBe('0');
    expect(forPass.pickUp).toBe(true);
    expect(forPass.charges.find(({ id }) => id === 'out')?.charge).toMatchObject({ priceTenThousandths: 0 });
    expect(forPass.charges.find(({ id }) => id === 'pick')?.charge).toMatchObject({
      priceTenThousandths: 833,
    });
  });

  test('charges for the weekly pass come in the account’s own order', () => {
    const reversed = {
      ...whole,
      accounts: whole.accounts.map((each) => ({ ...each, allowances: [...everyKind].reverse() })),
    };
    const ids = ladderOf(reversed).forPass.charges.map(({ id }) => id);
    expect(ids).toEqual(everyKind.map(({ id }) => id).reverse());
  });
});

describe('what is passed on', () => {
  const passed = (passedOn: boolean): Partial<ReturnType<typeof anAccount>> => ({
    allowances: [
      { kind: 'offInvoice', id: 'off', rate: '0.1', on: 'list', passedOn },
      { kind: 'freightAllowance', id: 'freight', amountPerUnit: '0.12', pickUp: false },
    ],
  });

  test('list 3.00, 10 % passed on, 0.12 not: the first hand buys at 2.70, the invoice is 2.58', () => {
    const plan = priced({
      landed: '1',
      list: price('3'),
      hands: [margin('0.4')],
      shelf: solved,
      account: passed(true),
    });
    const ladder = ladderOf(plan);
    expect(ladder.hands[0]?.buys.toFixed()).toBe('2.7');
    expect(ladder.invoice.toFixed()).toBe('2.58');
    expect(ladder.shelf.toFixed()).toBe('4.5');
    expect(bandTable(ladder)).toEqual([
      ['landed', 'atRisk', '1'],
      ['ours', 'ours', '1.58'], // 2.58 - 1.00
      ['givenBack', 'theirs', '0.12'], // the 0.30 is in the lower tag, not here
      ['hand-0', 'theirs', '1.8'], // 40 % of 4.50
    ]);
  });

  test('not passed on, it stays with the hand: it still reckons from 3.00', () => {
    const plan = priced({
      landed: '1',
      list: price('3'),
      hands: [margin('0.4')],
      shelf: solved,
      account: passed(false),
    });
    const ladder = ladderOf(plan);
    expect(ladder.hands[0]?.buys.toFixed()).toBe('3');
    expect(ladder.shelf.toFixed()).toBe('5');
    expect(ladder.bands.find(({ id }) => id === 'givenBack')?.amount.toFixed()).toBe('0.42');
  });

  test('a solved list price counts what is passed on: 4.50 at 40 % leaves 2.70, 90 % of 3.00', () => {
    const plan = priced({
      landed: '1',
      list: solved,
      hands: [margin('0.4')],
      shelf: price('4.5'),
      account: passed(true),
    });
    expect(ladderOf(plan).list.toFixed()).toBe('3');
  });
});

describe('price points', () => {
  const endings = (move: PricePoints['move']): PricePoints => ({
    endings: ['0.49', '0.99'],
    listOfPrices: false,
    move,
    absorbedBy: 'lastHand',
  });
  const own = (move: PricePoints['move']): PricePoints => ({
    ...endings(move),
    endings: ['3', '4.5', '5.25'],
    listOfPrices: true,
  });
  const round = (move: PricePoints['move']): PricePoints => ({ ...endings(move), endings: ['0'] });

  test.each([
    [endings('nearest'), 47400, 49900], // 0.25 either way: ties go up
    [endings('nearest'), 47399, 44900],
    [endings('nearest'), 49900, 49900],
    [endings('nearest'), 1000, 4900],
    [endings('up'), 50000, 54900],
    [endings('up'), 49901, 54900],
    [endings('down'), 50000, 49900],
    [endings('down'), 4899, null], // nothing at or below 0.4899
    [own('nearest'), 37500, 45000],
    [own('nearest'), 99999, 52500],
    [own('up'), 52501, null],
    [own('down'), 29999, null],
    [round('nearest'), 45000, 50000],
    [round('nearest'), 3000, 10000], // nothing is sold at 0.00
  ] as const)('%# %o from %d to %o', (points, from, to) => {
    expect(movedToPoint(from, points)).toBe(to);
  });

  test.each([
    [endings('nearest'), 49900, 'up', 54900],
    [endings('nearest'), 49900, 'down', 44900],
    [endings('nearest'), 4900, 'down', null],
    [own('nearest'), 52500, 'up', null],
  ] as const)('the next point %#: from %d %s to %o', (points, from, way, to) => {
    expect(nextPoint(from, points, way)).toBe(to);
  });

  const moved = (absorbedBy: PricePoints['absorbedBy'], plan?: Partial<ReturnType<typeof aPlan>>) =>
    ladderOf(
      priced({
        landed: '1',
        list: price('2.6'),
        hands: [margin('0.4')],
        shelf: solved,
        account: { pricePoints: { ...endings('nearest'), absorbedBy } },
        ...(plan && { plan }),
      }),
    );

  test('2.60 at 40 % asks 4.3333, moves to 4.49: the last hand’s margin becomes 1.89 / 4.49', () => {
    const ladder = moved('lastHand');
    expect(ladder.shelf.toFixed()).toBe('4.49');
    expect(ladder.shelfUnmoved.toFixed()).toBe('4.3334');
    expect(ladder.list.toFixed()).toBe('2.6');
    expect(ladder.hands[0]?.marginRate.toFixed()).toBe('0.420935');
  });

  test('or our list price does: 4.49 x 0.60 = 2.694', () => {
    const ladder = moved('us');
    expect(ladder.list.toFixed()).toBe('2.694');
    expect(ladder.hands[0]?.marginRate.toFixed()).toBe('0.4');
  });

  test('with 20 % tax in the price the point is what the shopper reads: 4.3333 x 1.2 = 5.20 moves to 4.99, 4.1583 before tax', () => {
    const ladder = moved('lastHand', { shelfTax: { rate: '0.2', shown: 'inPrice' } });
    expect(ladder.shelf.toFixed()).toBe('4.99');
    expect(ladder.shelfBeforeTax.toFixed()).toBe('4.1583');
    expect(ladder.tax.toFixed()).toBe('0.8317');
  });

  test('where tax is added at the till it is no part of the shelf price', () => {
    const ladder = moved('lastHand', { shelfTax: { rate: '0.2', shown: 'atTill' } });
    expect(ladder.tax.toFixed()).toBe('0');
    expect(ladder.bands.map(({ id }) => id)).not.toContain('tax');
  });

  test('a typed shelf price moves too, and the last hand has the difference: 5.10 asks a list price of 3.06, the tag is 4.99', () => {
    const account = { pricePoints: endings('nearest') };
    const ladder = ladderOf(
      priced({ landed: '1', list: solved, hands: [margin('0.4')], shelf: price('5.1'), account }),
    );
    expect(ladder.shelf.toFixed()).toBe('4.99');
    expect(ladder.list.toFixed()).toBe('3.06');
    expect(ladder.hands[0]?.keeps.toFixed()).toBe('1.93');
  });

  test('a hand in the middle that is solved keeps its margin when we absorb', () => {
    const plan = priced({
      landed: '1',
      list: price('2'),
      hands: [solved, margin('0.4')],
      shelf: price('5.1'),
      account: { pricePoints: { ...endings('nearest'), absorbedBy: 'us' } },
    });
    const ladder = ladderOf(plan);
    expect(ladder.hands[0]?.marginRate.toDecimalPlaces(4).toFixed()).toBe('0.3464'); // 1.06 / 3.06
    expect(ladder.list.toFixed()).toBe('1.9569'); // 4.99 x 0.6 x 2 / 3.06 = 1.95686
  });
});

describe('hands', () => {
  test('a fixed amount a case is divided by the units in it', () => {
    const plan = priced({
      landed: '1',
      list: price('2'),
      hands: [{ by: 'fixed', amount: '6', per: 'case' }],
      shelf: solved,
    });
    expect(ladderOf(plan).shelf.toFixed()).toBe('2.5');
  });

  test('markup and margin are two words for one thing: 25 % on 4.00 is 20 % of 5.00', () => {
    const ladder = ladderOf(
      priced({ landed: '1', list: price('4'), hands: [{ by: 'markup', rate: '0.25' }], shelf: solved }),
    );
    expect(ladder.hands[0]).toMatchObject({ owner: 'theirs', solved: false });
    expect(ladder.hands[0]?.marginRate.toFixed()).toBe('0.2');
    expect(ladder.hands[0]?.markupRate?.toFixed()).toBe('0.25');
  });

  test.each([
    ['0.4', false], // 2.00 of 5.00
    ['0.39', false],
    ['0.41', true],
  ])('a hand that says it needs %s of its price: short %s', (requiredMarginRate, short) => {
    const plan = aPlan({
      accounts: [
        anAccount({ hands: [aHand({ requiredMarginRate })], listings: [aListing({ list: price('3') })] }),
      ],
    });
    expect(ladderOf(plan).hands[0]?.short).toBe(short);
  });

  test('a step of the price grid is no shortage: 42 % of 4.99 leaves 2.8942, and 7 % of that again', () => {
    const plan = aPlan({
      accounts: [
        anAccount({
          hands: [
            aHand({ id: 'a', rule: margin('0.07'), requiredMarginRate: '0.07' }),
            aHand({ id: 'b', rule: margin('0.42'), requiredMarginRate: '0.42' }),
          ],
          listings: [aListing({ list: solved, shelf: price('4.99') })],
        }),
      ],
    });
    expect(ladderOf(plan).hands.map(({ short }) => short)).toEqual([false, false]);
  });

  test('a solved hand may keep less than nothing; it hangs below zero and everything still adds up', () => {
    const ladder = ladderOf(priced({ landed: '1', list: price('3'), hands: [solved], shelf: price('2.5') }));
    expect(ladder.hands[0]?.keeps.toFixed()).toBe('-0.5');
    expect(ladder.bands.reduce((sum, { amount }) => sum + amount.toNumber(), 0)).toBeCloseTo(2.5, 10);
  });

  test('only the last hand is the shelf’s; those before it stand between', () => {
    const ladder = ladderOf(
      priced({ landed: '1', list: price('2'), hands: [margin('0.2'), margin('0.4')], shelf: solved }),
    );
    expect(ladder.hands.map(({ owner }) => owner)).toEqual(['between', 'theirs']);
  });
});

describe('landed cost', () => {
  const lines = [
    aCostLine({ id: 'goods', label: 'Goods', rule: { by: 'unit', amount: '1.2' } }),
    aCostLine({ id: 'box', label: 'Box', rule: { by: 'case', amount: '0.6' } }),
    aCostLine({ id: 'wrap', label: 'Wrap', family: 'freight', rule: { by: 'pallet', amount: '30' } }),
    aCostLine({ id: 'sea', label: 'Sea', family: 'freight', rule: { by: 'shipment', amount: '1800' } }),
    aCostLine({
      id: 'duty',
      label: 'Duty',
      family: 'duty',
      rule: { by: 'share', rate: '0.05', of: ['goods', 'sea'] },
    }),
  ];

  test('a unit, a case of 12, a pallet of 600, a shipment of 6,000, and 5 % of goods and sea, with 2.5 % lost', () => {
    const landed = got(landedOf(anItem({ costLines: lines, lossRate: '0.025' })));
    const amounts = landed.lines.map(({ id, amount }) => [id, amount.toFixed()]);
    expect(amounts).toEqual([
      ['goods', '1.2'],
      ['box', '0.05'], // 0.60 / 12
      ['wrap', '0.05'], // 30 / 600
      ['sea', '0.3'], // 1,800 / 6,000
      ['duty', '0.075'], // 5 % of 1.50
    ]);
    expect(landed.unit.toFixed()).toBe('1.7179'); // 1.675 / 0.975 = 1.717949
    expect(landed.goods.toFixed()).toBe('1.2821'); // 1.25 / 0.975 = 1.282051
    expect(landed.freightAndDuty.toFixed()).toBe('0.4358');
    expect(landed.lines[3]?.reason).toBe('1800.00 a shipment of 6000 units');
    expect(landed.lines[4]?.reason).toBe('5 % of Goods + Sea 1.50');
  });

  test.each([
    ['a later line', ['sea'], 'Sea'],
    ['itself', ['duty'], 'Duty'],
    ['a line nobody knows', ['moon'], 'moon'],
  ])('a share of %s is refused', (_, of, named) => {
    const first = lines[0] ?? aCostLine();
    const duty = aCostLine({
      id: 'duty',
      label: 'Duty',
      family: 'duty',
      rule: { by: 'share', rate: '0.05', of },
    });
    const sea = lines[3] ?? aCostLine();
    const [problem] = problemsOf(landedOf(anItem({ costLines: [first, duty, sea] })));
    expect(problem).toEqual({
      code: 'cost-base',
      path: 'items/tea/costLines/duty/rule/of',
      got: named,
      expected: 'only cost lines that stand before Duty',
    });
  });
});

describe('where there is no answer, in words', () => {
  const off = (rate: string, passedOn: boolean): Partial<ReturnType<typeof anAccount>> => ({
    allowances: [
      { kind: 'offInvoice', id: 'a', rate, on: 'list', passedOn },
      { kind: 'freightAllowance', id: 'b', amountPerUnit: '2', pickUp: false },
    ],
  });
  const fixed = (amount: string) => ({ by: 'fixed', amount, per: 'unit' }) as const;

  test.each([
    [
      'none left to solve',
      priced({ landed: '1', list: price('2'), hands: [margin('0.4')], shelf: price('5') }),
      'accounts/corner/listings/tea: got none; expected exactly one of list price, hands and shelf price left to be solved.',
    ],
    [
      'two left to solve',
      priced({ landed: '1', list: solved, hands: [solved], shelf: price('5') }),
      'accounts/corner/listings/tea: got list price, Hand 0; expected exactly one of list price, hands and shelf price left to be solved.',
    ],
    [
      'a hand that takes all of the price',
      priced({ landed: '1', list: solved, hands: [fixed('6')], shelf: price('5') }),
      'accounts/corner/hands/hand-0/rule: got Hand 0 keeping 6.00 of 5.00; expected Hand 0 to keep less than it sells at, so that something is left below it.',
    ],
    [
      'a margin on nothing',
      priced({ landed: '0', list: margin('0.4'), hands: [margin('0.4')], shelf: solved }),
      'accounts/corner/listings/tea/list: got a margin on a landed cost of 0.00; expected a landed cost above 0 to put the margin on, or a list price typed as an amount.',
    ],
    [
      'allowances larger than the list price',
      priced({
        landed: '1',
        list: price('2'),
        hands: [margin('0.4')],
        shelf: solved,
        account: off('0.1', false),
      }),
      'accounts/corner/allowances: got 2.20 off a list price of 2.00; expected allowances that leave something of the price.',
    ],
    [
      'no price point below',
      priced({
        landed: '0.1',
        list: price('0.2'),
        hands: [margin('0.4')],
        shelf: solved,
        account: {
          pricePoints: { endings: ['0.99'], listOfPrices: false, move: 'down', absorbedBy: 'lastHand' },
        },
      }),
      'accounts/corner/pricePoints: got a shelf price of 0.3334; expected a price point at or below it, or another way of moving to one.',
    ],
    [
      'a price past all bounds',
      priced({
        landed: '1',
        list: price('1000000'),
        hands: [
          { by: 'markup', rate: '100' },
          { by: 'markup', rate: '100' },
        ],
        shelf: solved,
      }),
      'accounts/corner/listings/tea: got a price of 10201000000.00; expected prices of at most 1,000,000,000 a unit.',
    ],
  ])('%s', (_, plan, words) => {
    expect(problemsOf(outcomeOf(plan)).map(sentence)).toEqual([words]);
  });

  test('deductions that take all of an invoice', () => {
    const allowances: Allowance[] = [
      { kind: 'spoils', id: 'a', rate: '0.6' },
      { kind: 'coop', id: 'b', rate: '0.4' },
    ];
    const plan = priced({
      landed: '1',
      list: price('2'),
      hands: [margin('0.4')],
      shelf: solved,
      account: { allowances },
    });
    expect(problemsOf(outcomeOf(plan)).map(sentence)).toEqual([
      'accounts/corner/allowances: got 2.00 off an invoice price of 2.00; expected allowances that leave something of the price.',
    ]);
  });
});
