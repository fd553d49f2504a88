// Landed cost: what one good unit costs at our door, from the cost lines of an item. Lines come in order and a share
// names earlier ones only; loss is counted once, in the price, since purchase quantities are good units.
// Goods typed in a purchase currency are turned into the plan's at its rate.
// Worked figure: goods 1.20, freight 1,800.00 a shipment of 6,000 units (0.30), duty 5 % of goods (0.06), loss 2.5 %:
// (1.20 + 0.30 + 0.06) / 0.975 = 1.6000, of which goods 1.2308.
import { type Decimal, dec, ONE, round4, ZERO } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import { percentText, priceText } from '../money/plain.ts';
import { loadOf } from '../pack/load.ts';
import { LOADS, type LoadName } from '../pack/loads.ts';
import type { Item } from '../plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from '../problems.ts';
import type { Landed, LandedLine } from './types.ts';

type CostLine = Item['costLines'][number];

/** Of every item of a plan that was computed, in order; throws on one that has none, which such a plan can't hold. */
export function landedParts(items: readonly Item[]): Landed[] {
  return items.map((item) => {
    const outcome = landedOf(item);
    if (!outcome.ok) throw new Error(`${item.id} has no landed cost, yet the plan was computed`);
    return outcome.value;
  });
}

/** An item is shared by every account that lists it, and never changes in place: its landed cost is worked out once. */
const known = new WeakMap<Item, Outcome<Landed>>();

/** Landed cost of one unit. A line that takes a share of itself, of a later line or of nothing known is a problem. */
export function landedOf(item: Item): Outcome<Landed> {
  const before = known.get(item);
  if (before) return before;
  const found = landedFrom(item);
  known.set(item, found);
  return found;
}

function landedFrom(item: Item): Outcome<Landed> {
  const lines: LandedLine[] = [];
  let sum = ZERO;
  let goodsSum = ZERO;
  for (const line of item.costLines) {
    const found = lineOf(line, lines, item);
    if ('problem' in found) return trouble(found.problem);
    lines.push({ id: line.id, label: line.label, family: line.family, ...found });
    sum = sum.plus(found.amount);
    if (line.family === 'goods') goodsSum = goodsSum.plus(found.amount);
  }
  const lossRate = kept(item.lossRate);
  const leftOver = ONE.minus(lossRate);
  const unit = round4(sum.div(leftOver));
  const goods = round4(goodsSum.div(leftOver));
  if (unit.gt(MOST)) return trouble(tooLarge(item, unit));
  return fine({ lines, lossRate, unit, goods, freightAndDuty: unit.minus(goods) });
}

/** No price of one unit may pass a thousand million: the weekly pass multiplies it by units exactly. */
export const MOST = dec(1_000_000_000);

function lineOf(
  line: CostLine,
  earlier: readonly LandedLine[],
  item: Item,
): { amount: Decimal; reason: string } | { problem: Problem } {
  const { rule } = line;
  if (rule.by === 'share') return shareOf({ line, rate: rule.rate, of: rule.of, earlier, item });
  const found = byAmount(line, rule, item);
  const abroad = boughtIn(line, item);
  if ('problem' in found || !abroad) return found;
  const { code, rate } = abroad;
  return { amount: found.amount.times(kept(rate)), reason: `${code} ${found.reason}, at ${rate}` };
}

/** The currency a cost line is typed in, where it isn't the plan's: goods of an item bought abroad, shares aside. */
export function boughtIn({ family, rule }: CostLine, { supply }: Item): Item['supply']['purchaseCurrency'] {
  return family === 'goods' && rule.by !== 'share' ? supply.purchaseCurrency : null;
}

function byAmount(
  line: CostLine,
  rule: Exclude<CostLine['rule'], { by: 'share' }>,
  item: Item,
): { amount: Decimal; reason: string } | { problem: Problem } {
  const amount = kept(rule.amount);
  const price = priceText(amount);
  if (rule.by === 'unit') return { amount, reason: `${price} a unit` };
  if (rule.by === 'load') return byLoad({ line, amount, load: rule.load, item });
  const units = {
    case: item.caseUnits,
    pallet: item.caseUnits * item.palletCases,
    shipment: item.shipmentUnits,
  }[rule.by];
  return { amount: amount.div(units), reason: `${price} a ${rule.by} of ${units} units` };
}

function byLoad({
  line,
  amount,
  load,
  item,
}: {
  line: CostLine;
  amount: Decimal;
  load: LoadName;
  item: Item;
}): { amount: Decimal; reason: string } | { problem: Problem } {
  const { words } = LOADS[load];
  const units = item.pack === null ? 0 : loadOf(item, item.pack, load).units;
  if (units > 0)
    return { amount: amount.div(units), reason: `${priceText(amount)} a ${words} of ${units} units` };
  const known = item.pack !== null;
  return {
    problem: {
      code: 'pack-needed',
      path: `items/${item.id}/costLines/${line.id}/rule`,
      got: known
        ? `${line.label} by the ${words}, which takes not one loaded pallet`
        : `${line.label} by the ${words}`,
      expected: known
        ? 'a pallet of this item that passes its door and is not too heavy for it'
        : 'the sizes and weight of its case first: they say how many units a load carries',
    },
  };
}

function shareOf(args: {
  line: CostLine;
  rate: string;
  of: readonly string[];
  earlier: readonly LandedLine[];
  item: Item;
}): { amount: Decimal; reason: string } | { problem: Problem } {
  let base = ZERO;
  const labels: string[] = [];
  for (const id of args.of) {
    const named = args.earlier.find((each) => each.id === id);
    if (!named) return { problem: baseUnknown(args, id) };
    base = base.plus(named.amount);
    labels.push(named.label);
  }
  const of = labels.join(' + ') || 'nothing';
  return {
    amount: base.times(kept(args.rate)),
    reason: `${percentText(args.rate)} of ${of} ${priceText(base.toDecimalPlaces(6))}`,
  };
}

function baseUnknown({ line, item }: { line: CostLine; item: Item }, id: string): Problem {
  const own = item.costLines.find((each) => each.id === id);
  return {
    code: 'cost-base',
    path: `items/${item.id}/costLines/${line.id}/rule/of`,
    got: own ? own.label : id,
    expected: `only cost lines that stand before ${line.label}`,
  };
}

function tooLarge(item: Item, unit: Decimal): Problem {
  return {
    code: 'number-too-large',
    path: `items/${item.id}/costLines`,
    got: unit.gt('1e15') ? 'more than 1,000,000,000,000,000' : priceText(unit.toDecimalPlaces(2)),
    expected: 'a landed cost of at most 1,000,000,000 a unit',
  };
}
