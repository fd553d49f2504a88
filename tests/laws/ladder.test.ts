/**
 * What is true of every ladder: its bands add up to the shelf price, its steps to the gaps they explain, hands hand on one
 * price; a solved rung typed back gives the same ladder up to its grid; a moved rung is where it was put, and nothing that
 * was to stay has moved. fast-check prints the seed of a failure.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Allowance } from '../../src/domain/allowances/index.ts';
import { moveRung } from '../../src/domain/ladder/move-rung.ts';
import { mayGiveWay, placeOf, rungsOf } from '../../src/domain/ladder/rungs.ts';
import { stepRung } from '../../src/domain/ladder/step-rung.ts';
import type { LadderResult } from '../../src/domain/ladder/types.ts';
import { type Decimal, dec } from '../../src/domain/money/decimal.ts';
import { type Plan, planSchema } from '../../src/domain/plan/index.ts';
import { aCostLine, aHand, aListing, anAccount, anItem, aPlan } from '../support/builders.ts';
import { outcomeOf } from '../support/ladders.ts';

const solved = { by: 'solved' } as const;
const runs = { numRuns: 200 } as const;

const rate = (most: number) => fc.integer({ min: 0, max: most }).map((points) => (points / 1000).toString());
const amount = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((tenThousandths) => dec(tenThousandths).div(10_000).toFixed());

const hands = fc.array(
  fc.oneof(
    fc.record({ by: fc.constant('margin' as const), rate: rate(700) }),
    fc.record({ by: fc.constant('markup' as const), rate: rate(1500) }),
    fc.record({
      by: fc.constant('fixed' as const),
      amount: amount(0, 20_000),
      per: fc.constantFrom('unit', 'case'),
    }),
  ),
  { minLength: 1, maxLength: 4 },
);

const allowances: fc.Arbitrary<Allowance[]> = fc
  .record({
    offs: fc.array(
      fc.record({ rate: rate(200), on: fc.constantFrom('list', 'running'), passedOn: fc.boolean() }),
      { maxLength: 3 },
    ),
    pickUp: fc.boolean(),
    spoils: rate(50),
    returns: rate(100),
    broker: rate(80),
    freight: amount(0, 5000),
  })
  .map(({ offs, pickUp, spoils, returns, broker, freight }) => [
    ...offs.map((off, place): Allowance => ({ kind: 'offInvoice', id: `off-${place}`, ...off }) as Allowance),
    { kind: 'freightAllowance', id: 'allow', amountPerUnit: '0.01', pickUp },
    { kind: 'spoils', id: 'spoils', rate: spoils },
    {
      kind: 'expectedReturns',
      id: 'back',
      rate: returns,
      resaleableShare: '0.5',
      freightBackPerUnit: '0.1',
      lagWeeks: 4,
    },
    { kind: 'freightOut', id: 'out', amount: freight, per: 'unit' },
    { kind: 'broker', id: 'broker', rate: broker, onFreeGoods: false },
  ]);

const pricePoints = fc.option(
  fc.record({
    endings: fc.constantFrom<string[]>(['0.99'], ['0.49', '0.99'], ['0', '0.5']),
    listOfPrices: fc.constant(false),
    move: fc.constantFrom('nearest' as const, 'up' as const, 'down' as const),
    absorbedBy: fc.constantFrom('lastHand' as const, 'us' as const),
  }),
  { nil: null },
);

/** A plan whose rung `open` ("list", "shelf", "hand-0" ...) is left to solve. */
const plans = fc
  .record({
    goods: amount(0, 40_000),
    sea: amount(0, 20_000),
    loss: rate(100),
    list: amount(5000, 100_000),
    shelf: amount(20_000, 300_000),
    rules: hands,
    allowances,
    pricePoints,
    discount: fc.option(rate(50), { nil: null }),
    tax: rate(250),
    shown: fc.constantFrom('inPrice' as const, 'atTill' as const),
    open: fc.constantFrom('list', 'shelf', 'hand'),
    which: fc.nat(3),
  })
  .map((made): Plan => {
    const openHand = made.open === 'hand' ? made.which % made.rules.length : -1;
    const ruled = made.rules.map((rule, place) =>
      aHand({
        id: `hand-${place}`,
        name: `Hand ${place}`,
        rule: (place === openHand ? solved : rule) as ReturnType<typeof aHand>['rule'],
      }),
    );
    const listing = aListing({
      list: made.open === 'list' ? solved : { by: 'price', amount: made.list },
      shelf: made.open === 'shelf' ? solved : { by: 'price', amount: made.shelf },
    });
    const earlyDiscount =
      made.discount === null ? null : { rate: made.discount, days: 10, takenShare: '0.7' };
    return aPlan({
      shelfTax: { rate: made.tax, shown: made.shown },
      items: [
        anItem({
          lossRate: made.loss,
          costLines: [
            aCostLine({ rule: { by: 'unit', amount: made.goods } }),
            aCostLine({ id: 'sea', label: 'Sea', family: 'freight', rule: { by: 'case', amount: made.sea } }),
            aCostLine({
              id: 'duty',
              label: 'Duty',
              family: 'duty',
              rule: { by: 'share', rate: '0.06', of: ['goods', 'sea'] },
            }),
          ],
        }),
      ],
      accounts: [
        anAccount({
          hands: ruled,
          listings: [listing],
          allowances: made.allowances,
          pricePoints: made.pricePoints,
          terms: { ...anAccount().terms, earlyDiscount },
        }),
      ],
    });
  });

/** Runs a law on every plan that has a ladder; a share of plans may have none, and then must say why. */
function law(name: string, holds: (ladder: LadderResult, plan: Plan) => void) {
  test(name, () => {
    let seen = 0;
    fc.assert(
      fc.property(plans, (plan) => {
        const outcome = outcomeOf(plan);
        if (outcome.ok) {
          seen += 1;
          holds(outcome.value, plan);
          return;
        }
        for (const problem of outcome.problems) {
          expect(problem.path).not.toBe('');
          expect(problem.got).not.toMatch(/NaN|Infinity|undefined/);
          expect(problem.expected).not.toBe('');
        }
      }),
      runs,
    );
    expect(seen).toBeGreaterThan(runs.numRuns / 3);
  });
}

const total = (amounts: readonly Decimal[]) => amounts.reduce((sum, each) => sum.plus(each), dec(0));

describe('conservation', () => {
  law('bands add up to the shelf price exactly', ({ bands, shelf }) => {
    expect(total(bands.map(({ amount: each }) => each)).toFixed()).toBe(shelf.toFixed());
  });

  law('steps add up: each level is the one before less what is taken between', ({ steps, list }) => {
    let running = list;
    for (const { isLevel, amount: each } of steps) {
      if (isLevel) expect(each.toFixed()).toBe(running.toFixed());
      else {
        expect(each.isNegative()).toBe(false);
        running = running.minus(each);
      }
    }
  });

  law(
    'each hand buys at what the one before it sells at, and the last one’s price with tax is the shelf’s',
    (ladder) => {
      ladder.hands.forEach((hand, place) => {
        if (place > 0) expect(hand.buys.toFixed()).toBe(ladder.hands[place - 1]?.sells.toFixed());
        expect(hand.sells.minus(hand.buys).toFixed()).toBe(hand.keeps.toFixed());
      });
      expect(ladder.shelfBeforeTax.toFixed()).toBe(ladder.hands.at(-1)?.sells.toFixed());
      expect(ladder.shelfBeforeTax.plus(ladder.tax).toFixed()).toBe(ladder.shelf.toFixed());
    },
  );

  law(
    'landed cost is its goods and its freight and duty, and every price stands on the 0.0001 grid',
    (ladder) => {
      expect(ladder.landed.goods.plus(ladder.landed.freightAndDuty).toFixed()).toBe(
        ladder.landed.unit.toFixed(),
      );
      const { list, invoice, net, contribution, shelf, tax, landed } = ladder;
      const prices = [
        list,
        invoice,
        net,
        contribution,
        shelf,
        tax,
        landed.unit,
        ...ladder.hands.map(({ sells }) => sells),
      ];
      for (const each of prices) expect(each.decimalPlaces()).toBeLessThanOrEqual(4);
    },
  );

  law(
    'the whole numbers of the weekly pass are the same prices',
    ({ forPass, invoice, landed, hands: all, shelfBeforeTax }) => {
      const back = (tenThousandths: number) => dec(tenThousandths).div(10_000).toFixed();
      expect(back(forPass.invoiceTenThousandths)).toBe(invoice.toFixed());
      expect(back(forPass.landedGoodsTenThousandths)).toBe(landed.goods.toFixed());
      expect(back(forPass.landedFreightTenThousandths)).toBe(landed.freightAndDuty.toFixed());
      expect(back(forPass.firstHandSellsTenThousandths)).toBe(all[0]?.sells.toFixed());
      expect(back(forPass.shelfBeforeTaxTenThousandths)).toBe(shelfBeforeTax.toFixed());
    },
  );
});

describe('solving and recomputing', () => {
  /** The same plan with rung `open` solved and the one that was solved typed at what it came to. */
  const turned = (plan: Plan, ladder: LadderResult, open: string) => {
    const [account] = plan.accounts;
    if (!account) throw new Error('no account');
    const typed = account.hands.map((hand, place) => {
      const margin = ladder.hands[place]?.marginRate.toFixed() ?? '0';
      const held =
        hand.rule.by === 'solved' ? { ...hand, rule: { by: 'margin' as const, rate: margin } } : hand;
      return hand.id === open ? { ...held, rule: solved } : held;
    });
    const list = { by: 'price' as const, amount: ladder.list.toFixed() };
    const shelf = { by: 'price' as const, amount: ladder.shelf.toFixed() };
    const listing = aListing({
      list: open === 'list' ? solved : list,
      shelf: open === 'shelf' ? solved : shelf,
    });
    return { ...plan, accounts: [{ ...account, hands: typed, listings: [listing] }] };
  };

  law(
    'the miss of a solved rung is never negative, and below one step of its grid where nothing is passed on',
    (ladder, plan) => {
      const passed = plan.accounts[0]?.allowances.some((each) => each.kind === 'offInvoice' && each.passedOn);
      expect(ladder.miss.isNegative()).toBe(false);
      if (!passed) expect(ladder.miss.lt('0.0001')).toBe(true);
      if (ladder.solvedRung.startsWith('hand') && plan.accounts[0]?.pricePoints === null) {
        expect(ladder.miss.toFixed()).toBe('0');
      }
    },
  );

  law('a solved list price typed back leads up to the same shelf price, but for its miss', (ladder, plan) => {
    if (ladder.solvedRung !== 'list' || plan.accounts[0]?.pricePoints) return;
    const again = outcomeOf(turned(plan, ladder, 'shelf'));
    if (!again.ok) throw new Error('the way back has no answer');
    const climbed = [...ladder.hands].reduce((miss, _, place) => climb(plan, place, miss), ladder.miss);
    const withTax =
      plan.shelfTax.shown === 'inPrice' ? climbed.times(dec(plan.shelfTax.rate).plus(1)) : climbed;
    expect(again.value.shelf.minus(ladder.shelf).minus(withTax).abs().lte('0.0002')).toBe(true);
    expect(again.value.shelf.gte(ladder.shelf)).toBe(true);
  });

  /** What a difference in what a hand pays becomes in what it sells at: fixed amounts drop out. */
  const climb = (plan: Plan, place: number, difference: Decimal): Decimal => {
    const rule = plan.accounts[0]?.hands[place]?.rule;
    if (rule?.by === 'margin') return difference.div(dec(1).minus(rule.rate));
    return rule?.by === 'markup' ? difference.times(dec(1).plus(rule.rate)) : difference;
  };

  law(
    'a solved shelf price typed back leads down to the typed list price, to a step of its grid',
    (ladder, plan) => {
      if (ladder.solvedRung !== 'shelf' || plan.accounts[0]?.pricePoints) return;
      const again = outcomeOf(turned(plan, ladder, 'list'));
      if (!again.ok) throw new Error('the way back has no answer');
      // each passed-on allowance is itself rounded to the grid, and stretches what the first hand pays into a list price
      const passed =
        plan.accounts[0]?.allowances.filter((each) => each.kind === 'offInvoice' && each.passedOn) ?? [];
      const step = ladder.list.div(ladder.hands[0]?.buys ?? 1).times(0.0001 * (2 + passed.length));
      expect(again.value.list.minus(ladder.list).abs().lte(step)).toBe(true);
    },
  );

  law('any hand solved in turn from the others keeps what it kept, but for the grids', (ladder, plan) => {
    if (plan.accounts[0]?.pricePoints || ladder.hands.some(({ keeps }) => keeps.isNegative())) return;
    ladder.hands.forEach(({ id, keeps }, place) => {
      const again = outcomeOf(turned(plan, ladder, id));
      if (!again.ok) throw new Error('the way back has no answer');
      const found = again.value.hands.find((each) => each.id === id);
      const play = fromGrids(plan, ladder, place).plus('0.0002'); // two named prices, each to 4 decimals, twice
      expect(found?.keeps.minus(keeps).abs().lte(play)).toBe(true);
    });
  });

  /** How far the price a hand buys or sells at can lie from before: the solved rung's miss, or a margin kept to 6 decimals. */
  const fromGrids = (plan: Plan, ladder: LadderResult, place: number): Decimal => {
    const upTo = (from: number, difference: Decimal) =>
      ladder.hands
        .slice(0, place)
        .reduce((grown, _, each) => (each < from ? grown : climb(plan, each, grown)), difference);
    if (ladder.solvedRung === 'list') return upTo(0, ladder.miss);
    if (ladder.solvedRung === 'shelf') return ladder.miss;
    const open = ladder.hands.findIndex(({ solved: was }) => was);
    const hand = ladder.hands[open];
    if (!hand || open === place) return dec(0);
    if (open > place) return hand.sells.times('0.0000005').plus('0.0001');
    // its margin was reckoned from prices named to 4 decimals, and kept to 6
    return upTo(open + 1, hand.sells.div(hand.buys).times(hand.sells.times('0.0000005').plus('0.0001')));
  };
});

describe('moving rungs', () => {
  const moves = fc.record({
    plan: plans,
    rung: fc.nat(6),
    givesWay: fc.nat(6),
    nudge: fc.integer({ min: 80, max: 125 }),
    locked: fc.nat(8),
  });

  test('a moved rung is where it was put; locked and other typed rungs have not moved; the new plan is a valid one', () => {
    let seen = 0;
    fc.assert(
      fc.property(moves, ({ plan: made, rung: r, givesWay: g, nudge, locked }) => {
        const plan = withLock(made, locked);
        const now = outcomeOf(plan);
        const place = placeOf(plan, { accountId: 'corner', itemId: 'tea' });
        if (!now.ok || !place.ok) return;
        const rungs = rungsOf(place.value.account);
        const rung = rungs[r % rungs.length] ?? 'shelf';
        const free = mayGiveWay(place.value, rung);
        const givesWay = free[g % free.length];
        if (givesWay === undefined) return;
        const to = {
          by: 'price' as const,
          amount: valueAt(now.value, rung).times(nudge).div(100).toDecimalPlaces(4).toFixed(),
        };
        const outcome = moveRung(plan, { accountId: 'corner', itemId: 'tea', rung, to, givesWay });
        if (!outcome.ok) {
          for (const { got } of outcome.problems) expect(got).not.toMatch(/NaN|Infinity|undefined/);
          return;
        }
        seen += 1;
        expect(planSchema.parse(outcome.value.plan)).toEqual(outcome.value.plan);
        putWhereAsked(outcome.value.ladder, rung, dec(to.amount));
        nothingElseTyped(plan, outcome.value.plan, { rung, givesWay });
      }),
      runs,
    );
    expect(seen).toBeGreaterThan(runs.numRuns / 6);
  });

  const withLock = (plan: Plan, locked: number): Plan => ({
    ...plan,
    accounts: plan.accounts.map((account) => {
      const rungs = rungsOf(account);
      const lockedRungs = locked < rungs.length ? [rungs[locked] ?? 'list'] : [];
      return { ...account, listings: account.listings.map((each) => ({ ...each, lockedRungs })) };
    }),
  });

  const valueAt = (ladder: LadderResult, rung: string): Decimal => {
    if (rung === 'landed') return ladder.landed.unit;
    if (rung === 'list') return ladder.list;
    if (rung === 'shelf') return ladder.shelf;
    return ladder.hands.find(({ id }) => id === rung)?.sells ?? dec(0);
  };

  /** Landed cost follows its goods line's grid, a hand's margin 6 decimals; list and shelf are exact. */
  const putWhereAsked = (ladder: LadderResult, rung: string, asked: Decimal) => {
    if (rung === 'landed') expect(ladder.landed.unit.minus(asked).abs().lte('0.0002')).toBe(true);
    if (rung === 'shelf') expect(ladder.shelfUnmoved.toFixed()).toBe(asked.toFixed());
  };

  const nothingElseTyped = (
    before: Plan,
    after: Plan,
    { rung, givesWay }: { rung: string; givesWay: string },
  ) => {
    const rules = (plan: Plan) => {
      const [account] = plan.accounts;
      const [listing] = account?.listings ?? [];
      return new Map<string, unknown>([
        ['list', listing?.list],
        ['shelf', listing?.shelf],
        ...(account?.hands.map(({ id, rule }): [string, unknown] => [id, rule]) ?? []),
      ]);
    };
    // where landed cost gives way the list price is what hands and shelf leave, by our margin
    const free = new Set([rung, givesWay, ...(givesWay === 'landed' ? ['list'] : [])]);
    for (const [id, rule] of rules(before)) {
      if (free.has(id) || (rule as { by: string }).by === 'solved') continue;
      expect(rules(after).get(id), id).toEqual(rule);
    }
  };

  test('a step up and a step down bring a rung no further than one step from where it was', () => {
    fc.assert(
      fc.property(plans, fc.constantFrom('list', 'shelf'), (plan, rung) => {
        const now = outcomeOf(plan);
        if (!now.ok || plan.accounts[0]?.pricePoints?.absorbedBy === 'us') return;
        const at = { accountId: 'corner', itemId: 'tea', rung, givesWay: rung === 'list' ? 'shelf' : 'list' };
        const up = stepRung(plan, { ...at, way: 'up' });
        if (!up.ok) return;
        const down = stepRung(up.value.plan, { ...at, way: 'down' });
        if (!down.ok) return;
        expect(valueAt(up.value.ladder, rung).gte(valueAt(now.value, rung))).toBe(true);
        expect(valueAt(down.value.ladder, rung).lte(valueAt(up.value.ladder, rung))).toBe(true);
      }),
      runs,
    );
  });
});
