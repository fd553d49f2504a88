/**
 * More than a thousand random plans with everything a plan can hold, the seed in the title: in every week books balance,
 * cash moves by the flows, cash from operations is the same direct and indirect, no unit appears or is lost, and all is
 * whole. Nothing here knows how the pass computes. (The other laws, on fewer plans: rollout.test.ts, statements.test.ts.)
 */
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Account, Item, Plan } from '../../src/domain/plan/index.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import { sentence } from '../../src/domain/problems.ts';
import type { Rollout } from '../../src/domain/rollout/index.ts';
import { BALANCE_NAMES, type BalanceName, type FlowName } from '../../src/domain/rollout/types.ts';
import { arbitraryPlan } from '../support/arbitrary-plan.ts';
import { kernelOf, pricedPlan } from '../support/oracle/compare.ts';

const RUNS = 1050;
const SHOWN = 12;
const seed = fc.readConfigureGlobal().seed ?? 0;
const minute = 60_000;

/** Flows that are no operations: what lasts, and what owners and lenders put in and take out. */
const NOT_OPERATING: readonly FlowName[] = [
  'capital',
  'equityIn',
  'loanIn',
  'principal',
  'advanceIn',
  'advanceRepaid',
];
const ASSETS: readonly BalanceName[] = ['receivables', 'stock', 'deposits'];
const DEBTS: readonly BalanceName[] = ['payables', 'accrued'];

type Claim = [claim: string, left: number, right: number];
const at = (series: Float64Array, week: number) => series[week] ?? Number.NaN;

/** What must be true of one week; `before` has each balance at its start. */
function claimsOf({ pass }: Rollout, week: number, before: Record<BalanceName, number>): Claim[] {
  const { balances, flows, profit } = pass;
  const now = (name: BalanceName) => at(balances[name], week);
  const moved = (name: BalanceName) => now(name) - before[name];
  const sum = (numbers: readonly number[]) => numbers.reduce((total, each) => total + each, 0);
  const flowNames = Object.keys(flows) as FlowName[];
  const paid = (names: readonly FlowName[]) => sum(names.map((name) => at(flows[name], week)));
  const result = sum(Object.values(profit).map((part) => at(part, week)));
  const wear = -at(profit.depreciation, week);
  const direct = paid(flowNames.filter((name) => !NOT_OPERATING.includes(name)));
  const indirect = result + wear - sum(ASSETS.map(moved)) + sum(DEBTS.map(moved));
  const have = sum(['cash', ...ASSETS, 'equipment'].map((name) => now(name as BalanceName)));
  const owe = sum([...DEBTS, 'loans', 'paidIn', 'retained'].map((name) => now(name as BalanceName)));
  return [
    ['assets, and what they are owed to', have, owe],
    ['cash, and the flows', moved('cash'), paid(flowNames)],
    ['direct, and indirect', direct, indirect],
    ['retained, and the result', moved('retained'), result],
    ['equipment, bought less worn', moved('equipment'), -at(flows.capital, week) - wear],
    ['loans', moved('loans'), paid(['loanIn', 'advanceIn', 'principal', 'advanceRepaid'])],
    ['paid in', moved('paidIn'), paid(['equityIn'])],
    ...Object.entries({ ...balances, ...flows }).map(
      ([name, series]): Claim => [`${name}, whole`, at(series, week), Math.round(at(series, week))],
    ),
  ];
}

/** The books at the plan's start. */
function openingOf({ pass, compiled }: Rollout): Record<BalanceName, number> {
  const { paidInAmount, ...books } = compiled.business.opening;
  const { receivables, stock, deposits, equipment, payables, accrued, loans } = books;
  const cash = pass.openingCash;
  const retained =
    cash + receivables + stock + deposits + equipment - payables - accrued - loans - paidInAmount;
  return { cash, ...books, paidIn: paidInAmount, retained };
}

function brokenWeeks(run: Rollout): string[] {
  const { pass } = run;
  let before = openingOf(run);
  const broken: string[] = [];
  for (let week = 0; week < pass.weeks; week++) {
    for (const [claim, left, right] of claimsOf(run, week, before)) {
      if (left !== right) broken.push(`week ${week}: ${claim}: ${left} and ${right}`);
    }
    before = { ...before };
    for (const name of BALANCE_NAMES) before[name] = at(pass.balances[name], week);
  }
  return broken;
}

function lostUnits({ pass }: Rollout): string[] {
  return pass.units.flatMap((units, item) => {
    let known = pass.openingUnits[item] ?? 0;
    const broken: string[] = [];
    for (let week = 0; week < pass.weeks; week++) {
      known += at(units.made, week) - at(units.sold, week) - at(units.gone, week);
      const there =
        at(units.ours, week) + at(units.inTransit, week) + at(units.inStores, week) + at(units.atDepot, week);
      if (known !== there) broken.push(`item ${item}, week ${week}: ${known} known, ${there} there`);
      if (at(units.sold, week) + at(units.lost, week) !== at(units.demand, week))
        broken.push(`item ${item}, week ${week}: wanted is neither sold nor lost`);
    }
    return broken;
  });
}

const anyAccount = (has: (account: Account) => boolean) => (plan: Plan) => plan.accounts.some(has);
const anyItem = (has: (item: Item) => boolean) => (plan: Plan) => plan.items.some(has);

/** Every field of a longer look, and whether a plan makes use of it. */
const FIELDS: Record<string, (plan: Plan) => boolean> = {
  voidRate: anyAccount(({ voidRate }) => voidRate !== '0'),
  cuts: anyAccount(({ cuts }) => cuts.length > 0),
  exitMarkdownRate: anyAccount((each) => each.exitMarkdownRate !== '0' && each.closedStock === 'kept'),
  'ordering.everyWeeks': anyAccount(({ ordering }) => ordering.everyWeeks > 1),
  'ordering.daily': anyAccount(({ ordering }) => ordering.daily),
  'ordering.orderIn layer': anyAccount(({ ordering }) => ordering.orderIn === 'layer'),
  'ordering.orderIn pallet': anyAccount(({ ordering }) => ordering.orderIn === 'pallet'),
  'depot, sold at shipment': anyAccount(({ depot, sale }) => depot !== null && sale.by === 'shipment'),
  'depot, sold at the scan': anyAccount(({ depot, sale }) => depot !== null && sale.by === 'scan'),
  delivery: anyAccount(({ delivery }) => delivery !== null),
  service: anyAccount(({ service }) => service !== null),
  disputed: anyAccount(({ disputed }) => disputed !== null),
  creditLimitAmount: anyAccount(({ creditLimitAmount }) => creditLimitAmount !== null),
  'display.liftEndRate': anyAccount(({ display }) => display?.liftEndRate != null),
  'promotion.itemIds': anyAccount(({ promotions, listings }) =>
    promotions.some(({ itemIds }) => itemIds !== null && itemIds.length < listings.length),
  ),
  pack: anyItem(({ pack }) => pack !== null),
  'supply.line': anyItem(({ supply }) => supply.line !== null),
  'line shared by two': ({ items }) => items.filter(({ supply }) => supply.line !== null).length > 1,
  'business.lines with steps': ({ business }) => business.lines.some(({ steps }) => steps.length > 0),
  'supply.sources': anyItem(({ supply }) => supply.sources.length > 0),
  'supply.priceBreaks': anyItem(({ supply }) => supply.priceBreaks.length > 0),
  'supply.shelfLife': anyItem(({ supply }) => supply.shelfLife !== null),
  'supply.expedite': anyItem(({ supply }) => supply.expedite !== null),
  'supply.purchaseCurrency': anyItem(({ supply }) => supply.purchaseCurrency !== null),
};

describe(`${RUNS} random plans, seed ${seed}`, () => {
  let plans: Plan[] = [];
  let runs: Rollout[] = [];
  beforeAll(() => {
    plans = fc.sample(arbitraryPlan(), { seed, numRuns: RUNS });
    runs = plans.map((plan) => kernelOf(pricedPlan(plan)));
  }, minute);

  const shown = (law: (run: Rollout) => string[]) =>
    runs.flatMap((run, plan) => law(run).map((text) => `plan ${plan}, ${text}`)).slice(0, SHOWN);

  test(
    'each is sound by every rule',
    () => {
      expect(plans.flatMap((plan) => checkRules(plan).map(sentence)).slice(0, SHOWN)).toEqual([]);
    },
    minute,
  );

  test(
    'books balance, direct cash is indirect cash, every week',
    () => {
      expect(shown(brokenWeeks)).toEqual([]);
    },
    minute,
  );

  test(
    'units are conserved, every week',
    () => {
      expect(shown(lostUnits)).toEqual([]);
    },
    minute,
  );

  test('every field of a longer look is in use in many of them', () => {
    const seldom = Object.entries(FIELDS).filter(([, has]) => plans.filter(has).length < RUNS / 50);
    expect(seldom.map(([name]) => name)).toEqual([]);
  });
});
