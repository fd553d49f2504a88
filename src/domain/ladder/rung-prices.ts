// Every price of the ladder, from our list price to the tag: all rungs but one are given, that one gives way, the shelf
// price moves to the chain's points, and whoever absorbs that has its part restated.
// Worked figure: shelf 4.99 with no tax in it, one hand at 42 %: it buys at 4.99 x 0.58 = 2.8942, our list price.
import { type Decimal, ONE, round4 } from '../money/decimal.ts';
import { gridOf, onGrid } from '../money/grid.ts';
import { kept } from '../money/kept.ts';
import { priceText } from '../money/plain.ts';
import { upToGrid } from '../money/rounding.ts';
import type { Account, Listing, Plan } from '../plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from '../problems.ts';
import { fillDown, fillUp, handTakingAll, type PriceRule, priceRule, ruleBetween } from './hand-chain.ts';
import { MOST } from './landed.ts';
import { type Foot, type FootInputs, footOf, footWhereFirstPays } from './off-invoice.ts';
import { movedToPoint } from './price-points.ts';

export interface RungPrices {
  foot: Foot;
  /** What each hand sells at, on the 0.0001 grid; the last is the shelf price before tax. */
  sells: readonly Decimal[];
  shelf: Decimal;
  shelfUnmoved: Decimal;
  tax: Decimal;
  solvedRung: string;
  miss: Decimal;
}

interface Question {
  plan: Plan;
  account: Account;
  listing: Listing;
  inputs: FootInputs;
}

/** All prices of one listed item, or the problem that names the rung no value of which fits. */
export function rungPrices(question: Question): Outcome<RungPrices> {
  const { plan, account, listing, inputs } = question;
  const solvedRung = rungLeftToSolve(account, listing);
  if (typeof solvedRung !== 'string') return trouble(solvedRung);
  const rules = account.hands.map((hand) => priceRule(hand, inputs.item));
  const taxFactor = plan.shelfTax.shown === 'inPrice' ? ONE.plus(kept(plan.shelfTax.rate)) : ONE;

  const chain = exactChain(question, { rules, taxFactor, solvedRung });
  if (!chain.ok) return chain;
  const { prices, foot: typedFoot } = chain.value;
  const top = prices[rules.length] as Decimal;
  const exactShelf = listing.shelf.by === 'price' ? kept(listing.shelf.amount) : top.times(taxFactor);
  const shelfUnmoved = upToGrid(exactShelf);
  const shelf = movedShelf(account, shelfUnmoved);
  if (!shelf) return trouble(noPoint(account, shelfUnmoved));

  const oursToAbsorb = account.pricePoints?.absorbedBy === 'us' && !shelf.eq(shelfUnmoved);
  if (oursToAbsorb) {
    const all = rules.map((rule, place) =>
      rule.by === 'solved' ? ruleBetween(prices[place] as Decimal, prices[place + 1] as Decimal) : rule,
    );
    prices[rules.length] = shelf.div(taxFactor);
    fillDown(prices, all, { from: rules.length, to: 0 });
  } else {
    prices[rules.length] = shelf.div(taxFactor);
  }
  const stuck = handTakingAll(prices, account);
  if (stuck) return trouble(stuck);

  const foot = typedFoot && !oursToAbsorb ? typedFoot : footWhereFirstPays(prices[0] as Decimal, inputs);
  if (!foot) return trouble(passedOnTakesAll(account));
  const sells = prices.slice(1).map(round4);
  const size = [foot.list, shelf].find((price) => price.gt(MOST));
  if (size) return trouble(tooLarge(question, size));
  return fine({
    foot,
    sells,
    shelf,
    shelfUnmoved,
    tax: shelf.minus(sells[rules.length - 1] as Decimal),
    solvedRung,
    miss: missOf({ solvedRung, foot, prices, shelfUnmoved, exactShelf }),
  });
}

/** The tag after its move to the chain's points; null when it has none there. */
function movedShelf({ pricePoints }: Account, unmoved: Decimal): Decimal | null {
  if (!pricePoints) return unmoved;
  const before = gridOf(unmoved);
  const point = movedToPoint(before, pricePoints);
  if (point === null) return null;
  return point === before ? unmoved : onGrid(point);
}

/** Which of list, shelf and hands is left to be solved; a problem unless exactly one is. */
export function rungLeftToSolve(account: Account, listing: Listing): string | Problem {
  const open: { id: string; name: string }[] = [];
  if (listing.list.by === 'solved') open.push({ id: 'list', name: 'list price' });
  for (const { id, name, rule } of account.hands) if (rule.by === 'solved') open.push({ id, name });
  if (listing.shelf.by === 'solved') open.push({ id: 'shelf', name: 'shelf price' });
  const [only] = open;
  if (only && open.length === 1) return only.id;
  return {
    code: 'solved-count',
    path: `accounts/${account.id}/listings/${listing.itemId}`,
    got: open.length === 0 ? 'none' : open.map(({ name }) => name).join(', '),
    expected: 'exactly one of list price, hands and shelf price left to be solved',
  };
}

/** Prices before any move to a price point, unrounded but for the list price; the place at 0 is what the first hand pays. */
function exactChain(
  { account, listing, inputs }: Question,
  { rules, taxFactor, solvedRung }: { rules: readonly PriceRule[]; taxFactor: Decimal; solvedRung: string },
): Outcome<{ prices: Decimal[]; foot: Foot | null }> {
  const prices: Decimal[] = new Array(rules.length + 1);
  const solvedPlace = account.hands.findIndex(({ id }) => id === solvedRung);
  const list = typedList(account, listing, inputs);
  if (!list.ok) return list;
  const foot = list.value && footOf(list.value, inputs);
  if (foot) {
    prices[0] = foot.firstBuys;
    fillUp(prices, rules, { from: 0, to: solvedPlace < 0 ? rules.length : solvedPlace });
  }
  if (listing.shelf.by === 'price') {
    prices[rules.length] = kept(listing.shelf.amount).div(taxFactor);
    fillDown(prices, rules, { from: rules.length, to: solvedPlace < 0 ? 0 : solvedPlace + 1 });
  }
  const stuck = handTakingAll(prices, account);
  return stuck ? trouble(stuck) : fine({ prices, foot });
}

/** The list price as typed, or as a margin on landed cost, rounded to 4 decimals; null when it is the one solved. */
function typedList(
  account: Account,
  { itemId, list }: Listing,
  { landed }: FootInputs,
): Outcome<Decimal | null> {
  if (list.by === 'solved') return fine(null);
  if (list.by === 'price') return fine(kept(list.amount));
  if (landed.gt(0)) return fine(round4(landed.div(ONE.minus(kept(list.rate)))));
  return trouble({
    code: 'rung-unsolvable',
    path: `accounts/${account.id}/listings/${itemId}/list`,
    got: 'a margin on a landed cost of 0.00',
    expected: 'a landed cost above 0 to put the margin on, or a list price typed as an amount',
  });
}

/** How far the solved rung stands above its exact value, for being on the 0.0001 grid. */
function missOf(args: {
  solvedRung: string;
  foot: Foot;
  prices: readonly Decimal[];
  shelfUnmoved: Decimal;
  exactShelf: Decimal;
}): Decimal {
  if (args.solvedRung === 'shelf') return args.shelfUnmoved.minus(args.exactShelf);
  return args.foot.firstBuys.minus(args.prices[0] as Decimal);
}

function noPoint({ id, pricePoints }: Account, price: Decimal): Problem {
  const side = pricePoints?.move === 'up' ? 'at or above it' : 'at or below it';
  return {
    code: 'rung-unsolvable',
    path: `accounts/${id}/pricePoints`,
    got: `a shelf price of ${priceText(price)}`,
    expected: `a price point ${side}, or another way of moving to one`,
  };
}

function passedOnTakesAll({ id }: Account): Problem {
  return {
    code: 'takes-too-much',
    path: `accounts/${id}/allowances`,
    got: 'off-invoice allowances passed on that take all of the list price',
    expected: 'allowances that leave the first hand something to pay',
  };
}

function tooLarge({ account, listing }: Question, price: Decimal): Problem {
  return {
    code: 'number-too-large',
    path: `accounts/${account.id}/listings/${listing.itemId}`,
    got: `a price of ${priceText(price.toDecimalPlaces(2))}`,
    expected: 'prices of at most 1,000,000,000 a unit',
  };
}
