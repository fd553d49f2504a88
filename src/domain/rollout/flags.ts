// Things a pooled shelf hides. The pass keeps one stock for all doors of a cohort; one door with a small fill runs dry
// between deliveries all the same. Worked figure: a fill of 12 at 7 a week with a week in transit needs 14: flagged.
import type { Plan } from '../plan/index.ts';
import { fillPerDoor } from './cells.ts';

export interface EmptyShelfRisk {
  accountId: string;
  itemId: string;
  fillUnits: number;
  neededUnits: number;
  sentence: string;
}

/** Listings whose fill per door is less than rate of sale x (transit + weeks between orders): its shelf empties before it is refilled. */
export function emptyShelfRisks(plan: Plan): EmptyShelfRisk[] {
  const items = new Map(plan.items.map((item) => [item.id, item]));
  return plan.accounts.flatMap((account) => {
    const weeks = account.terms.transitWeeks + account.ordering.everyWeeks;
    return account.listings.flatMap((listing) => {
      const item = items.get(listing.itemId);
      if (!item) return [];
      const fillUnits = fillPerDoor(account, listing, item);
      // Rates have 6 decimals: what the product has beyond them is noise of binary fractions.
      const exact = Number(listing.unitsPerStoreWeek) * weeks;
      const neededUnits = Math.round(exact * 1_000_000) / 1_000_000;
      if (fillUnits >= neededUnits) return [];
      const sentence =
        `${account.name}: a door is filled with ${fillUnits} of ${item.name} and sells ${neededUnits} before ` +
        'a reorder arrives; single shelves run empty where the pooled count does not show it.';
      return [{ accountId: account.id, itemId: item.id, fillUnits, neededUnits, sentence }];
    });
  });
}
