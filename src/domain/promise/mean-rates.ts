// One rate of sale for a whole plan: means over its listings, each weighed by the doors that sell it.
// Worked figure: 6 a week in 100 doors and 3 in 50 are 5 a week.
import type { Plan } from '../plan/index.ts';
import type { Results } from '../results.ts';
import { evidenceFor } from './evidence.ts';

/** Mean over the listings, each weighed by the doors its account has open and opens. */
export function meanRate(plan: Plan): number | null {
  const weighed = plan.accounts.flatMap((account) =>
    account.listings.map(({ unitsPerStoreWeek }) => ({
      rate: Number(unitsPerStoreWeek),
      doors: [...account.waves, ...account.runningDoors].reduce((sum, { doors }) => sum + doors, 0),
    })),
  );
  return meanOf(weighed);
}

/** The rate that pays back what one listing was put down for, beside the account's doors. */
export interface BreakEvenOf {
  accountId: string;
  itemId: string;
  doors: number;
  /** Units a store and week; null where no rate does it. */
  rate: number | null;
}

/** Of every listing with doors. */
export function breakEvens(claimed: Results | null): BreakEvenOf[] {
  return (claimed?.deals ?? []).flatMap(({ accountId, doors, items }) =>
    items.map(({ itemId, breakEvenUnitsPerStoreWeek: rate }) => ({
      accountId,
      itemId,
      doors,
      rate: rate === null ? null : Number(rate),
    })),
  );
}

/** The rate that pays back what is put down, over all accounts with doors; null where no rate does at one of them. */
export function breakEven(claimed: Results | null): number | null {
  const weighed = breakEvens(claimed);
  if (weighed.some(({ rate, doors }) => rate === null && doors > 0)) return null;
  return meanOf(weighed.map(({ rate, doors }) => ({ rate: rate ?? 0, doors })));
}

function meanOf(weighed: readonly { rate: number; doors: number }[]): number | null {
  const doors = weighed.reduce((sum, each) => sum + each.doors, 0);
  return doors === 0 ? null : weighed.reduce((sum, each) => sum + each.rate * each.doors, 0) / doors;
}

/** Of the one item with scans; several have no range together, and scans that a typed spread overrules have none. */
export function seenRange(plan: Plan): { low80: number | null; high80: number | null } {
  if (plan.promise.spreads.rateOfSaleRate !== null) return { low80: null, high80: null };
  const seen = plan.items.flatMap(({ id }) => evidenceFor(plan, id) ?? []);
  const [only] = seen;
  if (!only || seen.length > 1 || plan.items.length > 1) return { low80: null, high80: null };
  return { low80: only.rate.ofMean.low80, high80: only.rate.ofMean.high80 };
}
