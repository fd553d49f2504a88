// The owners of a company while its events are gone through: who holds how many shares, what comes first at a sale, what waits to
// turn into shares. Shares are counted so that all there are today make 1. Shares got at one price are a class of their own: at
// a sale each class takes its money or its part, whatever else its owner holds.
// Worked figure: a founder of 0.8 and others of 0.2, and 0.25 new shares: the founder holds 64 %.
import type { Basis } from './basis.ts';
import type { DatedFlow, Stake } from './contract.ts';
import type { OfferPart } from './list.ts';
import type { DilutionRow, Holding } from './types.ts';
import type { Claim } from './waterfall.ts';

export interface Owner {
  id: string;
  kind: Holding['kind'];
  name: string;
  /** Of all its classes. */
  shares: number;
  /** What comes first to it at a sale, minor units, of all its classes. */
  preference: number;
}

/** An owner's shares of one class. */
export interface ClassOfShares extends Claim {
  /** Place of the owner among `owners`. */
  owner: number;
  /** What they were got at: a round's id, or words with a space, which no id has; 'plain' of today's and the pool's. */
  of: string;
}

export interface PartStake {
  part: OfferPart;
  name: string;
  stake: Stake;
}

/** A round as the company meets it; minor units. */
export interface Round {
  id: string;
  label: string;
  week: number;
  amount: number;
  preMoney: number;
  poolRate: number;
}

export interface CompanyArgs {
  basis: Basis;
  founderRate: number;
  poolRate: number;
  rounds: readonly Round[];
  stakes: readonly PartStake[];
}

export interface Company {
  owners: Owner[];
  classes: ClassOfShares[];
  rows: DilutionRow[];
  /** What the events add to the funder's flows: notes paid back, money paid in to keep a part. */
  flows: (DatedFlow & { partId: string })[];
  /** Money of rounds from others, by week. */
  roundMoney: { week: number; amount: number }[];
  /** Rounds whose price what converts, and their pool, would leave nothing of: they don't happen. */
  failedRounds: string[];
}

export interface Unconverted {
  id: string;
  name: string;
  stake: Extract<Stake, { by: 'converts' }>;
}

export interface World extends Company {
  args: CompanyArgs;
  waiting: Unconverted[];
  /** Of a stake for shares: how many its asked money buys in all. */
  sharesFor: Map<string, number>;
  proRata: Set<string>;
}

/** Shares that an owner gets, who may hold some already. */
export interface MoreShares extends Pick<Owner, 'id' | 'kind' | 'name'>, Partial<Claim> {
  shares: number;
  of: string;
}

export function addShares(world: World, { id, kind, name, of, ...claim }: MoreShares): void {
  const { shares, preference = 0, participates = false } = claim;
  let at = world.owners.findIndex((each) => each.id === id && each.kind === kind);
  if (at < 0) at = world.owners.push({ id, kind, name, shares: 0, preference: 0 }) - 1;
  const holder = world.owners[at] as Owner;
  holder.shares += shares;
  holder.preference += preference;
  const own = world.classes.find((each) => each.owner === at && each.of === of);
  if (own === undefined) world.classes.push({ owner: at, of, shares, preference, participates });
  else {
    own.shares += shares;
    own.preference += preference;
  }
}

export function totalOf({ owners }: World): number {
  return owners.reduce((sum, { shares }) => sum + shares, 0);
}

export function addRow(world: World, row: Omit<DilutionRow, 'shares'>): void {
  const total = totalOf(world);
  const shares = world.owners.map(({ id, kind, name, shares: held }) => ({
    id,
    kind,
    name,
    rate: held / total,
  }));
  world.rows.push({ ...row, shares });
}
