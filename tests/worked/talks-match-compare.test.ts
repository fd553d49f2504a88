/**
 * Matching a term for every other chain, and deals side by side, worked by hand on the builders' account: ten doors from
 * week 4, tea at 2.60 landed 1.00, 6 a store and week: 3,120 units and 4,992.00 in the first year. The distributor's 20.4 %
 * is the gross margin of wholesalers, US Census Bureau, 2023 (as in src/domain/quick/defaults.ts). That competing chains
 * may ask for the same terms: 16 CFR Part 240. What a distributor bills back: common practice, no source.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Account, Plan } from '../../src/domain/plan/index.ts';
import { BESIDE_GUESSES, besideOffers } from '../../src/domain/talks/beside.ts';
import { compareDeals, type DealPick, ROUTES, routesOf } from '../../src/domain/talks/compare.ts';
import { matchCost } from '../../src/domain/talks/match.ts';
import { termsOf } from '../../src/domain/talks/terms.ts';
import { arbitraryPlan } from '../support/arbitrary-plan.ts';
import { aBusiness, aHand, aListing, anAccount, anItem, aPlan, aWave } from '../support/builders.ts';
import { oddNumbers } from '../support/deals.ts';
import { oracleOf, pricedPlan } from '../support/oracle/compare.ts';

const slottingOf = (amount: string, per: 'door' | 'chain' = 'door') =>
  ({ amount, per, settled: 'atOpening' }) as const;
const named = (id: string, changes: Partial<Account> = {}) => anAccount({ id, name: id, ...changes });

function matched(plan: Plan, term: string) {
  const found = matchCost(plan, 'corner', term);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return { ...found.value, costs: found.value.lines.map(({ cost }) => cost) };
}

describe('the same term for the others', () => {
  test('slotting of 250 a door: ten doors without any 2,500; at 100 a door 1,500; at 300 nothing', () => {
    const plan = aPlan({
      accounts: [
        anAccount({ slotting: slottingOf('250') }),
        named('hill'),
        named('lake', { slotting: slottingOf('100') }),
        named('moor', { slotting: slottingOf('300') }),
      ],
    });
    const found = matched(plan, 'slotting');
    expect(found.costs).toEqual([2500, 1500, 0]);
    expect(found.total).toBe(4000);
    expect(found.lines[2]?.why).toContain('past it already');
  });

  test('slotting a door is not slotting a chain: 1,000 for a chain of ten doors is 100 a door', () => {
    const accounts = [
      anAccount({ slotting: slottingOf('250') }),
      named('hill', { slotting: slottingOf('1000', 'chain') }),
    ];
    expect(matched(aPlan({ accounts }), 'slotting').costs).toEqual([1500]);
    const more = [
      anAccount({ slotting: slottingOf('250') }),
      named('hill', { slotting: slottingOf('3000', 'chain') }),
    ];
    expect(matched(aPlan({ accounts: more }), 'slotting').costs).toEqual([0]);
  });

  test('a margin of 40 % where 30 % is given: the tag of 3.7143 leaves 2.2286 of 2.60, on 3,120 units', () => {
    const thirty = [aHand({ rule: { by: 'margin', rate: '0.3' } })];
    const accounts = [anAccount(), named('hill', { hands: thirty }), named('lake')];
    const found = matched(aPlan({ accounts }), 'margin');
    // within one step of the price grid, 0.0001 a unit
    expect(Math.abs((found.costs[0] ?? 0) - (2.6 - 2.22858) * 3120)).toBeLessThanOrEqual(0.0001 * 3120);
    expect(found.costs[1]).toBe(0);
  });

  test('free fill of a case: 12 units at 1.00 in ten doors; payment days cost no contribution', () => {
    const free = anAccount({ listings: [aListing({ freeCasesPerDoor: 1 })] });
    const later = { ...free, terms: { ...free.terms, paymentDays: 60 } };
    const plan = aPlan({ accounts: [later, named('hill')] });
    expect(matched(plan, 'freeFill').costs).toEqual([120]);
    expect(matched(plan, 'paymentDays').costs).toEqual([0]);
  });

  test('doors are one chain’s own, and an unknown term or chain is a problem in words', () => {
    const plan = aPlan({ accounts: [anAccount(), named('hill')] });
    for (const [account, term] of [
      ['corner', 'doors'],
      ['corner', 'rebate'],
      ['nobody', 'slotting'],
    ] as const) {
      const found = matchCost(plan, account, term);
      expect(found.ok ? null : found.problems[0]?.code).toBe('reference-unknown');
    }
  });
});

function compared(plan: Plan, picks: readonly DealPick[]) {
  const found = compareDeals(plan, picks);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.value;
}
const poor = { business: aBusiness({ openingCashAmount: '0' }) };
const needOf = (plan: Plan) => -Math.min(...oracleOf(pricedPlan(plan)).low.map(Number)) / 100;
const distributor = aHand({ id: 'distributor', name: 'Distributor', rule: { by: 'margin', rate: '0.204' } });

describe('deals side by side', () => {
  test('a distributor at 20.4 % between: the tag of 4.3334 leaves the shop 2.60 to pay and us 2.0697, 1.0697 a unit', () => {
    const account = anAccount({ slotting: slottingOf('100') });
    const [direct, through] = compared(aPlan({ ...poor, accounts: [account] }), [
      { accountId: 'corner', route: 'direct' },
      { accountId: 'corner', route: 'distributor' },
    ]);
    expect(direct?.assumed).toBeNull();
    expect(direct?.figures?.contributionPerUnit.toString()).toBe('1.6');
    expect(direct?.figures?.firstYear.toString()).toBe('3992');
    expect(direct?.figures?.moneyDownPerDoor.toString()).toBe('100');
    // 100 / 9.60 = 10.4167 weeks; 1,000 / 832 a unit a store week: 6 x 1,000 / 4,992
    expect(direct?.figures?.paybackWeeks?.toString()).toBe('10.4167');
    expect(direct?.figures?.breakEvenRate?.toString()).toBe('1.201924');

    expect(through?.assumed).toContain('US Census Bureau, 2023');
    const perUnit = through?.figures?.contributionPerUnit.toNumber() ?? 0;
    expect(Math.abs(perUnit - (4.3334 * 0.6 * 0.796 - 1))).toBeLessThanOrEqual(0.0001);
    expect(through?.figures?.firstYear.toNumber()).toBeCloseTo(perUnit * 3120 - 1000, 6);
  });

  test('cash need is that of the plan with the deal in it, as the pass read a second time has it', () => {
    const account = anAccount({ hands: [distributor, aHand()], slotting: slottingOf('100') });
    const plan = aPlan({ ...poor, accounts: [account, named('hill', { waves: [aWave({ openWeek: 6 })] })] });
    const [planned, direct] = compared(plan, [
      { accountId: 'corner', route: 'asPlanned' },
      { accountId: 'corner', route: 'direct' },
    ]);
    expect(planned?.figures?.cashNeed.toNumber()).toBeCloseTo(needOf(plan), 9);
    // list 2.60, /0.796, /0.6: the tag is 5.4440; without the distributor the shop pays us 3.2664 of it
    const list = {
      by: 'price',
      amount: direct?.figures?.contributionPerUnit.plus(1).toString() ?? '',
    } as const;
    expect(Number(list.amount)).toBeCloseTo((2.6 / 0.796 / 0.6) * 0.6, 3);
    const alone = { ...account, hands: [aHand()], listings: [aListing({ list })] };
    const own = { ...plan, accounts: [alone, ...plan.accounts.slice(1)] };
    expect(direct?.figures?.cashNeed.toNumber()).toBeCloseTo(needOf(own), 9);
    expect(direct?.figures?.cashNeedWeek).not.toBeNull();
  });

  test('free fill through a distributor is billed back at its price: 1.00 + 2.60 - 2.0697 a unit, 12 units a door', () => {
    const account = anAccount({ listings: [aListing({ freeCasesPerDoor: 1 })] });
    const [direct, through] = compared(aPlan({ accounts: [account] }), [
      { accountId: 'corner', route: 'asPlanned' },
      { accountId: 'corner', route: 'distributor' },
    ]);
    expect(direct?.figures?.moneyDownPerDoor.toString()).toBe('12');
    expect(through?.figures?.moneyDownPerDoor.toNumber()).toBeCloseTo(12 * (1 + 2.6 - 2.0697), 2);
  });

  test('two products: contribution a unit weighs them by what a store sells; no single rate breaks even', () => {
    const items = [anItem(), anItem({ id: 'jam', name: 'Jam' })];
    const jam = aListing({ itemId: 'jam', list: { by: 'price', amount: '2' }, unitsPerStoreWeek: '2' });
    const accounts = [anAccount({ listings: [aListing(), jam], slotting: slottingOf('100') }), named('hill')];
    const [corner] = compared(aPlan({ items, accounts }), [
      { accountId: 'corner', route: 'asPlanned' },
      { accountId: 'hill', route: 'asPlanned' },
    ]);
    // (6 x 1.60 + 2 x 1.00) / 8
    expect(corner?.figures?.contributionPerUnit.toString()).toBe('1.45');
    expect([corner?.figures?.breakEvenRate, corner?.figures?.items]).toEqual([null, 2]);
    // 11.60 x 520 store weeks over 1,000
    expect(corner?.figures?.breakEvenRatio?.toString()).toBe('6.032');
  });

  test('a hand that takes what is left, not the same on both products, is a problem in its column alone', () => {
    const items = [anItem(), anItem({ id: 'jam', name: 'Jam' })];
    const fixedAt = (itemId: string, list: string) =>
      aListing({ itemId, list: { by: 'price', amount: list }, shelf: { by: 'price', amount: '5' } });
    const hands = [distributor, aHand({ rule: { by: 'solved' } })];
    const account = anAccount({ hands, listings: [fixedAt('tea', '2.6'), fixedAt('jam', '2')] });
    const [planned, direct] = compared(aPlan({ items, accounts: [account] }), [
      { accountId: 'corner', route: 'asPlanned' },
      { accountId: 'corner', route: 'direct' },
    ]);
    expect(planned?.figures).not.toBeNull();
    expect(direct?.figures).toBeNull();
    expect(direct?.problems[0]?.expected).toContain('one margin');
  });

  test('fewer than two or more than four are refused in words; the ways worth a column', () => {
    const pick = { accountId: 'corner', route: 'asPlanned' } as const;
    for (const count of [0, 1, 5]) {
      const found = compareDeals(
        aPlan(),
        Array.from({ length: count }, () => pick),
      );
      expect(found.ok ? null : found.problems[0]).toMatchObject({
        got: String(count),
        expected: expect.stringContaining('2 to 4'),
      });
    }
    expect(routesOf(aPlan(), 'corner')).toEqual(['asPlanned', 'distributor']);
    const between = aPlan({ accounts: [anAccount({ hands: [distributor, aHand()] })] });
    expect(routesOf(between, 'corner')).toEqual(['asPlanned', 'direct']);
  });
});

/** On random plans (fast-check prints the seed of a failure): nothing throws, nothing is odd, a sum is its lines. */
test('random plans: every way and every counter is figures or a problem in words', () => {
  fc.assert(
    fc.property(arbitraryPlan(), (plan) => {
      for (const { id } of plan.accounts.slice(0, 2)) {
        const picks = ROUTES.map((route): DealPick => ({ accountId: id, route }));
        const deals = compared(plan, picks);
        expect(oddNumbers(deals)).toEqual([]);
        for (const { figures, problems } of deals) expect(figures === null).toBe(problems.length > 0);
        const offers = besideOffers({ plan, accountId: id, reviewWeeks: 26, guesses: BESIDE_GUESSES });
        expect(oddNumbers(offers)).toEqual([]);
        for (const { name } of termsOf(plan, id)) {
          const found = matchCost(plan, id, name);
          expect(oddNumbers(found)).toEqual([]);
          if (!found.ok) continue;
          const sum = found.value.lines.reduce((all, { cost }) => all + (cost ?? 0), 0);
          expect(found.value.total).toBeCloseTo(sum, 3);
        }
      }
    }),
    { numRuns: 25 },
  );
}, 60_000);
