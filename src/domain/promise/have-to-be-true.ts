// What would have to be true for the claim: the rate of sale, the doors a week, the capacity and the cash it asks for, each
// by running the whole model again with the others as the evidence has them, beside what the evidence shows. Supply and
// money stand in nobody's way while rate and doors are looked for: what those then ask of supply and money has rows of its own.
// Worked figure: 97 doors expected in 14 weeks where 170 are claimed: 12.1 doors a week instead of 6.9, so doors bind.
import { atRate } from '../answers/closing.ts';
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { mostLanding } from '../rollout/buying.ts';
import { wholePlan } from '../talks/run.ts';
import { atEvidence, doorsIn, withCapacity, withDoors } from './at-evidence.ts';
import { breakEven, breakEvens, meanRate, seenRange } from './mean-rates.ts';
import type { MustFrom } from './must-from.ts';
import type { PlacedClaim } from './place-claim.ts';

export type HasToBe = 'rateOfSale' | 'doorsAWeek' | 'capacity' | 'cash';

export interface HaveToBe {
  what: HasToBe;
  /** Units a store and week; doors a week; units a week; minor units. Null where no value that was tried does it. */
  needed: number | null;
  /** The same as evidence and plan show it; null where they show none, or there is no lid. */
  shown: number | null;
  /** Its 80 % range, where the evidence gives one. */
  low80: number | null;
  high80: number | null;
  isEnough: boolean;
  /** Of the rate of sale: whether it is the one that reaches the claim, or the one that pays the claim's doors back. */
  because: 'reaches' | 'paysBack' | null;
  /** What it was worked out from; null where there was nothing to work out. */
  from: MustFrom | null;
}

export interface HavingToBe {
  rows: readonly HaveToBe[];
  /** What the evidence carries the smallest part of; null where all of it is enough. */
  binding: HasToBe | null;
}

const NO_LID = Number.POSITIVE_INFINITY;
/** Most that doors, rates and lids are tried at, of what the evidence has. */
const MOST_TIMES = 40;
/** Capacity is enough where so much of what a lid-free run sells is sold. Judgement, no source. */
const SERVED = 0.995;

interface Work {
  plan: Plan;
  placed: PlacedClaim;
  /** The plan at evidence without any lid, and that run. */
  free: Plan;
  freeRun: Results;
  /** Doors times so many reach the claim; null where none do. */
  times: number | null;
  minorDigits: number;
}

/** Null where the plan at evidence can't be computed. Up to some fifty runs of the model. */
export function haveToBeTrue(plan: Plan, results: Results, placed: PlacedClaim): HavingToBe | null {
  const free = withCapacity(atEvidence(plan), NO_LID);
  const outcome = wholePlan(free);
  if (!outcome.ok) return null;
  const base = { plan, placed, free, freeRun: outcome.value, minorDigits: results.minorDigits };
  const work: Work = { ...base, times: doorsTimes(base) };
  const claimed = work.times === null ? null : runOf(withDoors(free, work.times));
  const rows = [
    rateRow(work, claimed),
    doorsRow(work),
    capacityRow(work, results, claimed),
    cashRow(work, results, claimed),
  ];
  return { rows, binding: bindingOf(rows) };
}

function bindingOf(rows: readonly HaveToBe[]): HasToBe | null {
  const short = rows.filter(({ isEnough }) => !isEnough);
  const carries = ({ needed, shown }: HaveToBe) =>
    needed === null ? Number.NEGATIVE_INFINITY : needed <= 0 ? 1 : (shown ?? 0) / needed;
  // Where no number of doors does it, nothing that hangs on them was tried: then it is the doors.
  const isDoors = ({ what }: HaveToBe) => Number(what === 'doorsAWeek');
  short.sort((one, other) => carries(one) - carries(other) || isDoors(other) - isDoors(one));
  return short[0]?.what ?? null;
}

function runOf(plan: Plan): Results | null {
  const outcome = wholePlan(plan);
  return outcome.ok ? outcome.value : null;
}

/** What a run comes to by the claim's date, in what the claim is of. */
function reached({ placed, minorDigits }: Pick<Work, 'placed' | 'minorDigits'>, run: Results | null): number {
  if (run === null || placed.sales === null) return 0;
  const { of } = placed.claim;
  const unit = of === 'units' ? 1 : 10 ** minorDigits;
  const { weeks } = placed.sales;
  return run.pass.accounts.reduce((sum, account) => {
    const series = of === 'units' ? account.sold : account.invoiced;
    return sum + series.subarray(0, weeks).reduce((all, each) => all + each, 0) / unit;
  }, 0);
}

function doorsTimes(work: Omit<Work, 'times'>): number | null {
  const { placed, free } = work;
  const amount = Number(placed.claim.amount);
  if (placed.sales === null) {
    return leastTimes((times) => doorsIn(withDoors(free, times), placed.week) >= amount, 1 / 1024);
  }
  return leastTimes((times) => reached(work, runOf(withDoors(free, times))) >= amount, 1 / 128);
}

/** The least factor that holds, up to its own part `fine` too high; null where the highest tried doesn't hold. */
function leastTimes(holds: (times: number) => boolean, fine: number): number | null {
  let low = 0;
  let high = 1;
  while (!holds(high)) {
    low = high;
    high *= 2;
    if (high > MOST_TIMES) return null;
  }
  while (high - low > high * fine) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const NOTHING = {
  needed: null,
  shown: null,
  low80: null,
  high80: null,
  isEnough: true,
  because: null,
  from: null,
};

/** Units or revenue: what every store would have to sell, with the doors expected. Doors: what pays them back. */
function rateRow(work: Work, claimed: Results | null): HaveToBe {
  const { plan, placed, free } = work;
  const mean = meanRate(free);
  if (mean === null) return { ...NOTHING, what: 'rateOfSale' };
  const amount = Number(placed.claim.amount);
  const isSales = placed.sales !== null;
  const times = isSales
    ? leastTimes((k) => reached(work, runOf(atRate(free, Math.round(100 * k)))) >= amount, 1 / 100)
    : null;
  const needed = isSales ? (times === null ? null : times * mean) : breakEven(claimed);
  return {
    what: 'rateOfSale',
    needed,
    shown: mean,
    ...seenRange(plan),
    isEnough: needed !== null && needed <= mean * (1 + 1e-9),
    because: isSales ? 'reaches' : 'paysBack',
    from: isSales ? { by: 'rate', times } : claimed && { by: 'breakEven', accounts: breakEvens(claimed) },
  };
}

/** New doors a week, from the first opening of the plan up to the claim's week. */
function doorsRow({ placed, plan, free, times }: Work): HaveToBe {
  const first = Math.min(...plan.accounts.flatMap(({ waves }) => waves.map(({ openWeek }) => openWeek)));
  const weeks = placed.week - first + 1;
  if (!(weeks >= 1)) return { ...NOTHING, what: 'doorsAWeek', isEnough: times !== null && times <= 1 };
  const running = placed.doors.accounts.reduce((sum, { without }) => sum + without, 0);
  const pace = (doors: number) => Math.max(0, doors - running) / weeks;
  const isSales = placed.sales !== null;
  const needed =
    times === null
      ? null
      : isSales
        ? doorsIn(withDoors(free, times), placed.week)
        : Number(placed.claim.amount);
  const shown = pace(placed.doors.expected);
  return {
    what: 'doorsAWeek',
    needed: needed === null ? null : pace(needed),
    shown,
    low80: isSales ? null : pace(placed.at(0.1)),
    high80: isSales ? null : pace(placed.at(0.9)),
    isEnough: needed !== null && pace(needed) <= shown * 1.005,
    because: null,
    from: { by: 'pace', doors: needed, expected: placed.doors.expected, running, weeks, firstWeek: first },
  };
}

/** The lids of all items that have one, in the claim's week: how many times as high they serve the claim's doors. */
function capacityRow(
  { plan, placed, free, times }: Work,
  results: Results,
  claimed: Results | null,
): HaveToBe {
  const week = Math.min(placed.week, results.pass.weeks - 1);
  const lids = results.compiled.items.map(({ buying }) => mostLanding(results.compiled, buying, week));
  const shown = lids.filter(Number.isFinite).reduce((sum, lid) => sum + lid, 0);
  if (shown === 0) return { ...NOTHING, what: 'capacity' };
  if (times === null || claimed === null) return { ...NOTHING, what: 'capacity', shown, isEnough: false };
  const lidded = withDoors({ ...free, items: plan.items }, times);
  const target = SERVED * soldBy(claimed, week);
  const factor = leastTimes((k) => soldBy(runOf(withCapacity(lidded, k)), week) >= target, 1 / 64);
  const needed = factor === null ? null : Math.ceil(factor * shown);
  const isEnough = factor !== null && factor <= 1;
  return { ...NOTHING, what: 'capacity', needed, shown, isEnough, from: { by: 'lid', times: factor, week } };
}

function soldBy(run: Results | null, week: number): number {
  if (run === null) return 0;
  return run.pass.accounts.reduce(
    (sum, { sold }) => sum + sold.subarray(0, week + 1).reduce((all, each) => all + each, 0),
    0,
  );
}

/**
 * Cash to open with that carries the claim, in the week up to its own in which most is missing, beside what is there by then:
 * what we open with and what new funding brought. Money that comes after the hole doesn't fill it.
 */
function cashRow({ placed, free, times }: Work, results: Results, claimed: Results | null): HaveToBe {
  const week = Math.min(placed.week, results.pass.weeks - 1);
  const { business } = free;
  const there = (by: number) =>
    business.openingCashAmount === null ? null : results.pass.openingCash + fundedBy(results, by);
  const unknown = { ...NOTHING, what: 'cash' as const, shown: there(week), isEnough: false };
  if (times === null || claimed === null) return unknown;
  const bare = runOf(withDoors({ ...free, business: { ...business, funding: [] } }, times));
  if (bare === null) return unknown;
  const low = bare.pass.low.subarray(0, week + 1);
  const left = low.map((lowest, w) => lowest + fundedBy(results, w));
  const hardest = left.indexOf(Math.min(...left));
  const lowest = low[hardest] ?? 0;
  const opening = bare.pass.openingCash;
  const needed = Math.max(0, opening - lowest);
  const shown = there(hardest);
  const from = { by: 'hole', opening, lowest, lowestWeek: hardest, week } as const;
  return { ...NOTHING, what: 'cash', needed, shown, isEnough: shown === null || needed <= shown, from };
}

/**
 * New equity and loans of the plan that have come by a week, before its payments; minor units. Advances on receivables come and
 * go with what is sold, and aren't counted.
 */
function fundedBy({ pass }: Results, week: number): number {
  let sum = 0;
  for (let w = 0; w <= week; w++) sum += (pass.flows.equityIn[w] ?? 0) + (pass.flows.loanIn[w] ?? 0);
  return sum;
}
