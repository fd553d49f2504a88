// What one unit costs at our door, and what one cost line puts in: the foot of every ladder.
// Worked figure: goods 1.20, freight 0.30, loss 2.5 %: 1.20 + 0.30 + 0.0385 for what is lost = 1.5385.
import { boughtIn, landedOf } from '../ladder/landed.ts';
import type { LandedLine } from '../ladder/types.ts';
import { type Decimal, dec, round4 } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import { percentText, priceText } from '../money/plain.ts';
import { loadOf } from '../pack/load.ts';
import { LOADS, type LoadName } from '../pack/loads.ts';
import type { Item } from '../plan/index.ts';
import type { Place } from './place.ts';
import type { ExplanationLine } from './types.ts';
import {
  comingTo,
  type Draft,
  exactNumber,
  exactPercent,
  exactPrice,
  line,
  part,
  type Scene,
  sumFormula,
  sumOf,
  typed,
} from './write.ts';

type CostLine = Item['costLines'][number];

export function landedFigure(scene: Scene, { item, ladder }: Place): Draft {
  const { landed } = ladder;
  const lines = landed.lines.map((each) =>
    part(scene, round4(each.amount), {
      label: each.label,
      reason: each.reason,
      owner: 'atRisk',
      explains: { of: 'costLine', itemId: item.id, lineId: each.id },
    }),
  );
  const made = sumOf(lines);
  const lost = lossOf(landed.lines, landed.lossRate);
  const all = landed.lossRate.isZero() ? lines : [...lines, lossLine(scene, item, lost)];
  const whole = comingTo(scene, landed.unit, all, 'Lines are shown with 4 decimals, the sum is rounded once');
  const good = `${exactPrice(scene, made)} ÷ (1 − ${exactPercent(scene, landed.lossRate)})`;
  return {
    title: `Landed cost, ${item.name}`,
    value: scene.say.price(landed.unit),
    exact: landed.unit.toFixed(),
    meaning: `What one good unit of ${item.name} costs by the time it stands at our door.`,
    formula: landed.lossRate.isZero()
      ? sumFormula(scene, whole, landed.unit)
      : `${good} = ${exactPrice(scene, landed.unit)}`,
    lines: whole,
    caution: otherwise(scene, item),
  };
}

/** Where an order can cost something else than the ladder stands on, said in one sentence; null where none can. */
function otherwise({ say }: Scene, { supply }: Item): string | null {
  const { priceBreaks, purchaseCurrency: bought, sources, expedite } = supply;
  const ways = [
    ...(priceBreaks.length > 0 ? ['large orders have price breaks'] : []),
    ...(bought && Number(bought.shockRate) !== 0
      ? [`goods ordered from ${say.week(bought.shockFromWeek)} on cost ${changeText(bought.shockRate)}`]
      : []),
    ...(sources.length > 0 ? ['further suppliers have prices of their own'] : []),
    ...(expedite ? ['rush orders cost extra'] : []),
  ];
  if (ways.length === 0) return null;
  return `The ladder stands on the first supplier’s plain price; week by week ${ways.join(', ')}.`;
}

function changeText(rate: string): string {
  return rate.startsWith('-') ? `${percentText(rate.slice(1))} less` : `${percentText(rate)} more`;
}

function lossOf(lines: readonly LandedLine[], lossRate: Decimal): Decimal {
  const sum = lines.reduce((total, { amount }) => total.plus(amount), dec(0));
  return round4(sum.div(dec(1).minus(lossRate)).minus(sum));
}

function lossLine(scene: Scene, item: Item, lost: Decimal): ExplanationLine {
  const rate = exactPercent(scene, kept(item.lossRate));
  const base = part(scene, lost, {
    label: 'Lost on the way',
    reason: `${rate} of units are lost, so each good one carries its share`,
    owner: 'atRisk',
  });
  return typed(scene, `items/${item.id}/lossRate`, base);
}

/** One cost line, per unit. Null when the item has no such line. */
export function costLineFigure(scene: Scene, itemId: string, lineId: string): Draft | null {
  const item = scene.plan.items.find(({ id }) => id === itemId);
  const typedLine = item?.costLines.find(({ id }) => id === lineId);
  const landed = item ? landedOf(item) : null;
  if (!item || !typedLine || !landed?.ok) return null;
  const found = landed.value.lines.find(({ id }) => id === lineId);
  if (!found) return null;
  const amount = round4(found.amount);
  return {
    title: `${found.label}, ${item.name}`,
    value: exactPrice(scene, amount),
    exact: amount.toFixed(),
    meaning: 'One line of what it takes to have a unit at our door, per unit.',
    formula: `${found.reason} = ${exactPrice(scene, amount)}`,
    lines: ruleLines({ scene, item, costLine: typedLine, landedLines: landed.value.lines }),
    caution: null,
  };
}

function ruleLines(from: {
  scene: Scene;
  item: Item;
  costLine: CostLine;
  landedLines: readonly LandedLine[];
}): ExplanationLine[] {
  const { scene, item, costLine } = from;
  const { rule } = costLine;
  const path = `items/${item.id}/costLines/${costLine.id}/rule`;
  if (rule.by === 'share') {
    const rate = typed(scene, `${path}/rate`, {
      label: 'Share',
      value: exactPercent(scene, kept(rule.rate)),
      owner: 'atRisk',
    });
    const bases = rule.of.flatMap((id) => from.landedLines.filter((each) => each.id === id));
    return [rate, ...bases.map((base) => baseLine(scene, item, base))];
  }
  const abroad = boughtIn(costLine, item);
  const amount = typed(scene, `${path}/amount`, {
    label: `A ${rule.by === 'load' ? LOADS[rule.load].words : rule.by}`,
    value: abroad ? `${abroad.code} ${priceText(kept(rule.amount))}` : exactPrice(scene, kept(rule.amount)),
    owner: 'atRisk',
  });
  return [
    amount,
    ...(abroad ? [rateLine(scene, item, abroad)] : []),
    ...(rule.by === 'load' ? loadLines(scene, item, rule.load) : unitsLines(scene, item, rule.by)),
  ];
}

/** What a full trailer or container carries, and what that follows from. */
function loadLines(scene: Scene, item: Item, load: LoadName): ExplanationLine[] {
  if (item.pack === null) return [];
  const { pallets, units, limits } = loadOf(item, item.pack, load);
  const counts = [pallets, item.palletCases, item.caseUnits].map((count) => exactNumber(scene, dec(count)));
  const carried = line({
    label: 'Units it carries',
    value: exactNumber(scene, dec(units)),
    reason: `${counts[0]} pallets of ${counts[1]} cases of ${counts[2]} units; its ${limits} limits`,
  });
  const grams = typed(scene, `items/${item.id}/pack/caseGrams`, {
    label: 'Grams a case',
    value: exactNumber(scene, dec(item.pack.caseGrams)),
  });
  return [carried, ...unitsLines(scene, item, 'pallet'), grams];
}

/** What one of the purchase currency costs, and when it did. */
function rateLine(
  scene: Scene,
  item: Item,
  { code, rate, rateDate }: NonNullable<Item['supply']['purchaseCurrency']>,
): ExplanationLine {
  return typed(scene, `items/${item.id}/supply/purchaseCurrency/rate`, {
    label: `One ${code}`,
    value: exactNumber(scene, kept(rate)),
    reason: `On ${rateDate}`,
    owner: 'atRisk',
  });
}

function baseLine(scene: Scene, item: Item, base: LandedLine): ExplanationLine {
  return line({
    label: base.label,
    value: exactPrice(scene, round4(base.amount)),
    reason: 'Part of what the share is taken of',
    owner: 'atRisk',
    explains: { of: 'costLine', itemId: item.id, lineId: base.id },
  });
}

function unitsLines(
  scene: Scene,
  item: Item,
  by: 'unit' | 'case' | 'pallet' | 'shipment',
): ExplanationLine[] {
  const count = (field: 'caseUnits' | 'palletCases' | 'shipmentUnits', label: string) =>
    typed(scene, `items/${item.id}/${field}`, { label, value: exactNumber(scene, dec(item[field])) });
  if (by === 'unit') return [];
  if (by === 'shipment') return [count('shipmentUnits', 'Units in a shipment')];
  const cases = by === 'pallet' ? [count('palletCases', 'Cases on a pallet')] : [];
  return [...cases, count('caseUnits', 'Units in a case')];
}
