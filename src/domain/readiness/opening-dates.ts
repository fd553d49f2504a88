// The dates an opening asks for, and which gates hold it back: on the shelf on the first day of its opening week, out of
// our house as many weeks before as the way takes, ordered or made the lead time before that.
// Worked figure: open in week 6, 1 week on the way, 4 weeks to make: shelf week 6, shipping week 5, ordering week 1.
import { weekStart } from '../calendar.ts';
import type { Account, Gate, Plan } from '../plan/index.ts';

export interface Opening {
  accountId: string;
  waveId: string;
  name: string;
  openWeek: number;
  doors: number;
  /** Day numbers by which gates have to be done, by what they stand before. */
  due: Record<Gate['before'], number>;
  /** Ids of the gates that hold it back themselves. */
  gates: readonly string[];
}

/** Every opening of the plan, in its order. */
export function openingsOf(plan: Plan): Opening[] {
  return plan.accounts.flatMap((account) =>
    account.waves.map((wave) => {
      const shelfWeek = wave.openWeek;
      const shipWeek = shelfWeek - account.terms.transitWeeks - (account.depot?.transitWeeks ?? 0);
      const orderWeek = shipWeek - leadWeeksOf(plan, account);
      const day = (week: number) => weekStart(plan.startDate, week);
      return {
        accountId: account.id,
        waveId: wave.id,
        name: account.waves.length > 1 ? `${account.name}, week ${wave.openWeek}` : account.name,
        openWeek: wave.openWeek,
        doors: wave.doors,
        due: { ordering: day(orderWeek), shipping: day(shipWeek), shelf: day(shelfWeek) },
        gates: plan.readiness.gates
          .filter((gate) => holdsBack(gate, account.id, wave.id))
          .map(({ id }) => id),
      };
    }),
  );
}

export function holdsBack({ holds }: Gate, accountId: string, waveId: string): boolean {
  if (holds.by === 'market') return true;
  if (holds.by === 'accounts') return holds.accountIds.includes(accountId);
  return holds.accountId === accountId && holds.waveIds.includes(waveId);
}

/** The longest lead time of what the account lists. */
function leadWeeksOf(plan: Plan, { listings }: Account): number {
  const listed = listings.map(({ itemId }) => itemId);
  return Math.max(
    0,
    ...plan.items.filter(({ id }) => listed.includes(id)).map(({ supply }) => supply.leadWeeks),
  );
}
