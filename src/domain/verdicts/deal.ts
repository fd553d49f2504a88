// Verdict two: does this chain's offer pay back, and how fast must it sell for that? The worst chain speaks for the plan.
// Worked figure: planned 6 a store and week, break-even 5.4: ratio 1.11, below 1.25: tight.
import type { DealResult } from '../deals/types.ts';
import { type Decimal, dec } from '../money/decimal.ts';
import type { Plan } from '../plan/index.ts';
import type { Verdict, VerdictState } from '../results.ts';
import type { RolloutReading } from '../rollout/types.ts';
import { worse } from './ladder.ts';
import { type Say, tooLittleServed } from './say.ts';

export interface DealVerdictArgs {
  plan: Plan;
  deals: readonly DealResult[];
  reading: RolloutReading;
  say: Say;
}

export function dealVerdict(args: DealVerdictArgs): Verdict {
  const judged = args.deals.filter((deal) => deal.doors > 0).map((deal) => judge(args, deal));
  const first = judged[0];
  if (!first) {
    const reason =
      args.plan.accounts.length === 0
        ? 'Not known yet. Add a chain to see what its terms cost.'
        : 'Not known yet. No doors open in this plan: add an opening to see what they cost.';
    return { name: 'deal', state: 'unknown', figure: '', value: null, reason, accountId: null, itemId: null };
  }
  return judged.reduce((worst, verdict) => {
    const lower =
      Number(verdict.value ?? Number.POSITIVE_INFINITY) < Number(worst.value ?? Number.POSITIVE_INFINITY);
    if (worse(verdict.state, worst.state)) return verdict;
    return verdict.state === worst.state && lower ? verdict : worst;
  }, first);
}

function judge(args: DealVerdictArgs, deal: DealResult): Verdict {
  const { plan, say } = args;
  const state = stateOf(plan, deal);
  return {
    name: 'deal',
    state,
    figure: figureOf(deal, say),
    value: deal.breakEvenRatio === null ? null : deal.breakEvenRatio.toFixed(),
    reason: `${wordOf(state)}. ${reasonOf(args, deal)}`,
    accountId: deal.accountId,
    itemId: null,
  };
}

function stateOf(plan: Plan, deal: DealResult): VerdictState {
  if (deal.nothingDown) return 'holds';
  const ratio = deal.breakEvenRatio;
  if (ratio === null || ratio.lt(1) || deal.paybackWeeks === null) return 'fails';
  return ratio.lt(dec(plan.thresholds.dealTightRatio)) ? 'tight' : 'holds';
}

function wordOf(state: VerdictState): string {
  return state === 'holds' ? 'Holds' : state === 'tight' ? 'Tight' : 'Fails';
}

function figureOf(deal: DealResult, say: Say): string {
  if (deal.nothingDown) return 'nothing put down';
  const { paybackWeeks } = deal;
  if (paybackWeeks === null) return `not within ${weeks(deal.termWeeks)}`;
  return paybackWeeks.isZero()
    ? 'back at once'
    : `back in week ${say.number(paybackWeeks.ceil())} of ${deal.termWeeks}`;
}

/** The chain is named where there are several: "Corner: pays back in week 47 of 52; ..." */
function reasonOf(args: DealVerdictArgs, deal: DealResult): string {
  const { plan, say, reading } = args;
  const text = bindingOf(args, deal);
  const chain = plan.accounts.find((account) => account.id === deal.accountId)?.name;
  const named =
    plan.accounts.length > 1 && chain !== undefined
      ? `${chain}: ${text}`
      : text.charAt(0).toUpperCase() + text.slice(1);
  return `${named}${emptyShelves(reading, say)}`;
}

/** Deal figures count demand as if it were served; where much of it is not, they say so. */
function emptyShelves({ fillRate }: RolloutReading, say: Say): string {
  const served = tooLittleServed(fillRate, say);
  return served === null ? '' : ` This counts full shelves; the plan has goods for ${served}.`;
}

function bindingOf({ plan, say }: DealVerdictArgs, deal: DealResult): string {
  if (deal.nothingDown) return 'nothing is put down, each unit sold adds to ours.';
  const [item] = deal.items;
  const need = item?.breakEvenUnitsPerStoreWeek;
  if (!item || !need) return neverPays(deal);
  const rates =
    deal.items.length === 1
      ? needsAndPlans(need, item.unitsPerStoreWeek, say)
      : timesThePlan(need.div(item.unitsPerStoreWeek), say);
  const { paybackWeeks, termWeeks } = deal;
  if (paybackWeeks === null) return `not paid back within ${weeks(termWeeks)}; ${rates}.`;
  const back = paybackWeeks.isZero()
    ? 'pays back at once'
    : `pays back in week ${say.number(paybackWeeks.ceil())} of ${termWeeks}`;
  const hurdle = plan.accounts.find(({ id }) => id === deal.accountId)?.deal.hurdleAmount ?? '0';
  if (need.lte(item.unitsPerStoreWeek) || Number(hurdle) === 0) return `${back}; ${rates}.`;
  return `${back}, but does not earn the ${say.price(dec(hurdle))} asked of it in ${weeks(termWeeks)}; ${rates}.`;
}

function neverPays(deal: DealResult): string {
  if (deal.items.every(({ firstYearUnits }) => firstYearUnits.isZero())) {
    return 'nothing is sold in the first year, no money put down comes back.';
  }
  if (deal.items.every(({ contributionPerUnit }) => contributionPerUnit.lte(0))) {
    return 'each unit sold costs more than it brings, no rate of sale pays this back.';
  }
  return 'over its weeks, deals included, units cost more than they bring, no rate of sale pays this back.';
}

/** "needs 5.4 a store a week, you plan 6": to a tenth, or to a hundredth where a tenth would hide the difference. */
function needsAndPlans(need: Decimal, planned: Decimal, say: Say): string {
  const tenth = need.toDecimalPlaces(1);
  const decimals = tenth.eq(planned.toDecimalPlaces(1)) || need.lt(1) || planned.lt(1) ? 2 : 1;
  return `needs ${rate(need, decimals, say)} a store a week, you plan ${rate(planned, decimals, say)}`;
}

function rate(value: Decimal, decimals: number, say: Say): string {
  if (value.gt(0) && value.lt('0.01')) return 'less than 0.01';
  return say.number(value.toDecimalPlaces(decimals));
}

/** The same share for every item, of the rates the plan says. */
function timesThePlan(times: Decimal, say: Say): string {
  if (times.gt(1))
    return `every item would have to sell ${say.number(atLeastApart(times))} times as fast as you plan`;
  if (times.lt('0.001')) return 'needs less than 0.1 % of the rates of sale you plan';
  return `needs ${say.percent(times)} of the rates of sale you plan`;
}

/** Rounded up, so that 1.001 times does not read as "1 times". */
function atLeastApart(times: Decimal): Decimal {
  return times.toDecimalPlaces(times.lt('1.1') ? 2 : 1, 0);
}

function weeks(count: number): string {
  return count === 1 ? '1 week' : `${count} weeks`;
}
