// Words of the Promise view that stand in several of its parts: how far an account is agreed, how late it may be, the
// amounts of a claim. Worked example: "1,900 doors open on 1 Oct 2027".
import { dec } from '../../domain/money/decimal.ts';
import { tenths } from '../../domain/money/format.ts';
import type { Account, Plan, Standing } from '../../domain/plan/index.ts';
import { RUNG_CHANCES } from '../../domain/promise/rungs.ts';
import { claimedWords } from '../../domain/verdicts/promise.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

export type Claim = NonNullable<Plan['promise']['claim']>;

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

/** What may open: the doors of its waves; where it has none, those that are open. */
export function doorsText(account: Account, say: ScreenSay): string {
  const waves = plannedDoors(account);
  const open = account.runningDoors.reduce((sum, { doors }) => sum + doors, 0);
  if (waves === 0) return `${say.count(open)} open`;
  return `${say.count(waves)} ${waves === 1 ? 'door' : 'doors'}${open === 0 ? '' : `, ${say.count(open)} open`}`;
}

/** Doors that its waves open. */
export function plannedDoors({ waves }: Pick<Account, 'waves'>): number {
  return waves.reduce((sum, { doors }) => sum + doors, 0);
}

/** "1,900 doors open on 1 Oct 2027", or "48,000 units sold from 2 Mar 2026 to 1 Oct 2027". */
export function claimText(plan: Plan, claim: Claim, say: ScreenSay): string {
  const amount = claimedWords(plan, claim, say);
  const by = say.date(claim.byDate);
  if (claim.of === 'doors') return `${amount} open on ${by}`;
  const what = claim.of === 'units' ? 'sold' : 'of revenue';
  return `${amount} ${what} from ${say.date(plan.startDate)} to ${by}`;
}

/** A rate of sale, to .1. */
export function rateText(rate: number, { look }: Pick<ScreenSay, 'look'>): string {
  return tenths(look, dec(rate));
}
