// Terms of money and goods put down to get onto a shelf: slotting, free fill, displays.
// Worked figure: free fill of 2 and 1 cases on two listings reads 2; set to 1 they become 1 and 0.

import type { Account } from '../plan/index.ts';
import { fillPerDoor } from '../rollout/cells.ts';
import { type At, moneyGrid, type TermKind, textOf, upToTwice } from './kind.ts';

const SUM_MOST = 1e11;

/** What the terms of this file have in common. */
const givenToThem = {
  better: 'lower',
  bothWays: false,
  least: 0,
  mostBecause: '',
  farthest: upToTwice,
} as const;

export const slotting: TermKind = {
  ...givenToThem,
  name: 'slotting',
  label: 'Slotting',
  unit: 'sum',
  meaning: 'amount in the way the account asks it (a door, item or chain); a door where it asks none',
  step: null,
  worthStep: 1,
  grid: (at) => moneyGrid(isPerDoor(at.account) ? 1 : 10, at),
  most: () => SUM_MOST,
  isOffered: () => true,
  read: ({ account }) => Number(account.slotting?.amount ?? 0),
  write: ({ account }, value) => ({
    ...account,
    slotting: {
      ...(account.slotting ?? { per: 'door', settled: 'atOpening' }),
      amount: textOf(value, 4),
    },
  }),
  assumed: ({ account }) => (account.slotting ? null : 'a door, paid at its opening'),
};

function isPerDoor({ slotting: asked }: Account): boolean {
  return asked === null || asked.per === 'door' || asked.per === 'itemDoor';
}

export const freeFill: TermKind = {
  ...givenToThem,
  name: 'freeFill',
  label: 'Free fill',
  unit: 'cases',
  meaning: 'free cases a door of each listed item; where items differ, of the one with most',
  step: 1,
  worthStep: 1,
  grid: () => 1,
  most: (at) => Math.max(freeFill.read(at), ...at.account.listings.map((each) => fillCases(at, each))),
  mostBecause: ', the opening fill',
  isOffered: () => true,
  read: ({ account }) => Math.max(...account.listings.map(({ freeCasesPerDoor }) => freeCasesPerDoor)),
  write: (at, value) => {
    const change = value - freeFill.read(at);
    const listings = at.account.listings.map((listing) => ({
      ...listing,
      freeCasesPerDoor: Math.max(0, listing.freeCasesPerDoor + change),
    }));
    return { ...at.account, listings };
  },
  assumed: () => null,
};

function fillCases({ plan, account }: At, listing: Account['listings'][number]): number {
  const item = plan.items.find(({ id }) => id === listing.itemId);
  return item ? fillPerDoor(account, listing, item) / item.caseUnits : 0;
}

type Display = NonNullable<Account['display']>;

const ASSUMED_DISPLAY: Display = {
  buildAmountPerDoor: '0',
  freightAmountPerDoor: '0',
  buildWeeks: 2,
  feeAmountPerStoreWeek: '0',
  weeks: 8,
  liftRate: '0',
  liftEndRate: null,
};

const DISPLAY_WORDS = 'stands 8 weeks, sells nothing more; guess';

function withDisplay(account: Account, changes: Partial<Display>): Account {
  return { ...account, display: { ...(account.display ?? ASSUMED_DISPLAY), ...changes } };
}

export const displayBuild: TermKind = {
  ...givenToThem,
  name: 'displayBuild',
  label: 'Display',
  unit: 'sum',
  meaning: 'amount to build the display, a door',
  step: null,
  worthStep: 1,
  grid: (at) => moneyGrid(1, at),
  most: () => SUM_MOST,
  isOffered: () => true,
  read: ({ account }) => Number(account.display?.buildAmountPerDoor ?? 0),
  write: ({ account }, value) => withDisplay(account, { buildAmountPerDoor: textOf(value, 4) }),
  assumed: ({ account }) => (account.display ? null : DISPLAY_WORDS),
};

export const displayFee: TermKind = {
  ...givenToThem,
  name: 'displayFee',
  label: 'Display fee',
  unit: 'sum',
  meaning: 'amount a store and week while the display stands',
  step: null,
  worthStep: 1,
  grid: (at) => moneyGrid(0.1, at),
  most: () => SUM_MOST,
  isOffered: () => true,
  read: ({ account }) => Number(account.display?.feeAmountPerStoreWeek ?? 0),
  write: ({ account }, value) => withDisplay(account, { feeAmountPerStoreWeek: textOf(value, 4) }),
  assumed: ({ account }) => (account.display ? null : DISPLAY_WORDS),
};
