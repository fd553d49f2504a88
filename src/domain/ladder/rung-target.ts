// What a rung is moved to, and the rule it then has. A hand may be moved by its own rule or by its selling price (dragging
// the rung): by price it keeps the style it had, on what it buys at now.
// Worked figure: a hand that buys at 2.60 by markup, moved to sell at 3.25, has a markup of 25 %.
import { type Decimal, ONE } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import { priceText } from '../money/plain.ts';
import type { Account } from '../plan/index.ts';
import { fine, type Outcome, trouble } from '../problems.ts';
import { rateText } from './frozen.ts';
import type { LadderResult } from './types.ts';

/** Canonical decimal texts, as a plan keeps them. */
export type RungTarget =
  | { by: 'price'; amount: string }
  | { by: 'margin'; rate: string }
  | { by: 'markup'; rate: string }
  | { by: 'fixed'; amount: string; per: 'unit' | 'case' };

/** The rule of the moved rung; its limits are the schema's to check. */
export function ruleFor(
  account: Account,
  now: LadderResult,
  { rung, to }: { rung: string; to: RungTarget },
): Outcome<RungTarget> {
  const hand = account.hands.find(({ id }) => id === rung);
  if (!hand || to.by !== 'price') return fine(to);
  const result = now.hands.find(({ id }) => id === rung);
  const sells = kept(to.amount);
  if (!result || sells.lt(result.buys) || sells.isZero()) {
    return trouble({
      code: 'rung-unsolvable',
      path: `accounts/${account.id}/hands/${rung}/rule`,
      got: `${hand.name} selling at ${priceText(sells)}`,
      expected: `a price of at least ${priceText(result?.buys ?? sells)}, what ${hand.name} buys at`,
    });
  }
  const { buys } = result;
  if (hand.rule.by === 'fixed')
    return fine({ by: 'fixed', amount: sells.minus(buys).toFixed(), per: 'unit' });
  if (hand.rule.by === 'markup' && buys.gt(0))
    return fine({ by: 'markup', rate: rateText(sells.div(buys).minus(ONE)) });
  return fine({ by: 'margin', rate: rateText(marginOf(buys, sells)) });
}

function marginOf(buys: Decimal, sells: Decimal): Decimal {
  return sells.minus(buys).div(sells);
}
