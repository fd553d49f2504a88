// What could stand behind a loan at a week's end: invoices not over 90 days old less what the accounts may take off them,
// and finished goods in our own hands at landed cost, each at the plan's advance rate (80 % and 50 % where nobody typed
// others: common practice, no source). A lender's own terms decide.
// Worked figure: 60,000 owed, 5,000 of it over 90 days, 3,000 of claims: 52,000 at 80 %; 30,000 of stock at 50 %: 56,600.
import { rateOf } from '../money/decimal.ts';
import { timesPrice, timesRate } from '../money/integer.ts';
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { agedReceivables } from './aged.ts';
import type { Ledger } from './ledger.ts';
import type { AgedLine, Collateral } from './types.ts';

interface CollateralArgs {
  plan: Plan;
  results: Pick<Results, 'compiled' | 'pass'>;
  ledger: Ledger;
  week: number;
}

/** Claims of one account come off what that account owes, at most down to nothing. */
export function collateralAt(args: CollateralArgs): Collateral {
  const { plan, results, ledger, week } = args;
  const aged = agedReceivables(args);
  let claims = 0;
  let eligibleReceivables = 0;
  for (const line of aged.lines) {
    const young = line.sum - line.ages.over90 - line.unknown;
    const open = Math.max(0, claimsOf(plan, ledger, line, week));
    claims += open;
    eligibleReceivables += Math.max(0, young - open);
  }
  const stock = ownStock(results, week);
  const onReceivables = timesRate(eligibleReceivables, rateOf(plan.business.lender.receivablesRate));
  const onStock = timesRate(stock, rateOf(plan.business.lender.stockRate));
  return {
    week,
    receivables: aged.total.sum,
    tooOld: aged.total.ages.over90 + aged.total.unknown,
    claims,
    eligibleReceivables,
    stock,
    onReceivables,
    onStock,
    amount: onReceivables + onStock,
  };
}

function claimsOf(plan: Plan, ledger: Ledger, { kind, id }: AgedLine, week: number): number {
  if (kind !== 'account') return 0;
  return ledger.claims[plan.accounts.findIndex((account) => account.id === id)]?.[week] ?? 0;
}

/** Units in our own hands at landed cost; never more than the books carry as stock. */
function ownStock({ compiled, pass }: CollateralArgs['results'], week: number): number {
  let amount = 0;
  compiled.items.forEach((item, i) => {
    amount += timesPrice(pass.units[i]?.ours[week] ?? 0, item.landed, compiled.perMinor);
  });
  return Math.max(0, Math.min(amount, pass.balances.stock[week] ?? 0));
}
