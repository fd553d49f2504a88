// One step of a rung up or down, as a button or an arrow key makes it: a shelf price goes to the chain's next price point,
// margins and markups by half a point, money by 1, 2 or 5 times a power of ten, whichever is nearest 4 % of it. Steps
// land on round multiples. Worked figure: a list price of 2.53 steps by 0.10: up to 2.60, down to 2.50.
import { type Decimal, dec } from '../money/decimal.ts';
import { gridOf, onGrid } from '../money/grid.ts';
import { priceText } from '../money/plain.ts';
import type { Plan } from '../plan/index.ts';
import { fine, type Outcome, trouble } from '../problems.ts';
import { ladderFor } from './ladder.ts';
import { moveRung, type RungMoved } from './move-rung.ts';
import { nextPoint } from './price-points.ts';
import type { RungTarget } from './rung-target.ts';
import { type Place, placeOf, whyNoRung } from './rungs.ts';
import type { LadderResult } from './types.ts';

export interface RungStep {
  accountId: string;
  itemId: string;
  rung: string;
  way: 'up' | 'down';
  givesWay: string;
}

/** Step a rung; problems as for moving it, and one where no price point lies that way. */
export function stepRung(plan: Plan, step: RungStep): Outcome<RungMoved> {
  const place = placeOf(plan, step);
  if (!place.ok) return place;
  const unknown = whyNoRung(place.value.account, step.rung);
  if (unknown) return trouble(unknown);
  const now = ladderFor(place.value);
  if (!now.ok) return now;
  const to = steppedTo(place.value, now.value, step);
  return to.ok ? moveRung(plan, { ...step, to: to.value }) : to;
}

function steppedTo(place: Place, now: LadderResult, { rung, way }: RungStep): Outcome<RungTarget> {
  const { account, listing } = place;
  if (rung === 'shelf') return shelfTarget(place, now, way);
  if (rung === 'landed') return fine(priceTarget(now.landed.unit, way));
  if (rung === 'list') {
    if (listing.list.by !== 'margin') return fine(priceTarget(now.list, way));
    return fine({ by: 'margin', rate: steppedRate(dec(listing.list.rate), way) });
  }
  const rule = account.hands.find(({ id }) => id === rung)?.rule;
  const result = now.hands.find(({ id }) => id === rung);
  if (!rule || !result) throw new Error(`no hand ${rung} at ${account.id}`);
  if (rule.by === 'fixed')
    return fine({ by: 'fixed', amount: steppedMoney(dec(rule.amount), way), per: rule.per });
  if (rule.by === 'markup') return fine({ by: 'markup', rate: steppedRate(dec(rule.rate), way) });
  const rate = rule.by === 'margin' ? dec(rule.rate) : result.marginRate;
  return fine({ by: 'margin', rate: steppedRate(rate, way) });
}

function shelfTarget({ account }: Place, now: LadderResult, way: 'up' | 'down'): Outcome<RungTarget> {
  if (!account.pricePoints) return fine(priceTarget(now.shelf, way));
  const point = nextPoint(gridOf(now.shelf), account.pricePoints, way);
  if (point !== null) return fine({ by: 'price', amount: onGrid(point).toFixed() });
  return trouble({
    code: 'rung-unsolvable',
    path: `accounts/${account.id}/pricePoints`,
    got: `a shelf price of ${priceText(now.shelf)}`,
    expected: `a price point ${way === 'up' ? 'above' : 'below'} it`,
  });
}

function priceTarget(amount: Decimal, way: 'up' | 'down'): RungTarget {
  return { by: 'price', amount: steppedMoney(amount, way) };
}

const HALF_POINT = dec('0.005');

function steppedRate(rate: Decimal, way: 'up' | 'down'): string {
  return stepped(rate, HALF_POINT, way).toFixed();
}

function steppedMoney(amount: Decimal, way: 'up' | 'down'): string {
  return stepped(amount, moneyStep(amount), way).toFixed();
}

/** The next multiple of `size` that way, from a value that may lie between two. */
function stepped(value: Decimal, size: Decimal, way: 'up' | 'down'): Decimal {
  const turns = value.div(size);
  return (way === 'up' ? turns.floor().plus(1) : turns.ceil().minus(1)).times(size);
}

/** 1, 2 or 5 times a power of ten, nearest to 4 % of an amount by ratio, and no less than the price grid: 250 gives 10. */
export function moneyStep(amount: Decimal): Decimal {
  const aim = amount.toNumber() * 0.04;
  if (!(aim > 0.0001)) return dec('0.0001');
  const power = Math.floor(Math.log10(aim));
  const [first = 1, ...others] = [1, 2, 5, 10];
  const apart = (times: number) => Math.abs(Math.log((times * 10 ** power) / aim));
  const nearest = others.reduce((best, times) => (apart(times) < apart(best) ? times : best), first);
  return dec(nearest).times(dec(10).pow(power));
}
