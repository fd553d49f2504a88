// One item in one account's deal: what a unit brings once the way of sale is paid for, what that is per store and week,
// how many units the first year scans, and the rate of sale at which the term just pays.
// Worked figure: 6 a store and week at 0.63 a unit bring 3.78.
import { deliveryFigure } from './deal-delivery.ts';
import { riskFigure } from './deal-risk.ts';
import { type DealSums, dealSums, sumWeeks, YEAR_WEEKS } from './deal-sums.ts';
import { doorLines, liftLines, paceLines, rateOfSaleLine } from './inputs.ts';
import { listingKey, type Place } from './place.ts';
import type { DealItemFigure, ExplanationLine, FigureKey } from './types.ts';
import {
  comingTo,
  type Draft,
  exactNumber,
  exactPrice,
  line,
  part,
  type Scene,
  sumFormula,
  typed,
} from './write.ts';

export function dealItemFigure(scene: Scene, place: Place, figure: DealItemFigure): Draft {
  switch (figure) {
    case 'contributionPerUnit':
      return perUnit(scene, place);
    case 'riskPerUnit':
      return riskFigure(scene, place);
    case 'deliveryPerUnit':
      return deliveryFigure(scene, place);
    case 'contributionPerStoreWeek':
      return perStoreWeek(scene, place);
    case 'firstYearUnits':
      return firstYearUnits(scene, place);
    case 'breakEvenUnitsPerStoreWeek':
      return breakEvenUnits(scene, place);
  }
}

export function dealItemKey({ account, item }: Place, figure: DealItemFigure): FigureKey {
  return { of: 'dealItem', accountId: account.id, itemId: item.id, figure };
}

function perUnit(scene: Scene, place: Place): Draft {
  const { ladder, dealItem } = place;
  const amount = dealItem.contributionPerUnit;
  const lines = [
    part(scene, ladder.contribution, {
      label: 'Contribution',
      owner: 'ours',
      explains: listingKey(place, 'contribution'),
    }),
  ];
  if (!dealItem.riskPerUnit.isZero()) {
    lines.push(
      part(scene, dealItem.riskPerUnit.negated(), {
        label: 'Not paid, or not sold',
        owner: 'atRisk',
        explains: dealItemKey(place, 'riskPerUnit'),
      }),
    );
  }
  if (!dealItem.deliveryPerUnit.isZero()) {
    lines.push(
      part(scene, dealItem.deliveryPerUnit.negated(), {
        label: 'Drops and pallets',
        owner: 'between',
        explains: dealItemKey(place, 'deliveryPerUnit'),
      }),
    );
  }
  return {
    title: `Contribution per unit scanned, ${place.words}`,
    value: scene.say.price(amount),
    exact: amount.toFixed(),
    meaning: 'What one unit scanned brings us in a week without deals, once the way of sale is paid for.',
    formula: sumFormula(scene, lines, amount),
    lines,
    caution: place.account.service
      ? 'Charges for short deliveries are not in it: they depend on supply, and the weekly pass has them.'
      : null,
  };
}

function perStoreWeek(scene: Scene, place: Place): Draft {
  const { dealItem } = place;
  const amount = dealItem.contributionPerStoreWeek;
  const [rate, each] = [dealItem.unitsPerStoreWeek, dealItem.contributionPerUnit];
  return {
    title: `Contribution per store and week, ${place.words}`,
    value: scene.say.price(amount),
    exact: amount.toFixed(),
    meaning: 'What one store brings us in a week at the full rate of sale.',
    formula: `${exactNumber(scene, rate)} × ${exactPrice(scene, each)} = ${exactPrice(scene, amount)}`,
    lines: [rateOfSaleLine(scene, place), unitLine(scene, place)],
    caution: null,
  };
}

export function unitLine(scene: Scene, place: Place): ExplanationLine {
  return line({
    label: `Contribution per unit, ${place.item.name}`,
    value: exactPrice(scene, place.dealItem.contributionPerUnit),
    owner: 'ours',
    explains: dealItemKey(place, 'contributionPerUnit'),
  });
}

const QUARTER_WEEKS = 13;

function firstYearUnits(scene: Scene, place: Place): Draft {
  const { account, dealItem } = place;
  const total = dealItem.firstYearUnits;
  const sums = dealSums(scene, account);
  const lines = comingTo(
    scene,
    total,
    quarterLines(scene, place, sums),
    'Quarters are rounded to 6 decimals',
  );
  const mature = sumWeeks(sums.stores.mature, YEAR_WEEKS, 4);
  return {
    title: `Units scanned in the first year, ${place.words}`,
    value: scene.say.count(total.round().toNumber()),
    exact: total.toFixed(),
    meaning: 'Units shoppers want in the 52 weeks from the first opening, with supply and shelf not binding.',
    formula: `${exactNumber(scene, mature)} store-weeks at full rate × ${exactNumber(scene, dealItem.unitsPerStoreWeek)}${
      account.promotions.length > 0 || place.item.seasonFactors ? ' × season and promotions' : ''
    } = ${exactNumber(scene, total)}`,
    lines: [
      ...lines,
      ...doorLines(scene, account),
      rateOfSaleLine(scene, place),
      ...paceLines(scene, account),
      ...liftLines(scene, account, [place]),
    ],
    caution: null,
  };
}

/** The year in four quarters of 13 weeks; each leads to the waves that opened its doors. */
function quarterLines(scene: Scene, place: Place, sums: DealSums): ExplanationLine[] {
  const own = sums.items.find((each) => each.place.item.id === place.item.id);
  if (!own) throw new Error(`no sums of ${place.words}`);
  return [0, 1, 2, 3].map((quarter) => {
    const from = quarter * QUARTER_WEEKS;
    const until = from + QUARTER_WEEKS;
    const doors = sumWeeks(sums.stores.open, until, 4, from).div(QUARTER_WEEKS).toDecimalPlaces(1);
    const units = sumWeeks(own.units, until, 6, from);
    return typed(scene, doorsPath(place), {
      label: `Weeks ${from} to ${until - 1} after the first opening`,
      value: exactNumber(scene, units),
      reason: `${exactNumber(scene, doors)} doors open on average`,
      adds: units.toFixed(),
    });
  });
}

function doorsPath({ account }: Place): string {
  return `accounts/${account.id}/${account.waves.length > 0 ? 'waves' : 'runningDoors'}`;
}

function breakEvenUnits(scene: Scene, place: Place): Draft {
  const { deal, dealItem, account } = place;
  const rate = dealItem.breakEvenUnitsPerStoreWeek;
  const planned = exactNumber(scene, dealItem.unitsPerStoreWeek);
  const ratio = deal.breakEvenRatio;
  const ratioLine = line({
    label: 'Planned ÷ break-even rate of sale',
    value: ratio === null ? '' : exactNumber(scene, ratio),
    explains: { of: 'deal', accountId: account.id, figure: 'breakEvenRatio' },
  });
  return {
    title: `Break-even rate of sale, ${place.words}`,
    value: rate === null ? 'none does' : scene.say.number(rate),
    exact: rate === null ? null : rate.toFixed(),
    meaning: 'The smallest rate of sale at which the term brings back the money put down, ramp and all.',
    formula:
      rate === null || ratio === null
        ? deal.nothingDown
          ? 'nothing to earn back: any rate of sale will do'
          : 'each unit costs more than it brings'
        : `${planned} ÷ ${exactNumber(scene, ratio)} = ${exactNumber(scene, rate)}, rounded up`,
    lines: [rateOfSaleLine(scene, place), ratioLine],
    caution:
      account.listings.length > 1 ? 'Every item of the chain at the same part of its planned rate.' : null,
  };
}
