/**
 * Counters that are not a price, worked by hand on the builders' account: ten doors from week 4, 6 a store and week,
 * 1.60 a unit, so 9.60 a store and week and 96.00 for the ten. Cash is held against the slow second reading of PASS.md
 * (tests/support/oracle), on plans the test changes itself. That such counters are asked at all (a test in some doors,
 * guaranteed weeks, slotting by reorder, capped spoils, proof, a window) is common practice, no source.
 */
import { describe, expect, test } from 'vitest';
import { DEMOS } from '../../demo-catalog/index.ts';
import type { Account, Plan } from '../../src/domain/plan/index.ts';
import { BESIDE_GUESSES, besideOffers, droppedAtReview } from '../../src/domain/talks/beside.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { aBusiness, aListing, anAccount, anItem, aPlan, aPromotion, aWave } from '../support/builders.ts';
import { dealOf, oddNumbers } from '../support/deals.ts';
import { oracleOf, pricedPlan } from '../support/oracle/compare.ts';

const slotting = { amount: '300', per: 'door', settled: 'atOpening' } as const;
const corner = (changes: Partial<Account> = {}) => anAccount({ slotting, ...changes });

/** Ordered by the unit, so that no half cases stand in the way of a sum done by hand. */
const byUnit = { items: [anItem({ caseUnits: 1 })] };

function lossOf(account: Account, reviewWeeks = 26) {
  const found = droppedAtReview(aPlan({ ...byUnit, accounts: [account] }), account.id, reviewWeeks);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.value;
}

function offersOf(plan: Plan, reviewWeeks = 26) {
  const found = besideOffers({ plan, accountId: 'corner', reviewWeeks, guesses: BESIDE_GUESSES });
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return Object.fromEntries(found.value.map((offer) => [offer.id, offer]));
}

function planOf(text: string): Plan {
  const read = parsePlanText(text);
  if (!read.ok) throw new Error('no sound plan');
  return read.value;
}

/** Label and amount of an offer's lines. */
function linesOf(offer: { lines: readonly { label: string; amount: number }[] } | undefined) {
  return Object.fromEntries((offer?.lines ?? []).map(({ label, amount }) => [label, amount]));
}

describe('dropped at the first review', () => {
  test('300 down a door and 26 weeks of 9.60: 10 x (249.60 - 300) = -504, from week 30', () => {
    expect(lossOf(corner())).toMatchObject({
      amount: -504,
      dealAmount: -504,
      goodsLeftAmount: 0,
      week: 30,
      reviewWeeks: 26,
    });
  });

  // Doors order up to max(12, 6 x (1 + 1 + 1)) = 18; 12 sell while the last order is on its way: 6 a door are left.
  test.each([
    ['kept', 0],
    // credited: the margin on 60 units less the credit of 60 x 2.60, which is their landed cost of 60
    ['credited', -60],
    // ours: the same goods come back at landed 1.00
    ['ours', 0],
  ] as const)('goods left, %s: %d', (closedStock, goods) => {
    expect(lossOf(corner({ closedStock }))).toMatchObject({
      goodsLeftUnits: 60,
      goodsLeftAmount: goods,
      amount: -504 + goods,
    });
  });

  test('free goods left are credited too, though nobody paid for them: 60 x 2.60', () => {
    const listings = [aListing({ freeCasesPerDoor: 12 })];
    expect(lossOf(corner({ closedStock: 'credited', listings }))).toMatchObject({
      dealAmount: -624,
      goodsLeftAmount: -156,
    });
  });

  test('on scan the goods left were ours: 60 x 1.00 are written off, unless they come back', () => {
    const sale = { by: 'scan', shrinkRate: '0' } as const;
    expect(lossOf(corner({ sale })).goodsLeftAmount).toBe(-60);
    expect(lossOf(corner({ sale, closedStock: 'ours' })).goodsLeftAmount).toBe(0);
  });

  test.each([
    ['as in the builders', {}, 10],
    ['three weeks of cover', { coverWeeks: 3 }, 10],
    ['one door, three weeks of cover', { coverWeeks: 3 }, 1],
    ['a fill of 72 a door', { facings: 6, depthUnits: 12 }, 10],
    ['slow: 1 a week', { unitsPerStoreWeek: '1' }, 40],
  ] as const)(
    'the units left are those of the weekly pass read a second time, to a case: %s',
    (_, listing, doors) => {
      const account = corner({
        listings: [aListing(listing)],
        waves: [aWave({ doors, doorsPerWeek: doors })],
        closedStock: 'credited',
      });
      const pass = oracleOf(pricedPlan(aPlan({ accounts: [{ ...account, cutWeek: 30 }] })));
      const found = droppedAtReview(aPlan({ accounts: [account] }), account.id, 26);
      const stands = Number(pass.units[0]?.inStores[29]);
      expect(Math.abs((found.ok ? found.value.goodsLeftUnits : Number.NaN) - stands)).toBeLessThanOrEqual(12);
    },
  );

  test('the curve up to the review is that of a deal cut there, whatever opens and is promoted later', () => {
    const account = corner({
      waves: [aWave(), aWave({ id: 'late', openWeek: 20, doors: 90, doorsPerWeek: 7 })],
      promotions: [aPromotion({ fromWeek: 24, weeks: 12 })],
      ramp: { startRate: '0.5', weeks: 8 },
      attritionYearlyRate: '0.1',
    });
    for (const weeks of [1, 9, 17, 26, 52]) {
      const cut = dealOf({ account: { ...account, cutWeek: 4 + weeks } });
      expect(lossOf(account, weeks).dealAmount).toBe((cut.cumulated[weeks - 1] ?? 0) / 100);
      expect(cut.cumulated.at(-1)).toBe(cut.cumulated[weeks - 1]);
    }
  });

  test('a chain that is left earlier anyway is left then; an unknown one is a problem', () => {
    expect(lossOf(corner({ cutWeek: 14 }))).toMatchObject({ week: 14, reviewWeeks: 10, amount: -2040 });
    const unknown = droppedAtReview(aPlan(), 'nobody', 26);
    expect(unknown.ok ? null : unknown.problems[0]).toMatchObject({
      code: 'reference-unknown',
      got: 'nobody',
    });
  });
});

describe('a test first', () => {
  test('1 of 10 doors, the others 26 weeks later: 52 + 9 x 26 = 286 door-weeks at 9.60, less 3,000', () => {
    const { test: offer } = offersOf(aPlan({ accounts: [corner()] }));
    expect(offer?.what).toContain('1 of 10 doors first; the other 9');
    expect(offer?.what).toContain('26 weeks later');
    expect(linesOf(offer)).toEqual({
      'First year, all doors at once': 1992,
      'First year, test first': -254.4,
      'Stopped at the review, all doors': -504,
      'Stopped at the review, test only': -50.4,
    });
    expect(offer?.value).toBe(-2246.4);
  });

  test('60 doors, 10 a week: 6 first in week 4, 54 from week 30 on at the same pace', () => {
    const waves = [aWave({ doors: 60, doorsPerWeek: 10 })];
    const lines = linesOf(offersOf(aPlan({ accounts: [corner({ waves })] }))['test']);
    // 6 x 52, then 10 doors for 26, 25, 24, 23 and 22 weeks and 4 for 21; all 60 are paid for within the year
    const doorWeeks = 6 * 52 + 10 * (26 + 25 + 24 + 23 + 22) + 4 * 21;
    expect(lines['First year, test first']).toBeCloseTo(doorWeeks * 9.6 - 18_000, 9);
    expect(lines['Stopped at the review, test only']).toBeCloseTo(6 * (249.6 - 300), 9);
  });

  test('one door can’t be tested before the rest: said, not valued', () => {
    const { test: offer } = offersOf(aPlan({ accounts: [corner({ waves: [aWave({ doors: 1 })] })] }));
    expect([offer?.value, offer?.what.includes('nothing to test')]).toEqual([null, true]);
  });
});

describe('guaranteed weeks on shelf', () => {
  test('3,000 at 96 a week are back after 31.25 weeks: 32 are asked, and save 504 + 72', () => {
    const { guarantee } = offersOf(aPlan({ accounts: [corner()] }));
    expect(guarantee?.what).toContain('at least 32 weeks');
    expect(linesOf(guarantee)).toEqual({ 'Dropped after 26 weeks': -504, 'Dropped after 32 weeks': 72 });
    expect(guarantee?.value).toBe(576);
  });

  test('back before the review: nothing is to be saved; never back: it says so', () => {
    const early = offersOf(aPlan({ accounts: [corner({ slotting: { ...slotting, amount: '96' } })] }))[
      'guarantee'
    ];
    expect([early?.value, early?.what.includes('After 10 weeks')]).toEqual([0, true]);
    const never = offersOf(aPlan({ accounts: [corner({ slotting: { ...slotting, amount: '900' } })] }))[
      'guarantee'
    ];
    // 52 weeks bring 4,992 of 9,000; the review leaves 2,496
    expect([never?.value, never?.what.includes('even then')]).toEqual([2496, true]);
  });
});

test('a second wave’s slotting puts the deal under water again: the weeks asked for are those after which it stays up', () => {
  const waves = [aWave(), aWave({ id: 'second', openWeek: 4 + 12 })];
  const account = corner({ waves, slotting: { ...slotting, amount: '96' } });
  const { guarantee } = offersOf(aPlan({ accounts: [account] }), 10);
  // after 12 weeks 1,152 - 960 = 192; then 960 more down and 192 a week: 192 - 960 + 4 x 192 = 0 after 16
  expect(guarantee?.what).toContain('at least 16 weeks');
  expect(lossOf(account, 10).amount).toBe(0);
  expect(lossOf(account, 15).amount).toBe(-192);
  expect(lossOf(account, 16).amount).toBe(0);
});

describe('slotting against reorders', () => {
  const poor = (account: Account) =>
    aPlan({ accounts: [account], business: aBusiness({ openingCashAmount: '0' }) });
  const needOf = (plan: Plan) => -Math.min(...oracleOf(pricedPlan(plan)).low.map(Number)) / 100;

  test('3,000 over 3,120 units are 0.9615 a unit; cash need as the pass read a second time has it', () => {
    const { reorders } = offersOf(poor(corner()));
    expect(reorders?.what).toContain('0.9615');
    const claimed = {
      kind: 'billBack',
      id: 'own',
      amountPerUnit: '0.9615',
      fromWeek: 4,
      weeks: 52,
      lagWeeks: 4,
    } as const;
    const [asked, spread] = [
      needOf(poor(corner())),
      needOf(poor(corner({ slotting: null, allowances: [claimed] }))),
    ];
    const lines = linesOf(reorders);
    expect(lines['Cash need, slotting as asked']).toBeCloseTo(-asked, 9);
    expect(lines['Cash need, by the unit']).toBeCloseTo(-spread, 9);
    expect(reorders?.value).toBeCloseTo(asked - spread, 9);
    expect(asked - spread).toBeGreaterThan(2000);
  });

  test('dropped at the review, only what sold has paid for it: 1,560 x (1.60 - 0.9615)', () => {
    const lines = linesOf(offersOf(poor(corner()))['reorders']);
    expect(lines['Dropped at the review, slotting as asked']).toBe(-504);
    expect(lines['Dropped at the review, by the unit']).toBe(996.06);
  });

  test('no slotting, nothing to spread', () => {
    const { reorders } = offersOf(aPlan());
    expect([reorders?.value, reorders?.what.includes('No slotting')]).toEqual([null, true]);
  });
});

describe('deductions', () => {
  const spoils = { kind: 'spoils', id: 'spoils', rate: '0.02' } as const;

  test('spoils of 2 % are 0.052 x 3,120 = 162.24 a year, and as much again without a cap', () => {
    const { spoilsCap } = offersOf(aPlan({ accounts: [corner({ allowances: [spoils] })] }));
    expect(spoilsCap?.value).toBe(162.24);
    expect(spoilsCap?.assumed).toContain('4 %');
    expect(offersOf(aPlan({ accounts: [corner()] }))['spoilsCap']?.value).toBeNull();
  });

  test('proof: a tenth of 162.24 off remittances and of scan-backs of 0.30 on 4 weeks’ 240 units, 72.00', () => {
    const scanBack = {
      kind: 'scanBack',
      id: 'back',
      amountPerUnit: '0.3',
      fromWeek: 10,
      weeks: 4,
      lagWeeks: 4,
    } as const;
    const earlyDiscount = { rate: '0.02', days: 10, takenShare: '1' };
    const account = corner({ allowances: [spoils, scanBack] });
    const terms = { ...account.terms, earlyDiscount };
    const { proof } = offersOf(aPlan({ accounts: [{ ...account, terms }] }));
    expect(linesOf(proof)).toEqual({
      'Deductions of the first year': -162.24,
      'Claims of the first year': -72,
    });
    expect(proof?.value).toBe(23.42);
    expect(proof?.assumed).toContain('guess');
  });

  test('proof where the plan says what isn’t owed: 3 % of 8,112.00 is 243.36, 60 % of it won back, no guess', () => {
    const disputed = { wrongRate: '0.03', recoveredShare: '0.6', recoveryWeeks: 10 };
    const { proof } = offersOf(aPlan({ accounts: [corner({ allowances: [spoils], disputed })] }));
    expect(linesOf(proof)).toEqual({
      'Deductions not owed, first year': -243.36,
      'Of these, won back': 146.02,
    });
    expect(proof?.value).toBe(97.34);
    expect(proof?.assumed).not.toContain('guess');
  });
});

describe('a window for one chain', () => {
  const hill = (openWeek: number) =>
    anAccount({
      id: 'hill',
      name: 'Hill',
      waves: [aWave({ openWeek }), aWave({ id: 'before', openWeek: 2 })],
    });
  const endOf = (plan: Plan) => Number(oracleOf(pricedPlan(plan)).balances.cash.at(-1)) / 100;

  test('Hill’s opening of week 10 moves to week 22, its opening before ours stays: end cash read a second time', () => {
    const { windowGiven } = offersOf(aPlan({ accounts: [corner(), hill(10)] }));
    const [now, later] = [10, 22].map((week) => endOf(aPlan({ accounts: [corner(), hill(week)] })));
    expect(windowGiven?.value).toBeCloseTo((later ?? 0) - (now ?? 0), 9);
    // twelve weeks of ten doors at 9.60 are 1,152; when money comes and stock goes out moves it a little
    expect(windowGiven?.value).toBeLessThan(-1000);
    expect(windowGiven?.value).toBeGreaterThan(-1300);
  });

  test('nobody else opens: nothing is known to cost; what a rival would take is known never', () => {
    const offers = offersOf(aPlan({ accounts: [corner()] }));
    expect([offers['windowGiven']?.value, offers['windowAsked']?.value]).toEqual([null, null]);
    expect(offers['windowAsked']?.what).toContain('not valued');
  });
});

test('every example, every chain: seven counters, each in a sentence, no figure odd', async () => {
  for (const { load } of DEMOS) {
    const plan = planOf(JSON.stringify(await load()));
    for (const { id } of plan.accounts) {
      const found = besideOffers({ plan, accountId: id, reviewWeeks: 26, guesses: BESIDE_GUESSES });
      const offers = found.ok ? found.value : [];
      expect(offers).toHaveLength(7);
      expect(oddNumbers(offers)).toEqual([]);
      for (const { what } of offers) expect(what).toMatch(/^[A-Z\d].*\.$/);
    }
  }
}, 60_000);
