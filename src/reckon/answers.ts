// What limits, what lifts it, and what was searched for, for machines: money as decimal strings, weeks as numbers, a
// change in words. Worked figure: { "change": "Corner pays 14 days earlier, after 16 instead of 30",
// "cashNeedBefore": "31416.01", "cashNeedAfter": "24196.05", ... }.
import {
  answerSolves,
  type Binding,
  bindingOf,
  changeWords,
  type Lift,
  type Lifts,
  liftsFrom,
} from '../domain/answers/index.ts';
import type { Plan } from '../domain/plan/index.ts';
import type { Results } from '../domain/results.ts';
import { sayFor } from './say.ts';
import { moneyText } from './weeks.ts';

/** `binding`, `lifts` and the searches that `solves` has beside the most doors and the least opening cash. */
export function answersText(plan: Plan, results: Results) {
  return {
    binding: bindingText(plan, bindingOf(plan, results)),
    lifts: liftsText(plan, results, liftsFrom(plan, results)),
    solves: solvesText(plan, results),
  };
}

function bindingText(plan: Plan, { weeks }: Binding): unknown[] {
  return weeks.map(({ week, what, tight, items, heldBack }) => ({
    week,
    what,
    tight,
    heldBack,
    items: items.map((item) => plan.items[item]?.id ?? null),
  }));
}

function liftsText(plan: Plan, results: Results, { best, others, noHelp }: Lifts): unknown[] {
  const { currency, minorDigits, compiled } = results;
  const say = sayFor({ currency, minorDigits, startDay: compiled.startDay });
  const money = (amount: number) => moneyText(amount, minorDigits);
  return [...best, ...others, ...noHelp].map((lift) => ({
    change: changeWords(lift.change, plan, say),
    helps: helps(lift),
    cashNeedBefore: money(lift.before.cashNeed),
    cashNeedAfter: money(lift.after.cashNeed),
    lowestCashBefore: { amount: money(lift.before.lowestCash), week: lift.before.lowestWeek },
    lowestCashAfter: { amount: money(lift.after.lowestCash), week: lift.after.lowestWeek },
    unitsLostBefore: lift.before.unitsLost,
    unitsLostAfter: lift.after.unitsLost,
    contributionBefore: money(lift.before.contribution),
    contributionAfter: money(lift.after.contribution),
    withoutItsCost: lift.withoutItsCost,
  }));
}

function helps({ liftsCash, liftsUnits }: Lift): 'cash' | 'units' | 'both' | 'none' {
  if (liftsCash) return liftsUnits ? 'both' : 'cash';
  return liftsUnits ? 'units' : 'none';
}

function solvesText(plan: Plan, results: Results) {
  const { latestOrders, waveSpacing, doorsAWeek, neverCloses, fundsItself } = answerSolves(plan, results);
  const money = (amount: number | null) => (amount === null ? null : moneyText(amount, results.minorDigits));
  return {
    latestOrders,
    waveSpacing: waveSpacing && { ...waveSpacing, ...cashBracket(waveSpacing, money) },
    doorsAWeek: doorsAWeek && { ...doorsAWeek, ...cashBracket(doorsAWeek, money) },
    neverCloses: neverCloses && {
      ...neverCloses,
      neverAt: hundredths(neverCloses.neverAt),
      closesAt: hundredths(neverCloses.closesAt),
    },
    fundsItself: {
      ...fundsItself,
      amount: money(fundsItself.amount),
      lowestThere: money(fundsItself.lowestThere),
      lowestBelow: money(fundsItself.lowestBelow),
    },
  };
}

interface CashBracket {
  lowestThere: number;
  bufferThere: number;
  lowestNext: number | null;
  bufferNext: number | null;
}

function cashBracket(found: CashBracket, money: (amount: number | null) => string | null) {
  return {
    lowestThere: money(found.lowestThere),
    bufferThere: money(found.bufferThere),
    lowestNext: money(found.lowestNext),
    bufferNext: money(found.bufferNext),
  };
}

/** 83 hundredths are "0.83". */
function hundredths(value: number | null): string | null {
  return value === null ? null : (value / 100).toFixed(2);
}
