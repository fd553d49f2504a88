// All results of a plan as one plain object: decimals as text, weeks as numbers, ids as in the plan. help.ts documents
// every key; tests/reckon checks that nothing is printed that help doesn't name.
import type { DealResult } from '../domain/deals/types.ts';
import { landedParts } from '../domain/ladder/landed.ts';
import type { LadderResult } from '../domain/ladder/types.ts';
import { Decimal } from '../domain/money/decimal.ts';
import type { Plan } from '../domain/plan/index.ts';
import type { Results, Verdict, VerdictName } from '../domain/results.ts';
import { leastOpeningCash, mostDoors, type SolveArgs } from '../domain/rollout/solve.ts';
import { leansOn } from '../domain/verdicts/leans-on.ts';
import type { Say } from '../domain/verdicts/say.ts';
import { answersText } from './answers.ts';
import { lenderText } from './lender.ts';
import { moneyTextOf } from './money.ts';
import { promiseText } from './promise.ts';
import { readinessText } from './readiness.ts';
import { sayFor } from './say.ts';
import { statementsText } from './statements.ts';
import { journalOf, moneyText, weeksOf } from './weeks.ts';

export interface OutputArgs {
  plan: Plan;
  results: Results;
  weeks: boolean;
  journal: boolean;
  /** The day readiness is counted from; null: the plan's first day. */
  today?: string | null;
}

export interface Output {
  output: object;
  /** Sentences: what could not be solved for, and why. */
  unsolved: readonly string[];
}

export function outputOf(args: OutputArgs): Output {
  const { plan, results } = args;
  const solved = solvesOf(plan, results);
  const { binding, lifts, solves } = answersText(plan, results);
  const output = plain({
    plan: { id: plan.id, name: plan.name, version: plan.version, lesson: plan.lesson },
    currency: results.currency,
    minorDigits: results.minorDigits,
    verdicts: verdictsOf(plan, results),
    ladders: results.ladders.map(ladderOf),
    deals: results.deals.map((deal) => dealOf(deal, results)),
    rollout: {
      ...rolloutOf(args),
      binding,
      lifts,
      solves: { ...solved.solves, ...solves },
      lender: lenderText(plan, results),
    },
    solves: solved.solves,
    promise: promiseText(plan, results, sayOf(results)),
    readiness: readinessText(plan, results, args.today ?? null),
    money: moneyTextOf(plan, results),
    defaults: plan.basis,
  });
  return { output: output as object, unsolved: solved.unsolved };
}

function sayOf({ currency, minorDigits, compiled }: Results): Say {
  return sayFor({ currency, minorDigits, startDay: compiled.startDay });
}

/** Decimals to text all the way down; everything else is plain already. */
function plain(value: unknown): unknown {
  if (Decimal.isDecimal(value)) return value.toFixed();
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, plain(part)]));
}

function verdictsOf(plan: Plan, results: Results): unknown {
  const leans = leansOn({ plan, results, sayFor });
  const names = Object.keys(results.verdicts) as VerdictName[];
  return Object.fromEntries(
    names.map((name) => {
      const { state, figure, value, reason, accountId, itemId }: Verdict = results.verdicts[name];
      const lean = leans[name];
      const leansOnText = lean && {
        path: lean.path,
        label: lean.label,
        flips: lean.flips,
        end: lean.end,
        stateThere: lean.stateThere,
      };
      return [name, { state, figure, reason, value, accountId, itemId, leansOn: leansOnText }];
    }),
  );
}

function ladderOf(ladder: LadderResult): unknown {
  const { forPass: _integers, ...rest } = ladder;
  return rest;
}

function dealOf(deal: DealResult, results: Results): unknown {
  return { ...deal, cumulated: deal.cumulated.map((amount) => moneyText(amount, results.minorDigits)) };
}

function rolloutOf({ plan, results, weeks, journal }: OutputArgs): object {
  const { reading, minorDigits, pass } = results;
  const money = (minorUnits: number) => moneyText(minorUnits, minorDigits);
  return {
    startDate: plan.startDate,
    horizonWeeks: plan.horizonWeeks,
    openingCash: plan.business.openingCashAmount === null ? null : money(pass.openingCash),
    cashNeed: { amount: money(reading.cashNeed), week: reading.cashNeedWeek },
    depthFromZero: money(reading.depthFromZero),
    lowestCash: { amount: money(reading.lowestCash), week: reading.lowestWeek },
    endCash: money(reading.endCash),
    buffer: money(reading.bufferAmount),
    floorNotSeen: reading.floorNotSeen,
    backAboveOpeningWeek: reading.backAboveOpeningWeek,
    firstOpeningWeek: reading.firstOpeningWeek,
    firstPaymentWeek: reading.firstPaymentWeek,
    mostSpentOn: reading.ends,
    days: {
      inventory: rounded(reading.daysInventory),
      receivable: rounded(reading.daysReceivable),
      payable: rounded(reading.daysPayable),
      cashCycle: rounded(reading.cashCycleDays),
    },
    units: {
      demand: reading.demandUnits,
      sold: reading.soldUnits,
      lost: reading.lostUnits,
      fillRate: reading.fillRate === null ? null : reading.fillRate.toFixed(6),
      firstLostWeek: reading.firstLostWeek,
      mostStockWeeks: rounded(reading.mostStockWeeks),
    },
    ...(weeks ? { weeks: weeksOf(plan, results), statements: statementsText(results) } : {}),
    ...(journal ? { journal: journalOf(plan, results) } : {}),
  };
}

function rounded(value: number | null): string | null {
  return value === null ? null : value.toFixed(2);
}

function solvesOf(plan: Plan, results: Results): { solves: object; unsolved: string[] } {
  const landed = landedParts(plan.items);
  const args: SolveArgs = { plan, ladders: results.ladders, landed, minorDigits: results.minorDigits };
  const money = (minorUnits: number | null) =>
    minorUnits === null ? null : moneyText(minorUnits, results.minorDigits);
  const least = tried(() => leastOpeningCash(args));
  const most = plan.accounts
    .filter(({ waves }) => waves.length > 0)
    .map((account) => ({ account, found: tried(() => mostDoors(args, account.id)) }));
  const solves = {
    leastOpeningCash: {
      amount: money(least.value?.amount ?? null),
      lowestThere: money(least.value?.lowestThere ?? null),
      lowestBelow: money(least.value?.lowestBelow ?? null),
      confirmed: least.value?.confirmed ?? false,
    },
    mostDoors: most.map(({ account, found: { value } }) => ({
      accountId: account.id,
      planned: account.waves.reduce((sum, { doors }) => sum + doors, 0),
      doors: value?.doors ?? null,
      lowestThere: money(value?.lowestThere ?? null),
      lowestNext: money(value?.lowestNext ?? null),
      atLeast: value?.atLeast ?? false,
      steady: value?.steady ?? false,
    })),
  };
  const unsolved = [
    ...(least.why === null ? [] : [`the least opening cash was not found: ${least.why}.`]),
    ...most.flatMap(({ account, found: { why } }) =>
      why === null ? [] : [`the most doors of ${account.name} were not found: ${why}.`],
    ),
  ];
  return { solves, unsolved };
}

/** A solve runs plans up to ten times as large: where one outgrows exact sums, the other results stand all the same. */
function tried<T>(solve: () => T | null): { value: T | null; why: string | null } {
  try {
    return { value: solve(), why: null };
  } catch (error) {
    return { value: null, why: error instanceof Error ? error.message : String(error) };
  }
}
