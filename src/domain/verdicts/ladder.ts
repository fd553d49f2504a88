// Verdict one: does the shelf price leave every hand its share, and us ours? The worst listing speaks for the plan.
// Worked figure: contribution 0.63 of net 2.35 is 26.8 %; floor 20 %, holds from 23 %: holds, 6.8 points above the floor.
import type { HandResult, LadderResult } from '../ladder/types.ts';
import { dec } from '../money/decimal.ts';
import type { Plan } from '../plan/index.ts';
import type { Verdict, VerdictState } from '../results.ts';
import type { Say } from './say.ts';

const RANK: Record<VerdictState, number> = { fails: 0, tight: 1, holds: 2, unknown: 3 };

/** Lower is worse. */
export function worse(a: VerdictState, b: VerdictState): boolean {
  return RANK[a] < RANK[b];
}

export function ladderVerdict(plan: Plan, ladders: readonly LadderResult[], say: Say): Verdict {
  const first = ladders[0];
  if (!first) {
    return {
      name: 'ladder',
      state: 'unknown',
      figure: '',
      value: null,
      reason: 'Not known yet. Add a chain to see what its shelf leaves.',
      accountId: null,
      itemId: null,
    };
  }
  let worst = judge(plan, first, say);
  let worstRate = first.contributionRate;
  for (const ladder of ladders.slice(1)) {
    const verdict = judge(plan, ladder, say);
    const rate = ladder.contributionRate;
    const lower = rate !== null && worstRate !== null && rate.lt(worstRate);
    if (worse(verdict.state, worst.state) || (verdict.state === worst.state && lower)) {
      worst = verdict;
      worstRate = rate;
    }
  }
  return worst;
}

function judge(plan: Plan, ladder: LadderResult, say: Say): Verdict {
  const floor = dec(plan.thresholds.ladderFloorRate);
  const holdsFrom = floor.plus(plan.thresholds.ladderTightPoints);
  const rate = ladder.contributionRate;
  const short = ladder.hands.find((hand) => hand.short);
  const state = stateOf({ rate, floor, holdsFrom, short });
  const keep = `We keep ${say.price(ladder.contribution)} of ${say.price(ladder.shelf)}`;
  const points = rate === null ? null : rate.minus(floor).times(100);
  const above =
    points === null ? '' : `${say.number(points.abs())} points ${points.lt(0) ? 'below' : 'above'} the floor`;
  return {
    name: 'ladder',
    state,
    figure: `${say.price(ladder.contribution)} of ${say.price(ladder.shelf)}`,
    value: rate === null ? null : rate.toFixed(),
    reason: reasonOf({ state, keep, above, short, rate, say }),
    accountId: ladder.accountId,
    itemId: ladder.itemId,
  };
}

interface StateArgs {
  rate: LadderResult['contributionRate'];
  floor: ReturnType<typeof dec>;
  holdsFrom: ReturnType<typeof dec>;
  short: HandResult | undefined;
}

function stateOf({ rate, floor, holdsFrom, short }: StateArgs): VerdictState {
  if (rate === null || short || rate.lt(floor)) return 'fails';
  return rate.lt(holdsFrom) ? 'tight' : 'holds';
}

interface ReasonArgs {
  state: VerdictState;
  keep: string;
  above: string;
  short: HandResult | undefined;
  rate: LadderResult['contributionRate'];
  say: Say;
}

function reasonOf({ state, keep, above, short, rate, say }: ReasonArgs): string {
  if (rate === null) return 'Fails. The net price is zero: nothing is left to keep.';
  if (short?.requiredMarginRate) {
    const gets = say.percent(short.marginRate);
    return `Fails. ${short.name} gets ${gets} and needs ${say.percent(short.requiredMarginRate)}.`;
  }
  const word = state === 'holds' ? 'Holds' : state === 'tight' ? 'Tight' : 'Fails';
  return `${word}. ${keep}, ${say.percent(rate)} of the net price, ${above}.`;
}
