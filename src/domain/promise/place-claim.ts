// Where the claim lies in what the evidence supports: its chance, and how the chance hangs on each account. Cheap enough
// to be worked out with every edit for doors; units and revenue come from the doors and the rate of sale (sales-odds.ts).
// Worked figure: 0, 50, 100 or 150 doors, a quarter each: 100 doors have a chance of 0.5 and lie above half of all futures.
import type { Plan } from '../plan/index.ts';
import type { PassResult } from '../rollout/types.ts';
import { chanceOfAtLeast, doorsAt, sharedOdds } from './door-odds.ts';
import { type DoorsThen, doorsThen, hasDoorEvidence, weekOfDate } from './doors.ts';
import type { SalesArgs, SalesThen } from './sales-odds.ts';

export type Claim = NonNullable<Plan['promise']['claim']>;

/**
 * Why a claim can't be placed: none was made, nothing speaks for it, its date lies outside the plan's weeks, the rate of
 * sale is said to be anything (SPREAD_MOST), the part of the program that works it out is not there yet.
 */
export type NotPlaced = 'noClaim' | 'noEvidence' | 'beforeStart' | 'pastEnd' | 'tooWide' | 'partMissing';

/**
 * Of the rate of sale's logarithm, all listings together: with more of it a usual future sells some 150 times the plan, or
 * a 150th, and the mean of all is no number to speak of. Judgement, no source.
 */
const SPREAD_MOST = 5;

export interface PlacedClaim {
  claim: Claim;
  /** The plan's week that the date lies in. */
  week: number;
  /** Chance that there is as much by then, or more, 0 to 1. */
  chance: number;
  /** Share of futures with less than the claim, 0 to 1. */
  percentile: number;
  /** Mean: doors, units, or money in the plan's currency. */
  expected: number;
  /** What the given share of futures does not pass: 0.1 and 0.9 are the ends of the 80 % range. */
  at: (share: number) => number;
  /** If everything comes on time and sells as planned. */
  planned: number;
  doors: DoorsThen;
  /** Null for a claim of doors. */
  sales: SalesThen | null;
}

export type Placing = { placed: PlacedClaim } | { placed: null; why: NotPlaced };

type SalesWay = (args: SalesArgs) => SalesThen;
let salesThen: SalesWay | null = null;

/**
 * How units and revenue are worked out. The first screen does without it, so sales-odds.ts hands it in when it is loaded:
 * with what judges plans, without which no own plan is opened or edited.
 */
export function bringSales(way: SalesWay): void {
  salesThen = way;
}

/** Units and revenue need the plan's pass; for doors it isn't looked at. */
export function placeClaim(
  plan: Plan,
  pass: Pick<PassResult, 'accounts' | 'weeks' | 'minorDigits'>,
): Placing {
  const { claim, scans } = plan.promise;
  if (claim === null) return { placed: null, why: 'noClaim' };
  if (!hasDoorEvidence(plan) && (claim.of === 'doors' || scans.length === 0))
    return { placed: null, why: 'noEvidence' };
  const week = weekOfDate(plan, claim.byDate);
  if (week < 0) return { placed: null, why: 'beforeStart' };
  const doors = doorsThen(plan, week);
  const amount = Number(claim.amount);
  if (claim.of === 'doors') {
    const { odds, expected, planned } = doors;
    const chance = chanceOfAtLeast(odds, amount);
    const at = (share: number) => doorsAt(odds, share);
    return {
      placed: { claim, week, chance, percentile: 1 - chance, expected, planned, at, doors, sales: null },
    };
  }
  if (week >= pass.weeks) return { placed: null, why: 'pastEnd' };
  if (salesThen === null) return { placed: null, why: 'partMissing' };
  const sales = salesThen({ plan, pass, of: claim.of, byDate: claim.byDate });
  if (sales.spread > SPREAD_MOST) return { placed: null, why: 'tooWide' };
  const chance = sales.chanceOfAtLeast(amount);
  const { expected, planned, at } = sales;
  return { placed: { claim, week, chance, percentile: 1 - chance, expected, planned, at, doors, sales } };
}

/** How the chance of a claim hangs on one account. */
export interface ChanceOfAccount {
  accountId: string;
  /** Its doors by the date: expected, and if it comes on time. */
  expected: number;
  planned: number;
  /** Chance of the claim if its waves never come, and if they surely do (late as they may be). */
  without: number;
  withIt: number;
}

/** Account by account, for a claim of doors: many convolutions, so it is asked for apart. Others: an empty list. */
export function chanceByAccount(plan: Plan, { claim, doors, sales }: PlacedClaim): ChanceOfAccount[] {
  if (sales !== null) return [];
  const shared = Number(plan.promise.spreads.sharedRate);
  const amount = Number(claim.amount);
  return doors.accounts.map(({ accountId, expected, planned }, a) => {
    const chanceAt = (chance: number) =>
      chanceOfAtLeast(
        sharedOdds(
          doors.accounts.map((account, other) => (other === a ? { ...account, chance } : account)),
          shared,
        ),
        amount,
      );
    return { accountId, expected, planned, without: chanceAt(0), withIt: chanceAt(1) };
  });
}
