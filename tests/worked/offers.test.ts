/**
 * Rival offers worked by hand: when money comes, what a royalty owes week by week, notes and their rounds, advances, cost per
 * unit, what an ask implies, and counters; which wins how often is in offer-futures.test.ts. The basis sells 1,000 units and 2,600.00 a week
 * for 52 weeks from 2026-03-02 with 100,000.00 in the bank, unless a test says otherwise.
 */
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/domain/evaluate.ts';
import { counterFor } from '../../src/domain/offers/counter.ts';
import { impliedOf } from '../../src/domain/offers/implied.ts';
import { growthOf, moneyOf, onDeals, turningOf } from '../../src/domain/offers/index.ts';
import { offerKindOf } from '../../src/domain/offers/list.ts';
import { resultOf } from '../../src/domain/offers/result.ts';
import { founderAt, runOffer, sharesAt } from '../../src/domain/offers/run.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { aListing, anAccount, aPlan, aWave } from '../support/builders.ts';
import {
  anOffer,
  anOwnership,
  aSteadyBasis,
  equityPart,
  loanPart,
  royaltyPart,
  sharePart,
} from '../support/offers.ts';

const NEED = { cashNeed: 0, cashNeedWeek: null };
const basis = aSteadyBasis();

function resultsOf(plan: Plan) {
  const results = evaluate(plan, sayFor);
  if (!results.ok) throw new Error(JSON.stringify(results.problems));
  return results.value;
}

describe('when money comes', () => {
  // 10 doors a week from week 4: 30 doors in week 6. Transit is one week: the first fill is ordered at the end of week 2.
  const account = anAccount({ waves: [aWave({ openWeek: 4, doors: 30, doorsPerWeek: 10 })] });
  const plan = (when: Parameters<typeof equityPart>[0]) =>
    aPlan({ accounts: [account], offers: [anOffer([equityPart(when)])] });
  const first = (when: Parameters<typeof equityPart>[0]) => {
    const [offer] = moneyOf(plan(when), resultsOf(plan(when))).offers;
    return { week: offer?.flows[0]?.week, never: offer?.never.map(({ trancheId }) => trancheId) };
  };

  test('in a week, once doors are open, once an order is in hand', () => {
    expect(first({ when: { by: 'week', week: 9 } })).toEqual({ week: 9, never: [] });
    expect(first({ when: { by: 'doors', doors: 30, accountId: 'corner' } })).toEqual({ week: 6, never: [] });
    expect(first({ when: { by: 'doors', doors: 11, accountId: null } })).toEqual({ week: 5, never: [] });
    expect(first({ when: { by: 'order', accountId: 'corner' } })).toEqual({ week: 2, never: [] });
  });

  test('never, and said: more doors than the plan opens, a week past its end, an account that is gone', () => {
    const never = { week: undefined, never: ['now'] };
    expect(first({ when: { by: 'doors', doors: 31, accountId: null } })).toEqual(never);
    expect(first({ when: { by: 'week', week: 52 } })).toEqual(never);
    expect(first({ when: { by: 'order', accountId: 'closed' } })).toEqual(never);
  });

  test('a tranche that never comes buys nothing: half of the money, half of the shares', () => {
    const part = equityPart({ partRate: '0.2' });
    const tranches = [
      { id: 'a', amount: '20000', when: { by: 'week', week: 0 } as const },
      { id: 'b', amount: '20000', when: { by: 'doors', doors: 9, accountId: null } as const },
    ];
    const run = runOffer(basis, anOffer([{ ...part, tranches }]), anOwnership());
    // All of it: .25 shares beside 1 are 20 %. Half of it: .125 of 1.125.
    expect(run.company.rows.at(-1)?.shares.at(-1)?.rate).toBeCloseTo(0.125 / 1.125, 12);
  });

  test('money that waits for doors doesn’t help the week it comes in', () => {
    const low = (when: Parameters<typeof equityPart>[0]) => {
      const shown = plan(when);
      return moneyOf(shown, resultsOf(shown)).offers[0]?.low[6];
    };
    const early = low({ when: { by: 'week', week: 6 } }) ?? 0;
    expect(early - (low({ when: { by: 'doors', doors: 30, accountId: null } }) ?? 0)).toBe(4_000_000);
  });
});

describe('royalties', () => {
  test('0.50 a unit paid weekly: 500.00 a week from the week after, the last one after the horizon', () => {
    const part = royaltyPart({ amountPerUnit: '0.5', paid: 'weekly' });
    const run = runOffer({ ...basis, royaltyYears: 0 }, anOffer([part]), anOwnership());
    const paid = run.flows.filter(({ amount }) => amount < 0);
    expect(paid).toHaveLength(52);
    expect(paid.every(({ amount }) => amount === -50_000)).toBe(true);
    expect([paid[0]?.week, paid.at(-1)?.week]).toEqual([1, 52]);
    expect(run).toMatchObject({ owed: 50_000, settles: 0 });
  });

  test('1.00 a unit until 1.5 x of 10,000, then 0.10, to a cap of 1.7 x: 15,000 and 2,000', () => {
    const part = royaltyPart({ amount: '10000', later: '0.1', untilMultiple: '1.5', capMultiple: '1.7' });
    const run = runOffer(basis, anOffer([part]), anOwnership());
    const paid = -run.flows.reduce((sum, { amount }) => sum + Math.min(0, amount), 0);
    // 15,000 units at 1.00; 20,000 more at 0.10 would pass the cap; 52,000 are sold.
    expect(paid).toBe(1_700_000);
    expect(run.settles).toBe(0);
  });

  test('without an end it counts at the sale for three years at the last year’s pace', () => {
    const run = runOffer(basis, anOffer([royaltyPart({ amountPerUnit: '0.5' })]), anOwnership());
    expect(run.settles).toBe(52_000 * 3 * 50);
  });

  test('a least sum a quarter is topped up, from the first quarter that begins after the money', () => {
    const part = royaltyPart({ amountPerUnit: '0.5', paid: 'quarterly', minimumAmountPerQuarter: '9000' });
    const run = runOffer(basis, anOffer([part]), anOwnership());
    const least = run.flows.filter(({ what }) => what === 'minimum').map(({ amount }) => amount);
    // 2026-03-02: quarters from April, July and October are whole, 13 weeks of 500.00: 2,500.00 more each.
    expect(least).toEqual([-250_000, -250_000, -250_000]);
  });

  test('weeks of more trade money than sales come off what a royalty on sales is paid on', () => {
    // April to June 2026 are weeks 5 to 17: 13 weeks of 2,600.00, but 10,000.00 of trade money more in week 9; July to
    // September begin with 40,000.00 of it, which all 13 weeks of them don't make up for.
    const netSales = basis.netSales.slice();
    netSales[9] = -1_000_000 + (netSales[9] ?? 0);
    netSales[18] = -4_000_000;
    const part = { ...offerKindOf({ kind: 'salesRoyalty' }).blank('royalty'), rate: '0.1' };
    const tranches = [{ id: 'now', amount: '40000', when: { by: 'week', week: 5 } }];
    const own = { ...basis, netSales, royaltyYears: 0 };
    const run = runOffer(own, anOffer([{ ...part, tranches } as never]), anOwnership());
    const paid = run.flows.filter(({ amount }) => amount < 0).map(({ amount }) => -amount);
    // 10 % of 13 x 2,600.00 - 10,000.00; nothing; 13 weeks less 40,000.00 - 12 x 2,600.00; the 8 weeks from January on.
    expect(paid).toEqual([238_000, 250_000, 208_000]);
  });

  test('a least sum is never a cent more than all that is owed', () => {
    // 0.5 cents in April, paid in May as 1; nothing more in the quarter: 99.5 are topped up, 99 are left to pay.
    const unitsSold = new Float64Array(52);
    unitsSold[5] = 1;
    const part = royaltyPart({ amountPerUnit: '0.005', paid: 'monthly', minimumAmountPerQuarter: '1' });
    const run = runOffer({ ...basis, unitsSold }, anOffer([part]), anOwnership());
    const first = run.flows.slice(1, 3).map(({ amount, what }) => [what, amount]);
    expect(first).toEqual([
      ['royalty', -1],
      ['minimum', -99],
    ]);
    expect(run.moneyIn).toBe(4_000_000);
  });

  test('a least sum goes on after the horizon, for as long as the royalty counts', () => {
    const least = { amountPerUnit: '0.01', minimumAmountPerQuarter: '5000' };
    const settles = (changes: Parameters<typeof royaltyPart>[0]) =>
      runOffer(basis, anOffer([royaltyPart({ ...least, ...changes })]), anOwnership()).settles;
    // Three years of four quarters: 13,000 units at 0.01 are 130.00 a quarter, 5,000.00 is the least.
    expect(settles({})).toBe(12 * 500_000);
    expect(settles({ minimumAmountPerQuarter: '100' })).toBe(12 * 13_000);
    // Half of 40,000.00 at most, less 3 x 5,000.00 and the 10.00 a week of the five weeks before April and the eight from January.
    expect(settles({ capMultiple: '0.5' })).toBe(2_000_000 - 3 * 500_000 - 13_000);
  });

  test('with no rate after the first it ends where that does, and least sums end with it', () => {
    // Half of 40,000.00 at 0.50 a unit; a least sum of 9,000.00 a quarter comes there sooner, and no further.
    const all = (changes: Parameters<typeof royaltyPart>[0]) => {
      const part = royaltyPart({ amountPerUnit: '0.5', minimumAmountPerQuarter: '9000', ...changes });
      const { flows, settles } = runOffer(basis, anOffer([part]), anOwnership());
      return settles - flows.reduce((sum, { amount }) => sum + Math.min(0, amount), 0);
    };
    expect(all({ untilMultiple: '0.5', later: '0' })).toBe(2_000_000);
    // With a rate after it, however low, the least sums go on: three years of twelve quarters after the horizon.
    expect(all({ untilMultiple: '0.5', later: '0.01' })).toBeGreaterThan(2_000_000 + 12 * 900_000);
  });

  test('cost per unit is what was paid in the horizon over units sold in it', () => {
    const run = runOffer(basis, anOffer([loanPart({ feeRate: '0.02' })]), anOwnership());
    const costs = run.flows.filter(({ week, what }) => week < 52 && /^(fee|interest)$/.test(what));
    const paid = costs.reduce((sum, { amount }) => sum - amount, 0);
    expect(paid).toBeGreaterThan(80_000);
    expect(resultOf(aPlan(), run, NEED).perUnit).toBeCloseTo(paid / 52_000, 9);
  });

  test.each(['weekly', 'monthly', 'quarterly'] as const)(
    'a royalty of 0.50 a unit costs 0.50 a unit, also what falls due after the horizon: paid %s',
    (paid) => {
      const run = runOffer(basis, anOffer([royaltyPart({ amountPerUnit: '0.5', paid })]), anOwnership());
      expect(resultOf(aPlan(), run, NEED).perUnit).toBeCloseTo(50, 9);
    },
  );
});

describe('notes and advances', () => {
  const note = (changes: object) => ({
    ...offerKindOf({ kind: 'convertibleNote' }).blank('note'),
    tranches: [{ id: 'now', amount: '50000', when: { by: 'week', week: 0 } }],
    ...changes,
  });
  const runWith = (changes: object, ownership = anOwnership()) =>
    runOffer(basis, anOffer([note(changes) as never]), ownership);

  test('50,000 at 7.3 % for 50 weeks are 53,500 to be turned into shares', () => {
    const rounds = [
      { id: 'a', label: 'A', week: 50, amount: '465000', preMoneyAmount: '1535000', poolRate: '0' },
    ];
    const run = runWith({ yearlyRate: '0.073' }, anOwnership({ rounds }));
    // 53,500 of 2,000,000 after the round, at the round's own price.
    expect(run.company.owners.find(({ id }) => id === 'note')?.preference).toBeCloseTo(5_350_000, 3);
    expect(run.company.rows.at(-1)?.shares.find(({ id }) => id === 'note')?.rate).toBeCloseTo(53.5 / 2000, 9);
  });

  test('due after six months without a round: principal and interest go back', () => {
    const run = runWith({ yearlyRate: '0.073', maturityMonths: 6, atMaturity: 'repaid' });
    // The first week that starts in September 2026 is week 27: 50,000 x 0.073 x 189 / 365 = 1,890.
    const back = run.flows.filter(({ amount }) => amount < 0);
    expect(back.map(({ week, amount, what }) => [week, amount, what])).toEqual([
      [27, -5_000_000, 'principal'],
      [27, -189_000, 'interest'],
    ]);
  });

  test('a round whose pre-money the conversion would swallow doesn’t happen, and is said', () => {
    const rounds = [
      { id: 'a', label: 'A', week: 20, amount: '10000', preMoneyAmount: '40000', poolRate: '0' },
    ];
    expect(runWith({}, anOwnership({ rounds })).company.failedRounds).toEqual(['a']);
  });

  test('money of a note that comes after a round waits for the sale; after its due date too', () => {
    const tranches = [
      { id: 'a', amount: '50000', when: { by: 'week', week: 0 } },
      { id: 'b', amount: '50000', when: { by: 'week', week: 40 } },
    ];
    const rounds = [
      { id: 'a', label: 'A', week: 20, amount: '450000', preMoneyAmount: '1550000', poolRate: '0' },
    ];
    const held = ({ company }: ReturnType<typeof runWith>) =>
      company.owners.find(({ id }) => id === 'note')?.preference;
    // Both halves are owed something at the sale: the first as shares, the second as its money.
    expect(held(runWith({ tranches }, anOwnership({ rounds })))).toBeCloseTo(10_000_000, 3);
    const repaid = runWith({ tranches, maturityMonths: 6, atMaturity: 'repaid' });
    expect(repaid.flows.filter(({ amount }) => amount < 0).map(({ amount }) => amount)).toEqual([-5_000_000]);
    expect(held(repaid)).toBeCloseTo(5_000_000, 3);
  });

  test('80 % of an invoice of 10,000, collected 9 weeks later, at 2 % per 30 days', () => {
    const amounts = new Float64Array(52);
    amounts[3] = 1_000_000;
    const invoices = [{ amounts, collectWeeks: 9, badDebtRate: 0.05 }];
    const part = {
      ...offerKindOf({ kind: 'receivablesAdvance' }).blank('advance'),
      advanceRate: '0.8',
      feeRatePer30Days: '0.02',
    };
    const of = (changes: object) =>
      runOffer({ ...basis, invoices }, anOffer([{ ...part, ...changes } as never]), anOwnership()).flows.map(
        ({ week, amount }) => [week, amount],
      );
    expect(of({})).toEqual([
      [3, 800_000],
      [12, -800_000],
      [12, -33_600],
    ]);
    expect(of({ recourse: false })[1]).toEqual([12, -760_000]);
    expect(of({ limitAmount: '5000' })[0]).toEqual([3, 500_000]);
  });
});

describe('loans', () => {
  test('at the highest rate a plan can hold over the longest time every figure is a number', () => {
    const part = loanPart({ yearlyRate: '100', principalMonths: 360 });
    const run = runOffer(basis, anOffer([part]), anOwnership());
    expect(run.flows.every(({ amount }) => Number.isFinite(amount))).toBe(true);
    // 100 / 12 of 40,000.00 a month, and all of the principal at the end.
    expect(run.flows[1]).toMatchObject({ what: 'interest', amount: -33_333_333 });
    // Paid last in week 48, next in week 52, the first past the end: a month's interest beside the principal.
    expect(run.owed).toBe(4_000_000 + 33_333_333);
  });
});

describe('loans that the horizon cuts', () => {
  test('what is still owed is principal, and interest of the weeks since the last payment, however it is repaid', () => {
    // 40,000.00 at 12 %, interest alone; paid last in week 48 (1 February 2027), next in week 52. Of 51 weeks three are past that.
    const cut = aSteadyBasis({ weeks: 51 });
    const owed = (repaid: 'equalParts' | 'equalPayments') =>
      runOffer(cut, anOffer([loanPart({ repaid, interestOnlyMonths: 24 })]), anOwnership()).owed;
    // Three of four weeks of 400.00 a month; three weeks of 92.05 by the day.
    expect(owed('equalPayments')).toBe(4_000_000 + 30_000);
    expect(owed('equalParts')).toBe(4_000_000 + 3 * 9205);
  });
});

describe('shares of several classes', () => {
  const bare = { ...basis, cash: new Float64Array(52), low: new Float64Array(52) };
  const round = { id: 'a', label: 'A', week: 10, amount: '100000', preMoneyAmount: '900000', poolRate: '0' };
  /** Everybody's money of a sale of the cash alone and so much more: founder, others, pool, part, round. */
  const shared = (part: Parameters<typeof equityPart>[0], price: number) => {
    const stake = equityPart({ amount: '100000', partRate: '0.5', proRata: true, ...part });
    const run = runOffer(bare, anOffer([stake]), anOwnership({ rounds: [round] }));
    return sharesAt(run, price * 100).map((amount) => Math.round(amount) / 100);
  };

  test('plain shares, and half of a later round bought beside them: the round’s come first, the plain ones don’t', () => {
    // 200,000.00 of cash. A share of the round cost 450,000.00: at this price its 50,000.00 each come first, and the other
    // 100,000.00 go to the founder's share and the part's alike.
    expect(shared({ preference: 'none' }, 0)).toEqual([50_000, 0, 0, 100_000, 50_000]);
  });

  test('participating shares, and half of a later round: what was bought in the round doesn’t participate', () => {
    // Of 400,000.00: 100,000.00 of the part's own, 50,000.00 and 50,000.00 of the round, then half of 200,000.00 each.
    expect(shared({ preference: 'participating' }, 200_000)).toEqual([100_000, 0, 0, 250_000, 50_000]);
  });

  test('a note half of which comes after the round: those shares take their part, the rest its money', () => {
    const tranches = [
      { id: 'a', amount: '100000', when: { by: 'week', week: 0 } },
      { id: 'b', amount: '100000', when: { by: 'week', week: 20 } },
    ];
    const note = { ...offerKindOf({ kind: 'convertibleNote' }).blank('note'), tranches };
    const rounds = [{ ...round, amount: '100000', preMoneyAmount: '900000' }];
    const run = runOffer(bare, anOffer([note as never]), anOwnership({ rounds }));
    // 800,000.00 a share: 1 is the founder's, 0.125 the note's and 0.125 the round's. Of 1,350,000.00 in all 100,000.00 go
    // back to the half that turned into nothing, and 1,250,000.00 are 1,000,000.00 a share.
    const amounts = sharesAt(run, 105_000_000).map((amount) => Math.round(amount) / 100);
    expect(amounts).toEqual([1_000_000, 0, 0, 225_000, 125_000]);
  });
});

describe('what an offer comes to', () => {
  test('100,000 for 20 % is 400,000 before it; 25 % a year take 125,000 for the part after a year', () => {
    const plan = aPlan({ offers: [anOffer([equityPart({ amount: '100000', partRate: '0.2' })])] });
    const run = runOffer(basis, plan.offers[0] ?? anOffer([]), plan.ownership);
    const [implied] = impliedOf(plan, run);
    expect(implied).toMatchObject({ preMoney: 40_000_000, postMoney: 50_000_000, timesRunRate: null });
    expect(implied?.timesPlanRevenue).toBeCloseTo(500_000 / (2600 * 52), 9);
    // 364 days: 1.25^(364/365) of 100,000 for a fifth; 200,000 of it is cash.
    const needed = (100_000 * 1.25 ** (364 / 365)) / 0.2 - 200_000;
    expect((implied?.salePriceNeeded ?? 0) / 100).toBeCloseTo(needed, 2);
  });

  test('under a cap: 100,000 at 400,000 before it is 20 % at least, at 500,000 after it the same', () => {
    const tranches = [{ id: 'now', amount: '100000', when: { by: 'week', week: 0 } }];
    const of = (kind: string, changes: object) => {
      const part = { ...offerKindOf({ kind }).blank('part'), tranches, ...changes };
      const plan = aPlan({ offers: [anOffer([part as never])] });
      return impliedOf(plan, runOffer(basis, plan.offers[0] ?? anOffer([]), plan.ownership));
    };
    const same = { by: 'cap', preMoney: 40_000_000, postMoney: 50_000_000, partRate: 0.2 };
    expect(of('convertibleNote', { capAmount: '400000' })).toMatchObject([same]);
    expect(of('cappedAgreement', { capAmount: '500000' })).toMatchObject([same]);
    expect(of('cappedAgreement', {})).toEqual([]);
  });

  test('it covers a need of 30,000 with 40,000, and carries all 52 weeks', () => {
    const short = { ...basis, low: new Float64Array(52).fill(-3_000_000) };
    const run = runOffer(short, anOffer([equityPart({ amount: '40000' })]), anOwnership());
    const { cover, carries } = resultOf(aPlan(), run, { cashNeed: 3_000_000, cashNeedWeek: 0 });
    expect(cover).toEqual({ name: 'plan', need: 3_000_000, left: 1_000_000, covers: true });
    expect(carries).toMatchObject({ runsOutWeek: null, weeks: 52 });
  });

  test('0.25 a unit takes 0.25 of every ladder’s contribution', () => {
    const plan = aPlan();
    const results = resultsOf(plan);
    const shown = onDeals(plan, results, 25);
    expect(Number(shown?.ladders[0]?.contribution) - Number(shown?.ladders[0]?.contributionWith)).toBeCloseTo(
      0.25,
      9,
    );
    expect(Number(shown?.deals[0]?.firstYearWith)).toBeLessThan(Number(shown?.deals[0]?.firstYear));
  });

  test('the plan’s own results don’t move with offers', () => {
    const plan = aPlan();
    const offered = { ...plan, offers: [anOffer([loanPart({})])] };
    expect(resultsOf(offered).reading).toEqual(resultsOf(plan).reading);
    expect(resultsOf(offered).verdicts).toEqual(resultsOf(plan).verdicts);
  });
});

describe('against each other', () => {
  const equity = anOffer([equityPart({ amount: '40000', partRate: '0.3' })], { id: 'equity' });
  const loan = anOffer([loanPart({ amount: '40000', yearlyRate: '0.12', principalMonths: 10 })], {
    id: 'loan',
  });
  const plan = aPlan({ offers: [equity, loan] });
  const runs = plan.offers.map((offer) => runOffer(basis, offer, plan.ownership));

  test('they turn where the sale is worth the same to the founder, in closed form', () => {
    const interest = -(runs[1]?.flows ?? []).reduce(
      (sum, { what, amount }) => sum + (what === 'interest' ? amount : 0),
      0,
    );
    const low = { ...basis, cash: new Float64Array(52).fill(5_000_000) };
    const lower = plan.offers.map((offer) => runOffer(low, offer, plan.ownership));
    // With 50,000 in the bank: 0.7 (price + 90,000) = price + 50,000 - interest.
    const at = (0.7 * 9_000_000 - 5_000_000 + interest) / 0.3;
    const { points } = turningOf(plan, { basis: low, runs: lower, offers: [], implied: [] });
    const [point] = points.filter(({ on }) => on === 'exit');
    expect(point).toMatchObject({ between: ['equity', 'loan'], below: 'equity', above: 'loan' });
    expect(Math.abs((point?.at ?? 0) - at)).toBeLessThan(5);
  });

  test('each place says the units sold there: on growth what the plan sells with its rates of sale typed so', () => {
    const results = resultsOf(plan);
    const money = moneyOf(plan, results);
    const sold = (factor: number) => {
      const accounts = plan.accounts.map((account) => ({
        ...account,
        listings: account.listings.map((listing) => ({
          ...listing,
          unitsPerStoreWeek: String(Number(listing.unitsPerStoreWeek) * factor),
        })),
      }));
      const typed = { ...plan, accounts };
      return moneyOf(typed, resultsOf(typed)).basis.unitsSold.reduce((sum, units) => sum + units, 0);
    };
    const [growth] = growthOf(plan, results, money).series;
    expect(growth?.units).toEqual(growth?.places.map(sold));
    expect(new Set(growth?.units).size).toBe(growth?.places.length);
    const [units, exit] = turningOf(plan, money).series;
    expect(units?.units).toEqual(units?.places);
    expect(exit?.units.every((each) => each === null)).toBe(true);
  });

  test('growth beyond what may be typed as a rate of sale is computed, not cut: three times 500 is 1,500', () => {
    const fast = anAccount({
      listings: [aListing({ unitsPerStoreWeek: '500' })],
      waves: [aWave({ openWeek: 4, doors: 1, doorsPerWeek: 1 })],
    });
    const quick = aPlan({ accounts: [fast], offers: [equity, loan] });
    const results = resultsOf(quick);
    const [growth] = growthOf(quick, results, moneyOf(quick, results)).series;
    const at = (factor: number) => growth?.units[growth.places.indexOf(factor)] ?? 0;
    // But for the opening week, when the shelf holds its first fill.
    expect(at(3) / at(1)).toBeCloseTo(3, 2);
  });

  test('a counter: the part at which equity equals the loan, in closed form, on its grid', () => {
    const price = 2600 * 52 * 100;
    const loanMoney = founderAt(runs[1] ?? runOffer(basis, loan, plan.ownership), price);
    const exact = 1 - loanMoney / (price + 14_000_000);
    const counter = counterFor({
      plan,
      basis,
      offer: equity,
      partId: 'stake',
      goal: { by: 'equals', offerId: 'loan' },
    });
    if (!counter.found) throw new Error(counter.why);
    // On the grid's place below: a part no greater than leaves us as much as the loan does.
    const below = Math.floor(exact * 10_000) / 10_000;
    expect(counter).toMatchObject({ key: 'partRate', from: '0.3', value: String(below) });
    expect(counter.miss).toBeCloseTo((price + 14_000_000) * (exact - below), 3);
  });

  test('a counter stands on the side of its grid that is ours: never less kept, never more paid', () => {
    // To keep .66664 takes a part of .33336: .3334 is the nearer place of the grid, and would leave .6666.
    const part = { by: 'founderRate', rate: 0.66664 } as const;
    const stake = counterFor({ plan, basis, offer: equity, partId: 'stake', goal: part });
    expect(stake).toMatchObject({ found: true, value: '0.3333' });
    // 40,000.00 to a cap on a grid of .01: 50,299.99 at most is 1.25 x, though 1.26 x is nearer.
    const share = anOffer([sharePart({ amount: '40000', rate: '0.5', capMultiple: '1.6' })]);
    const most = { by: 'paidAtMost', amount: 5_029_999 } as const;
    expect(counterFor({ plan, basis, offer: share, partId: 'share', goal: most })).toMatchObject({
      value: '1.25',
      miss: -29_999,
    });
  });

  test('a counter to the founder’s limits: the part that leaves 85 %, the cap that costs 50,000 at most', () => {
    const goal = { by: 'founderRate', rate: 0.85 } as const;
    expect(counterFor({ plan, basis, offer: equity, partId: 'stake', goal })).toMatchObject({
      value: '0.15',
    });
    const share = anOffer([sharePart({ amount: '40000', rate: '0.5', capMultiple: '1.6' })]);
    const most = { by: 'paidAtMost', amount: 5_000_000 } as const;
    const cap = counterFor({ plan, basis, offer: share, partId: 'share', goal: most });
    expect(cap).toMatchObject({ found: true, key: 'capMultiple', value: '1.25', miss: 0 });
  });

  test('what no value reaches is said: a loan can’t change the founder’s part', () => {
    const goal = { by: 'founderRate', rate: 0.85 } as const;
    const counter = counterFor({ plan, basis, offer: loan, partId: 'loan', goal });
    const reach = { low: 1, high: 1, wanted: 0.85 };
    expect(counter).toEqual({ found: false, partId: 'loan', key: 'yearlyRate', why: 'notReached', reach });
  });

  test('and why: what it comes to over all that the term may be', () => {
    const goal = { by: 'founderRate', rate: 0.01 } as const;
    const counter = counterFor({ plan, basis, offer: equity, partId: 'stake', goal });
    // The part goes from nothing to 95 % of the company.
    if (counter.found || counter.why === 'noPart') throw new Error('reached');
    expect(counter.reach?.low).toBeCloseTo(0.05, 9);
    expect(counter.reach?.high).toBe(1);
    // A loan without interest costs the 40,000 it lends, and no less.
    const cheap = { by: 'paidAtMost', amount: 3_000_000 } as const;
    const rate = counterFor({ plan, basis, offer: loan, partId: 'loan', goal: cheap });
    expect(rate).toMatchObject({ found: false, reach: { low: 4_000_000, wanted: 3_000_000 } });
  });
});
