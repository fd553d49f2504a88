// Terms of the first promotion: how many weeks, how deep, and who pays for the depth. The lift goes with the depth, in
// proportion, so that a promotion that takes nothing off sells nothing more and ends where having none begins.
// Worked figure: 20 % off that doubles sales, cut to 10 % off, sells half as much again.
import type { Account } from '../plan/index.ts';
import { type At, type TermKind, textOf, upToTwice } from './kind.ts';

type Promotion = Account['promotions'][number];

export const PROMOTION_ID = 'talks-promo';

/** What a promotion is until more is said of it. */
const ASSUMED = { weeks: 4, depthRate: 0.2, liftRate: 1 } as const;
const ASSUMED_WORDS = '4 weeks, 20 % off, ours to fund, from week 8 after opening; sales double; guess';

/** Of an account without a promotion: the one that would be made. */
function made({ plan, account }: At): Promotion {
  const first = account.waves.reduce(
    (least, { openWeek }) => Math.min(least, openWeek),
    Number.POSITIVE_INFINITY,
  );
  const from = Number.isFinite(first) ? first : 0;
  return {
    id: PROMOTION_ID,
    label: 'Promotion',
    fromWeek: Math.min(from + 8, plan.horizonWeeks - 1),
    weeks: ASSUMED.weeks,
    depthRate: textOf(ASSUMED.depthRate, 6),
    fundedShare: '1',
    fundedBy: 'scanBack',
    buyInWeeks: 0,
    lagWeeks: 4,
    liftRate: textOf(ASSUMED.liftRate, 6),
    itemIds: null,
    sisterShare: '0',
    dipShare: '0',
    dipWeeks: 0,
  };
}

function withFirst(account: Account, promotion: Promotion | null): Account {
  const [, ...others] = account.promotions;
  return { ...account, promotions: promotion ? [promotion, ...others] : others };
}

/** Lift in proportion to depth, at most what a plan can hold. */
function deeper(promotion: Promotion, depth: number): Promotion {
  const before = Number(promotion.depthRate);
  const lift = before === 0 ? Number(promotion.liftRate) : (Number(promotion.liftRate) * depth) / before;
  return { ...promotion, depthRate: textOf(depth, 6), liftRate: textOf(Math.min(100, lift), 6) };
}

const shared = {
  better: 'lower',
  bothWays: true,
  least: 0,
  mostBecause: '',
  isOffered: () => true,
} as const;

const assumed = ({ account }: At) => (account.promotions.length > 0 ? null : ASSUMED_WORDS);

export const promoWeeks: TermKind = {
  ...shared,
  name: 'promoWeeks',
  label: 'Promo weeks',
  unit: 'weeks',
  meaning: 'weeks of the first promotion; 0 takes it out',
  step: 1,
  worthStep: 1,
  grid: () => 1,
  most: () => 52,
  farthest: upToTwice,
  read: ({ account }) => account.promotions[0]?.weeks ?? 0,
  write: (at, value) =>
    withFirst(at.account, value === 0 ? null : { ...(at.account.promotions[0] ?? made(at)), weeks: value }),
  assumed,
};

export const promoDepth: TermKind = {
  ...shared,
  name: 'promoDepth',
  label: 'Promo depth',
  unit: 'share',
  meaning: 'share off the shelf price in the first promotion, its lift in proportion; 0 takes it out',
  step: 0.05,
  worthStep: 0.01,
  grid: () => 0.01,
  most: () => 0.99,
  farthest: (value, way) => (way > 0 ? Math.min(0.6, value * 2) : 0),
  read: ({ account }) => Number(account.promotions[0]?.depthRate ?? 0),
  write: (at, value) =>
    withFirst(at.account, value === 0 ? null : deeper(at.account.promotions[0] ?? made(at), value)),
  assumed: (at) => assumed(at) ?? 'extra sales grow and shrink with the depth; guess',
};

export const promoFunded: TermKind = {
  ...shared,
  bothWays: false,
  name: 'promoFunded',
  label: 'Promo funded',
  unit: 'share',
  meaning: 'our share of what the first promotion takes off',
  step: 0.25,
  worthStep: 0.01,
  grid: () => 0.05,
  most: () => 1,
  farthest: () => 0,
  read: ({ account }) => Number(account.promotions[0]?.fundedShare ?? 1),
  // nothing to fund without a promotion
  write: ({ account }, value) => {
    const [first] = account.promotions;
    return first ? withFirst(account, { ...first, fundedShare: textOf(value, 6) }) : account;
  },
  assumed,
};
