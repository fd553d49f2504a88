/**
 * Laws of the range: without spreads every draw is the plan, bit for bit; a draw is the same in whatever chunk it is run,
 * and the range the same whoever runs it; more of a good thing never draws less; and how near the coarser pass comes to
 * the exact one, on the demo plans and on random ones. The bounds are ours, measured; there is no source for them.
 */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { rangeWorker } from '../../src/compute/range-jobs.ts';
import { createRangePool } from '../../src/compute/range-pool.ts';
import type { RangePort, RangeResponse } from '../../src/compute/range-protocol.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { doorsAt } from '../../src/domain/promise/door-odds.ts';
import { doorsThen } from '../../src/domain/promise/doors.ts';
import {
  checkExactly,
  mergeChunks,
  type Range,
  rangeOf,
  runChunk,
  setUpRange,
} from '../../src/domain/promise/range/index.ts';
import type { Results } from '../../src/domain/results.ts';
import { arbitraryPlan } from '../support/arbitrary-plan.ts';
import { computed, demoFiles, demoPlan, resultsOf, withSpreads } from '../support/demo-plans.ts';

const seed = fc.readConfigureGlobal().seed ?? 0;
/** Each draws a plan hundreds of times: on a busy machine that is more than the usual seconds. */
vi.setConfig({ testTimeout: 60_000 });

/** Where the range of a certain plan is not the plan. */
function strays(plan: Plan, results: Results): string[] {
  const range = rangeOf({ plan, results, seed: 7 }, 30);
  const { pass, reading } = results;
  const doors = Float64Array.from(pass.low, (_, w) =>
    pass.accounts.reduce((sum, account) => sum + (account.doors[w] ?? 0), 0),
  );
  const found: string[] = [];
  for (const share of ['p10', 'p50', 'p90'] as const) {
    pass.low.forEach((_, w) => {
      if (range.cash[share][w] !== pass.balances.cash[w]) found.push(`cash ${share} ${w}`);
      if (range.revenue[share][w] !== pass.profit.invoiced[w]) found.push(`revenue ${share} ${w}`);
      if (range.doors[share][w] !== doors[w]) found.push(`doors ${share} ${w}`);
    });
    if (range.lowest[share] !== reading.lowestCash) found.push(`lowest ${share}`);
  }
  if (range.need.p50 !== reading.cashNeed || range.need.p95 !== reading.cashNeed) found.push('need');
  if (range.chanceCashOut !== (reading.lowestCash < 0 ? 1 : 0)) found.push('chance');
  if (range.drivers.length > 0) found.push('drivers');
  const { lowestCash, worstWeek } = range.exactCheck;
  if (lowestCash.p90 !== 0 || worstWeek.p90 !== 0) found.push('the exact pass');
  return found;
}

describe('without spreads every draw is the plan, bit for bit', () => {
  test.each(demoFiles)('%s', (name) => {
    const { plan, results } = computed(withSpreads(demoPlan(name)));
    expect(strays(plan, results)).toEqual([]);
  });

  test(`random plans, seed ${seed}`, () => {
    fc.assert(
      fc.property(arbitraryPlan(), (drawn) => {
        const plan = withSpreads(drawn);
        const results = resultsOf(plan);
        if (results !== null) expect(strays(plan, results)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

/** Every spread at work, accounts with standings that may slip. */
function uncertain(plan: Plan): Plan {
  const spreads: Plan['promise']['spreads'] = {
    rateOfSaleRate: '0.3',
    doors: 'asStanding',
    rampRate: '0.3',
    latenessDays: 7,
    goodsRate: '0.05',
    deductionsRate: '0.01',
    voidRate: '0.03',
    sharedRate: '0.3',
  };
  const standing = {
    rung: 'saidYes',
    chance: null,
    slipLikelyWeeks: 2,
    slipMostWeeks: 6,
    papers: [],
  } as const;
  return {
    ...plan,
    accounts: plan.accounts.map((account) => ({ ...account, standing: { ...standing, papers: [] } })),
    promise: { ...plan.promise, scans: [], spreads },
  };
}

const third = computed(uncertain(demoPlan('third-chain.json')));

describe('the same draws, whoever runs them', () => {
  test('a draw is the same in whatever chunk', () => {
    const setup = setUpRange({ ...third, seed: 11 });
    const whole = runChunk(setup, 0, 60);
    const part = runChunk(setUpRange({ ...third, seed: 11 }), 41, 43);
    const { weeks } = setup.coarse;
    for (let w = 0; w < weeks; w++) {
      expect(part.cash[w * 2]).toBe(whole.cash[w * 60 + 41]);
      expect(part.revenue[w * 2 + 1]).toBe(whole.revenue[w * 60 + 42]);
    }
    expect(part.lowest[1]).toBe(whole.lowest[42]);
  });

  test('chunks of any size, in any order, make the same range', () => {
    const setup = setUpRange({ ...third, seed: 11 });
    const chunks = [runChunk(setup, 130, 300), runChunk(setup, 0, 7), runChunk(setup, 7, 130)];
    const { exactCheck: _, ...whole } = rangeOf({ ...third, seed: 11 }, 300);
    expect(mergeChunks(chunks, setup.coarse.weeks)).toEqual(whole);
  });

  test('another seed draws otherwise', () => {
    const lowest = (of: number) => runChunk(setUpRange({ ...third, seed: of }), 0, 20).lowest;
    expect([...lowest(1)]).not.toEqual([...lowest(2)]);
  });
});

/** A worker without a thread: what is sent is copied, and answered in its turn. */
function fakeWorker(): RangePort {
  const queue: (() => void)[] = [];
  const port: RangePort = {
    postMessage: (request, transfer) => {
      const sent = structuredClone(request, { transfer });
      queue.push(() => work(sent));
      setTimeout(() => queue.shift()?.(), 0);
    },
    terminate: () => queue.splice(0),
    onmessage: null,
    onerror: null,
  };
  const work = rangeWorker((response: RangeResponse, transfer) => {
    const data = structuredClone(response, { transfer });
    port.onmessage?.({ data } as MessageEvent<RangeResponse>);
  });
  return port;
}

function pooled(workers: number, warmed?: Plan): Promise<{ range: Range; steps: number[] }> {
  const pool = createRangePool(fakeWorker, workers);
  if (warmed) pool.warmUp({ plan: warmed, draws: 3200, seed: 3 });
  const steps: number[] = [];
  return new Promise((settle, fail) => {
    pool.ask({ plan: third.plan, draws: 3200, seed: 3 }, (found) => {
      if ('trouble' in found) return fail(new Error(found.trouble));
      if (found.range !== null && steps.at(-1) !== found.range.draws) steps.push(found.range.draws);
      if (found.range?.draws === 3200 && found.exactCheck !== null) settle({ range: found.range, steps });
    });
  });
}

describe('workers', () => {
  test('1, 2 and 3 of them find the same range, bit for bit', async () => {
    const [one, two, three] = [await pooled(1), await pooled(2), await pooled(3)];
    const { exactCheck: _, ...alone } = rangeOf({ ...third, seed: 3 }, 3200);
    expect(one.range).toEqual(alone);
    expect(two.range).toEqual(one.range);
    expect(three.range).toEqual(one.range);
    expect(one.steps).toEqual([500, 2500, 3200]);
  });

  test('those that were warmed up, on this plan or another, find the same', async () => {
    const cold = await pooled(2);
    expect((await pooled(2, third.plan)).range).toEqual(cold.range);
    expect((await pooled(2, demoPlan('twelve-chains.json'))).range).toEqual(cold.range);
  });

  test('a newer question is answered, the older one is not', async () => {
    const pool = createRangePool(fakeWorker, 2);
    const told: string[] = [];
    await new Promise<void>((settle) => {
      pool.ask({ plan: third.plan, draws: 3000, seed: 1 }, () => told.push('older'));
      pool.ask({ plan: third.plan, draws: 500, seed: 2 }, (found) => {
        told.push('newer');
        if (!('trouble' in found) && found.exactCheck !== null && found.range !== null) settle();
      });
    });
    expect(new Set(told)).toEqual(new Set(['newer']));
  });

  test('a plan that cannot be computed is told in a sentence', async () => {
    const pool = createRangePool(fakeWorker, 2);
    const trouble = await new Promise<string>((settle) => {
      pool.ask({ plan: { ...third.plan, currency: 'XXQ' }, draws: 500, seed: 2 }, (found) =>
        settle('trouble' in found ? found.trouble : ''),
      );
    });
    expect(trouble).toMatch(/expected a currency code/);
  });

  test('spreads so wide that sums are no longer exact are told in a sentence', async () => {
    const pool = createRangePool(fakeWorker, 2);
    const { promise } = third.plan;
    const spreads = { ...promise.spreads, goodsRate: '100' };
    const trouble = await new Promise<string>((settle) => {
      pool.ask(
        { plan: { ...third.plan, promise: { ...promise, spreads } }, draws: 500, seed: 2 },
        (found) => {
          if ('trouble' in found) settle(found.trouble);
          else if (found.exactCheck !== null) settle('none');
        },
      );
    });
    expect(trouble).toMatch(/^The range can’t be drawn: .* Expected narrower ones/);
  });
});

describe('the coarser pass beside the exact one', () => {
  /** The lowest cash missed in the middle of the draws, over how far the draws lie apart. */
  const missed = (plan: Plan, results: Results, draws: number, checked: number): number => {
    const setup = setUpRange({ plan, results, seed: 5 });
    const { lowest } = mergeChunks([runChunk(setup, 0, draws)], setup.coarse.weeks);
    const check = checkExactly(setup, draws, checked);
    return check.lowestCash.median / Math.max(1, lowest.p90 - lowest.p10, check.swing);
  };

  test.each(demoFiles)('%s: the lowest cash is missed by less than a sixth of its range', (name) => {
    const { plan, results } = computed(demoPlan(name));
    expect(missed(plan, results, 400, 20)).toBeLessThan(1 / 6);
  });

  test(`random plans, seed ${seed}: half by less than a twentieth, three quarters by less than a third`, () => {
    const misses: number[] = [];
    fc.assert(
      fc.property(arbitraryPlan(), (drawn) => {
        const plan = uncertain(drawn);
        const results = resultsOf(plan);
        if (results !== null) misses.push(missed(plan, results, 200, 8));
      }),
      { numRuns: 80 },
    );
    const inOrder = misses.sort((one, other) => one - other);
    const at = (share: number) => inOrder[Math.floor(share * inOrder.length)] ?? Number.NaN;
    expect(misses.length).toBeGreaterThan(40);
    expect(inOrder.every(Number.isFinite)).toBe(true);
    expect(at(0.5)).toBeLessThan(1 / 20);
    expect(at(0.75)).toBeLessThan(1 / 3);
  });
});

describe('what moves cash, moves it the way it must', () => {
  const lowestOf = (change: (spreads: Plan['promise']['spreads']) => void): Range => {
    const plan = structuredClone(withSpreads(demoPlan('third-chain.json')));
    change(plan.promise.spreads);
    return rangeOf({ ...computed(plan), seed: 2 }, 400);
  };

  test('dearer goods and later payment lower the lowest cash, and nothing else varies', () => {
    const goods = lowestOf((spreads) => {
      spreads.goodsRate = '0.1';
    });
    expect(goods.drivers.map(({ cause }) => cause)).toEqual(['goods', 'shared']);
    expect(goods.drivers[0]?.correlation).toBeLessThan(-0.99);
    const late = lowestOf((spreads) => {
      spreads.latenessDays = 21;
    });
    expect(late.drivers[0]?.cause).toBe('lateness');
    expect(late.drivers[0]?.limits.high).toBeLessThan(0);
  });

  test('accounts that share their fate make the range wider', () => {
    const width = (shared: string) => {
      const { lowest } = lowestOf((spreads) => {
        spreads.rateOfSaleRate = '0.3';
        spreads.sharedRate = shared;
      });
      return lowest.p90 - lowest.p10;
    };
    expect(width('0.5')).toBeGreaterThan(width('0') * 1.1);
  });

  test('an account that never opens opens in no draw, and the sure one in every draw', () => {
    const plan = structuredClone(withSpreads(demoPlan('third-chain.json')));
    plan.promise.spreads.doors = 'asStanding';
    const [account] = plan.accounts.filter(({ waves }) => waves.length > 0);
    if (!account) throw new Error('third-chain opens no doors');
    const withChance = (chance: string) => {
      account.standing = { rung: 'hopedFor', chance, slipLikelyWeeks: 0, slipMostWeeks: 0, papers: [] };
      return rangeOf({ ...computed(plan), seed: 2 }, 100).doors;
    };
    const [never, sure] = [withChance('0'), withChance('1')];
    const last = never.p90.length - 1;
    expect(never.p90[last]).toBeLessThan(sure.p10[last] ?? 0);
    expect(sure.p10).toEqual(sure.p90);
  });
});

describe('revenue of draws in which no chain comes', () => {
  // Goods on guarantee: what may come back is no revenue before its review. Free fill billed back: all of it is invoiced.
  test.each(['beauty-chain-returns.json', 'free-fill-by-distributor.json'])(
    '%s: none is left over',
    (name) => {
      const plan = structuredClone(demoPlan(name));
      plan.promise.spreads.doors = 'asStanding';
      for (const account of plan.accounts)
        account.standing = {
          rung: 'hopedFor',
          chance: '0',
          slipLikelyWeeks: 0,
          slipMostWeeks: 0,
          papers: [],
        };
      const { results } = computed(plan);
      const setup = setUpRange({ plan, results, seed: 1 });
      const { revenue } = runChunk(setup, 0, 1);
      const sum = (series: Float64Array) => series.reduce((all, each) => all + each, 0);
      const planned = sum(results.pass.profit.invoiced);
      // Single weeks are missed, and stand at nothing; before they are cut there all of it falls out but for a hundredth.
      const coarse = sum(setup.anchors.coarse.revenue);
      expect(Math.abs(coarse - planned) / planned).toBeLessThan(0.01);
      expect(Math.min(...revenue)).toBe(0);
    },
  );
});

describe('doors as drawn, beside their exact distribution', () => {
  /** Doors of doors.ts are convolved from chances and slips; these come out of a generator: they share the chances only. */
  test.each(['0', '0.3'])('accounts that share %s of their fate', (shared) => {
    const plan = structuredClone(withSpreads(demoPlan('twelve-chains.json')));
    Object.assign(plan.promise.spreads, { doors: 'asStanding', sharedRate: shared });
    plan.accounts.forEach((account, a) => {
      const chance = String(0.3 + 0.05 * (a % 12));
      account.standing = {
        rung: 'saidYes',
        chance,
        slipLikelyWeeks: a % 4,
        slipMostWeeks: 2 + (a % 6),
        papers: [],
      };
    });
    const { results } = computed(plan);
    const draws = 2000;
    const setup = setUpRange({ plan, results, seed: 21 });
    const { doors } = runChunk(setup, 0, draws);
    for (const week of [20, 40, 90]) {
      const { odds, expected } = doorsThen(plan, week);
      const drawn = doors.slice(week * draws, (week + 1) * draws).sort();
      const mean = drawn.reduce((sum, each) => sum + each, 0) / draws;
      const spread = Math.sqrt(odds.reduce((sum, share, n) => sum + share * (n - expected) ** 2, 0));
      // Four standard errors, and a door for rounding closings by account.
      expect(Math.abs(mean - expected)).toBeLessThan((4 * spread) / Math.sqrt(draws) + 1);
      for (const share of [0.1, 0.5, 0.9]) {
        // The exact distribution has this share, give or take four standard errors, at what was drawn there.
        const at = drawn[Math.ceil(share * draws) - 1] ?? 0;
        const error = 4 * Math.sqrt((share * (1 - share)) / draws);
        expect(at).toBeGreaterThanOrEqual(doorsAt(odds, share - error) - 1);
        expect(at).toBeLessThanOrEqual(doorsAt(odds, share + error) + 1);
      }
    }
  });
});
