// What a deal comes to with an offer in it: ladders and deal, without the weekly pass, so that a step at the table shows
// in the same frame. Worked figure: 60 doors at 3.78 a store and week, 250 down: 11,793.60 − 15,000 = −3,206.40 a first year.
import { nearest } from '../deals/curve.ts';
import { numberOf, ZERO } from '../money/decimal.ts';
import type { Plan } from '../plan/index.ts';
import { fine, type Outcome } from '../problems.ts';
import { presentValueOf } from './present-value.ts';
import { droppedAfter } from './review.ts';
import { type OneDeal, oneDeal } from './run.ts';
import type { DealFigures, Objective } from './types.ts';

/** The yearly rate of a present value that is shown beside another target. */
export const USUAL_YEARLY_RATE = 0.1;

/** The deal's figures; `reviewWeeks` after the first opening the chain looks at the shelf. Problems as for a ladder. */
export function figuresFor(args: {
  plan: Plan;
  accountId: string;
  objective: Objective;
  reviewWeeks: number;
}): Outcome<DealFigures> {
  const found = oneDeal(args.plan, args.accountId);
  if (!found.ok) return found;
  const { deal } = found.value;
  const [item] = deal.items;
  const review = droppedAfter(found.value, args.reviewWeeks);
  const yearlyRate =
    args.objective.by === 'presentValue' ? Number(args.objective.yearlyRate) : USUAL_YEARLY_RATE;
  return fine({
    firstYear: numberOf(deal.firstYearAfterFixed),
    presentValue: presentFor(found.value, yearlyRate),
    paybackWeeks: deal.paybackWeeks === null ? null : numberOf(deal.paybackWeeks),
    breakEvenRatio: deal.breakEvenRatio,
    breakEvenRate: item?.breakEvenUnitsPerStoreWeek ?? null,
    moneyDownPerDoor: deal.moneyDownPerDoor,
    contributionPerUnit: item?.contributionPerUnit ?? ZERO,
    droppedAtReview: review.amount,
    reviewedAfterWeeks: review.reviewWeeks,
  });
}

function presentFor({ plan, account, ladders }: OneDeal, yearlyRate: number): number {
  return numberOf(nearest(presentValueOf({ plan, account, ladders, yearlyRate }), 4));
}

/** The objective's own value: money, or weeks; null: payback is not reached within the term. */
export function valueIn(figures: DealFigures, objective: Objective): number | null {
  if (objective.by === 'firstYear') return figures.firstYear;
  return objective.by === 'presentValue' ? figures.presentValue : figures.paybackWeeks;
}

/** How good a deal is by an objective: higher is better, always a number. */
export interface Score {
  value: number | null;
  /** Money, or weeks below zero; a payback that is not reached ranks behind all that are, by where the term ends. */
  rank: number;
  /** Money that grows evenly with what is conceded or won: the value itself, of a payback where the term ends. */
  money: number;
}

/** Behind every payback that is reached, and more than any plan can be short by. */
const NOT_REACHED = -1e13;

/** The objective alone, for searches. */
export function scoreOf(plan: Plan, accountId: string, objective: Objective): Outcome<Score> {
  const found = oneDeal(plan, accountId);
  if (!found.ok) return found;
  const { deal } = found.value;
  if (objective.by === 'firstYear') {
    const value = numberOf(deal.firstYearAfterFixed);
    return fine({ value, rank: value, money: value });
  }
  if (objective.by === 'presentValue') {
    const value = presentFor(found.value, Number(objective.yearlyRate));
    return fine({ value, rank: value, money: value });
  }
  const money = (deal.cumulated.at(-1) ?? 0) / 10 ** found.value.minorDigits;
  if (deal.paybackWeeks === null) return fine({ value: null, rank: NOT_REACHED + money, money });
  const value = numberOf(deal.paybackWeeks);
  return fine({ value, rank: -value, money });
}
