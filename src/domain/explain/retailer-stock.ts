// How hard the retailer's stock works: units in a store, turns, weeks of supply, and what each unit of money in stock
// earns in a year (GMROI). Worked figure: 312 units a year over 12 in the store turn 26 times; at 1.40 on 2.60 that is
// a GMROI of 0.5385 x 26 = 14.
import type { Decimal } from '../money/decimal.ts';
import { dealSums, sumWeeks, YEAR_WEEKS } from './deal-sums.ts';
import { fillLines } from './deal-units.ts';
import { countLine, doorLines, rateOfSaleLine } from './inputs.ts';
import type { Place } from './place.ts';
import { retailerLine } from './retailer-lines.ts';
import type { ExplanationLine } from './types.ts';
import { type Draft, exactNumber, exactPrice, line, type Scene } from './write.ts';

type StockFigure = 'averageStockPerStore' | 'turnsPerYear' | 'gmroi' | 'weeksOfSupply';

const WORDS: Record<StockFigure, { name: string; meaning: string }> = {
  averageStockPerStore: {
    name: 'Units in a store on average',
    meaning:
      'Units of this item in an open store, on average over the first 52 week-ends, were supply unlimited.',
  },
  turnsPerYear: {
    name: 'Turns a year',
    meaning: 'How many times a year a store sells the stock it holds on average.',
  },
  gmroi: {
    name: 'GMROI',
    meaning:
      'Gross margin return on inventory: what a year of sales earns on each unit of money the stock costs the retailer.',
  },
  weeksOfSupply: {
    name: 'Weeks of supply',
    meaning: 'How many weeks of sales a store holds on average.',
  },
};

export function stockFigure(scene: Scene, place: Place, figure: StockFigure): Draft {
  const value = place.dealItem.retailer[figure];
  const { name, meaning } = WORDS[figure];
  return {
    title: `${name}, ${place.words}`,
    value:
      value === null
        ? 'not known: nothing stands on a shelf, or nothing is paid for it'
        : scene.say.number(value),
    exact: value === null ? null : value.toFixed(),
    meaning,
    formula: `${formulaOf(scene, place, figure)}${value === null ? '' : ` = ${exactNumber(scene, value)}`}`,
    lines: linesOf(scene, place, figure),
    caution: figure === 'gmroi' ? 'On the front margin: allowances the retailer keeps are not in it.' : null,
  };
}

function formulaOf(scene: Scene, place: Place, figure: StockFigure): string {
  const side = place.dealItem.retailer;
  const number = (value: Decimal | null) => (value === null ? '?' : exactNumber(scene, value));
  const { stock, doorWeeks } = scene.results.free.shelf[place.index] ?? { stock: 0, doorWeeks: 0 };
  const yearly = place.dealItem.firstYearUnits;
  const openWeeks = sumWeeks(dealSums(scene, place.account).stores.open, YEAR_WEEKS, 4);
  const weekly = `${scene.say.number(yearly)} units ÷ ${number(openWeeks)} store-weeks`;
  switch (figure) {
    case 'averageStockPerStore':
      return `${scene.say.count(stock)} units at week-ends ÷ ${scene.say.count(doorWeeks)} open store-weeks`;
    case 'turnsPerYear':
      return `${weekly} × ${YEAR_WEEKS} ÷ ${number(side.averageStockPerStore)}`;
    case 'weeksOfSupply':
      return `${number(side.averageStockPerStore)} ÷ (${weekly})`;
    case 'gmroi':
      return `${exactPrice(scene, side.pennyProfit)} ÷ ${exactPrice(scene, side.buying)} × ${number(side.turnsPerYear)} turns`;
  }
}

function linesOf(scene: Scene, place: Place, figure: StockFigure): ExplanationLine[] {
  if (figure === 'gmroi') {
    return (['pennyProfit', 'buying', 'turnsPerYear'] as const).map((each) =>
      retailerLine(scene, place, each),
    );
  }
  if (figure !== 'averageStockPerStore') {
    return [
      retailerLine(scene, place, 'averageStockPerStore'),
      unitsLine(scene, place),
      ...doorLines(scene, place.account),
    ];
  }
  const { account, listing, path } = place;
  return [
    ...fillLines(scene, place),
    rateOfSaleLine(scene, place),
    countLine(scene, `${path}/coverWeeks`, 'Weeks of supply a store orders up to', listing.coverWeeks),
    countLine(
      scene,
      `accounts/${account.id}/terms/transitWeeks`,
      'Weeks on the way',
      account.terms.transitWeeks,
    ),
  ];
}

function unitsLine(scene: Scene, place: Place): ExplanationLine {
  return line({
    label: 'First-year units',
    value: scene.say.number(place.dealItem.firstYearUnits),
    explains: {
      of: 'dealItem',
      accountId: place.account.id,
      itemId: place.item.id,
      figure: 'firstYearUnits',
    },
  });
}
