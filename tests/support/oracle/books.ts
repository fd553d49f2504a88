/**
 * The oracle's books: a list of entries, each with a debit, a credit and an amount, and what is read off the list. Cash
 * entries carry the name of their flow.
 * Worked figure: { debit: 'retained', credit: 'cash', amount: 12500n, flow: 'overhead' } takes 125.00 of both sides.
 */
import {
  BALANCE_NAMES,
  type BalanceName,
  FLOW_NAMES,
  type FlowName,
} from '../../../src/domain/rollout/types.ts';

export interface Entry {
  week: number;
  debit: BalanceName;
  credit: BalanceName;
  amount: bigint;
  flow: FlowName | null;
}

const ASSETS: readonly BalanceName[] = ['cash', 'receivables', 'stock', 'deposits', 'equipment'];

/** Week -1 holds the opening entries. */
export function balancesOf(entries: readonly Entry[], weeks: number): Record<BalanceName, bigint[]> {
  const rows = BALANCE_NAMES.map((name): [BalanceName, bigint[]] => {
    const sign = ASSETS.includes(name) ? 1n : -1n;
    const moves = new Array<bigint>(weeks).fill(0n);
    for (const { week, debit, credit, amount } of entries) {
      const at = Math.max(0, week);
      if (debit === name) moves[at] = (moves[at] ?? 0n) + sign * amount;
      if (credit === name) moves[at] = (moves[at] ?? 0n) - sign * amount;
    }
    let balance = 0n;
    return [name, moves.map((move) => (balance += move))];
  });
  return Object.fromEntries(rows) as Record<BalanceName, bigint[]>;
}

export function flowsOf(entries: readonly Entry[], weeks: number): Record<FlowName, bigint[]> {
  const flows = Object.fromEntries(FLOW_NAMES.map((name) => [name, new Array<bigint>(weeks).fill(0n)]));
  for (const { week, debit, credit, amount, flow } of entries) {
    if (week < 0 || (debit !== 'cash' && credit !== 'cash')) continue;
    const row = flows[flow ?? ''];
    if (!row) throw new Error(`a cash entry of week ${week} without a flow`);
    row[week] = (row[week] ?? 0n) + (debit === 'cash' ? amount : -amount);
  }
  return flows as Record<FlowName, bigint[]>;
}

/** Opening cash and step 1's money, less everything that is paid in the week. */
export function lowsOf(entries: readonly Entry[], cash: readonly bigint[], openingCash: bigint): bigint[] {
  return cash.map((_, week) => {
    let low = week === 0 ? openingCash : (cash[week - 1] ?? 0n);
    for (const entry of entries) {
      if (entry.week !== week || entry.flow === null) continue;
      const moved = entry.debit === 'cash' ? entry.amount : -entry.amount;
      if (moved < 0n || entry.flow === 'equityIn' || entry.flow === 'loanIn') low += moved;
    }
    return low;
  });
}
