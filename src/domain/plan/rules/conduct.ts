// What an account does beside its terms has to be able to happen: doors that close are open by then, a promotion names
// items of the account.
// Worked figure: 40 doors from week 6 at 10 a week, and 15 running: at most 35 of them can close in week 8.
import type { Problem } from '../../problems.ts';
import type { Account, Plan } from '../index.ts';
import { shown } from '../shown.ts';

export function conductProblems({ accounts, horizonWeeks }: Plan): Problem[] {
  return accounts.flatMap((account) => [...cutProblems(account, horizonWeeks), ...promotedItems(account)]);
}

/** Cuts as they come: inside the plan, before the account leaves its shelves, and of doors that are open. */
function cutProblems(account: Account, horizonWeeks: number): Problem[] {
  const { id, cuts, cutWeek } = account;
  const last = Math.min(horizonWeeks, cutWeek ?? horizonWeeks) - 1;
  const inTime = cuts.filter(({ week }) => week <= last).sort((x, y) => x.week - y.week);
  let closed = 0;
  return [
    ...cuts
      .filter(({ week }) => week > last)
      .map((cut): Problem => {
        const until =
          last < horizonWeeks - 1 ? `before it is taken off all shelves, 0 to ${last}` : `0 to ${last}`;
        const expected = `a week inside the plan's ${horizonWeeks} weeks, ${until}`;
        return {
          code: 'dates-out-of-order',
          path: `accounts/${id}/cuts/${cut.id}/week`,
          got: `week ${cut.week}`,
          expected,
        };
      }),
    ...inTime.flatMap((cut): Problem[] => {
      const open = openedBefore(account, cut.week) - closed;
      closed += Math.min(cut.doors, open);
      if (cut.doors <= open) return [];
      return [
        {
          code: 'field-invalid',
          path: `accounts/${id}/cuts/${cut.id}/doors`,
          got: cut.doors === 1 ? '1 door' : `${cut.doors} doors`,
          expected: `at most ${open}, those open before week ${cut.week} and not closed by an earlier cut`,
        },
      ];
    }),
  ];
}

/** Doors opened before a week; attrition is not counted, it closes some of them anyway. */
export function openedBefore(
  { runningDoors, waves }: Pick<Account, 'runningDoors' | 'waves'>,
  week: number,
): number {
  const running = runningDoors.reduce((sum, { doors, ageWeeks }) => sum + (-ageWeeks < week ? doors : 0), 0);
  return waves.reduce(
    (sum, { openWeek, doors, doorsPerWeek }) =>
      sum + Math.min(doors, Math.max(0, week - openWeek) * doorsPerWeek),
    running,
  );
}

function promotedItems({ id, listings, promotions }: Account): Problem[] {
  const listed = listings.map(({ itemId }) => itemId);
  return promotions.flatMap((promotion) =>
    (promotion.itemIds ?? []).flatMap((itemId, index, all): Problem[] => {
      const path = `accounts/${id}/promotions/${promotion.id}/itemIds/${index}`;
      if (!listed.includes(itemId)) {
        const few = listed.slice(0, 8).map(shown).join(', ');
        const expected = `an item this account lists: ${few}${listed.length > 8 ? ' and others' : ''}`;
        return [{ code: 'reference-unknown', path, got: shown(itemId), expected }];
      }
      if (all.indexOf(itemId) === index) return [];
      return [{ code: 'id-repeated', path, got: shown(itemId), expected: 'each item on promotion once' }];
    }),
  );
}
