// Evidence that fits the plan: it names items and accounts of the plan, flags weeks that were scanned, once each, and a slip
// is most likely no longer than it is at most.
// Worked example: a display in week 6 of a scan of six weeks (0 to 5) is "promise/scans/hill/displayWeeks/0: got 6".
import type { Problem } from '../../problems.ts';
import { storeKey } from '../../promise/scans.ts';
import type { Plan, Scan } from '../index.ts';
import { shown } from '../shown.ts';

export function promiseProblems(plan: Plan): Problem[] {
  const { scans, reorders, priors } = plan.promise;
  const items = new Set(plan.items.map(({ id }) => id));
  const accounts = new Set(plan.accounts.map(({ id }) => id));
  const named = [
    ...scans.map((each) => ({ ...each, path: `promise/scans/${each.id}` })),
    ...reorders.map((each) => ({ ...each, path: `promise/reorders/${each.id}` })),
    ...priors.map((each) => ({ ...each, accountId: null, path: `promise/priors/${each.itemId}` })),
  ];
  return [
    ...named.flatMap(({ itemId, accountId, path }): Problem[] => [
      ...(items.has(itemId) ? [] : [unknown(`${path}/itemId`, itemId, 'an item of the plan')]),
      ...(accountId === null || accounts.has(accountId)
        ? []
        : [unknown(`${path}/accountId`, accountId, 'an account of the plan, or null')]),
    ]),
    ...repeatedStores(scans),
    ...scans.flatMap(flaggedWeeks),
    ...plan.accounts.flatMap(slip),
  ];
}

/** One place a store, of each item: two would leave open which of them a table's week belongs to. */
function repeatedStores(scans: readonly Scan[]): Problem[] {
  const seen = new Set<string>();
  return scans.flatMap(({ id, itemId, accountId, store }): Problem[] => {
    const key = JSON.stringify([itemId, accountId, storeKey(store)]);
    if (!seen.has(key)) {
      seen.add(key);
      return [];
    }
    const expected = 'a store once for an item; its other weeks go into the same scans';
    return [{ code: 'id-repeated', path: `promise/scans/${id}/store`, got: shown(store), expected }];
  });
}

function flaggedWeeks({ id, units, ...flags }: Plan['promise']['scans'][number]): Problem[] {
  return (['displayWeeks', 'priceWeeks'] as const).flatMap((key) =>
    flags[key].flatMap((week, index): Problem[] => {
      const path = `promise/scans/${id}/${key}/${index}`;
      if (week >= units.length) {
        const expected = `a week that was scanned, 0 to ${units.length - 1}`;
        return [{ code: 'dates-out-of-order', path, got: `week ${week}`, expected }];
      }
      if (flags[key].indexOf(week) === index) return [];
      return [{ code: 'id-repeated', path, got: `week ${week}`, expected: 'each week once' }];
    }),
  );
}

function slip({ id, standing }: Plan['accounts'][number]): Problem[] {
  if (standing === null || standing.slipLikelyWeeks <= standing.slipMostWeeks) return [];
  const path = `accounts/${id}/standing/slipMostWeeks`;
  const got = `${weeks(standing.slipMostWeeks)} at most`;
  const expected = `the most likely slip, ${weeks(standing.slipLikelyWeeks)}, not to pass the longest, ${weeks(standing.slipMostWeeks)}`;
  return [{ code: 'dates-out-of-order', path, got, expected }];
}

function weeks(count: number): string {
  return `${count} ${count === 1 ? 'week' : 'weeks'}`;
}

function unknown(path: string, name: string, expected: string): Problem {
  return { code: 'reference-unknown', path, got: shown(name), expected };
}
