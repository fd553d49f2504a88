// The owners of a company while its events are gone through: who holds how many shares, what comes first at a sale, what waits to
// turn into shares. Shares are counted so that all there are today make 1.
// Worked figure: a founder of 0.8 and others of 0.2, and 0.25 new shares: the founder holds 64 %.
import type { Basis } from './basis.ts';
import type { DatedFlow, Stake } from './contract.ts';
import type { OfferPart } from './list.ts';
import type { DilutionRow, Holding } from './types.ts';
import type { Claim } from './waterfall.ts';

export interface Owner extends Claim {
  id: string;
  kind: Holding['kind'];
  name: string;
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
  rows: DilutionRow[];
  /** What the events add to the funder's flows: notes paid back, money paid in to keep a part. */
  flows: (DatedFlow & { partId: string })[];
  /** Money of rounds from others, by week. */
  roundMoney: { week: number; amount: number }[];
  /** Rounds whose price what converts would leave nothing of: they don't happen. */
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

export function owner(made: Pick<Owner, 'id' | 'kind' | 'name' | 'shares'> & Partial<Owner>): Owner {
  return { preference: 0, participates: false, ...made };
}

export function addShares(world: World, more: Parameters<typeof owner>[0]): void {
  const found = world.owners.find(({ id, kind }) => id === more.id && kind === more.kind);
  if (!found) {
    world.owners.push(owner(more));
    return;
  }
  found.shares += more.shares;
  found.preference += more.preference ?? 0;
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
