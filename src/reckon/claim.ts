// Doors, the claim and what hangs on one customer, for machines. Chances and shares as decimal text; amounts of money in
// the plan's currency. Worked figure: { "expected": "96.98", "distribution": [{ "from": 0, "to": 0, "chance": "0.411..." }] }.
import type { Plan } from '../domain/plan/index.ts';
import { type ClaimWork, claimWork } from '../domain/promise/claim-work.ts';
import type { DoorOdds } from '../domain/promise/door-odds.ts';
import { doorsThen, hasDoorEvidence } from '../domain/promise/doors.ts';
import type { HaveToBe } from '../domain/promise/have-to-be-true.ts';
import type { LeaningGroup } from '../domain/promise/leaning-on.ts';
import { placeClaim } from '../domain/promise/place-claim.ts';
import type { Results } from '../domain/results.ts';
import { moneyText } from './weeks.ts';

/** More different counts than these are put together, neighbours in equal stretches. */
const MOST_STEPS = 200;

export function claimTexts(
  plan: Plan,
  results: Results,
): { doors: object | null; claim: object | null; leaning: object | null } {
  const work = claimWork(plan, results);
  return {
    doors: hasDoorEvidence(plan) ? doorsText(plan, results) : null,
    claim: claimText(plan, results, work),
    leaning: work.leaning && {
      accounts: groupText(work.leaning.accounts, results),
      routes: groupText(work.leaning.routes, results),
    },
  };
}

function doorsText(plan: Plan, results: Results): object {
  const { placed } = placeClaim(plan, results.pass);
  const then = placed?.doors ?? doorsThen(plan, results.pass.weeks - 1);
  return {
    week: then.week,
    expected: number(then.expected),
    planned: then.planned,
    distribution: distributionText(then.odds),
    accounts: then.accounts.map(({ accountId, chance, expected, planned, without }) => ({
      accountId,
      chance: number(chance),
      expected: number(expected),
      planned,
      openAlready: without,
    })),
  };
}

function distributionText(odds: DoorOdds): object[] {
  const counts = Array.from(odds.keys()).filter((n) => (odds[n] ?? 0) > 1e-9);
  const width = counts.length <= MOST_STEPS ? 1 : Math.ceil(odds.length / MOST_STEPS);
  const steps = new Map<number, number>();
  for (const n of counts) {
    const from = n - (n % width);
    steps.set(from, (steps.get(from) ?? 0) + (odds[n] ?? 0));
  }
  return [...steps].map(([from, chance]) => ({ from, to: from + width - 1, chance: number(chance) }));
}

function claimText(plan: Plan, results: Results, work: ClaimWork): object | null {
  const placing = placeClaim(plan, results.pass);
  if (placing.placed === null) return plan.promise.claim && { notPlaced: placing.why };
  const { claim, chance, percentile, expected, planned, at } = placing.placed;
  return {
    of: claim.of,
    amount: claim.amount,
    byDate: claim.byDate,
    who: claim.who,
    chance: number(chance),
    percentile: number(percentile),
    expected: number(expected),
    low80: number(at(0.1)),
    middle: number(at(0.5)),
    high80: number(at(0.9)),
    planned: number(planned),
    timesToday: work.timesToday === null ? null : number(work.timesToday),
    binding: work.having?.binding ?? null,
    wouldHaveToBeTrue: (work.having?.rows ?? []).map((row) => rowText(row, results)),
    byAccount: work.byAccount.map(({ accountId, without, withIt }) => ({
      accountId,
      chanceWithout: number(without),
      chanceWithIt: number(withIt),
    })),
  };
}

function rowText(
  { what, needed, shown, low80, high80, isEnough, because }: HaveToBe,
  { minorDigits }: Results,
): object {
  const text = (value: number | null) => {
    if (value === null) return null;
    return what === 'cash' ? moneyText(value, minorDigits) : number(value);
  };
  return {
    what,
    needed: text(needed),
    shown: text(shown),
    low80: text(low80),
    high80: text(high80),
    isEnough,
    because,
  };
}

function groupText({ names, accountIds, by, without }: LeaningGroup, { minorDigits }: Results): object {
  const trial = ({ cashNeed, endCash, unitsLost, ...low }: NonNullable<typeof without>['plan']) => ({
    cashNeed: moneyText(cashNeed, minorDigits),
    lowestCash: moneyText(low.lowestCash, minorDigits),
    lowestWeek: low.lowestWeek,
    endCash: moneyText(endCash, minorDigits),
    unitsLost,
  });
  return {
    parts: names.map((name, place) => ({
      name,
      accountIds: accountIds[place] ?? [],
      revenueShare: number(by.revenue.shares[place] ?? 0),
      unitsShare: number(by.units.shares[place] ?? 0),
      doorsShare: number(by.doors.shares[place] ?? 0),
    })),
    revenueIndex: number(by.revenue.index),
    unitsIndex: number(by.units.index),
    doorsIndex: number(by.doors.index),
    band: by.revenue.band,
    withoutLargest: without && {
      name: without.name,
      week: without.week,
      plan: trial(without.plan),
      there: trial(without.there),
    },
  };
}

function number(value: number): string {
  return value.toFixed(4);
}
