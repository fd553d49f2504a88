// Two to four deals side by side: accounts of the plan, and one account by other ways to its shelf. Each is put into the
// plan and the whole of it computed, so that cash need is that of the business, not of the deal alone.
// Worked figure: 2.60 a unit to the chain itself and 2.0696 with a distributor at 20.4 % between are 1.60 and 1.0696.
import type { DealResult } from '../deals/types.ts';
import { Decimal, ZERO } from '../money/decimal.ts';
import type { Plan } from '../plan/index.ts';
import { fine, type Outcome, type Problem, trouble } from '../problems.ts';
import type { RolloutReading } from '../rollout/types.ts';
import { byRoute, type Route } from './routes.ts';
import { wholePlan } from './run.ts';

export { ROUTES, type Route } from './routes.ts';

export interface DealPick {
  accountId: string;
  route: Route;
}

export const PICKS_LEAST = 2;
export const PICKS_MOST = 4;

export interface ComparedFigures {
  /** Of what a store sells a week, all products together; of the first product where none sells. */
  contributionPerUnit: Decimal;
  contributionPerStoreWeek: Decimal;
  moneyDownPerDoor: Decimal;
  /** Contribution of the first year less the money put down in it. */
  firstYear: Decimal;
  /** Of the whole plan with this deal in it, and its first week; null: none is needed. */
  cashNeed: Decimal;
  cashNeedWeek: number | null;
  /** Null: not within the term. */
  paybackWeeks: Decimal | null;
  nothingDown: boolean;
  termWeeks: number;
  /** A single product's; null where several are listed, or none breaks even. */
  breakEvenRate: Decimal | null;
  /** Planned over break-even; null where nothing breaks even, or nothing is to be earned back. */
  breakEvenRatio: Decimal | null;
  items: number;
  doors: number;
}

export interface ComparedDeal {
  pick: DealPick;
  name: string;
  /** What this way takes for granted, or null. */
  assumed: string | null;
  /** Null where it can't be computed; then `problems` say why. */
  figures: ComparedFigures | null;
  problems: readonly Problem[];
}

/** In the order picked. A deal that can't be computed has its problems in its column. Problems: a wrong count of picks. */
export function compareDeals(plan: Plan, picks: readonly DealPick[]): Outcome<readonly ComparedDeal[]> {
  if (picks.length < PICKS_LEAST || picks.length > PICKS_MOST) {
    const expected = `${PICKS_LEAST} to ${PICKS_MOST} deals to stand side by side`;
    return trouble({ code: 'field-invalid', path: 'accounts', got: `${picks.length}`, expected });
  }
  return fine(picks.map((pick) => comparedDeal(plan, pick)));
}

export function comparedDeal(plan: Plan, pick: DealPick): ComparedDeal {
  const name = plan.accounts.find(({ id }) => id === pick.accountId)?.name ?? pick.accountId;
  const routed = byRoute(plan, pick.accountId, pick.route);
  if (!routed.ok) return { pick, name, assumed: null, figures: null, problems: routed.problems };
  const { assumed } = routed.value;
  const whole = wholePlan(routed.value.plan);
  if (!whole.ok) return { pick, name, assumed, figures: null, problems: whole.problems };
  const deal = whole.value.deals.find(({ accountId }) => accountId === pick.accountId);
  if (!deal) throw new Error(`no deal for account ${pick.accountId}`);
  const figures = figuresOf(deal, whole.value.reading, whole.value.minorDigits);
  return { pick, name, assumed, figures, problems: [] };
}

/** The ways worth a column of their own: as planned, and the one it isn't. */
export function routesOf(plan: Plan, accountId: string): Route[] {
  const account = plan.accounts.find(({ id }) => id === accountId);
  if (!account) return [];
  return ['asPlanned', account.hands.length > 1 ? 'direct' : 'distributor'];
}

function figuresOf(deal: DealResult, reading: RolloutReading, minorDigits: number): ComparedFigures {
  const single = deal.items.length === 1 ? deal.items[0] : undefined;
  return {
    contributionPerUnit: perUnit(deal),
    contributionPerStoreWeek: deal.contributionPerStoreWeek,
    moneyDownPerDoor: deal.moneyDownPerDoor,
    firstYear: deal.firstYearAfterFixed,
    cashNeed: new Decimal(reading.cashNeed).div(10 ** minorDigits),
    cashNeedWeek: reading.cashNeedWeek,
    paybackWeeks: deal.paybackWeeks,
    nothingDown: deal.nothingDown,
    termWeeks: deal.termWeeks,
    breakEvenRate: single?.breakEvenUnitsPerStoreWeek ?? null,
    breakEvenRatio: deal.breakEvenRatio,
    items: deal.items.length,
    doors: deal.doors,
  };
}

/** Weighed by what each product sells in a store and week. */
function perUnit({ items, contributionPerStoreWeek }: DealResult): Decimal {
  const units = items.reduce((sum, { unitsPerStoreWeek }) => sum.plus(unitsPerStoreWeek), ZERO);
  if (units.isZero()) return items[0]?.contributionPerUnit ?? ZERO;
  return contributionPerStoreWeek.div(units).toDecimalPlaces(4);
}
