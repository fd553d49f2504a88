// One account by another way to its shelf: without the hands between, or with a distributor between. The price on the
// tag and the shelf's own hand stay; our list price takes what the way leaves.
// Worked figure: a tag of 6.00 and a shop at 40 % leave 3.60; a distributor at 20.4 % of that leaves us 2.8656.

import { withAccount } from '../ladder/rungs.ts';
import type { LadderResult } from '../ladder/types.ts';
import type { Account, Hand, Plan } from '../plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from '../problems.ts';
import { DEFAULTS } from '../quick/index.ts';
import { oneDeal } from './run.ts';

export const ROUTES = ['asPlanned', 'direct', 'distributor'] as const;
export type Route = (typeof ROUTES)[number];

export interface Routed {
  plan: Plan;
  /** What is assumed on this way, or null where it is the plan's own. */
  assumed: string | null;
}

const BETWEEN = { id: 'talks-distributor', name: 'Distributor' };

/** The plan with one account served that way. Problems: an unknown account, or a way that can't be priced. */
export function byRoute(plan: Plan, accountId: string, route: Route): Outcome<Routed> {
  const now = oneDeal(plan, accountId);
  if (!now.ok) return now;
  const { account, ladders } = now.value;
  if (route === 'asPlanned' || (route === 'direct') === (account.hands.length === 1)) {
    return fine({ plan, assumed: null });
  }
  const hands = statedHands(account, ladders);
  if (!hands.ok) return hands;
  const last = hands.value.slice(-1);
  const served = standing(account, ladders, route === 'direct' ? last : [distributor(), ...last]);
  return fine({
    plan: withAccount(plan, route === 'direct' ? paidHere(served) : billedBack(served)),
    assumed: route === 'direct' ? DIRECT : DISTRIBUTOR,
  });
}

const DIRECT =
  'the tag stays, our list price takes what the hands between kept; freight and payment as planned: guess';
const DISTRIBUTOR =
  'a distributor at 20.4 % of its price (gross margin of wholesalers, US Census Bureau, 2023) comes off our list price and bills free fill back; freight and payment as planned: guess';

function distributor(): Hand {
  return {
    ...BETWEEN,
    rule: { by: 'margin', rate: DEFAULTS.distributorMarginRate },
    requiredMarginRate: null,
  };
}

/** Through a distributor free fill comes back at its own selling price. Common practice, no source. */
function billedBack(account: Account): Account {
  return { ...account, freeFill: { ...account.freeFill, settled: 'billedBack' } };
}

function paidHere(account: Account): Account {
  return { ...account, freeFill: { ...account.freeFill, settled: 'free' } };
}

/** The tags stand where they are, and the list price is what is left. */
function standing(account: Account, ladders: readonly LadderResult[], hands: Hand[]): Account {
  const listings = account.listings.map((listing, index) => ({
    ...listing,
    list: { by: 'solved' } as const,
    shelf: { by: 'price', amount: ladders[index]?.shelf.toFixed() ?? '0' } as const,
    lockedRungs: [],
  }));
  return { ...account, hands, listings };
}

/** Hands with their rules stated: one that takes what is left gets the margin that leaves it, if that is one margin. */
function statedHands(account: Account, ladders: readonly LadderResult[]): Outcome<Hand[]> {
  const problems: Problem[] = [];
  const hands = account.hands.map((hand, place): Hand => {
    if (hand.rule.by !== 'solved') return hand;
    const rates = [...new Set(ladders.map((ladder) => ladder.hands[place]?.marginRate.toFixed() ?? '0'))];
    const [rate = '0'] = rates;
    if (rates.length > 1 || Number(rate) < 0) problems.push(noOneMargin(account, hand, rates));
    return { ...hand, rule: { by: 'margin', rate } };
  });
  return problems.length > 0 ? trouble(...problems) : fine(hands);
}

function noOneMargin(account: Account, hand: Hand, rates: readonly string[]): Problem {
  return {
    code: 'rung-unsolvable',
    path: `accounts/${account.id}/hands/${hand.id}/rule`,
    got: `what prices leave it, ${rates.join(' and ')} by product`.slice(0, 80),
    expected: 'one margin from 0 to below 1 on every product, so that another way to the shelf can be priced',
  };
}
