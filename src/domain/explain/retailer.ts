// The retailer's side of one item: its penny profit, what its shelf space earns, and how hard its stock works.
// Worked figure: it sells at 4.00 before tax what it buys at 2.60: penny profit 1.40, front margin 35 %.

import { dec, ZERO } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import { countLine, rateOfSaleLine } from './inputs.ts';
import { listingKey, listingLine, type Place } from './place.ts';
import { allInFigure } from './retailer-all-in.ts';
import { priceFigure, retailerKey, retailerLine } from './retailer-lines.ts';
import { stockFigure } from './retailer-stock.ts';
import type { RetailerFigure } from './types.ts';
import { type Draft, exactNumber, exactPercent, exactPrice, part, type Scene, typed } from './write.ts';

export function retailerFigure(scene: Scene, place: Place, figure: RetailerFigure): Draft {
  switch (figure) {
    case 'buying':
      return buying(scene, place);
    case 'pennyProfit':
      return pennyProfit(scene, place);
    case 'pennyProfitAllIn':
      return allInFigure(scene, place);
    case 'frontMarginRate':
    case 'allInMarginRate':
      return marginRate(scene, place, figure);
    case 'perStoreWeek':
      return perStoreWeek(scene, place);
    case 'perFacingWeek':
      return perFacing(scene, place);
    case 'againstReplacedPerStoreWeek':
      return againstReplaced(scene, place);
    default:
      return stockFigure(scene, place, figure);
  }
}

function buying(scene: Scene, place: Place): Draft {
  const { ladder } = place;
  const amount = place.dealItem.retailer.buying;
  const before = ladder.hands.at(-2);
  const source = before
    ? part(scene, amount, {
        label: `What ${before.name} sells at`,
        owner: 'between',
        explains: { of: 'hand', accountId: place.account.id, itemId: place.item.id, handId: before.id },
      })
    : part(scene, amount, {
        label: 'Our invoice price',
        owner: 'ours',
        explains: listingKey(place, 'invoice'),
      });
  const name = 'What the retailer buys at';
  const meaning = 'What the retailer pays for one unit, before the money it keeps or takes back.';
  return priceFigure({ scene, place, name, amount, meaning, parts: [source], beside: [] });
}

function pennyProfit(scene: Scene, place: Place): Draft {
  const side = place.dealItem.retailer;
  const parts = [
    part(scene, place.ladder.shelfBeforeTax, {
      label: 'Shelf price before tax',
      explains: listingKey(place, 'shelfBeforeTax'),
    }),
    part(scene, side.buying.negated(), {
      label: 'What the retailer buys at',
      explains: retailerKey(place, 'buying'),
    }),
  ];
  const meaning = 'What one unit sold leaves the retailer, in money, on the price it pays.';
  return priceFigure({
    scene,
    place,
    name: 'Penny profit',
    amount: side.pennyProfit,
    meaning,
    parts,
    beside: [],
  });
}

function marginRate(scene: Scene, place: Place, figure: 'frontMarginRate' | 'allInMarginRate'): Draft {
  const front = figure === 'frontMarginRate';
  const profit = front ? 'pennyProfit' : 'pennyProfitAllIn';
  const side = place.dealItem.retailer;
  const shelf = place.ladder.shelfBeforeTax;
  return {
    title: `${front ? 'Front margin' : 'Margin, all in'}, ${place.words}`,
    value: scene.say.percent(side[figure]),
    exact: side[figure].toFixed(),
    meaning: front
      ? 'The part of the shelf price before tax that stays with the retailer, on the price it pays.'
      : 'The same with what it keeps of our allowances, fixed money and free goods.',
    formula: `${exactPrice(scene, side[profit])} ÷ ${exactPrice(scene, shelf)} = ${exactPercent(scene, side[figure])}`,
    lines: [retailerLine(scene, place, profit), listingLine(scene, place, 'shelfBeforeTax')],
    caution: null,
  };
}

function perStoreWeek(scene: Scene, place: Place): Draft {
  const { retailer, unitsPerStoreWeek } = place.dealItem;
  const amount = retailer.perStoreWeek;
  return {
    title: `Retailer’s profit per store and week, ${place.words}`,
    value: scene.say.price(amount),
    exact: amount.toFixed(),
    meaning: 'What one store earns on this item in a week at the full rate of sale.',
    formula: `${exactPrice(scene, retailer.pennyProfit)} × ${exactNumber(scene, unitsPerStoreWeek)} = ${exactPrice(scene, amount)}`,
    lines: [retailerLine(scene, place, 'pennyProfit'), rateOfSaleLine(scene, place)],
    caution: null,
  };
}

function perFacing(scene: Scene, place: Place): Draft {
  const { retailer } = place.dealItem;
  const { facings } = place.listing;
  return {
    title: `Retailer’s profit per facing and week, ${place.words}`,
    value: scene.say.price(retailer.perFacingWeek),
    exact: retailer.perFacingWeek.toFixed(),
    meaning: 'What each place at the front of the shelf earns the store in a week.',
    formula: `${exactPrice(scene, retailer.perStoreWeek)} ÷ ${scene.say.count(facings)} = ${exactPrice(scene, retailer.perFacingWeek)}`,
    lines: [
      retailerLine(scene, place, 'perStoreWeek'),
      countLine(scene, `${place.path}/facings`, 'Facings', facings),
    ],
    caution: null,
  };
}

function againstReplaced(scene: Scene, place: Place): Draft {
  const amount = place.dealItem.retailer.againstReplacedPerStoreWeek;
  const { replaces } = place.listing;
  const title = `Against the item it replaces, ${place.words}`;
  const meaning =
    'What a store earns on ours in a week, less what it earned on the item whose place we take.';
  const path = `${place.path}/replaces`;
  const ours = part(scene, place.dealItem.retailer.perStoreWeek, {
    label: 'Ours, per store and week',
    owner: 'theirs',
    explains: retailerKey(place, 'perStoreWeek'),
  });
  if (!replaces || amount === null) {
    const unknown = typed(scene, path, { label: 'The item it replaces', value: 'not entered' });
    const lines = [{ ...ours, adds: null }, unknown];
    return {
      title,
      value: 'not known: nothing entered',
      exact: null,
      meaning,
      formula: 'ours less theirs',
      lines,
      caution: null,
    };
  }
  const [shelf, bought, rate] = [
    replaces.shelfBeforeTaxAmount,
    replaces.buyingAmount,
    replaces.unitsPerStoreWeek,
  ].map(kept);
  const theirs = (shelf ?? ZERO).minus(bought ?? ZERO).times(rate ?? dec(0));
  const field = (key: keyof typeof replaces, label: string, value: string) =>
    typed(scene, `${path}/${key}`, { label, value });
  const parts = [
    ours,
    typed(scene, path, part(scene, theirs.negated(), { label: 'Theirs, per store and week' })),
  ];
  const beside = [
    field('shelfBeforeTaxAmount', 'Its shelf price before tax', exactPrice(scene, shelf ?? ZERO)),
    field('buyingAmount', 'What the retailer buys it at', exactPrice(scene, bought ?? ZERO)),
    field('unitsPerStoreWeek', 'Its rate of sale', exactNumber(scene, rate ?? ZERO)),
  ];
  return { ...priceFigure({ scene, place, name: '', amount, meaning, parts, beside }), title };
}
