// From list price to what we keep, figure by figure: each level is the one above it less its named steps, so the lines
// add up to the last digit. Worked figure: list 2.60 − off-invoice 0.26 = invoice 2.34.
import { stepsInDealWeeks } from '../ladder/deal-week.ts';
import { type Decimal, ZERO } from '../money/decimal.ts';
import { landedFigure } from './landed.ts';
import { isPassedOn, LEVELS, listingKey, listingLine, type Place, stepKey, takenStep } from './place.ts';
import { listFigure, shelfBeforeTaxFigure, shelfFigure, taxFigure } from './shelf.ts';
import type { ExplanationLine, ListingFigure } from './types.ts';
import { type Draft, exactPercent, exactPrice, part, type Scene, sumFormula } from './write.ts';

export function listingFigure(scene: Scene, place: Place, figure: ListingFigure): Draft {
  switch (figure) {
    case 'landed':
      return landedFigure(scene, place);
    case 'list':
      return listFigure(scene, place);
    case 'shelf':
      return shelfFigure(scene, place);
    case 'shelfBeforeTax':
      return shelfBeforeTaxFigure(scene, place);
    case 'tax':
      return taxFigure(scene, place);
    case 'contributionRate':
    case 'ladderMarginRate':
    case 'tradeRate':
      return rateFigure(scene, place, figure);
    case 'givenBack':
    case 'sellingCosts':
      return totalFigure(scene, place, figure);
    default:
      return levelFigure(scene, place, figure);
  }
}

type Level = 'invoice' | 'net' | 'contribution';

const LEVEL_MEANINGS: Record<Level, string> = {
  invoice: 'What stands on our invoice for one unit: the list price less what is never invoiced.',
  net: 'What is left of the invoice for one unit once discounts and deductions are off, in a week without deals.',
  contribution: 'What one unit brings us in a week without deals, to pay for the deal and then the business.',
};

function levelFigure(scene: Scene, place: Place, figure: Level): Draft {
  const { ladder } = place;
  const amount = ladder[figure];
  const from = { invoice: 'list', net: 'invoice', contribution: 'net' } as const;
  const taken = ladder.steps.filter(({ isLevel, stage }) => !isLevel && levelOf(stage) === figure);
  const above = from[figure];
  const lines = [
    part(scene, ladder[above], {
      label: LEVELS[above].label,
      owner: LEVELS[above].owner,
      explains: listingKey(place, above),
    }),
    ...taken.map((step) => takenStep(scene, place, step)),
  ];
  return {
    title: `${LEVELS[figure].label}, ${place.words}`,
    value: scene.say.price(amount),
    exact: amount.toFixed(),
    meaning: LEVEL_MEANINGS[figure],
    formula: sumFormula(scene, lines, amount),
    lines: [...lines, ...(figure === 'net' ? dealLines(scene, place) : [])],
    caution: cautionOf(figure, amount),
  };
}

/** The level a step is taken off to reach. */
function levelOf(stage: Place['ladder']['steps'][number]['stage']): Level | null {
  if (stage === 'offInvoice') return 'invoice';
  if (stage === 'deduction') return 'net';
  return stage === 'landed' || stage === 'sellingCost' ? 'contribution' : null;
}

/** Money of deal weeks stands beside the net price, in no sum of it. */
function dealLines(scene: Scene, place: Place): ExplanationLine[] {
  return stepsInDealWeeks(place.ladder).map((step) => ({
    ...takenStep(scene, place, step),
    reason: `${step.reason}; not in the base week`,
    explains: stepKey(place, step.id),
    adds: null,
  }));
}

function cautionOf(figure: Level, amount: Decimal): string | null {
  if (figure !== 'contribution' || amount.gt(0)) return null;
  return 'Each unit sold costs more than it brings.';
}

const RATE_MEANINGS = {
  contributionRate: 'The part of the net price that is ours to keep after landed cost and selling costs.',
  ladderMarginRate: 'Our margin on the list price, before anything is given back.',
  tradeRate: 'The part of the list price that is given back on the way to the net price.',
} as const;

function rateFigure(scene: Scene, place: Place, figure: keyof typeof RATE_MEANINGS): Draft {
  const { ladder } = place;
  const rate = ladder[figure];
  const price = (amount: Decimal) => exactPrice(scene, amount);
  const { list, net, contribution } = ladder;
  const quotient = {
    contributionRate: `${price(contribution)} ÷ ${price(net)}`,
    ladderMarginRate: `(${price(list)} − ${price(ladder.landed.unit)}) ÷ ${price(list)}`,
    tradeRate: `(${price(list)} − ${price(net)}) ÷ ${price(list)}`,
  }[figure];
  const ingredients = {
    contributionRate: ['contribution', 'net'],
    ladderMarginRate: ['list', 'landed'],
    tradeRate: ['list', 'net'],
  } as const;
  return {
    title: `${LEVELS[figure].label}, ${place.words}`,
    value: rate === null ? 'not known: the net price is zero' : scene.say.percent(rate),
    exact: rate === null ? null : rate.toFixed(),
    meaning: RATE_MEANINGS[figure],
    formula: rate === null ? quotient : `${quotient} = ${exactPercent(scene, rate)}`,
    lines: ingredients[figure].map((each) => listingLine(scene, place, each)),
    caution: null,
  };
}

const TOTAL_MEANINGS = {
  givenBack:
    'All that one unit gives back to the trade between list price and net price, but for what is passed on.',
  sellingCosts: 'What it costs to sell and deliver one unit, beside its landed cost.',
} as const;

function totalFigure(scene: Scene, place: Place, figure: keyof typeof TOTAL_MEANINGS): Draft {
  const { steps } = place.ladder;
  const taken =
    figure === 'sellingCosts'
      ? steps.filter(({ stage }) => stage === 'sellingCost')
      : steps.filter(
          ({ stage, id }) => stage === 'deduction' || (stage === 'offInvoice' && !isPassedOn(place, id)),
        );
  const lines = taken.map((step) =>
    part(scene, step.amount, {
      label: step.label,
      reason: step.reason,
      owner: step.owner,
      explains: stepKey(place, step.id),
    }),
  );
  const total = taken.reduce((sum, { amount }) => sum.plus(amount), ZERO);
  return {
    title: `${LEVELS[figure].label}, ${place.words}`,
    value: scene.say.price(total),
    exact: total.toFixed(),
    meaning: TOTAL_MEANINGS[figure],
    formula: lines.length === 0 ? 'nothing is taken' : sumFormula(scene, lines, total),
    lines,
    caution: null,
  };
}
