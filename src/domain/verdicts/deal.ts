// Verdict two: does this chain's offer pay back, and how fast must it sell for that? The worst chain speaks for the plan.
// Worked figure: planned 6 a store and week, break-even 5.4: ratio 1.11, below 1.25: tight.
import type { DealResult } from '../deals/types.ts';
import { dec } from '../money/decimal.ts';
import type { Plan } from '../plan/index.ts';
import type { Verdict, VerdictState } from '../results.ts';
import type { RolloutReading } from '../rollout/types.ts';
import { worse } from './ladder.ts';
import type { Say } from './say.ts';

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
        ? 'Not known yet. No chain yet: add one to see what its terms cost.'
        : 'Not known yet. No doors open in this plan: add a wave of doors.';
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
  if (deal.paybackWeeks !== null)
    return `back in week ${say.number(deal.paybackWeeks.ceil())} of ${deal.termWeeks}`;
  return `not within ${deal.termWeeks} weeks`;
}

function reasonOf({ plan, say }: DealVerdictArgs, deal: DealResult): string {
  const chain = plan.accounts.find((account) => account.id === deal.accountId)?.name ?? 'The chain';
  if (deal.nothingDown) return `${chain}: nothing is put down, each unit sold adds to ours.`;
  const [item] = deal.items;
  const need = item?.breakEvenUnitsPerStoreWeek;
  if (!need || !item)
    return `${chain}: each unit sold costs more than it brings, no rate of sale pays this back.`;
  const rates =
    deal.items.length === 1
      ? `needs ${say.number(need)} a store a week, the plan says ${say.number(item.unitsPerStoreWeek)}`
      : `needs ${say.percent((deal.breakEvenRatio ?? dec(1)).pow(-1))} of the rate of sale the plan says`;
  if (deal.paybackWeeks === null) return `${chain}: not paid back within ${deal.termWeeks} weeks; ${rates}.`;
  return `${chain}: pays back in week ${say.number(deal.paybackWeeks.ceil())} of ${deal.termWeeks}; ${rates}.`;
}
