// Deductions that aren't owed: one percentage more off each invoice, part of which is won back later. Nothing is booked of
// what may be won back before it is there. Worked figure: 1,248.00 invoiced, 3 % taken wrongly is 37.44; with 60 % won
// back 10 weeks after the remittance, 22.46 comes in then.
import { timesRate } from '../money/integer.ts';
import { E, post } from './books.ts';
import type { CompiledAccount } from './compiled.ts';
import type { ListingAt } from './invoice.ts';
import { addDue } from './state.ts';

type Disputed = NonNullable<CompiledAccount['disputed']>;

/** A deduction that isn't owed goes with its invoice; of each part, what is won back comes in some weeks after. */
export function takeWrongly(
  at: ListingAt,
  { wrongRate, recoveredShare, recoveryWeeks }: Disputed,
  net: number,
  discount: CompiledAccount['discount'],
): { amount: number; early: number } {
  const { state, terms, account, sales, week } = at;
  const amount = timesRate(net, wrongRate);
  post(state.books, E.wrongDeducted, amount, terms.account, terms.item);
  const early = discount ? timesRate(amount, discount.takenShare) : 0;
  if (sales.dueRecovered) {
    const from = week + recoveryWeeks;
    if (discount) addDue(sales.dueRecovered, from + discount.collectWeeks, timesRate(early, recoveredShare));
    addDue(sales.dueRecovered, from + account.collectWeeks, timesRate(amount - early, recoveredShare));
  }
  return { amount, early };
}
