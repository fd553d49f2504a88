/**
 * What must be true of every weekly pass, whatever the plan: books, cash, units, shelves and the lows. Random plans, the
 * seed in the title; nothing here knows how the pass computes. A broken law names plan, week and both sides.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Plan } from '../../src/domain/plan/index.ts';
import {
  BALANCE_NAMES,
  type BalanceName,
  FLOW_NAMES,
  type PassResult,
  PROFIT_NAMES,
  UNIT_NAMES,
} from '../../src/domain/rollout/types.ts';
import { arbitraryPlan, PLAN_RUNS, PLAN_SEED } from '../support/arbitrary-plan.ts';
import { kernelOf, pricedPlan } from '../support/oracle/compare.ts';

const ASSETS: readonly BalanceName[] = ['cash', 'receivables', 'stock', 'deposits', 'equipment'];
const SHOWN = 12;

const passes = fc
  .sample(arbitraryPlan(), { seed: PLAN_SEED, numRuns: PLAN_RUNS })
  .map((plan) => ({ plan, pass: kernelOf(pricedPlan(plan)).pass }));

/** A law of one week: what it claims, with the two sides of the claim. */
type Claims = [claim: string, isTrue: boolean, left: number, right: number][];

/** Every place where the law is broken. */
function broken(law: (pass: PassResult, week: number, plan: Plan) => Claims): string[] {
  return passes
    .flatMap(({ plan, pass }, index) =>
      Array.from({ length: plan.horizonWeeks }, (_, week) => week).flatMap((week) =>
        law(pass, week, plan)
          .filter(([, isTrue]) => !isTrue)
          .map(([claim, , left, right]) => `plan ${index}, week ${week}: ${claim}: ${left} and ${right}`),
      ),
    )
    .slice(0, SHOWN);
}

const at = (series: Float64Array, week: number) => series[week] ?? Number.NaN;
const upTo = (series: Float64Array, week: number) =>
  series.slice(0, week + 1).reduce((sum, each) => sum + each, 0);
const same = (claim: string, left: number, right: number): Claims => [[claim, left === right, left, right]];
const atMost = (claim: string, left: number, right: number): Claims => [[claim, left <= right, left, right]];

function cashBefore(pass: PassResult, week: number): number {
  return week === 0 ? pass.openingCash : at(pass.balances.cash, week - 1);
}

describe(`the weekly pass on ${PLAN_RUNS} random plans, seed ${PLAN_SEED}`, () => {
  test('every balance, flow and count is a whole number', () => {
    const wholes = (kind: string, all: Record<string, Float64Array>, week: number): Claims =>
      Object.entries(all).map(([name, series]) => {
        const value = at(series, week);
        return [`${kind} ${name} is whole`, Number.isSafeInteger(value), value, Math.round(value)];
      });
    const faults = broken(({ flows, balances, units }, week) => [
      ...wholes('flow', flows, week),
      ...wholes('balance', balances, week),
      ...units.flatMap((each) => wholes('units', each, week)),
    ]);
    expect(faults).toEqual([]);
  });

  test('what we have is what we owe and what is ours', () => {
    const sumOf = ({ balances }: PassResult, week: number, assets: boolean) =>
      BALANCE_NAMES.filter((name) => ASSETS.includes(name) === assets).reduce(
        (sum, name) => sum + at(balances[name], week),
        0,
      );
    expect(broken((pass, week) => same('books', sumOf(pass, week, true), sumOf(pass, week, false)))).toEqual(
      [],
    );
  });

  test('cash moves by the sum of the flows', () => {
    const faults = broken((pass, week) => {
      const flows = FLOW_NAMES.reduce((sum, name) => sum + at(pass.flows[name], week), 0);
      return same('cash moves by the flows', at(pass.balances.cash, week) - cashBefore(pass, week), flows);
    });
    expect(faults).toEqual([]);
  });

  test('the low is no higher than cash before with the funders’ money, nor than cash after', () => {
    const faults = broken((pass, week) => {
      const moneyIn = at(pass.flows.equityIn, week) + at(pass.flows.loanIn, week);
      return [
        ...atMost('low, cash before', at(pass.low, week), cashBefore(pass, week) + moneyIn),
        ...atMost('low, cash after', at(pass.low, week), at(pass.balances.cash, week)),
      ];
    });
    expect(faults).toEqual([]);
  });

  test('what is retained moves by the parts of the result', () => {
    const faults = broken(({ balances: { retained }, profit }, week) => {
      if (week === 0) return [];
      const result = PROFIT_NAMES.reduce((sum, name) => sum + at(profit[name], week), 0);
      return same('result', at(retained, week) - at(retained, week - 1), result);
    });
    expect(faults).toEqual([]);
  });

  test('no unit appears or is lost: opening + made = sold + gone + ours + on the way + in stores', () => {
    const faults = broken(({ units, openingUnits }, week) =>
      units.flatMap((each, item) => {
        const had = (openingUnits[item] ?? 0) + upTo(each.made, week);
        const left = upTo(each.sold, week) + upTo(each.gone, week);
        const there =
          at(each.ours, week) + at(each.inTransit, week) + at(each.inStores, week) + at(each.atDepot, week);
        return same(`item ${item}`, had, left + there);
      }),
    );
    expect(faults).toEqual([]);
  });

  test('what is wanted is sold or lost; what is ordered is made or on order', () => {
    const faults = broken(({ units }, week, plan) =>
      units.flatMap((each, item) => {
        const before = plan.items[item]?.opening.onOrder.reduce((sum, order) => sum + order.units, 0) ?? 0;
        const came = upTo(each.made, week) + at(each.onOrder, week);
        return [
          ...same('demand', at(each.sold, week) + at(each.lost, week), at(each.demand, week)),
          ...same('orders', came, before + upTo(each.ordered, week)),
        ];
      }),
    );
    expect(faults).toEqual([]);
  });

  test('nothing that is counted, or owed to us, is below zero', () => {
    const faults = broken(({ balances, units, accounts }, week) => [
      ...(['receivables', 'stock', 'equipment', 'loans'] as const).flatMap((name) =>
        atMost(`0, ${name}`, 0, at(balances[name], week)),
      ),
      ...units.flatMap((each) => UNIT_NAMES.flatMap((name) => atMost(`0, ${name}`, 0, at(each[name], week)))),
      ...accounts.flatMap(({ receivables, remitted }) => [
        ...atMost('0, an account’s receivables', 0, at(receivables, week)),
        ...atMost('0, an account’s remittance', 0, at(remitted, week)),
      ]),
    ]);
    expect(faults).toEqual([]);
  });

  test('capacity is a lid on what lands; an order is full batches, unless no week can take all of it', () => {
    const faults = broken(({ units, unplacedUnits }, week, plan) =>
      plan.items.flatMap(({ supply, opening }, item): Claims => {
        const each = units[item];
        if (!each) return [];
        // Rush orders come in cases, beside capacity; further suppliers have batches and lids of their own.
        const ordered = at(each.ordered, week) - at(each.rushed, week);
        const isOfOne = supply.sources.length === 0;
        const isPlaced = isOfOne && ordered > 0 && unplacedUnits[item] === 0;
        const lid = supply.capacityUnitsPerWeek;
        const isPlainly = isOfOne && supply.expedite === null && opening.onOrder.length === 0;
        const hasOneLid = isPlainly && lid !== null && supply.capacitySteps.length === 0;
        return [
          ...(isPlaced ? same('rest of a batch', ordered % supply.batchUnits, 0) : []),
          ...(isPlaced ? atMost('minimum order', supply.minimumOrderUnits, ordered) : []),
          ...(hasOneLid ? atMost('made, capacity', at(each.made, week), lid) : []),
        ];
      }),
    );
    expect(faults).toEqual([]);
  });

  test('the receivables of the accounts are within those of the books', () => {
    const faults = broken(({ balances, accounts }, week) => {
      const ofAccounts = accounts.reduce((sum, each) => sum + at(each.receivables, week), 0);
      return atMost('receivables', ofAccounts, at(balances.receivables, week));
    });
    expect(faults).toEqual([]);
  });
});
