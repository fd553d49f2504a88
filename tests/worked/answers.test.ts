/**
 * What limits, what lifts it, and the searches. The closed form: one door, ten units a week, bought at 1.00 and paid at
 * once, sold at 2.60 and paid four weeks later, no lead time and no transit. Each week 10.00 goes out, from week 4 on 26.00
 * comes in after it. From 30.00: week-ends 20, 10, 0, -10, then +16 a week: 6, 22, 38; lows 20, 10, 0, -10, -20, -4, 12.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { atRate } from '../../src/domain/answers/closing.ts';
import {
  answerSolves,
  bindingOf,
  type Change,
  changedPlan,
  changeWords,
  liftsFrom,
} from '../../src/domain/answers/index.ts';
import { ordersFrom } from '../../src/domain/answers/latest-orders.ts';
import { atMost, spread } from '../../src/domain/answers/pace.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import type { Results } from '../../src/domain/results.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { sayFor } from '../../src/reckon/say.ts';
import {
  aBusiness,
  aListing,
  anAccount,
  anItem,
  aPlan,
  aWave,
  oneDoor,
  someThresholds,
} from '../support/builders.ts';
import { root } from '../support/source-files.ts';

function resultsOf(plan: Plan): Results {
  expect(checkRules(plan)).toEqual([]);
  const outcome = evaluate(plan, sayFor);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

const say = sayFor({ currency: 'USD', minorDigits: 2, startDay: 0 });

/** "demand 0-2, cash 3-5": what limits, in stretches. */
function limits(plan: Plan): string {
  const { stretches } = bindingOf(plan, resultsOf(plan));
  return stretches
    .map(({ what, tight, fromWeek, toWeek }) => `${what}${tight ? ' tight' : ''} ${fromWeek}-${toWeek}`)
    .join(', ');
}

describe('one door, no lead times', () => {
  test('lowest −20.00 in week 4, back at its opening from week 6', () => {
    const { reading } = resultsOf(oneDoor());
    expect([reading.lowestCash, reading.lowestWeek, reading.backAboveOpeningWeek]).toEqual([-2000, 4, 6]);
  });

  test('cash limits in weeks 3 to 5, where the low is under zero; demand in the others', () => {
    expect(limits(oneDoor())).toBe('demand 0-2, cash 3-5, demand 6-51');
  });

  test('under a buffer of a week’s outgoings, 10.00, week 2 with its low of 0 is tight', () => {
    const thresholds = someThresholds({ cashBufferWeeks: 1 });
    expect(limits(oneDoor({ thresholds }))).toBe('demand 0-1, cash tight 2-2, cash 3-5, demand 6-51');
  });

  test('where cash at hand is not known it limits nothing', () => {
    const business = aBusiness({ openingCashAmount: null });
    expect(limits(oneDoor({ business }))).toBe('demand 0-51');
  });

  test('paid 14 days earlier the first 26.00 come in week 2, at a low of 0: the need of 20.00 goes', () => {
    const plan = oneDoor();
    const lifts = liftsFrom(plan, resultsOf(plan));
    const lift = lifts.best.find(({ change }) => change.kind === 'paidEarlier');
    expect(lift && changeWords(lift.change, plan, say)).toBe(
      'Corner pays 14 days earlier, after 14 instead of 28',
    );
    expect(lift?.before).toMatchObject({ cashNeed: 2000, lowestCash: -2000, lowestWeek: 4, unitsLost: 0 });
    expect(lift?.after).toMatchObject({ cashNeed: 0, lowestCash: 0, lowestWeek: 2, unitsLost: 0 });
    expect(lifts.target).toBe('cash');
  });

  test('with 30 days to pay the supplier the first 10.00 go out in week 4, from the 30.00: lowest 20.00', () => {
    const plan = oneDoor();
    const lift = liftsFrom(plan, resultsOf(plan)).best.find(({ change }) => change.kind === 'supplierDays');
    expect(lift?.after).toMatchObject({ cashNeed: 0, lowestCash: 2000, lowestWeek: 4 });
  });

  test('the year’s contribution is 1.60 a unit on the 520 units shipped', () => {
    const plan = oneDoor();
    expect(liftsFrom(plan, resultsOf(plan)).before.contribution).toBe(520 * 160);
  });

  test('nothing more has to be put in from week 5, with 20.00 put in before', () => {
    const plan = oneDoor();
    expect(answerSolves(plan, resultsOf(plan)).fundsItself).toEqual({
      week: 5,
      amount: 2000,
      lowestThere: 0,
      lowestBelow: -1,
      confirmed: true,
    });
  });

  /**
   * With 10.00 of overhead a week and V sold, 10 + floor(47 V) units are paid by week 51 at 2.60, 10 + floor(51 V) bought
   * at 1.00, 520.00 of overhead. V = 7.1: 891.80 - 372 - 520 = -0.20; V = 7.2: 904.80 - 377 - 520 = 7.80. The latter by
   * week 45: 793.00 - 334 - 460 = -1.00, by week 46: 811.20 - 341 - 470 = 0.20.
   */
  test('with overhead of 10.00 a week the hole never closes at 71 % of the rate, and does at 72 %', () => {
    const rent = { id: 'rent', label: 'Rent', amountPerWeek: '10', fromWeek: 0, untilWeek: null };
    const plan = oneDoor({ business: aBusiness({ openingCashAmount: '30', overheads: [rent] }) });
    expect(answerSolves(plan, resultsOf(plan)).neverCloses).toEqual({
      neverAt: 71,
      closesAt: 72,
      backWeek: 46,
      rateNever: '7.1',
      rateCloses: '7.2',
      confirmed: true,
      steady: true,
    });
  });

  test('without fixed costs every rate tried closes it', () => {
    const plan = oneDoor();
    expect(answerSolves(plan, resultsOf(plan)).neverCloses).toMatchObject({ neverAt: null, closesAt: 5 });
  });
});

describe('capacity for half of what is wanted', () => {
  const [item] = oneDoor().items;
  const supply = { ...anItem({ ...item }).supply, capacityUnitsPerWeek: 5 };
  const plan = oneDoor({
    items: [anItem({ ...item, supply })],
    business: aBusiness({ openingCashAmount: '100' }),
  });

  test('limits every week; five of ten units a week are lost', () => {
    const results = resultsOf(plan);
    expect(limits(plan)).toBe('capacity 0-51');
    expect(results.reading.lostUnits).toBe(260);
  });

  test('twice the lid from week 0 saves all 260 units at 1.60, and comes first; its cost is not in it', () => {
    const { target, best } = liftsFrom(plan, resultsOf(plan));
    const [first] = best;
    expect(target).toBe('units');
    expect(first?.change).toEqual({ kind: 'capacityFrom', itemId: 'tea', fromWeek: 0, unitsPerWeek: 10 });
    expect(first?.before).toMatchObject({ unitsLost: 260, contribution: 260 * 160 });
    expect(first?.after).toMatchObject({ unitsLost: 0, contribution: 520 * 160 });
    expect(first).toMatchObject({ liftsUnits: true, withoutItsCost: true });
  });

  test('with cash below zero on the way, cash is asked for first', () => {
    const short = { ...plan, business: aBusiness({ openingCashAmount: '10' }) };
    const { target, best } = liftsFrom(short, resultsOf(short));
    expect(target).toBe('cash');
    expect(best[0]?.liftsCash).toBe(true);
  });
});

/** Ten doors of twelve units that hardly sell: a fill of 120, shipped in week 3, on the shelf in week 4. */
function filled(supply: Partial<ReturnType<typeof anItem>['supply']>): Plan {
  return aPlan({
    horizonWeeks: 12,
    items: [anItem({ supply: { ...anItem().supply, coverWeeks: 0, ...supply } })],
    accounts: [anAccount({ listings: [aListing({ unitsPerStoreWeek: '0.000001', coverWeeks: 0 })] })],
    thresholds: someThresholds({ cashBufferWeeks: 0 }),
  });
}

describe('goods', () => {
  test('doors limit until the last has opened, in week 4', () => {
    expect(limits(filled({ leadWeeks: 0 }))).toBe('doors 0-3, demand 4-11');
  });

  test('a lid of 50 a week: 48 of the 120 leave in week 3, 48 in week 4, the rest in week 5', () => {
    expect(limits(filled({ leadWeeks: 0, capacityUnitsPerWeek: 50 }))).toBe(
      'doors 0-2, capacity 3-4, demand 5-11',
    );
  });

  test('a lead time of five weeks: what is ordered in week 0 lands in week 5, the fill is late for two weeks', () => {
    expect(limits(filled({ leadWeeks: 5 }))).toBe('doors 0-2, stock 3-4, demand 5-11');
  });

  test('a credit limit holds the fill back: stock, with the units that wait, and twice the limit lets it go', () => {
    // 120 units at 2.60 are 312.00; a limit of 160.00 has room for five cases (60 units at 156.00) until they are paid.
    const plan = filled({ leadWeeks: 0 });
    const limited = {
      ...plan,
      accounts: plan.accounts.map((account) => ({ ...account, creditLimitAmount: '160' })),
    };
    const { weeks } = bindingOf(limited, resultsOf(limited));
    expect(weeks[3]).toMatchObject({ what: 'stock', items: [0], heldBack: 60 });
    const { best, others, noHelp } = liftsFrom(limited, resultsOf(limited));
    const lift = [...best, ...others, ...noHelp].find(({ change }) => change.kind === 'creditLimit');
    if (!lift) throw new Error('a higher limit was not tried');
    expect(changeWords(lift.change, limited, say)).toBe('Corner: a credit limit of 320.00 instead of 160.00');
    const [account] = resultsOf(changedPlan(limited, lift.change)).pass.accounts;
    expect(account?.heldBack.every((units) => units === 0)).toBe(true);
  });

  test('the first order can wait until week 1: two weeks of lead, shipped in week 3', () => {
    const plan = filled({ leadWeeks: 2, coverWeeks: 2 });
    expect(answerSolves(plan, resultsOf(plan)).latestOrders).toEqual([
      {
        itemId: 'tea',
        plannedWeek: 0,
        week: 1,
        lateUnitsNext: 120,
        lostUnitsNext: 0,
        confirmed: true,
        steady: true,
      },
    ]);
  });

  test('what is never bought has no latest order', () => {
    const opening = { units: 500, stockAmount: '500', onOrder: [] };
    const plan = filled({});
    const stocked = { ...plan, items: plan.items.map((item) => ({ ...item, opening })) };
    expect(answerSolves(stocked, resultsOf(stocked)).latestOrders).toEqual([]);
  });
});

describe('a change to the plan is the one the words name', () => {
  const plan = aPlan({
    items: [anItem({ supply: { ...anItem().supply, capacityUnitsPerWeek: 500, depositRate: '0.3' } })],
    accounts: [
      anAccount({
        waves: [aWave(), aWave({ id: 'second', openWeek: 20, doors: 40, doorsPerWeek: 10 })],
        terms: { ...anAccount().terms, latenessDays: 10 },
      }),
    ],
  });
  const cases: [change: Change, words: string, path: string, value: unknown][] = [
    [
      { kind: 'waveLater', accountId: 'corner', waveId: 'second', weeks: 4 },
      'Corner: 40 doors of week 20 open 4 weeks later',
      'accounts.0.waves.1.openWeek',
      24,
    ],
    [
      { kind: 'slowerDoors', accountId: 'corner', waveId: 'second', doorsPerWeek: 5 },
      'Corner: 40 doors of week 20 open 5 a week instead of 10',
      'accounts.0.waves.1.doorsPerWeek',
      5,
    ],
    [
      { kind: 'paidOnTime', accountId: 'corner', days: 10 },
      'Corner pays on time, not 10 days late',
      'accounts.0.terms.latenessDays',
      0,
    ],
    [
      { kind: 'depositShare', itemId: 'tea', rate: '0.15' },
      'Tea: a deposit of 15 % instead of 30 %',
      'items.0.supply.depositRate',
      '0.15',
    ],
    [
      { kind: 'coverWeeks', itemId: 'tea', weeks: -1 },
      'Tea: 1 week of cover instead of 2',
      'items.0.supply.coverWeeks',
      1,
    ],
  ];

  test.each(cases)('%o', (change, words, path, value) => {
    expect(changeWords(change, plan, say)).toBe(words);
    const changed = changedPlan(plan, change);
    expect(at(changed, path)).toEqual(value);
    expect(at(plan, path)).not.toEqual(value);
    expect(differing(plan, changed)).toEqual([path]);
  });

  test('more capacity is a step from that week on, and no later step falls below it', () => {
    const change: Change = { kind: 'capacityFrom', itemId: 'tea', fromWeek: 18, unitsPerWeek: 1000 };
    const { compiled } = resultsOf(changedPlan(plan, change));
    const capacity = compiled.items[0]?.buying.suppliers[0]?.capacity ?? [];
    expect([capacity[17], capacity[18], capacity[51]]).toEqual([500, 1000, 1000]);
  });

  test('a door’s fill is one case smaller', () => {
    const twoCases = aListing({ facings: 2, depthUnits: 6, backStockUnits: 8 });
    const account = anAccount({ listings: [twoCases] });
    const change: Change = { kind: 'smallerFill', accountId: 'corner' };
    const fillOf = (of: Plan) => resultsOf(of).compiled.cells[0]?.fillUnits;
    const before = aPlan({ accounts: [account] });
    expect([fillOf(before), fillOf(changedPlan(before, change))]).toEqual([240, 120]);
  });
});

const demos = readdirSync(join(root, 'demo-catalog')).filter((name) => name.endsWith('.json'));

/** Hundreds of runs of the model, on a machine that has other work too. */
const MANY_RUNS_TIMEOUT = 60_000;

describe.each(demos)('%s', (name) => {
  const parsed = parsePlanText(readFileSync(join(root, 'demo-catalog', name), 'utf8'));
  if (!parsed.ok) throw new Error(`${name} is no plan`);
  const plan = parsed.value;
  const results = resultsOf(plan);
  const { reading } = results;

  test(
    'every lift is what evaluate() says of the plan with that change',
    () => {
      const { best, others, noHelp, before } = liftsFrom(plan, results);
      expect(before).toMatchObject({ cashNeed: reading.cashNeed, unitsLost: reading.lostUnits });
      expect(best.length + others.length + noHelp.length).toBeGreaterThan(0);
      for (const { change, after, liftsCash, liftsUnits } of [...best, ...others, ...noHelp]) {
        const there = resultsOf(changedPlan(plan, change)).reading;
        expect([after.cashNeed, after.lowestCash, after.lowestWeek, after.unitsLost]).toEqual([
          there.cashNeed,
          there.lowestCash,
          there.lowestWeek,
          there.lostUnits,
        ]);
        expect(liftsCash).toBe(there.cashNeed < reading.cashNeed || there.lowestCash > reading.lowestCash);
        expect(liftsUnits).toBe(there.lostUnits < reading.lostUnits);
      }
      expect(noHelp.filter(({ liftsCash, liftsUnits }) => liftsCash || liftsUnits)).toEqual([]);
    },
    MANY_RUNS_TIMEOUT,
  );

  test(
    'every search ends between a value that holds and the next that does not',
    () => {
      const solves = answerSolves(plan, results);
      const aboveBuffer = (there: Plan) => {
        const { lowestCash, bufferAmount, floorNotSeen } = resultsOf(there).reading;
        return lowestCash >= Math.max(0, bufferAmount) && !floorNotSeen;
      };
      const { waveSpacing, doorsAWeek, neverCloses, fundsItself, latestOrders } = solves;
      if (waveSpacing && waveSpacing.weeks !== null) {
        expect(aboveBuffer(spread(plan, waveSpacing.weeks))).toBe(true);
        if (waveSpacing.weeks > waveSpacing.plannedWeeks)
          expect(aboveBuffer(spread(plan, waveSpacing.weeks - 1))).toBe(false);
      } else if (waveSpacing) expect(aboveBuffer(spread(plan, waveSpacing.triedTo))).toBe(false);
      if (doorsAWeek && doorsAWeek.doorsPerWeek !== null) {
        expect(aboveBuffer(atMost(plan, doorsAWeek.doorsPerWeek))).toBe(true);
        if (doorsAWeek.doorsPerWeek < doorsAWeek.planned)
          expect(aboveBuffer(atMost(plan, doorsAWeek.doorsPerWeek + 1))).toBe(false);
      } else if (doorsAWeek) expect(aboveBuffer(atMost(plan, doorsAWeek.planned))).toBe(false);
      const backAt = (hundredths: number) => resultsOf(atRate(plan, hundredths)).reading.backAboveOpeningWeek;
      if (neverCloses && neverCloses.neverAt !== null) expect(backAt(neverCloses.neverAt)).toBe(null);
      if (neverCloses && neverCloses.closesAt !== null)
        expect(backAt(neverCloses.closesAt)).toBe(neverCloses.backWeek);
      expect(fundsItself.amount).toBe(reading.cashNeed);
      for (const { itemId, week, plannedWeek } of latestOrders) {
        const item = plan.items.findIndex(({ id }) => id === itemId);
        const isInTime = (from: number) => {
          const there = ordersFrom(results, item, from).units[item];
          const was = results.pass.units[item];
          const shipped = (of: typeof was, until: number) =>
            of?.fillShipped.slice(0, until + 1).reduce((sum, units) => sum + units, 0) ?? 0;
          const lost = (of: typeof was) => of?.lost.reduce((sum, units) => sum + units, 0) ?? 0;
          const all = Array.from({ length: results.pass.weeks }, (_, w) => w);
          return all.every((w) => shipped(there, w) >= shipped(was, w)) && lost(there) <= lost(was);
        };
        expect(week).toBeGreaterThanOrEqual(plannedWeek);
        expect([isInTime(week), isInTime(week + 1)]).toEqual([true, week === results.pass.weeks - 1]);
      }
      const confirmed = [waveSpacing, doorsAWeek, neverCloses, fundsItself, ...latestOrders];
      expect(confirmed.filter((solve) => solve !== null && !solve.confirmed)).toEqual([]);
    },
    MANY_RUNS_TIMEOUT,
  );
});

function at(value: unknown, path: string): unknown {
  return path.split('.').reduce((here, key) => (here as Record<string, unknown>)[key], value);
}

/** Paths at which two plans differ. */
function differing(one: unknown, other: unknown, path = ''): string[] {
  if (one === other) return [];
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return [path];
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].flatMap((key) =>
    differing(
      (one as Record<string, unknown>)[key],
      (other as Record<string, unknown>)[key],
      path === '' ? key : `${path}.${key}`,
    ),
  );
}
