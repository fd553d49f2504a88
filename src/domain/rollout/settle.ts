// Step 9, the accounts' side: due invoices less their own deductions make a pool, open claims are taken off it oldest
// first, the rest is paid. A claim the pool can't carry goes on to the next remittance; after 8 weeks without an open
// invoice it is paid in cash. Worked figure: due 1,248.00, deductions 24.96, claims 2,000.00: nothing paid, 776.96 stay.
import { E, post } from './books.ts';
import type { AccountState, State } from './state.ts';

/** Weeks without an open invoice after which a claim is paid in cash. */
export const QUIET_WEEKS = 8;

export function settleAccount(state: State, a: number, week: number): void {
  const sales = state.accounts[a];
  if (!sales) throw new Error(`no account ${a}`);
  const { books } = state;
  sales.quietWeeks = sales.receivable === 0 ? sales.quietWeeks + 1 : 0;
  const gross = sales.dueGross[week] ?? 0;
  const fails = week >= (state.compiled.accounts[a]?.failsWeek ?? week + 1);
  const bad = fails ? gross : (sales.dueBad[week] ?? 0);
  const own = Math.min(gross - bad, (sales.dueDeductions[week] ?? 0) + (sales.dueDiscount[week] ?? 0));
  const pool = gross - bad - own;
  const claimed = takeClaims(sales, week, pool);
  post(books, E.badDebt, bad, a);
  post(books, E.remittedLess, own + claimed, a);
  post(books, E.remitted, pool - claimed, a);
  sales.receivable -= gross;
  sales.remitted += pool - claimed;
  if (sales.dueRecovered && !fails) post(books, E.recovered, sales.dueRecovered[week] ?? 0, a);
  const advance = sales.dueAdvance[week] ?? 0;
  post(books, E.advanceRepaid, advance, a);
  state.advanceLeft -= advance;
  if (sales.quietWeeks >= QUIET_WEEKS && !fails) {
    post(books, E.claimPaid, takeClaims(sales, week, Number.POSITIVE_INFINITY), a);
  }
}

/** Takes claims that are due, oldest first, up to a sum; returns what was taken. */
function takeClaims(sales: AccountState, week: number, most: number): number {
  if (sales.claims.length === 0 || most <= 0) return 0;
  let left = most;
  let taken = 0;
  for (const claim of sales.claims) {
    if (claim.fromWeek > week) continue;
    const part = Math.min(left, claim.amount);
    claim.amount -= part;
    left -= part;
    taken += part;
    if (left <= 0) break;
  }
  sales.claims = sales.claims.filter((claim) => claim.amount > 0);
  return taken;
}
