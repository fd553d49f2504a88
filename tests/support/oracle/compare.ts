/**
 * The kernel and the oracle on one plan, and every place where they differ, in words.
 * Worked figure: "week 7, flow remittances: kernel 12499, oracle 12500".
 */
import { ladderFor } from '../../../src/domain/ladder/ladder.ts';
import { landedOf } from '../../../src/domain/ladder/landed.ts';
import type { LadderResult, Landed } from '../../../src/domain/ladder/types.ts';
import { minorDigitsOf } from '../../../src/domain/money/currency.ts';
import type { Plan } from '../../../src/domain/plan/index.ts';
import { type Outcome, sentence } from '../../../src/domain/problems.ts';
import { type Rollout, rollOut } from '../../../src/domain/rollout/index.ts';
import { BALANCE_NAMES, FLOW_NAMES, type PassResult, UNIT_NAMES } from '../../../src/domain/rollout/types.ts';
import { type OracleResult, oracle } from './index.ts';

export interface Priced {
  plan: Plan;
  ladders: LadderResult[];
  landed: Landed[];
  minorDigits: number;
}

/** The plan with its ladders; throws, naming the problem, when a ladder has no answer. */
export function pricedPlan(plan: Plan): Priced {
  const minorDigits = minorDigitsOf(plan.currency);
  if (minorDigits === null) throw new Error(`no minor digits known of ${plan.currency}`);
  const ladders = plan.accounts.flatMap((account) =>
    account.listings.map((listing) => {
      const item = plan.items.find(({ id }) => id === listing.itemId);
      if (!item) throw new Error(`no item ${listing.itemId}`);
      return answerOf(ladderFor({ plan, account, listing, item }));
    }),
  );
  return { plan, ladders, landed: plan.items.map((item) => answerOf(landedOf(item))), minorDigits };
}

export function kernelOf(priced: Priced): Rollout {
  return rollOut(priced);
}

export function oracleOf({ plan, ladders, landed, minorDigits }: Priced): OracleResult {
  const onGrid = (amount: Landed['unit']) => amount.times(10_000).toNumber();
  return oracle({
    plan,
    minorDigits,
    forPass: plan.accounts.map(({ id }) =>
      ladders.filter(({ accountId }) => accountId === id).map(({ forPass }) => forPass),
    ),
    landed: landed.map(({ goods, freightAndDuty }) => ({
      goods: onGrid(goods),
      freight: onGrid(freightAndDuty),
    })),
  });
}

/** Every difference between the two on one plan, in the order of weeks; empty when they agree to the minor unit. */
export function differencesOn(plan: Plan): string[] {
  const priced = pricedPlan(plan);
  return differences(plan, kernelOf(priced).pass, oracleOf(priced));
}

export function differences(plan: Plan, kernel: PassResult, computed: OracleResult): string[] {
  const found: { week: number; text: string }[] = [];
  const hold = (series: string, ours: ArrayLike<number>, theirs: readonly (bigint | number)[]) => {
    for (let week = 0; week < plan.horizonWeeks; week++) {
      const [left, right] = [ours[week], Number(theirs[week])];
      if (left === right) continue; // also 0 and -0
      found.push({ week, text: `week ${week}, ${series}: kernel ${left}, oracle ${right}` });
    }
    if (ours.length !== plan.horizonWeeks) found.push({ week: -1, text: `${series}: ${ours.length} weeks` });
  };
  for (const name of FLOW_NAMES) hold(`flow ${name}`, kernel.flows[name], computed.flows[name]);
  for (const name of BALANCE_NAMES) hold(`balance ${name}`, kernel.balances[name], computed.balances[name]);
  hold('low', kernel.low, computed.low);
  plan.items.forEach(({ id }, at) => {
    const [ours, theirs] = [kernel.units[at], computed.units[at]];
    for (const name of UNIT_NAMES) hold(`units ${id} ${name}`, ours?.[name] ?? [], theirs?.[name] ?? []);
  });
  plan.accounts.forEach(({ id }, at) => {
    const [ours, theirs] = [kernel.accounts[at], computed.accounts[at]];
    for (const name of [
      'doors',
      'invoiced',
      'remitted',
      'sold',
      'lost',
      'receivables',
      'heldBack',
    ] as const) {
      hold(`account ${id} ${name}`, ours?.[name] ?? [], theirs?.[name] ?? []);
    }
  });
  if (kernel.openingCash !== Number(computed.openingCash)) {
    found.push({
      week: -1,
      text: `opening cash: kernel ${kernel.openingCash}, oracle ${computed.openingCash}`,
    });
  }
  return found.sort((a, b) => a.week - b.week).map(({ text }) => text);
}

function answerOf<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(outcome.problems.map(sentence).join(' '));
}
