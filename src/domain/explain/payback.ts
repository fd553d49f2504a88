// When the money is back, and how far the planned rate of sale is from the one that just pays: read off the cumulated
// curve of the deal. Worked figure: −340 at the end of week 12 and 512 at the end of week 13: back after
// 12 + 340 ÷ 852 weeks, 12.4.
import { type Decimal, dec } from '../money/decimal.ts';
import type { DealAt } from './deal.ts';
import { unitLine } from './deal-item.ts';
import { contributedTo, dealSums, sumWeeks } from './deal-sums.ts';
import { countLine, doorLines, liftLines, paceLines, rateOfSaleLine, takeLines } from './inputs.ts';
import { placesOf } from './place.ts';
import type { ExplanationLine } from './types.ts';
import { type Draft, exactMoney, exactNumber, exactPrice, line, type Scene, typed } from './write.ts';

export function paybackFigure(at: DealAt): Draft {
  const { scene, account, deal } = at;
  const weeks = deal.paybackWeeks;
  return {
    title: `Payback, ${account.name}`,
    value: paybackText(at),
    exact: weeks === null ? null : weeks.toFixed(),
    meaning:
      'Weeks from the first opening until what the chain has brought covers the money put down, for good.',
    formula: paybackFormula(at),
    lines: [
      downLine(at),
      ...bringLines(at),
      ...takeLines(scene, account),
      countLine(scene, `accounts/${account.id}/deal/termWeeks`, 'Term, weeks', deal.termWeeks),
    ],
    caution: deal.nothingDown ? 'Nothing is put down: it pays from the first unit.' : null,
  };
}

/** As the screens say it: the week it is back in, counted from the first opening. */
function paybackText({ scene, deal }: DealAt): string {
  if (deal.nothingDown) return 'nothing down';
  if (deal.paybackWeeks === null) return 'not back';
  return `week ${scene.say.number(deal.paybackWeeks.ceil())}`;
}

/** The straight line between the two week-ends the curve crosses zero at. */
function paybackFormula({ scene, account, deal }: DealAt): string {
  const { cumulated, paybackWeeks: weeks, termWeeks } = deal;
  const money = (minor: number) => exactMoney(scene, minor);
  if (weeks === null) return `after ${termWeeks} weeks the curve stands at ${money(cumulated.at(-1) ?? 0)}`;
  if (weeks.isZero()) return 'the curve is never below zero';
  const week = weeks.ceil().minus(1).toNumber();
  const down = sumWeeks(dealSums(scene, account).fixed.byWeek, 1, scene.results.minorDigits);
  const before = week === 0 ? exactPrice(scene, down.negated()) : money(cumulated[week - 1] ?? 0);
  const start = week === 0 ? `${before} put down at the opening` : `${before} after ${week} weeks`;
  return `${start}, ${money(cumulated[week] ?? 0)} after ${week + 1}: crosses zero at ${exactNumber(scene, weeks)}`;
}

function downLine({ scene, account, deal }: DealAt): ExplanationLine {
  return line({
    label: 'Money down',
    value: exactPrice(scene, deal.fixedAmount),
    owner: 'theirs',
    explains: { of: 'deal', accountId: account.id, figure: 'fixedAmount' },
  });
}

/** What brings it back: doors, rates, contribution, and how they start. */
function bringLines({ scene, account }: DealAt): ExplanationLine[] {
  const places = placesOf(scene, account);
  return [
    ...places.flatMap((place) => [rateOfSaleLine(scene, place), unitLine(scene, place)]),
    ...doorLines(scene, account),
    ...paceLines(scene, account),
    ...liftLines(scene, account, places),
  ];
}

export function ratioFigure(at: DealAt): Draft {
  const { scene, account, deal } = at;
  const ratio = deal.breakEvenRatio;
  const sums = dealSums(scene, account);
  const contribution = sums.items.reduce(
    (sum, item) => sum.plus(contributedTo(item, deal.termWeeks)),
    dec(0),
  );
  const down = sumWeeks(sums.fixed.byWeek, deal.termWeeks, 4);
  return {
    title: `Break-even, of the planned rate of sale, ${account.name}`,
    value: ratioText(at),
    exact: ratio === null ? null : ratio.toFixed(),
    meaning:
      'The part of the planned rate of sale at which the term just brings back what has to be earned back.',
    formula: ratioFormula(scene, { contribution, down, hurdle: dec(account.deal.hurdleAmount), ratio }),
    lines: [
      downLine(at),
      typed(scene, `accounts/${account.id}/deal/hurdleAmount`, {
        label: 'To be earned on top',
        value: exactPrice(scene, dec(account.deal.hurdleAmount)),
      }),
      ...bringLines(at),
      ...takeLines(scene, account),
      countLine(scene, `accounts/${account.id}/deal/termWeeks`, 'Term, weeks', deal.termWeeks),
    ],
    caution: 'Counted on units scanned, with supply and shelf not binding.',
  };
}

/** The part of the planned rates that is enough. */
function ratioText({ scene, deal }: DealAt): string {
  if (deal.nothingDown) return scene.say.percent(0);
  const ratio = deal.breakEvenRatio;
  // a ratio kept as 0 is below a millionth: no rate of sale worth naming
  return ratio === null || ratio.isZero() ? 'none does' : scene.say.percent(ratio.pow(-1));
}

function ratioFormula(
  scene: Scene,
  from: { contribution: Decimal; down: Decimal; hurdle: Decimal; ratio: Decimal | null },
): string {
  const price = (amount: Decimal) => exactPrice(scene, amount);
  const back = from.hurdle.isZero() ? price(from.down) : `(${price(from.down)} + ${price(from.hurdle)})`;
  const { ratio } = from;
  const enough =
    ratio === null || ratio.isZero()
      ? ''
      : `; 1 ÷ that is ${scene.say.percent(ratio.pow(-1))} of the planned rate`;
  const end = ratio === null ? '' : ` = ${exactNumber(scene, ratio)}, rounded down${enough}`;
  return `contribution of the term ${price(from.contribution)} ÷ ${back} to be earned back${end}`;
}
