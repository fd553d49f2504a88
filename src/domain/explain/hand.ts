// What one hand between us and the shelf keeps. A typed rule works on the price that is known: downwards from the shelf,
// upwards from our list price; the hand that gives way stands between two known prices.
// Worked figure: the chain sells at 4.99 and keeps 42 % of it, 2.0958: it buys at 2.8942.
import type { HandResult } from '../ladder/types.ts';
import { type Decimal, dec } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import type { Hand } from '../plan/index.ts';
import { isPassedOn, listingKey, type Place, stepKey } from './place.ts';
import type { ExplanationLine, FigureKey } from './types.ts';
import { type Draft, exactNumber, exactPercent, exactPrice, line, type Scene, typed } from './write.ts';

/** The margin of one hand of a ladder; null when it has no such hand. */
export function handFigure(scene: Scene, place: Place, handId: string): Draft | null {
  const at = place.ladder.hands.findIndex(({ id }) => id === handId);
  const hand = place.ladder.hands[at];
  const said = place.account.hands[at];
  if (!hand || !said) return null;
  const price = (amount: Decimal) => exactPrice(scene, amount);
  const { buys, sells, keeps } = hand;
  return {
    title: `Margin of ${hand.name}, ${place.words}`,
    value: scene.say.percent(hand.marginRate),
    exact: hand.marginRate.toFixed(),
    meaning: `What ${hand.name} keeps of its own selling price, before tax.`,
    formula: `(${price(sells)} − ${price(buys)}) ÷ ${price(sells)} = ${price(keeps)} ÷ ${price(sells)} = ${exactPercent(scene, hand.marginRate)}`,
    lines: [
      ...ruleLines(scene, place, said),
      ...knownPrices({ scene, place, at, hand, said }),
      ...requiredLines(scene, place, hand),
    ],
    caution: cautionOf(scene, place, hand, said),
  };
}

function ruleLines(scene: Scene, place: Place, { id, rule }: Hand): ExplanationLine[] {
  const path = `accounts/${place.account.id}/hands/${id}/rule`;
  const owner = place.account.hands.at(-1)?.id === id ? 'theirs' : 'between';
  if (rule.by === 'solved') {
    return [typed(scene, path, { label: 'Takes what the others leave', value: '', owner })];
  }
  if (rule.by === 'fixed') {
    const amount = typed(scene, `${path}/amount`, {
      label: `Keeps, a ${rule.per}`,
      value: exactPrice(scene, kept(rule.amount)),
      owner,
    });
    const units = typed(scene, `items/${place.item.id}/caseUnits`, {
      label: 'Units in a case',
      value: exactNumber(scene, dec(place.item.caseUnits)),
    });
    return rule.per === 'case' ? [amount, units] : [amount];
  }
  const label = rule.by === 'margin' ? 'Margin on its own selling price' : 'Markup on its own buying price';
  return [typed(scene, `${path}/rate`, { label, value: exactPercent(scene, kept(rule.rate)), owner })];
}

interface HandAt {
  scene: Scene;
  place: Place;
  at: number;
  hand: HandResult;
  said: Hand;
}

/** The price its rule starts from, or both prices of a hand that gives way. */
function knownPrices(from: HandAt): ExplanationLine[] {
  const { place, at, said } = from;
  const solvedAt = solvedPlace(place);
  if (said.rule.by === 'solved') return [...sellsLines(from), ...buysLines(from)];
  if (at >= solvedAt) return sellsLines(from);
  return isMovedLast(from) ? [...buysLines(from), pointLine(from)] : buysLines(from);
}

/** Above it prices come down from the shelf, below it they go up from our list price. */
function solvedPlace({ ladder }: Place): number {
  if (ladder.solvedRung === 'list') return -1;
  if (ladder.solvedRung === 'shelf') return ladder.hands.length;
  return ladder.hands.findIndex(({ id }) => id === ladder.solvedRung);
}

/** The last hand takes what a price point moves, when prices come from below. */
function isMovedLast({ place, at }: HandAt): boolean {
  const { ladder } = place;
  return at === ladder.hands.length - 1 && !ladder.shelf.eq(ladder.shelfUnmoved);
}

function pointLine({ scene, place, hand }: HandAt): ExplanationLine {
  return typed(scene, `accounts/${place.account.id}/pricePoints`, {
    label: 'Sells at, on a price point',
    value: exactPrice(scene, hand.sells),
    reason: `The tag moved from ${exactPrice(scene, place.ladder.shelfUnmoved)} to ${exactPrice(scene, place.ladder.shelf)}`,
  });
}

function sellsLines({ scene, place, at, hand }: HandAt): ExplanationLine[] {
  const above = place.ladder.hands[at + 1];
  const value = exactPrice(scene, hand.sells);
  if (!above) return [line({ label: 'Sells at', value, explains: listingKey(place, 'shelfBeforeTax') })];
  const reason = `What ${above.name} pays`;
  return [line({ label: 'Sells at', value, reason, explains: handKey(place, above.id) })];
}

function buysLines({ scene, place, at, hand }: HandAt): ExplanationLine[] {
  const below = place.ladder.hands[at - 1];
  const value = exactPrice(scene, hand.buys);
  if (below) {
    const reason = `What ${below.name} sells at`;
    return [line({ label: 'Buys at', value, reason, explains: handKey(place, below.id) })];
  }
  const passed = place.ladder.steps.filter(
    ({ stage, id }) => stage === 'offInvoice' && isPassedOn(place, id),
  );
  const list = exactPrice(scene, place.ladder.list);
  const reason = passed.length === 0 ? 'Our list price' : `Our list price ${list} less what is passed on`;
  return [
    line({ label: 'Buys at', value, reason, explains: listingKey(place, 'list') }),
    ...passed.map((step) =>
      line({
        label: `${step.label}, passed on`,
        value: exactPrice(scene, step.amount),
        reason: step.reason,
        owner: step.owner,
        explains: stepKey(place, step.id),
      }),
    ),
  ];
}

function handKey({ account, item }: Place, handId: string): FigureKey {
  return { of: 'hand', accountId: account.id, itemId: item.id, handId };
}

function requiredLines(scene: Scene, place: Place, hand: HandResult): ExplanationLine[] {
  if (hand.requiredMarginRate === null) return [];
  return [
    typed(scene, `accounts/${place.account.id}/hands/${hand.id}/requiredMarginRate`, {
      label: 'Says it needs',
      value: exactPercent(scene, hand.requiredMarginRate),
      reason: hand.short ? 'It gets less' : 'It gets that',
      owner: hand.owner,
    }),
  ];
}

/** A margin and a markup are easily taken for each other, and a price point can move a typed margin. */
function cautionOf(scene: Scene, { ladder }: Place, hand: HandResult, { rule }: Hand): string | null {
  const moved = !ladder.shelf.eq(ladder.shelfUnmoved);
  if (
    moved &&
    rule.by === 'margin' &&
    !hand.marginRate.toDecimalPlaces(3).eq(dec(rule.rate).toDecimalPlaces(3))
  ) {
    return `Typed ${exactPercent(scene, dec(rule.rate))}; the move to a price point makes it ${exactPercent(scene, hand.marginRate)}.`;
  }
  if (hand.markupRate === null) return null;
  return `The same money is a markup of ${exactPercent(scene, hand.markupRate)} on its buying price.`;
}
