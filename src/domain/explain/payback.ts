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
    value: weeks === null ? `not within ${deal.termWeeks} weeks` : `${scene.say.number(weeks)} weeks`,
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
    title: `Planned ÷ break-even rate of sale, ${account.name}`,
    value: ratio === null ? noRatio(deal.nothingDown) : scene.say.number(ratio),
    exact: ratio === null ? null : ratio.toFixed(),
    meaning:
      'How many times over the planned rate of sale earns back, within the term, what has to be earned back.',
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

function noRatio(nothingDown: boolean): string {
  return nothingDown ? 'nothing to earn back' : 'none: each unit costs more than it brings';
}

function ratioFormula(
  scene: Scene,
  from: { contribution: Decimal; down: Decimal; hurdle: Decimal; ratio: Decimal | null },
): string {
  const price = (amount: Decimal) => exactPrice(scene, amount);
  const back = from.hurdle.isZero() ? price(from.down) : `(${price(from.down)} + ${price(from.hurdle)})`;
  const end = from.ratio === null ? '' : ` = ${exactNumber(scene, from.ratio)}, rounded down`;
  return `contribution of the term ${price(from.contribution)} ÷ ${back} to be earned back${end}`;
}
