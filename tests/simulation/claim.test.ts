/**
 * A claim's exact odds against draws made another way: doors against the draws of the range, units and revenue against runs
 * of the whole model with chains that come, come late or don't, and rates of sale that vary. Seeds are fixed; bounds are
 * three standard errors of a share for doors, and 6 % of the mean for sales, whose odds are an approximation.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { addDays } from '../../src/domain/calendar.ts';
import { evaluate } from '../../src/domain/evaluate.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { RUNGS } from '../../src/domain/plan/promise.ts';
import { doorsThen, later } from '../../src/domain/promise/doors.ts';
import { placeClaim } from '../../src/domain/promise/place-claim.ts';
import { mergeChunks, runChunk, setUpRange } from '../../src/domain/promise/range/index.ts';
import { chanceOf, slipShares } from '../../src/domain/promise/rungs.ts';
import { scoreBelow } from '../../src/domain/promise/score.ts';
import type { Results } from '../../src/domain/results.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';
import { sayFor } from '../../src/reckon/say.ts';
import { root } from '../support/source-files.ts';

const SHARED = 0.3;
const SPREAD = 0.3;

function demo(name: string): Plan {
  const read = parsePlanText(readFileSync(join(root, 'demo-catalog', name), 'utf8'));
  if (!read.ok) throw new Error(name);
  const accounts = read.value.accounts.map((account, a) => ({
    ...account,
    standing: {
      rung: RUNGS[(a + 1) % RUNGS.length] ?? 'signed',
      chance: null,
      slipLikelyWeeks: 2,
      slipMostWeeks: 8,
      papers: [],
    },
  }));
  const { spreads } = read.value.promise;
  const ours = { rateOfSaleRate: String(SPREAD), voidRate: '0', sharedRate: String(SHARED) };
  return { ...read.value, accounts, promise: { ...read.value.promise, spreads: { ...spreads, ...ours } } };
}

function resultsOf(plan: Plan): Results {
  const outcome = evaluate(plan, sayFor);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

test('doors of twelve chains: a tenth, a half and nine tenths of 4,000 draws lie where they should', () => {
  const plan = demo('twelve-chains.json');
  const draws = 4000;
  const setup = setUpRange({ plan, results: resultsOf(plan), seed: 7 });
  const { doors } = mergeChunks([runChunk(setup, 0, draws)], setup.coarse.weeks);
  for (const week of [40, 60, 77]) {
    const { odds } = doorsThen(plan, week);
    const below = (count: number) => odds.slice(0, count).reduce((sum, share) => sum + share, 0);
    for (const [share, fan] of [
      [0.1, doors.p10],
      [0.5, doors.p50],
      [0.9, doors.p90],
    ] as const) {
      const seen = Math.round(fan[week] ?? 0);
      const error = 3 * Math.sqrt((share * (1 - share)) / draws);
      expect(below(seen), `week ${week}, ${share}`).toBeLessThan(share + error);
      expect(below(seen + 1), `week ${week}, ${share}`).toBeGreaterThan(share - error);
    }
  }
}, 60_000);

/** A linear congruential generator (Numerical Recipes' constants): enough for a few hundred draws. */
function normals(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return scoreBelow((state + 0.5) / 2 ** 32);
  };
}

function drawn(plan: Plan, normal: () => number): Plan {
  const common = Math.sqrt(SHARED) * normal();
  const score = () => common + Math.sqrt(1 - SHARED) * normal();
  const accounts = plan.accounts.map((account) => {
    const opens = score() > scoreBelow(1 - chanceOf(account));
    const late = -score();
    let below = 0;
    const slips = slipShares(account);
    const slip = slips.findIndex((share, weeks) => {
      below += share;
      return weeks === slips.length - 1 || late < scoreBelow(below);
    });
    const listings = account.listings.map((listing) => ({
      ...listing,
      unitsPerStoreWeek: (Number(listing.unitsPerStoreWeek) * Math.exp(SPREAD * score())).toFixed(6),
    }));
    return { ...(opens ? later(account, slip) : { ...account, waves: [] }), listings };
  });
  return { ...plan, accounts };
}

test('units and revenue of three chains: mean and middle of 250 runs of the whole model', () => {
  const plan = demo('third-chain.json');
  const { pass, minorDigits } = resultsOf(plan);
  const weeks = 50;
  const normal = normals(12345);
  const sums = { units: [] as number[], revenue: [] as number[] };
  for (let run = 0; run < 250; run++) {
    const { accounts } = resultsOf(drawn(plan, normal)).pass;
    const total = (series: 'sold' | 'invoiced') =>
      accounts.reduce(
        (sum, each) => sum + each[series].slice(0, weeks).reduce((all, one) => all + one, 0),
        0,
      );
    sums.units.push(total('sold'));
    sums.revenue.push(total('invoiced') / 10 ** minorDigits);
  }
  for (const of of ['units', 'revenue'] as const) {
    const claim = { of, amount: '1', byDate: addDays(plan.startDate, 7 * weeks - 1), who: '' };
    const { placed } = placeClaim({ ...plan, promise: { ...plan.promise, claim } }, pass);
    if (placed === null) throw new Error('not placed');
    const seen = sums[of].sort((one, other) => one - other);
    const mean = seen.reduce((sum, each) => sum + each, 0) / seen.length;
    expect(Math.abs(placed.expected / mean - 1)).toBeLessThan(0.06);
    expect(Math.abs(placed.at(0.5) - (seen[125] ?? 0)) / mean).toBeLessThan(0.06);
  }
}, 60_000);
