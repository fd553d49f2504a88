// Figures of the retailer's side as lines of another figure, and a price of its with the parts that add up to it. Worked figure: penny profit 1.40, to be opened in turn.
import type { Decimal } from '../money/decimal.ts';
import type { Place } from './place.ts';
import type { ExplanationLine, FigureKey, RetailerFigure } from './types.ts';
import { type Draft, exactNumber, exactPrice, line, type Scene, sumFormula } from './write.ts';

const LABELS: Record<RetailerFigure, string> = {
  buying: 'What the retailer buys at',
  pennyProfit: 'Penny profit',
  pennyProfitAllIn: 'Penny profit, all in',
  frontMarginRate: 'Front margin',
  allInMarginRate: 'Margin, all in',
  perStoreWeek: 'Per store and week',
  perFacingWeek: 'Per facing and week',
  averageStockPerStore: 'Units in a store on average',
  turnsPerYear: 'Turns a year',
  gmroi: 'GMROI',
  weeksOfSupply: 'Weeks of supply',
  againstReplacedPerStoreWeek: 'Against the item it replaces',
};

const PRICES: readonly RetailerFigure[] = [
  'buying',
  'pennyProfit',
  'pennyProfitAllIn',
  'perStoreWeek',
  'perFacingWeek',
  'againstReplacedPerStoreWeek',
];

export function retailerKey({ account, item }: Place, figure: RetailerFigure): FigureKey {
  return { of: 'retailer', accountId: account.id, itemId: item.id, figure };
}

/** An ingredient, no part of a sum. */
export function retailerLine(scene: Scene, place: Place, figure: RetailerFigure): ExplanationLine {
  const amount = place.dealItem.retailer[figure];
  const show = PRICES.includes(figure) ? exactPrice : exactNumber;
  return line({
    label: LABELS[figure],
    value: amount === null ? 'not known' : show(scene, amount),
    owner: 'theirs',
    explains: retailerKey(place, figure),
  });
}

/** A price of the retailer's, whose parts add up to it. */
export function priceFigure(from: {
  scene: Scene;
  place: Place;
  name: string;
  amount: Decimal;
  meaning: string;
  parts: ExplanationLine[];
  beside: ExplanationLine[];
}): Draft {
  const { scene, amount } = from;
  return {
    title: `${from.name}, ${from.place.words}`,
    value: scene.say.price(amount),
    exact: amount.toFixed(),
    meaning: from.meaning,
    formula: sumFormula(scene, from.parts, amount),
    lines: [...from.parts, ...from.beside],
    caution: null,
  };
}
