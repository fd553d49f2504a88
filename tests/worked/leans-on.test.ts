/**
 * The guess a verdict leans on. The answer is checked against runs of the model that the test makes itself: every guess at
 * every end, one by one. Plans are small enough to see which guess must move cash most.
 */
import { describe, expect, test } from 'vitest';
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate, type SayFor } from '../../src/domain/evaluate.ts';
import type { BasisNote, Plan } from '../../src/domain/plan/index.ts';
import { getAt, setAt } from '../../src/domain/plan/path.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import { NO_NUMBERS, quickPlan, type Region, regionOf } from '../../src/domain/quick/index.ts';
import type { LeansOn, Results, VerdictName, VerdictState } from '../../src/domain/results.ts';
import { leansOn, leansOnSteps } from '../../src/domain/verdicts/leans-on.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { aBusiness, anAccount, aPlan } from '../support/builders.ts';

const sayFor: SayFor = ({ minorDigits, startDay }) => plainSay({ minorDigits, startDay, dateOf: isoDateOf });

function resultsOf(plan: Plan): Results {
  expect(checkRules(plan)).toEqual([]);
  const outcome = evaluate(plan, sayFor);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

function leansOf(plan: Plan): Record<VerdictName, LeansOn | null> {
  return leansOn({ plan, results: resultsOf(plan), sayFor });
}

function guess(path: string, source: string, low: string, high: string): BasisNote {
  return { path, kind: 'guess', source, low, high };
}

function quick(cash: string | null): Plan {
  const seven = {
    ...NO_NUMBERS,
    shelfPrice: '4.99',
    landedPerUnit: '1.1',
    retailerMarginRate: '0.42',
    moneyDownPerStore: '250',
    stores: 60,
    unitsPerStoreWeek: '6',
    cash,
  };
  const made = quickPlan({
    seven,
    region: regionOf('US') as Region,
    startDate: '2026-03-02',
    planId: 'quick',
  });
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

/** The state of a verdict with each guess at each of its ends, by path and end. */
function statesAtEnds(
  plan: Plan,
  name: VerdictName,
): { path: string; end: string; state: VerdictState; value: number }[] {
  return plan.basis.flatMap((note) =>
    [note.low, note.high].flatMap((end) => {
      if (note.kind !== 'guess' || end === null) return [];
      const value = typeof getAt(plan, note.path) === 'number' ? Number(end) : end;
      const outcome = evaluate(setAt(plan, note.path, value), sayFor);
      if (!outcome.ok) return [];
      const verdict = outcome.value.verdicts[name];
      return [{ path: note.path, end, state: verdict.state, value: Number(verdict.value) }];
    }),
  );
}

describe('a guess that turns the verdict', () => {
  const plan = aPlan({
    business: aBusiness({
      openingCashAmount: '20000',
      overheads: [
        { id: 'rent', label: 'Rent', amountPerWeek: '20', fromWeek: 0, untilWeek: null },
        { id: 'fair', label: 'Trade fair', amountPerWeek: '4000', fromWeek: 10, untilWeek: 12 },
      ],
    }),
    thresholds: { ...aPlan().thresholds, cashBufferWeeks: 0 },
    basis: [
      guess('business/overheads/rent/amountPerWeek', 'Rent of 20 a week', '10', '60'),
      guess('business/overheads/fair/amountPerWeek', 'A trade fair of 4,000 a week', '1000', '12000'),
    ],
  });

  test('two weeks of 12,000 more than empty 20,000: cash fails there, and nowhere else', () => {
    expect(resultsOf(plan).verdicts.cash.state).toBe('holds');
    expect(leansOf(plan).cash).toEqual({
      verdict: 'cash',
      path: 'business/overheads/fair/amountPerWeek',
      label: 'A trade fair of 4,000 a week',
      flips: true,
      end: '12000',
      stateThere: 'fails',
    });
  });

  test('the ladder is moved by neither, and the promise is not known', () => {
    expect(leansOf(plan)).toMatchObject({ ladder: null, promise: null });
  });
});

test('an end that turns it to a worse word comes before one that turns it to a better, however far that moves it', () => {
  // A buffer of a year's outgoings makes 2,000 tight; with 100 the fill and its freight can't be paid.
  const plan = aPlan({
    business: aBusiness({ openingCashAmount: '2000' }),
    thresholds: { ...aPlan().thresholds, cashBufferWeeks: 52 },
    basis: [guess('business/openingCashAmount', 'About 2,000 in the bank', '100', '90000')],
  });
  expect(resultsOf(plan).verdicts.cash.state).toBe('tight');
  expect(statesAtEnds(plan, 'cash').map(({ state }) => state)).toEqual(['fails', 'holds']);
  expect(leansOf(plan).cash).toMatchObject({ end: '100', flips: true, stateThere: 'fails' });
});

test('no guess turns it: the one that moves the lowest cash most', () => {
  const plan = aPlan({
    business: aBusiness({
      overheads: [
        { id: 'rent', label: 'Rent', amountPerWeek: '10', fromWeek: 0, untilWeek: null },
        { id: 'fair', label: 'Trade fair', amountPerWeek: '400', fromWeek: 0, untilWeek: 2 },
      ],
    }),
    basis: [
      guess('business/overheads/fair/amountPerWeek', 'A trade fair of 400 a week', '350', '500'),
      // Nothing is paid in before week 8 (doors in week 4, 30 days): 80 more a week is more than 600 by then, the fair's
      // two weeks of 100 more are 200. Ten doors bring 96 a week, so that cash rises again in both.
      guess('business/overheads/rent/amountPerWeek', '', '5', '90'),
    ],
  });
  expect(leansOf(plan).cash).toEqual({
    verdict: 'cash',
    path: 'business/overheads/rent/amountPerWeek',
    label: 'business/overheads/rent/amountPerWeek',
    flips: false,
    end: '90',
    stateThere: 'holds',
  });
});

describe('a quick plan', () => {
  // Enough for the plan as it stands to be tight, so that its guesses decide.
  const need = resultsOf(quick(null)).reading.depthFromZero / 100;
  const plan = quick(String(Math.ceil(need) + 200));

  test('leans on a guess that makes cash fail, as running each end by itself shows', () => {
    const here = resultsOf(plan).verdicts.cash;
    expect(here.state).toBe('tight');
    const found = leansOf(plan).cash;
    if (found === null) throw new Error('cash leans on nothing');
    const ends = statesAtEnds(plan, 'cash');
    const failing = ends.filter(({ state }) => state === 'fails');
    expect(failing.length).toBeGreaterThan(1);
    const lowest = failing.reduce((low, each) => (each.value < low.value ? each : low));
    expect(found).toMatchObject({ path: lowest.path, end: lowest.end, flips: true, stateThere: 'fails' });
    expect(plan.basis.map(({ source }) => source)).toContain(found.label);
  });

  test('a deal that fails leans on the guess that would mend it', () => {
    // At 250 down a store the planned rate is so many times the break-even rate; at a hundredth more than that, it is less.
    const ratio = Number(resultsOf(plan).verdicts.deal.value);
    const dear = setAt(plan, 'accounts/chain/slotting/amount', (250 * ratio * 1.01).toFixed(2));
    expect(resultsOf(dear).verdicts.deal.state).toBe('fails');
    const mending = statesAtEnds(dear, 'deal').filter(({ state }) => state !== 'fails');
    const found = leansOf(dear).deal;
    expect(mending.map(({ path, end }) => `${path} ${end}`)).toContain(`${found?.path} ${found?.end}`);
    expect(found).toMatchObject({ flips: true });
  });

  test('without cash there is no cash verdict to lean on anything', () => {
    expect(leansOf(quick(null)).cash).toBeNull();
  });
});

describe('step by step', () => {
  const plan = aPlan({
    accounts: [anAccount()],
    basis: [
      guess('accounts/corner/waves/first/openWeek', 'Doors open in week 4', '0', '6'),
      guess('accounts/corner/terms/latenessDays', 'Paid on time', '0', '3.5'),
      guess('accounts/corner/hands/chain/rule/rate', 'The chain wants 40 %', '0.3', '0.5'),
      guess('items/tea/supply/capacityUnitsPerWeek', 'No lid', '100', '5000'),
      { path: 'horizonWeeks', kind: 'practice', source: 'A year', low: '26', high: '104' },
    ],
  });

  test('one step for each end, an end that can not be is passed over with its reason', () => {
    const steps = [...leansOnSteps({ plan, results: resultsOf({ ...plan, basis: [] }), sayFor })];
    const told = steps.map(
      ({ path, end, skipped }) => `${path.split('/').at(-1)} ${end}: ${skipped ?? 'run'}`,
    );
    expect(told).toEqual([
      'openWeek 0: accounts/corner/waves/first/openWeek: got week 0, and a delivery takes 1 week; expected a week from 1 to 51.',
      'openWeek 6: run',
      "latenessDays 3.5: accounts/corner/terms/latenessDays can't be 3.5.",
      'rate 0.3: run',
      'rate 0.5: run',
      'capacityUnitsPerWeek 100: run',
      'capacityUnitsPerWeek 5000: run',
    ]);
    expect(steps.map(({ done, total }) => `${done}/${total}`).at(-1)).toBe('7/7');
  });

  test('the last step brings what leansOn brings', () => {
    const args = { plan, results: resultsOf({ ...plan, basis: [] }), sayFor };
    const steps = leansOnSteps(args);
    let step = steps.next();
    while (!step.done) step = steps.next();
    expect(step.value).toEqual(leansOn(args));
  });
});
