// What lifts it: each change put into the plan and the whole model run again, side by side with the plan as it is, the
// best first. Worked figure: a wave four weeks later raises the lowest cash by 48,900 and takes 6,000 off the year's
// contribution: it counts as 42,900, and goes before terms 14 days shorter that raise it by 31,400 and cost nothing.
import type { Plan } from '../plan/index.ts';
import { checkRules } from '../plan/rules.ts';
import { fine, type Outcome } from '../problems.ts';
import type { Results } from '../results.ts';
import type { PassResult } from '../rollout/types.ts';
import { wholePlan } from '../talks/run.ts';
import { bindingOf } from './binding.ts';
import { candidatesFor } from './candidates.ts';
import { changedPlan } from './change-plan.ts';
import type { Binding, Change, ChangeKind, Lift, Lifts, Standing } from './types.ts';

/** So many are shown as the best. */
const MOST_SHOWN = 10;
const YEAR_WEEKS = 52;

const WITHOUT_ITS_COST: ReadonlySet<ChangeKind> = new Set(['capacityFrom', 'shiftFrom', 'rushOrders']);

/** Every change tried, ranked. Problems where the plan itself can't be computed. */
export function liftsOf(plan: Plan): Outcome<Lifts> {
  const results = wholePlan(plan);
  return results.ok ? fine(liftsFrom(plan, results.value)) : results;
}

/** The same with the plan's results at hand. */
export function liftsFrom(plan: Plan, results: Results): Lifts {
  const binding = bindingOf(plan, results);
  const before = standingOf(results);
  const target = asksForUnits(binding, results) ? 'units' : 'cash';
  const lifts = candidatesFor({ plan, results, binding }).flatMap((change) => {
    const lift = liftOf(plan, before, change);
    return lift === null ? [] : [lift];
  });
  const ranked = rankedBy(lifts, target, perUnitOf(results));
  const helping = ranked.filter((lift) => lift.liftsCash || lift.liftsUnits);
  return {
    target,
    first: binding.first,
    before,
    best: helping.slice(0, MOST_SHOWN),
    others: helping.slice(MOST_SHOWN),
    noHelp: ranked.filter((lift) => !lift.liftsCash && !lift.liftsUnits),
  };
}

/** Served this far, a few units short in some week are no reason to look past cash. Judgement, no source. */
const SERVED_WELL = 0.99;

function asksForUnits({ first, weeks }: Binding, { reading }: Results): boolean {
  // What can't be paid for goes no further, whatever is short before.
  if (weeks.some(({ what, tight }) => what === 'cash' && !tight)) return false;
  const isGoods = first?.what === 'capacity' || first?.what === 'stock';
  return isGoods && (reading.fillRate ?? 1) < SERVED_WELL;
}

/** One change, run; null when the plan does not allow it or can't be computed with it. */
export function liftOf(plan: Plan, before: Standing, change: Change): Lift | null {
  const changed = changedPlan(plan, change);
  if (checkRules({ ...changed, basis: [] }).length > 0) return null;
  const there = wholePlan(changed);
  if (!there.ok) return null;
  const after = standingOf(there.value);
  return {
    change,
    before,
    after,
    liftsCash: after.cashNeed < before.cashNeed || after.lowestCash > before.lowestCash,
    liftsUnits: after.unitsLost < before.unitsLost,
    withoutItsCost: WITHOUT_ITS_COST.has(change.kind),
  };
}

/** What lifts compare, of one run. */
export function standingOf({ reading, pass }: Pick<Results, 'reading' | 'pass'>): Standing {
  return {
    cashNeed: reading.cashNeed,
    lowestCash: reading.lowestCash,
    lowestWeek: reading.lowestWeek,
    unitsLost: reading.lostUnits,
    contribution: contributionOf(pass, YEAR_WEEKS),
  };
}

const CONTRIBUTES = ['invoiced', 'tradeMoney', 'costOfSales', 'sellingCosts', 'other'] as const;

function contributionOf(pass: PassResult, weeks: number): number {
  let total = 0;
  for (const name of CONTRIBUTES) {
    for (let w = 0; w < Math.min(weeks, pass.weeks); w++) total += pass.profit[name][w] ?? 0;
  }
  return total;
}

/**
 * What a lift is worth less what it costs, both in money: the rise of the lowest cash, or units no longer lost at what a
 * unit sold contributes, less what the year contributes less and cash falls deeper. Lifts of the target come first, then the others.
 */
function rankedBy(lifts: readonly Lift[], target: Lifts['target'], perUnit: number): Lift[] {
  const ofUnits = ({ before, after }: Lift) => (before.unitsLost - after.unitsLost) * perUnit;
  const worth = (lift: Lift, what: Lifts['target']) =>
    (what === 'cash' ? ofCash(lift) : ofUnits(lift)) - costOf(lift);
  const sized = lifts.map((lift) => {
    const isOnTarget = target === 'cash' ? lift.liftsCash : lift.liftsUnits;
    const what = isOnTarget === (target === 'cash') ? 'cash' : 'units';
    return { lift, isOnTarget, size: worth(lift, what) };
  });
  sized.sort((one, other) =>
    one.isOnTarget === other.isOnTarget ? other.size - one.size : one.isOnTarget ? -1 : 1,
  );
  return sized.map(({ lift }) => lift);
}

function ofCash({ before, after }: Lift): number {
  return Math.max(after.lowestCash - before.lowestCash, before.cashNeed - after.cashNeed);
}

/** What the year contributes less, and what cash falls deeper below zero. */
function costOf({ before, after }: Lift): number {
  const hole = (lowestCash: number) => Math.max(0, -lowestCash);
  const deeper = Math.max(0, hole(after.lowestCash) - hole(before.lowestCash));
  return Math.max(0, before.contribution - after.contribution) + deeper;
}

/** What a unit sold contributes, over the whole plan; at least one minor unit, so that units always count. */
function perUnitOf({ pass, reading }: Results): number {
  return Math.max(1, contributionOf(pass, pass.weeks) / Math.max(1, reading.soldUnits));
}
