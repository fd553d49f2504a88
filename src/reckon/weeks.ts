// The weekly series of the pass, for machines: money as decimal strings in the plan's currency, units as whole numbers.
// Worked figure: 3,600,000 minor units of a currency with 2 digits are "36000.00".
import { isoDateOf } from '../domain/calendar.ts';
import type { Plan } from '../domain/plan/index.ts';
import type { Results } from '../domain/results.ts';
import { replay } from '../domain/rollout/index.ts';
import { BALANCE_NAMES, FLOW_NAMES, PROFIT_NAMES, UNIT_NAMES } from '../domain/rollout/types.ts';

/** Whole minor units as decimal text, exact: the digits are cut, not divided. */
export function moneyText(minorUnits: number, minorDigits: number): string {
  const sign = minorUnits < 0 ? '-' : '';
  const digits = String(BigInt(Math.abs(minorUnits))).padStart(minorDigits + 1, '0');
  if (minorDigits === 0) return sign + digits;
  return `${sign}${digits.slice(0, -minorDigits)}.${digits.slice(-minorDigits)}`;
}

export function weeksOf(plan: Plan, results: Results): unknown[] {
  const { pass, minorDigits, compiled } = results;
  const money = <Name extends string>(
    names: readonly Name[],
    series: Record<Name, Float64Array>,
    week: number,
  ) => Object.fromEntries(names.map((name) => [name, moneyText(series[name][week] ?? 0, minorDigits)]));
  return Array.from({ length: pass.weeks }, (_, week) => ({
    week,
    date: isoDateOf(compiled.startDay + 7 * week),
    flows: money(FLOW_NAMES, pass.flows, week),
    balances: money(BALANCE_NAMES, pass.balances, week),
    low: moneyText(pass.low[week] ?? 0, minorDigits),
    profit: money(PROFIT_NAMES, pass.profit, week),
    units: Object.fromEntries(
      plan.items.map((item, i) => [
        item.id,
        Object.fromEntries(UNIT_NAMES.map((name) => [name, pass.units[i]?.[name][week] ?? 0])),
      ]),
    ),
    doors: Object.fromEntries(
      plan.accounts.map((account, a) => [account.id, pass.accounts[a]?.doors[week] ?? 0]),
    ),
    heldBack: Object.fromEntries(
      plan.accounts.map((account, a) => [account.id, pass.accounts[a]?.heldBack[week] ?? 0]),
    ),
  }));
}

/** Every posting of the pass, in order: what each figure is made of. */
export function journalOf(plan: Plan, results: Results): unknown[] {
  const entries: unknown[] = [];
  replay(results, ({ week, event, amount, account, item }) => {
    entries.push({
      week,
      event,
      amount: moneyText(amount, results.minorDigits),
      account: plan.accounts[account]?.id ?? null,
      item: plan.items[item]?.id ?? null,
    });
  });
  return entries;
}
