// An account's money beside the unit price, and its doors, by week: what comes and goes with the doors that open.
// Worked figure: slotting of 250 for each of 10 doors is 2,500 in the week they open, and slips with them.
import type { Compiled, CompiledAccount } from '../../rollout/compiled.ts';
import type { Coarse } from './coarse.ts';
import { CLAIMED, DOORS_OPEN, PAID_OUT, SUMS } from './places.ts';

export function writeAccount({ weeks, pad, accounts, sums }: Coarse, compiled: Compiled, a: number): void {
  const account = compiled.accounts[a] as CompiledAccount;
  const add = (place: number, week: number, amount: number) => {
    if (week < 0 || week >= weeks) return;
    const at = ((pad + week) * accounts + a) * SUMS + place;
    sums[at] = (sums[at] ?? 0) + amount;
  };
  for (const { week, amount } of [...account.slottingCash, ...account.openingFees, ...account.displayPaid]) {
    add(PAID_OUT, week, amount);
  }
  for (const { week, amount } of account.slottingClaims) {
    add(CLAIMED, week, amount);
  }
  account.displayFees.forEach((amount, week) => {
    add(PAID_OUT, week, amount);
  });
  for (const index of account.cohorts) {
    const { doors, openWeek } = compiled.cohorts[index] as Compiled['cohorts'][number];
    // Doors that run already are in every draw as they are in the plan.
    if (openWeek < 0) continue;
    for (let w = 0; w < weeks; w++) add(DOORS_OPEN, w, doors[w] ?? 0);
  }
}
