// The hands between our list price and the shelf: each buys at b and sells at s by one rule, on the price before tax.
// Worked figure: shelf 60.00, retailer at 20 % of its price, wholesaler at 15 % of its own: 48.00, then 40.80.
import { type Decimal, ONE } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import { priceText } from '../money/plain.ts';
import { GRID } from '../money/rounding.ts';
import type { Account, Hand, Item } from '../plan/index.ts';
import type { Problem } from '../problems.ts';

/** margin: s = b / factor with factor 1 - m; markup: s = b x factor with factor 1 + u; fixed: s = b + amount. */
export type PriceRule =
  | { by: 'margin' | 'markup'; factor: Decimal }
  | { by: 'fixed'; amount: Decimal }
  | { by: 'solved' };

export function priceRule({ rule }: Hand, item: Item): PriceRule {
  if (rule.by === 'margin') return { by: 'margin', factor: ONE.minus(kept(rule.rate)) };
  if (rule.by === 'markup') return { by: 'markup', factor: ONE.plus(kept(rule.rate)) };
  if (rule.by === 'solved') return { by: 'solved' };
  const amount = kept(rule.amount);
  return { by: 'fixed', amount: rule.per === 'case' ? amount.div(item.caseUnits) : amount };
}

/** The selling price above a buying price. A solved hand has no rule to go by: asking is a bug. */
export function priceUp(rule: PriceRule, buys: Decimal): Decimal {
  if (rule.by === 'margin') return buys.div(rule.factor);
  if (rule.by === 'markup') return buys.times(rule.factor);
  if (rule.by === 'fixed') return buys.plus(rule.amount);
  throw new Error('a solved hand has no rule to price by');
}

/** The buying price under a selling price. */
export function priceDown(rule: PriceRule, sells: Decimal): Decimal {
  if (rule.by === 'margin') return sells.times(rule.factor);
  if (rule.by === 'markup') return sells.div(rule.factor);
  if (rule.by === 'fixed') return sells.minus(rule.amount);
  throw new Error('a solved hand has no rule to price by');
}

/** The rule a solved hand turned out to have, so that its part can be kept when the shelf price moves. */
export function ruleBetween(buys: Decimal, sells: Decimal): PriceRule {
  return { by: 'margin', factor: buys.div(sells) };
}

/**
 * Fills `prices` (what the first hand buys at, then what each hand sells at) upwards from place `from` to `to`.
 */
export function fillUp(
  prices: Decimal[],
  rules: readonly PriceRule[],
  { from, to }: { from: number; to: number },
) {
  for (let place = from; place < to; place += 1) {
    prices[place + 1] = priceUp(rules[place] as PriceRule, prices[place] as Decimal);
  }
}

/** Fills `prices` downwards from place `from` to `to`. */
export function fillDown(
  prices: Decimal[],
  rules: readonly PriceRule[],
  { from, to }: { from: number; to: number },
) {
  for (let place = from; place > to; place -= 1) {
    prices[place - 1] = priceDown(rules[place - 1] as PriceRule, prices[place] as Decimal);
  }
}

/** The first hand from the shelf down whose rule takes all of its selling price, as a problem; null when none does. */
export function handTakingAll(prices: readonly Decimal[], account: Account): Problem | null {
  for (let place = account.hands.length; place > 0; place -= 1) {
    const buys = prices[place - 1] as Decimal;
    const sells = prices[place] as Decimal;
    if (buys.gte(GRID)) continue;
    const hand = account.hands[place - 1] as Hand;
    return {
      code: 'rung-unsolvable',
      path: `accounts/${account.id}/hands/${hand.id}/rule`,
      got: `${hand.name} keeping ${priceText(sells.minus(buys).toDecimalPlaces(4))} of ${priceText(sells.toDecimalPlaces(4))}`,
      expected: `${hand.name} to keep less than it sells at, so that something is left below it`,
    };
  }
  return null;
}
