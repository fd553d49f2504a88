// What a lender's pages need beside the pass's own series: every invoice by account and week, what is taken off them, and
// every supplier's invoice by item and week, from the pass replayed with a recorder.
// Worked figure: invoiced 1,248.00 in week 6 less 24.96 accrued against it: 1,248.00 open, 24.96 of claims.
import type { Results } from '../results.ts';
import type { EventName } from '../rollout/events.ts';
import { replay } from '../rollout/index.ts';

export interface Ledger {
  /** [account][item] to [week]: invoices with VAT, minor units; only where there are any. */
  invoices: Map<number, Float64Array>[];
  /** [account][week]: deductions, claims and expected returns accrued and not taken yet, at the week's end. */
  claims: Float64Array[];
  /** [item][week]: what suppliers invoiced, less deposits, with VAT. */
  supplied: Float64Array[];
}

/** What an event does to an account's open claims. */
const CLAIMS: Partial<Record<EventName, 1 | -1>> = {
  deductionAccrued: 1,
  wrongDeducted: 1,
  discountAccrued: 1,
  claimAccrued: 1,
  shortCharged: 1,
  returnCredited: 1,
  guaranteeHeld: 1,
  guaranteeAccepted: -1,
  remittedLess: -1,
  claimPaid: -1,
};
const INVOICES: ReadonlySet<EventName> = new Set(['invoiced', 'vatOnSale']);
const SUPPLIED: ReadonlySet<EventName> = new Set(['receiptPayable', 'vatOnPayable']);

export function ledgerOf(results: Pick<Results, 'compiled' | 'free'>): Ledger {
  const { weeks, accounts, items } = results.compiled;
  const series = () => new Float64Array(weeks);
  const ledger: Ledger = {
    invoices: accounts.map(() => new Map()),
    claims: accounts.map(series),
    supplied: items.map(series),
  };
  replay(results, ({ week, event, amount, account, item }) => {
    if (SUPPLIED.has(event)) add(ledger.supplied[item], week, amount);
    if (account < 0) return;
    if (INVOICES.has(event)) {
      const own = ledger.invoices[account];
      if (!own?.has(item)) own?.set(item, series());
      add(own?.get(item), week, amount);
    }
    const sign = CLAIMS[event];
    if (sign) add(ledger.claims[account], week, sign * amount);
  });
  for (const claims of ledger.claims) {
    for (let w = 1; w < weeks; w++) claims[w] = (claims[w] ?? 0) + (claims[w - 1] ?? 0);
  }
  return ledger;
}

function add(series: Float64Array | undefined, week: number, amount: number): void {
  if (series) series[week] = (series[week] ?? 0) + amount;
}
