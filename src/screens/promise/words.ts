// Words of the Promise view that stand in several of its parts: chances as people say them, how far an account is agreed,
// amounts of a claim. Worked example: a chance of 0.634 is "65 %", one of 0.012 "under 5 %".
import type { Account, Plan, Standing } from '../../domain/plan/index.ts';
import { RUNG_CHANCES } from '../../domain/promise/rungs.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

export type Claim = NonNullable<Plan['promise']['claim']>;

/** To 5 %, since nobody knows it better; 0 and 1 only where they are meant so. */
export function chanceText(chance: number): string {
  if (chance <= 0) return '0 %';
  if (chance >= 1) return '100 %';
  const fives = Math.round(chance * 20) * 5;
  if (fives === 0) return 'under 5 %';
  return fives === 100 ? 'over 95 %' : `${fives} %`;
}

export const RUNG_WORDS: Record<Standing['rung'], string> = {
  orderInHand: 'Order in hand',
  signed: 'Signed',
  saidYes: 'Buyer said yes',
  inTalks: 'In talks',
  hopedFor: 'Hoped for',
};

/** From the surest down. */
export const RUNGS = Object.keys(RUNG_CHANCES) as Standing['rung'][];

/** An account without a standing. */
export const AS_PLANNED = 'Taken as planned';

export function rungText(standing: Standing | null): string {
  return standing === null ? AS_PLANNED : RUNG_WORDS[standing.rung];
}

/** "0 to 8 weeks late, most likely 2"; '' where it can't be late. */
export function slipText(standing: Standing | null): string {
  if (standing === null || standing.slipMostWeeks === 0) return '';
  const { slipLikelyWeeks: likely, slipMostWeeks: most } = standing;
  return `up to ${most} ${most === 1 ? 'week' : 'weeks'} late, most likely ${likely}`;
}

/** Doors that its waves open. */
export function plannedDoors({ waves }: Pick<Account, 'waves'>): number {
  return waves.reduce((sum, { doors }) => sum + doors, 0);
}

/** A number of what the claim counts: "1,900 doors", "48,000 units", "$1,200,000". */
export function amountText(of: Claim['of'], amount: number, say: ScreenSay): string {
  if (of === 'revenue') return say.sum(String(amount));
  return `${say.count(Math.round(amount))} ${of === 'doors' ? 'doors' : 'units'}`;
}

/** "1,900 doors open on 1 Oct 2027", or "48,000 units sold from 2 Mar 2026 to 1 Oct 2027". */
export function claimText(plan: Plan, claim: Claim, say: ScreenSay): string {
  const amount = amountText(claim.of, Number(claim.amount), say);
  const by = say.date(claim.byDate);
  if (claim.of === 'doors') return `${amount} open on ${by}`;
  const what = claim.of === 'units' ? 'sold' : 'of revenue';
  return `${amount} ${what} from ${say.date(plan.startDate)} to ${by}`;
}

/** A rate of sale, to .1. */
export function rateText(rate: number, say: ScreenSay): string {
  return say.number(Math.round(rate * 10) / 10);
}
