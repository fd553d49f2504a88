/**
 * Step 1: equity and loans of the week come in, a loan's fee is paid, and the week's interest is accrued.
 * Worked figure: 60,000.00 at 9 % a year owes round(6,000,000 x 0.09 x 7 / 365) = 103.56 for a week.
 */
import { sum } from './facts.ts';
import { nearest } from './numbers.ts';
import { runningLoan } from './opening.ts';
import { pay, post, receive, type World } from './world.ts';

export function takeFunding(world: World): void {
  const { facts, week } = world;
  for (const offer of facts.plan.business.funding) {
    if (offer.kind === 'receivablesAdvance' || offer.week !== week) continue;
    const amount = sum(facts, offer.amount);
    if (offer.kind === 'equity') {
      receive(world, 'paidIn', amount, 'equityIn');
      continue;
    }
    receive(world, 'loans', amount, 'loanIn');
    pay(world, 'retained', sum(facts, offer.feeAmount), 'loanFees');
    world.loans.push(runningLoan(world, offer, amount, week));
  }
  for (const { balance, rate } of [...world.loans, ...world.advances]) {
    const interest = nearest(balance * rate * 7n, 365_000_000n);
    post(world, 'retained', 'accrued', interest);
    world.interestOwed.now += interest;
  }
}
