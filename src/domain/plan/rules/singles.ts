// Things a plan can have only one of, since two would leave open which of them counts: a receivables advance, and the
// returns expected of an account. Worked example: two advances of 70 % and 20 % would draw either, or 90 %.
import type { Problem } from '../../problems.ts';
import type { Plan } from '../index.ts';
import { shown } from '../shown.ts';

export function singleProblems(plan: Plan): Problem[] {
  const advances = plan.business.funding.filter(({ kind }) => kind === 'receivablesAdvance');
  return [
    ...advances.slice(1).map(({ id, label }) => ({
      code: 'id-repeated' as const,
      path: `business/funding/${id}`,
      got: `a second receivables advance, ${shown(label)}`,
      expected: 'one receivables advance at most',
    })),
    ...plan.accounts.flatMap(secondReturns),
  ];
}

function secondReturns(account: Plan['accounts'][number]): Problem[] {
  const returns = account.allowances.filter(({ kind }) => kind === 'expectedReturns');
  return returns.slice(1).map(({ id }) => ({
    code: 'id-repeated' as const,
    path: `accounts/${account.id}/allowances/${id}`,
    got: 'a second line of expected returns',
    expected: 'one line of expected returns at most for an account',
  }));
}
