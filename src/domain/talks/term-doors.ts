// Terms of how much of the chain we get, and who bears what does not sell: doors, guaranteed sale.
// Worked figure: 60 doors in waves of 40 and 20, set to 45, open 40 and 5; set to 80, open 40 and 40 at the second's pace.
import type { Account } from '../plan/index.ts';
import { openedBefore } from '../plan/rules/conduct.ts';
import { withDoors } from '../rollout/solve.ts';
import { type TermKind, textOf, upToTwice } from './kind.ts';

const DOORS_MOST = 100_000;

/** The last week that any field of a plan can name. */
const LAST_WEEK = 519;

export const doors: TermKind = {
  name: 'doors',
  label: 'Doors',
  unit: 'doors',
  meaning: 'doors the waves open: fewer drop the last to open, more join the last wave',
  step: null,
  worthStep: 1,
  better: 'higher',
  bothWays: true,
  grid: () => 1,
  least: 1,
  most: ({ account }) => Math.max(doorsOf(account), mostDoors(account)),
  mostBecause: ', as many as its waves can open',
  farthest: upToTwice,
  isOffered: ({ account }) => account.waves.length > 0,
  read: ({ account }) => doorsOf(account),
  write: (at, value) => {
    const { plan } = withDoors(
      { plan: at.plan, ladders: [], landed: [], minorDigits: at.minorDigits },
      at.account,
      value,
    );
    const waves = plan.accounts.find(({ id }) => id === at.account.id)?.waves ?? [];
    return { ...at.account, waves, cuts: cutsWithin({ ...at.account, waves }) };
  },
  assumed: () => null,
};

/** Planned closings can't close more than is open by then: they close fewer, or none. */
function cutsWithin(account: Pick<Account, 'cuts' | 'waves' | 'runningDoors'>): Account['cuts'] {
  let closed = 0;
  const most = new Map(
    [...account.cuts]
      .sort((x, y) => x.week - y.week)
      .map(({ id, week, doors }) => {
        const closes = Math.min(doors, openedBefore(account, week) - closed);
        closed += closes;
        return [id, closes];
      }),
  );
  return account.cuts.flatMap((cut) => {
    const doors = most.get(cut.id) ?? 0;
    return doors > 0 ? [{ ...cut, doors }] : [];
  });
}

function doorsOf({ waves }: Pick<Account, 'waves'>): number {
  return waves.reduce((sum, wave) => sum + wave.doors, 0);
}

/** Ten times the plan, and no more than the last wave can open by the last week there is. */
function mostDoors(account: Account): number {
  const [last] = [...account.waves].sort((x, y) => y.openWeek - x.openWeek);
  if (!last) return 0;
  const before = doorsOf(account) - last.doors;
  const room = (LAST_WEEK + 1 - last.openWeek) * last.doorsPerWeek;
  return Math.min(doorsOf(account) * 10, before + Math.min(room, DOORS_MOST));
}

const REVIEW_WEEKS = 26;

export const guarantee: TermKind = {
  name: 'guarantee',
  label: 'Guarantee',
  unit: 'share',
  meaning: 'share of the goods expected back under a guaranteed sale; 0: sold when shipped',
  step: 0.05,
  worthStep: 0.01,
  better: 'lower',
  bothWays: false,
  grid: () => 0.01,
  least: 0,
  most: () => 0.99,
  mostBecause: '',
  farthest: () => 0,
  // Through a depot nobody knows which units came back from which shelf: the plan's rules refuse it.
  isOffered: ({ account: { sale, depot } }) => sale.by !== 'scan' && depot === null,
  read: ({ account: { sale } }) => (sale.by === 'guaranteed' ? Number(sale.expectedReturnRate) : 0),
  write: ({ account }, value) => {
    if (value === 0) return { ...account, sale: { by: 'shipment' } };
    const { sale, table } = account;
    const before =
      sale.by === 'guaranteed'
        ? sale
        : { reviewWeeks: table?.reviewWeeks ?? REVIEW_WEEKS, resaleableShare: '0' };
    return { ...account, sale: { ...before, by: 'guaranteed', expectedReturnRate: textOf(value, 6) } };
  },
  assumed: ({ account: { sale } }) =>
    sale.by === 'guaranteed' ? null : 'returned at the first review, none of it fit for sale again; guess',
};
