// When an offer's money comes on this plan: a condition that the plan reaches gives its week, one it never reaches gives
// no money, and is said. Money dated by week comes before the week's payments; money that waits for doors or an order comes
// in the course of the week, and so doesn't help that week's lowest cash.
// Worked figure: 50,000 "once 60 doors are open", reached in week 9, comes in week 9.
import { type Basis, monthOf, weekOfMonth } from './basis.ts';
import type { DatedFlow, NeverComes, Tranche, When } from './contract.ts';

export interface Came {
  week: number;
  /** Minor units, above 0. */
  amount: number;
}

export interface Arrived {
  money: Came[];
  flows: DatedFlow[];
  never: NeverComes[];
  /** Of all tranches, whether they come or not. */
  asked: number;
}

/** The week a condition is met within the horizon, or null. */
export function weekOf(when: When, basis: Basis): number | null {
  if (when.by === 'week') return when.week < basis.weeks ? when.week : null;
  const { accountId } = when;
  const accounts = basis.accounts.filter(({ id }) => accountId === null || id === accountId);
  if (when.by === 'order') {
    const weeks = accounts.flatMap(({ orderWeek }) =>
      orderWeek === null || orderWeek >= basis.weeks ? [] : [orderWeek],
    );
    return weeks.length === 0 ? null : Math.min(...weeks);
  }
  for (let w = 0; w < basis.weeks; w++) {
    if (accounts.reduce((sum, { doors }) => sum + (doors[w] ?? 0), 0) >= when.doors) return w;
  }
  return null;
}

/** Money that comes by tranche, in order of weeks, and what never does. */
export function tranchesIn(tranches: readonly Tranche[], basis: Basis): Arrived {
  const arrived: Arrived = { money: [], flows: [], never: [], asked: 0 };
  for (const { id, amount: text, when } of tranches) {
    const amount = Math.round(Number(text) * 10 ** basis.minorDigits);
    arrived.asked += amount;
    const week = weekOf(when, basis);
    if (week === null) arrived.never.push({ trancheId: id, amount, condition: when });
    else if (amount > 0) {
      arrived.money.push({ week, amount });
      arrived.flows.push({ week, amount, what: 'moneyIn', early: when.by === 'week' });
    }
  }
  arrived.money.sort((a, b) => a.week - b.week);
  return arrived;
}

/** First week that starts in the month so many months after a week's month. */
export function monthsAfter(basis: Basis, week: number, months: number): number {
  return weekOfMonth(basis, monthOf(basis, week) + months, week);
}
