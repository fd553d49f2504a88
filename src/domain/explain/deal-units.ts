// Two figures of a deal that are spread over units: the net price with everything in it, and the margin on the paid part
// of the opening fill. Worked figure: net 2.548 and 15,000 down over 18,720 units: 2.548 − 0.8013 = 1.7467.

import { nearest } from '../deals/curve.ts';
import { paidFillPerDoor } from '../deals/fixed-money.ts';
import { storeWeeks } from '../deals/store-weeks.ts';
import { type Decimal, dec } from '../money/decimal.ts';
import type { DealAt } from './deal.ts';
import { dealSums, type ItemSums, sumWeeks, YEAR_WEEKS } from './deal-sums.ts';
import { countLine, doorLines, takeLines } from './inputs.ts';
import { listingKey, type Place, placesOf } from './place.ts';
import type { ExplanationLine } from './types.ts';
import { comingTo, type Draft, line, moneyText, part, type Scene, sumFormula } from './write.ts';

/** Net price of the first year's units less that year's fixed money, per unit. */
export function loadedFigure({ scene, account, deal }: DealAt): Draft {
  const amount = deal.fullyLoadedNetPerUnit;
  const { items, fixed } = dealSums(scene, account);
  const units = items.reduce((sum, item) => sum + sumWeeks(item.units, YEAR_WEEKS, 6).toNumber(), 0);
  const perUnit = (money: number) => nearest(units > 0 ? money / units : 0, 4);
  const base = {
    title: `Net price with everything in it, ${account.name}`,
    meaning:
      'What a unit of the first year brings once deal weeks and the money put down are spread over it.',
    caution: null,
  };
  if (amount === null) {
    const lines = doorLines(scene, account);
    return {
      ...base,
      value: 'not known: no units are scanned',
      exact: null,
      formula: 'no units to spread it over',
      lines,
    };
  }
  const taken = items.reduce((sum, item) => sum + sumWeeks(item.taken, YEAR_WEEKS, 4).toNumber(), 0);
  const putDown = sumWeeks(fixed.byWeek, YEAR_WEEKS, 4).toNumber();
  const parts = [
    ...items.map((item) => netLine(scene, item, units)),
    ...(taken === 0
      ? []
      : [
          part(scene, perUnit(-taken), {
            label: 'Deals, per unit',
            owner: 'theirs',
            path: `accounts/${account.id}/${account.promotions.length > 0 ? 'promotions' : 'allowances'}`,
          }),
        ]),
    part(scene, perUnit(-putDown), {
      label: 'Money down, per unit of the first year',
      owner: 'theirs',
      explains: { of: 'deal', accountId: account.id, figure: 'fixedAmount' },
    }),
  ];
  const lines = comingTo(scene, amount, parts, 'Lines are rounded to 4 decimals');
  return {
    ...base,
    value: scene.say.price(amount),
    exact: amount.toFixed(),
    formula: sumFormula(scene, lines, amount),
    lines: [...lines, ...items.map(({ place }) => unitsLine(scene, place)), ...takeLines(scene, account)],
  };
}

function netLine(scene: Scene, { place, units }: ItemSums, allUnits: number): ExplanationLine {
  const own = sumWeeks(units, YEAR_WEEKS, 6).toNumber();
  const share = allUnits > 0 ? (place.ladder.net.toNumber() * own) / allUnits : 0;
  return part(scene, nearest(share, 4), {
    label: `Net price, ${place.item.name}`,
    reason: own === allUnits ? '' : `${scene.say.percent(own / allUnits)} of the units`,
    owner: 'ours',
    explains: listingKey(place, 'net'),
  });
}

function unitsLine(scene: Scene, place: Place): ExplanationLine {
  return line({
    label: `First-year units, ${place.item.name}`,
    value: scene.say.number(place.dealItem.firstYearUnits),
    explains: {
      of: 'dealItem',
      accountId: place.account.id,
      itemId: place.item.id,
      figure: 'firstYearUnits',
    },
  });
}

/** Margin on what the doors pay for before anything is scanned. */
export function fillMarginFigure({ scene, account, deal }: DealAt): Draft {
  const amount = deal.fillMargin;
  const doors = account.sale.by === 'scan' ? 0 : storeWeeks(account).filledDoors;
  const places = placesOf(scene, account);
  const lines = places.map((place) => fillPart(scene, place, doors));
  return {
    title: `Margin on the opening fill, ${account.name}`,
    value: moneyText(scene, amount),
    exact: amount.toFixed(),
    meaning:
      'What the paid part of the first delivery brings; it is a fill, no sale to a shopper, and in no other figure.',
    formula:
      account.sale.by === 'scan'
        ? 'sold by scan: the fill stays our stock'
        : sumFormula(scene, lines, amount),
    lines: [...lines, ...doorLines(scene, account), ...places.flatMap((place) => fillLines(scene, place))],
    caution: null,
  };
}

function fillPart(scene: Scene, place: Place, doors: number): ExplanationLine {
  const units = paidFillPerDoor(place.account, place.listing, place.item) * doors;
  const each: Decimal = place.ladder.contribution;
  return part(scene, each.times(dec(units)), {
    label: place.item.name,
    reason: `${scene.say.count(units)} units paid for, at ${scene.say.price(each)}`,
    owner: 'ours',
    explains: listingKey(place, 'contribution'),
  });
}

/** What a door's fill is made of. */
export function fillLines(scene: Scene, place: Place): ExplanationLine[] {
  const { listing, item, path } = place;
  return [
    countLine(scene, `${path}/facings`, `Facings, ${item.name}`, listing.facings),
    countLine(scene, `${path}/depthUnits`, 'Units behind a facing', listing.depthUnits),
    countLine(scene, `${path}/backStockUnits`, 'Back stock, units', listing.backStockUnits),
    countLine(scene, `items/${item.id}/caseUnits`, 'Units in a case', item.caseUnits),
    ...wholeLines(scene, place),
    countLine(scene, `${path}/freeCasesPerDoor`, 'Cases free per door', listing.freeCasesPerDoor),
  ];
}

/** Where orders come in more than whole cases, so does the fill. */
function wholeLines(scene: Scene, { account, item }: Place): ExplanationLine[] {
  const at = `items/${item.id}`;
  if (account.ordering.orderIn === 'pallet')
    return [countLine(scene, `${at}/palletCases`, 'In whole pallets, of cases', item.palletCases)];
  if (account.ordering.orderIn === 'layer' && item.pack)
    return [countLine(scene, `${at}/pack/layerCases`, 'In whole layers, of cases', item.pack.layerCases)];
  return [];
}
