// What can be typed about a rung, as plain data: its main field first, the one that steps, then the other ways of saying
// the same. Worked example: a hand that buys at 2.89 and sells at 4.99 has a margin of 42 % and a markup of 72.4138 %;
// typing either moves it.
import type { RungTarget } from '../../domain/ladder/rung-target.ts';
import type { HandResult } from '../../domain/ladder/types.ts';
import { ZERO } from '../../domain/money/decimal.ts';
import type { Hand } from '../../domain/plan/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import type { ShownLadder } from './place.ts';

export interface RungField {
  label: string;
  kind: 'amount' | 'percent';
  /** As the plan keeps such a value. */
  value: string;
  target: (text: string) => RungTarget;
  hint?: string | undefined;
}

/** The fields of one rung, the main one first; none when it is not in the plan any more. */
export function rungFields(shown: ShownLadder, rung: string, say: ScreenSay): RungField[] {
  if (rung === 'landed') return [landedField(shown)];
  if (rung === 'list') return listFields(shown, say);
  if (rung === 'shelf') return [shelfField(shown, say)];
  const hand = shown.ladder.hands.find(({ id }) => id === rung);
  const rule = shown.account.hands.find(({ id }) => id === rung)?.rule;
  return hand && rule ? handFields(hand, rule, say) : [];
}

const price = (amount: string): RungTarget => ({ by: 'price', amount });
const margin = (rate: string): RungTarget => ({ by: 'margin', rate });
const markup = (rate: string): RungTarget => ({ by: 'markup', rate });

function landedField({ ladder }: ShownLadder): RungField {
  return {
    label: 'Landed cost',
    kind: 'amount',
    value: ladder.landed.unit.toFixed(),
    target: price,
    hint: 'Moves the goods line; the other cost lines stay.',
  };
}

function listFields({ ladder, listing: { list } }: ShownLadder, say: ScreenSay): RungField[] {
  const typed = list.by === 'price' ? list.amount : null;
  const moved = typed !== null && !ladder.list.eq(typed);
  const asPrice: RungField = {
    label: 'List price',
    kind: 'amount',
    value: typed ?? ladder.list.toFixed(),
    target: price,
    hint: moved
      ? `It comes to ${say.priceExact(ladder.list)}: we take the move to the price point.`
      : undefined,
  };
  const asMargin: RungField = {
    label: 'Our margin on list',
    kind: 'percent',
    value: list.by === 'margin' ? list.rate : ladder.ladderMarginRate.toDecimalPlaces(4).toFixed(),
    target: margin,
    hint: 'The ladder margin: list price less landed cost, before what we give back.',
  };
  return list.by === 'margin' ? [asMargin, asPrice] : [asPrice, asMargin];
}

function shelfField({ ladder, listing, account }: ShownLadder, say: ScreenSay): RungField {
  const value = listing.shelf.by === 'price' ? listing.shelf.amount : ladder.shelf.toFixed();
  const steps =
    account.pricePoints === null ? undefined : 'Steps go from one of the chain’s price points to the next.';
  const moved = ladder.shelf.eq(value)
    ? steps
    : `On the tag: ${say.price(ladder.shelf)}, the chain’s price point.`;
  return { label: 'Shelf price', kind: 'amount', value, target: price, hint: moved };
}

function handFields(hand: HandResult, rule: Hand['rule'], say: ScreenSay): RungField[] {
  const asMargin: RungField = {
    label: 'Margin',
    kind: 'percent',
    value: rule.by === 'margin' ? rule.rate : hand.marginRate.toDecimalPlaces(4).toFixed(),
    target: margin,
    hint: `Margin: of the ${say.price(hand.sells)} it sells at.`,
  };
  const asMarkup: RungField = {
    label: 'Markup',
    kind: 'percent',
    value: rule.by === 'markup' ? rule.rate : (hand.markupRate ?? ZERO).toDecimalPlaces(4).toFixed(),
    target: markup,
    hint: `Markup: on the ${say.price(hand.buys)} it buys at.`,
  };
  // a hand that buys at nothing has no markup
  const ways = hand.markupRate === null ? [asMargin] : [asMargin, asMarkup];
  if (rule.by === 'markup') return [asMarkup, asMargin];
  if (rule.by !== 'fixed') return ways;
  const { per, amount } = rule;
  const fixed: RungField = {
    label: `Keeps a ${per}`,
    kind: 'amount',
    value: amount,
    target: (text) => ({ by: 'fixed', amount: text, per }),
  };
  return [fixed, ...ways];
}
