// The range for machines: money as decimal strings, shares and correlations as texts, series a place a week.
// Worked figure: { "chanceCashOut": "0.1200", "need": { "p50": "0.00", "p80": "21194.03", "p95": "42586.40" }, ... }.

import type { Plan } from '../domain/plan/index.ts';
import { type Fan, type Limits, type Miss, rangeOf } from '../domain/promise/range/index.ts';
import type { Results } from '../domain/results.ts';
import { isTooLarge } from '../domain/rollout/exact.ts';
import type { RangeAsked } from './range-asked.ts';
import { moneyText } from './weeks.ts';

type Text = (value: number) => string;

/** `range`: runs the draws one after the other. tooLarge: what was drawn outgrew exact sums. */
export function rangeText(plan: Plan, results: Results, asked: RangeAsked): object | 'tooLarge' {
  try {
    return textOf(plan, results, asked);
  } catch (error) {
    if (!isTooLarge(error)) throw error;
    return 'tooLarge';
  }
}

function textOf(plan: Plan, results: Results, { draws, seed }: RangeAsked): object {
  const range = rangeOf({ plan, results, seed }, draws);
  const { exactCheck, monteCarloError: error } = range;
  const money: Text = (amount) => moneyText(Math.round(amount), results.minorDigits);
  const share: Text = (value) => value.toFixed(4);
  return {
    draws,
    seed,
    cash: fan(range.cash, money),
    lowestCash: each(range.lowest, money),
    chanceCashOut: share(range.chanceCashOut),
    need: each(range.need, money),
    doors: fan(range.doors, (doors) => doors.toFixed(0)),
    revenue: fan(range.revenue, money),
    drivers: range.drivers.map(({ cause, account, correlation, limits: found }) => ({
      cause,
      accountId: account === null ? null : (plan.accounts[account]?.id ?? null),
      correlation: share(correlation),
      ...limits(found, share),
    })),
    monteCarloError: {
      chanceCashOut: limits(error.chanceCashOut, share),
      lowestCash: each(error.lowest, (found) => limits(found, money)),
      need: each(error.need, (found) => limits(found, money)),
    },
    exactCheck: {
      draws: exactCheck.draws,
      lowestCash: miss(exactCheck.lowestCash, money),
      endCash: miss(exactCheck.endCash, money),
      worstWeek: miss(exactCheck.worstWeek, money),
      swing: money(exactCheck.swing),
    },
  };
}

function fan({ p10, p50, p90 }: Fan, text: Text) {
  return { p10: Array.from(p10, text), p50: Array.from(p50, text), p90: Array.from(p90, text) };
}

function each<Key extends string, Value>(found: Record<Key, Value>, text: (value: Value) => unknown) {
  const entries = Object.entries(found) as [Key, Value][];
  return Object.fromEntries(entries.map(([key, value]) => [key, text(value)]));
}

function limits({ low, high }: Limits, text: Text) {
  return { low: text(low), high: text(high) };
}

function miss({ median, p90 }: Miss, money: Text) {
  return { median: money(median), p90: money(p90) };
}
