/**
 * Readiness by hand: back from the shelf date, forward from today, what a slip moves and costs, chances, suggestions.
 * Worked figure: today Tuesday 3 March 2026; the opening of week 4 is on the shelf on Monday 30 March, leaves us on Monday
 * 23 March, and is ordered on Monday 9 March (one week on the way, two to make).
 */
import { describe, expect, test } from 'vitest';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Gate, Plan } from '../../src/domain/plan/index.ts';
import {
  chancesFor,
  numberFindings,
  packLevels,
  readinessFor,
  readinessLine,
  slipCost,
  slipCostsOf,
  suggestedGates,
  withLaterOpenings,
} from '../../src/domain/readiness/index.ts';
import { withoutAccount, withoutGate, withoutWave } from '../../src/domain/readiness/leave-out.ts';
import { plainSay } from '../../src/domain/verdicts/say.ts';
import { anAccount, anItem, aWave } from '../support/builders.ts';
import { aGate, gated } from '../support/gates.ts';

const TODAY = '2026-03-03';
const say = plainSay({ minorDigits: 2, startDay: 0, dateOf: String });
const resultsOf = (plan: Plan) => {
  const results = evaluate(plan, () => say);
  if (!results.ok) throw new Error(JSON.stringify(results.problems));
  return results.value;
};

describe('one gate before shipping on Monday 23 March', () => {
  // Worked days from Tuesday 3 March to Friday 20 March: 4 + 5 + 5 = 14.
  test.each([
    [1, '2026-03-20', '2026-03-20', 13, '2026-03-30'],
    [5, '2026-03-16', '2026-03-20', 9, '2026-03-30'],
    [14, '2026-03-03', '2026-03-20', 0, '2026-03-30'],
    [15, '2026-03-02', '2026-03-20', -1, '2026-04-06'],
    [19, '2026-02-24', '2026-03-20', -5, '2026-04-06'],
    [20, '2026-02-23', '2026-03-20', -6, '2026-04-13'],
  ])(
    '%i days: from %s to %s at the latest, slack %i, on the shelf %s',
    (days, start, finish, slack, earliest) => {
      const { gates, waves } = readinessFor(gated([aGate('labels', days)]), TODAY);
      expect(gates[0]).toMatchObject({
        latestStart: start,
        latestFinish: finish,
        slack,
        late: slack < 0,
        start: TODAY,
        holds: ['corner/first'],
      });
      expect(waves[0]).toMatchObject({
        shelfDate: '2026-03-30',
        shipDate: '2026-03-23',
        orderDate: '2026-03-09',
        earliest,
        heldBy: 'labels',
        critical: ['labels'],
      });
    },
  );

  test.each([
    ['ordering', '2026-03-06', 3],
    ['shipping', '2026-03-20', 13],
    ['shelf', '2026-03-27', 18],
  ] as const)('before %s: to be done by %s, slack %i of a day’s work', (before, latestFinish, slack) => {
    const { gates } = readinessFor(gated([aGate('labels', 1, { before })]), TODAY);
    expect(gates[0]).toMatchObject({ latestFinish, slack });
  });

  test('a range counts as its mean, rounded up: 1, 2, 9 days are 3', () => {
    const leadDays = { optimistic: 1, likely: 2, pessimistic: 9 };
    const { gates } = readinessFor(gated([aGate('labels', 0, { leadDays })]), TODAY);
    expect(gates[0]).toMatchObject({
      daysLeft: 3,
      start: TODAY,
      finish: '2026-03-05',
      latestStart: '2026-03-18',
    });
  });

  test('under way it takes what is left, done it takes nothing and holds back nothing', () => {
    const left: Gate['state'] = { is: 'underWay', daysLeft: 2 };
    expect(readinessFor(gated([aGate('labels', 40, { state: left })]), TODAY).gates[0]).toMatchObject({
      daysLeft: 2,
      finish: '2026-03-04',
      late: false,
    });
    const done = aGate('labels', 40, { state: { is: 'done', date: '2026-02-02' } });
    const { gates, waves, next } = readinessFor(gated([done]), TODAY);
    expect(gates[0]).toMatchObject({ daysLeft: 0, start: null, latestStart: null, slack: null, late: false });
    expect(waves[0]).toMatchObject({ earliest: '2026-03-30', slipWeeks: 0, heldBy: null, critical: [] });
    expect(next).toEqual([]);
  });
});

describe('days that aren’t worked', () => {
  const calendar = { workDays: [1, 2, 3, 4, 5], holidays: null, closed: [] };
  const started = (plan: Plan) => readinessFor(plan, TODAY).gates[0]?.latestStart;

  test('a week we close: five days less', () => {
    const closed = [{ id: 'fair', label: 'Fair', fromDate: '2026-03-16', untilDate: '2026-03-20' }];
    expect(started(gated([aGate('labels', 5)], { calendar: { ...calendar, closed } }))).toBe('2026-03-09');
  });

  test('Saturdays worked: 5 days back from Monday 23 March begin on Tuesday', () => {
    expect(
      started(gated([aGate('labels', 5)], { calendar: { ...calendar, workDays: [1, 2, 3, 4, 5, 6] } })),
    ).toBe('2026-03-17');
  });

  test('St Patrick’s day in Northern Ireland, Tuesday 17 March: a day less', () => {
    const plan = gated([aGate('labels', 5)], { calendar: { ...calendar, holidays: 'GB-NIR' } });
    expect(started(plan)).toBe('2026-03-13');
  });

  test('years whose holidays aren’t known are named', () => {
    const far = gated(
      [aGate('labels', 5)],
      { calendar: { ...calendar, holidays: 'US' } },
      { startDate: '2050-03-07' },
    );
    expect(readinessFor(far, '2050-03-08').holidaysUnknown).toEqual([2050]);
    expect(readinessFor(gated([aGate('labels', 5)]), TODAY).holidaysUnknown).toEqual([]);
  });
});

describe('gates that wait for each other, two openings', () => {
  const account = anAccount({ waves: [aWave(), aWave({ id: 'second', openWeek: 8 })] });
  const gates = [
    aGate('displays', 4, {
      before: 'shelf',
      holds: { by: 'waves', accountId: 'corner', waveIds: ['second'] },
    }),
    aGate('labels', 6, { after: ['artwork'] }),
    aGate('artwork', 9),
    aGate('insurance', 2),
  ];
  const plan = gated(gates, {}, { accounts: [account] });
  const reading = readinessFor(plan, TODAY);
  const of = (id: string) => reading.gates.find((gate) => gate.id === id);

  test('artwork and labels are the critical path: 15 days where 14 are left', () => {
    expect(reading.critical).toEqual(['artwork', 'labels']);
    expect(of('artwork')).toMatchObject({ slack: -1, late: true, critical: true, finish: '2026-03-13' });
    expect(of('labels')).toMatchObject({ slack: -1, start: '2026-03-16', finish: '2026-03-23' });
    expect(of('insurance')).toMatchObject({ slack: 12, late: false, critical: false });
    expect(reading.late).toEqual(['labels', 'artwork']);
  });

  test('the first opening comes a week later, the second keeps its date', () => {
    expect(reading.waves.map(({ waveId, slipWeeks, earliest }) => [waveId, slipWeeks, earliest])).toEqual([
      ['first', 1, '2026-04-06'],
      ['second', 0, '2026-04-27'],
    ]);
    expect(of('displays')?.holds).toEqual(['corner/second']);
    expect(of('artwork')?.holds).toEqual(['corner/first', 'corner/second']);
  });

  test('next is what can begin today, the most pressing first', () => {
    expect(reading.next).toEqual(['artwork', 'insurance', 'displays']);
  });

  test('a gate that slips by 5 days moves what waits for it by a week', () => {
    const slipped = readinessFor(plan, TODAY, { artwork: 5 });
    expect(slipped.waves.map(({ slipWeeks }) => slipWeeks)).toEqual([2, 0]);
    expect(slipped.gates.find(({ id }) => id === 'labels')?.finish).toBe('2026-03-30');
  });

  test('the next reset of the account after its earliest date', () => {
    const resets = ['2026-04-01', '2026-04-08', '2026-05-04'].map((date) => ({
      id: `at-${date}`,
      label: 'Reset',
      date,
      accountId: null,
    }));
    expect(readinessFor(gated(gates, { resets }, { accounts: [account] }), TODAY).waves[0]?.nextReset).toBe(
      '2026-04-08',
    );
  });

  test('what leaves the plan leaves the gates: those after a gate wait for what it waited for', () => {
    const chain = gated([aGate('a', 1), aGate('b', 1, { after: ['a'] }), aGate('c', 1, { after: ['b'] })]);
    expect(withoutGate(chain, 'b').readiness.gates.map(({ after }) => after)).toEqual([[], ['a']]);
    const left = withoutWave(plan, { accountId: 'corner', waveId: 'second' });
    expect(left.readiness.gates.map(({ id }) => id)).toEqual(['labels', 'artwork', 'insurance']);
    expect(withoutAccount(plan, 'corner').readiness.gates.map(({ id }) => id)).toEqual([
      'labels',
      'artwork',
      'insurance',
    ]);
  });
});

describe('what a slip costs', () => {
  // 10 doors at 6 a week and 1.60 contribution: a week later is 96.00 less within the plan's weeks.
  const plan = gated([aGate('labels', 20)]);

  test('two weeks later: two weeks of 10 doors x 6 x 1.60 less', () => {
    const cost = slipCostsOf(plan, resultsOf(plan), readinessFor(plan, TODAY));
    expect(cost.waves[0]).toMatchObject({
      weeks: 2,
      cost: { contribution: -19_200, contributionPerWeek: 9600 },
    });
    expect(cost.all).toEqual(cost.waves[0]?.cost);
  });

  test('in time costs nothing, and an opening past the last week is left out', () => {
    expect(slipCost(plan, resultsOf(plan), [])).toBeNull();
    const gone = withLaterOpenings(plan, [{ accountId: 'corner', waveId: 'first', weeks: 48 }]);
    expect(gone.accounts[0]?.waves).toEqual([]);
    const all = slipCost(plan, resultsOf(plan), [{ accountId: 'corner', waveId: 'first', weeks: 48 }]);
    expect(all?.contribution).toBeLessThan(-48 * 9000);
  });

  test('in one line', () => {
    const readiness = readinessFor(plan, TODAY);
    const cost = slipCostsOf(plan, resultsOf(plan), readiness).all;
    expect(readinessLine({ plan, readiness, cost, say })).toEqual({
      state: 'late',
      next: { id: 'labels', name: 'labels', owner: '', start: TODAY },
      lateCount: 1,
      slipWeeks: 2,
      costPerWeek: '96.00',
      sentence: 'Next: labels. 1 late; Corner comes 2 weeks later, at 96.00 a week.',
    });
    const lineOf = (gates: Gate[]) => {
      const other = gated(gates);
      return readinessLine({ plan: other, readiness: readinessFor(other, TODAY), cost: null, say }).sentence;
    };
    expect(lineOf([])).toBe('Nothing to get ready is written down yet.');
    expect(lineOf([aGate('labels', 2, { owner: 'Ana' })])).toBe('Next: labels (Ana). Nothing is late.');
    expect(lineOf([aGate('labels', 2, { state: { is: 'done', date: '2026-03-01' } })])).toBe(
      'Everything is ready.',
    );
  });
});

describe('chances', () => {
  const between = { optimistic: 10, likely: 14, pessimistic: 18 };

  test('certain lead times are kept in every run, or in none', () => {
    for (const [days, chance] of [[14, 1] as const, [15, 0] as const]) {
      const { waves, gates } = chancesFor(gated([aGate('labels', days)]), TODAY, { runs: 50 });
      expect(waves[0]?.chance).toBe(chance);
      expect(gates).toEqual([{ id: 'labels', criticalShare: 1 }]);
    }
  });

  test('10, 14, 18 days with 14 left: one half, by symmetry; a reset a week later is certain', () => {
    const resets = [{ id: 'april', label: 'April', date: '2026-04-08', accountId: null }];
    const plan = gated([aGate('labels', 0, { leadDays: between })], { resets });
    const { waves, resets: made } = chancesFor(plan, TODAY, { runs: 4000 });
    expect(waves[0]?.chance).toBeGreaterThan(0.46);
    expect(waves[0]?.chance).toBeLessThan(0.54);
    expect(waves[0]?.nineOfTen).toBe('2026-04-06');
    expect(made).toEqual([
      {
        resetId: 'april',
        label: 'April',
        date: '2026-04-08',
        accountId: 'corner',
        waveId: 'first',
        chance: 1,
      },
    ]);
  });

  test('two gates alike side by side are critical half of the time each, and both are kept with a quarter', () => {
    const plan = gated(['one', 'other'].map((id) => aGate(id, 0, { leadDays: between })));
    const { waves, gates } = chancesFor(plan, TODAY, { runs: 4000 });
    expect(waves[0]?.chance).toBeGreaterThan(0.21);
    expect(waves[0]?.chance).toBeLessThan(0.29);
    for (const { criticalShare } of gates) expect(Math.abs(criticalShare - 0.5)).toBeLessThan(0.04);
  });

  test('the same seed gives the same, another one nearly the same', () => {
    const plan = gated([aGate('labels', 0, { leadDays: between })]);
    expect(chancesFor(plan, TODAY)).toEqual(chancesFor(plan, TODAY));
    expect(chancesFor(plan, TODAY, { seed: 1 })).not.toEqual(chancesFor(plan, TODAY, { seed: 2 }));
  });
});

describe('starters', () => {
  const asked = { channels: { corner: 'grocery' as const }, productKinds: ['food' as const] };
  const taken = (plan: Plan) => {
    const gates = [...plan.readiness.gates, ...suggestedGates(plan, asked).map(({ gate }) => gate)];
    return { ...plan, readiness: { ...plan.readiness, gates } };
  };

  test('a chain brings its own, once; what was removed is proposed again', () => {
    const plan = taken(gated([]));
    const own = plan.readiness.gates.filter(({ holds }) => holds.by === 'accounts');
    expect(own.map(({ id }) => id)).toEqual([
      'agreement',
      'itemSetup',
      'exchange',
      'routing',
      'samples',
      'planogram',
    ]);
    expect(plan.readiness.gates.find(({ id }) => id === 'itemSetup')?.after).toEqual([
      'agreement',
      'numbers',
    ]);
    expect(suggestedGates(plan, asked)).toEqual([]);
    const without = withoutGate(plan, 'samples');
    expect(suggestedGates(without, asked).map(({ gate }) => gate.id)).toEqual(['samples']);
  });

  test('a second chain gets gates of its own beside the first one’s', () => {
    const two = { ...taken(gated([])), accounts: [anAccount(), anAccount({ id: 'hill', name: 'Hill' })] };
    const more = suggestedGates(two, {
      channels: { corner: 'grocery', hill: 'gift' },
      productKinds: ['food'],
    });
    expect(more.map(({ gate, because }) => [gate.id, because])).toEqual([
      ['agreement-2', 'Hill'],
      ['samples-2', 'Hill'],
      ['displays', 'Hill'],
    ]);
    expect(more[2]?.gate.after).toEqual(['agreement-2']);
  });

  test('a step of capacity brings its own, for the openings from its week on', () => {
    const step = {
      id: 'more',
      fromWeek: 4,
      unitsPerWeek: 900,
      capitalAmount: '0',
      leadWeeks: 2,
      lifeWeeks: 52,
    };
    const item = anItem({ supply: { ...anItem().supply, capacitySteps: [step] } });
    const gates = suggestedGates(gated([], {}, { items: [item] }), { channels: {}, productKinds: [] });
    const own = gates.filter(({ because }) => because === 'Tea, more from week 4');
    expect(own.map(({ gate }) => gate.holds)).toEqual([
      { by: 'waves', accountId: 'corner', waveIds: ['first'] },
      { by: 'waves', accountId: 'corner', waveIds: ['first'] },
    ]);
  });
});

describe('numbers from the unit to the pallet', () => {
  const numbers = { unit: '6291041500213', inner: null, case: null, companyPrefix: '6291041' };

  test('12 in a case, 50 cases: 600 under one SSCC; the case’s number is proposed', () => {
    const levels = packLevels(anItem({ numbers }));
    expect(levels.map(({ level, units, number, proposed }) => [level, units, number, proposed])).toEqual([
      ['unit', 1, '6291041500213', null],
      ['case', 12, null, '16291041500210'],
      ['pallet', 600, '062910410000000010', null],
    ]);
  });

  test('what doesn’t fit is said', () => {
    const said = (changes: Partial<typeof numbers>, more: Partial<Plan['items'][number]> = {}) =>
      numberFindings(
        gated([], {}, { items: [anItem({ numbers: { ...numbers, ...changes }, ...more })] }),
      ).map(({ sentence }) => sentence);
    expect(said({})).toEqual([]);
    expect(said({ case: '06291041500213' } as never)).toEqual([
      'Tea: case and unit have one number; a case of 12 needs its own.',
    ]);
    expect(said({ companyPrefix: '7310001' })).toEqual([
      'Tea: its unit’s number doesn’t begin with the prefix 7310001.',
    ]);
    const twins = gated(
      [],
      {},
      { items: [anItem({ numbers }), anItem({ id: 'coffee', name: 'Coffee', numbers })] },
    );
    expect(numberFindings(twins).map(({ sentence }) => sentence)).toEqual([
      'Coffee and Tea have the number 6291041500213; each needs its own.',
    ]);
  });
});
