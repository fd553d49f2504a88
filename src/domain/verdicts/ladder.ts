// Verdict one: does the shelf price leave every hand its share, and us ours? The worst listing speaks for the plan.
// Worked figure: contribution 0.63 of net 2.35 is 26.8 %; floor 20 %, holds from 23 %: holds, 6.8 points above the floor.
import type { HandResult, LadderResult } from '../ladder/types.ts';
import { type Decimal, dec } from '../money/decimal.ts';
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
  return {
    name: 'ladder',
    state,
    figure: `${say.price(ladder.contribution)} of ${say.price(ladder.shelf)}`,
    value: rate === null ? null : rate.toFixed(),
    reason: `${WORD[state]}. ${reasonOf({ plan, ladder, short, floor, say })}`,
    accountId: ladder.accountId,
    itemId: ladder.itemId,
  };
}

const WORD: Record<VerdictState, string> = {
  holds: 'Holds',
  tight: 'Tight',
  fails: 'Fails',
  unknown: 'Not known yet',
};

interface StateArgs {
  rate: LadderResult['contributionRate'];
  floor: Decimal;
  holdsFrom: Decimal;
  short: HandResult | undefined;
}

function stateOf({ rate, floor, holdsFrom, short }: StateArgs): VerdictState {
  if (rate === null || short || rate.lt(floor)) return 'fails';
  return rate.lt(holdsFrom) ? 'tight' : 'holds';
}

interface ReasonArgs {
  plan: Plan;
  ladder: LadderResult;
  short: HandResult | undefined;
  floor: Decimal;
  say: Say;
}

function reasonOf({ plan, ladder, short, floor, say }: ReasonArgs): string {
  const where = whereOf(plan, ladder);
  const rate = ladder.contributionRate;
  if (rate === null) return `Net price zero${where}: nothing is left to keep.`;
  if (short?.requiredMarginRate) {
    const gets = say.percent(short.marginRate);
    const needs = say.percent(short.requiredMarginRate);
    if (gets === needs) return `${short.name} gets just under the ${needs} it needs${where}.`;
    return `${short.name} gets ${gets}${where} and needs ${needs}.`;
  }
  const { contribution } = ladder;
  const verb = contribution.isNegative() ? 'lose' : 'keep';
  const money = `We ${verb} ${say.price(contribution.abs())} of ${say.price(ladder.shelf)}${where}`;
  return `${money}: ${say.percent(rate)} of the net price, ${aboveFloor(rate.minus(floor), say)}.`;
}

/** Named only where the plan has more than one to choose from. */
function whereOf({ items, accounts }: Plan, { itemId, accountId }: LadderResult): string {
  const item = items.find(({ id }) => id === itemId)?.name;
  const account = accounts.find(({ id }) => id === accountId)?.name;
  return `${items.length > 1 ? ` on ${item}` : ''}${accounts.length > 1 ? ` at ${account}` : ''}`;
}

/** Points to a tenth: "4 points above your floor". */
function aboveFloor(difference: Decimal, say: Say): string {
  if (difference.isZero()) return 'right at your floor';
  const side = difference.isNegative() ? 'below' : 'above';
  const points = difference.abs().times(100).toDecimalPlaces(1);
  if (points.isZero()) return `less than 0.1 points ${side} your floor`;
  return `${say.number(points)} ${points.eq(1) ? 'point' : 'points'} ${side} your floor`;
}
