// Landed cost as a rung that moves or gives way: the first goods line stated per unit is worked out anew, every other
// line stays. Landed cost is a straight line in it, since shares take from earlier lines.
// Worked figure: goods x, freight 0.30, duty 5 % of goods, no loss: landed 1.56 needs x = (1.56 - 0.30) / 1.05 = 1.20.
import { type Decimal, dec, ONE, ZERO } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import { priceText } from '../money/plain.ts';
import { downToGrid } from '../money/rounding.ts';
import type { Item } from '../plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from '../problems.ts';
import { landedOf } from './landed.ts';

/**
 * The item with its goods line such that a unit lands at `target`, or below it by less than one step of that line's 0.0001
 * grid. Problems: no goods line per unit; the other lines alone come to more.
 */
export function itemLandingAt(item: Item, target: Decimal): Outcome<Item> {
  const line = item.costLines.find(({ family, rule }) => family === 'goods' && rule.by === 'unit');
  if (!line) return trouble(noGoodsLine(item));
  const rest = sumWith(item, line.id, '0');
  const withOne = sumWith(item, line.id, '1');
  if (!rest.ok) return rest;
  if (!withOne.ok) return withOne;
  const leftOver = ONE.minus(kept(item.lossRate));
  const amount = target.times(leftOver).minus(rest.value).div(withOne.value.minus(rest.value));
  if (amount.isNegative() || amount.gt(GOODS_MOST)) {
    return trouble(
      outOfReach(item, { line: line.id, label: line.label, target, rest: rest.value.div(leftOver) }),
    );
  }
  return fine(withAmount(item, line.id, downToGrid(amount).toFixed()));
}

/** What a cost line of a plan may say at most. */
const GOODS_MOST = dec(1_000_000);

/** All lines before loss, unrounded, with the given amount on one of them. */
function sumWith(item: Item, lineId: string, amount: string): Outcome<Decimal> {
  const landed = landedOf(withAmount(item, lineId, amount));
  if (!landed.ok) return landed;
  return fine(landed.value.lines.reduce((sum, line) => sum.plus(line.amount), ZERO));
}

function withAmount(item: Item, lineId: string, amount: string): Item {
  const costLines = item.costLines.map((line) =>
    line.id === lineId ? { ...line, rule: { by: 'unit' as const, amount } } : line,
  );
  return { ...item, costLines };
}

function noGoodsLine({ id }: Item): Problem {
  return {
    code: 'rung-unsolvable',
    path: `items/${id}/costLines`,
    got: 'no goods line stated per unit',
    expected: 'one, so that the landed cost can be moved',
  };
}

function outOfReach(
  { id }: Item,
  { line, label, target, rest }: { line: string; label: string; target: Decimal; rest: Decimal },
): Problem {
  const others = priceText(rest.toDecimalPlaces(4));
  return {
    code: 'rung-unsolvable',
    path: `items/${id}/costLines/${line}/rule/amount`,
    got: `a landed cost of ${priceText(target.toDecimalPlaces(4))}`,
    expected: `a landed cost from ${others}, what the other lines come to, with ${label} at most 1,000,000.00`,
  };
}
