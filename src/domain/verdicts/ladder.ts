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
  const floor = dec(plan.thresholds.ladderFloorRate);
  const holdsFrom = floor.plus(plan.thresholds.ladderTightPoints);
  let worst = first;
  let state = stateOf(first, floor, holdsFrom);
  for (const ladder of ladders.slice(1)) {
    const own = stateOf(ladder, floor, holdsFrom);
    const rate = ladder.contributionRate;
    const lower = rate !== null && worst.contributionRate !== null && rate.lt(worst.contributionRate);
    if (worse(own, state) || (own === state && lower)) {
      worst = ladder;
      state = own;
    }
  }
  return verdictOf({ plan, ladder: worst, state, floor, say });
}

interface Judged {
  plan: Plan;
  ladder: LadderResult;
  state: VerdictState;
  floor: Decimal;
  say: Say;
}

function verdictOf({ plan, ladder, state, floor, say }: Judged): Verdict {
  const rate = ladder.contributionRate;
  const short = ladder.hands.find((hand) => hand.short);
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

function stateOf(ladder: LadderResult, floor: Decimal, holdsFrom: Decimal): VerdictState {
  const rate = ladder.contributionRate;
  if (rate === null || ladder.hands.some((hand) => hand.short) || rate.lt(floor)) return 'fails';
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
