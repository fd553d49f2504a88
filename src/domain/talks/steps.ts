// One press of a term's step: to the next round multiple that way, or to the chain's next price point. A tenth of it for a
// long press. Worked figure: slotting 253 steps by 10: up to 260, down to 250; by a tenth to 254 and 252.

import type { PricePoints } from '../ladder/price-points.ts';
import { moneyStep } from '../ladder/step-rung.ts';
import { dec } from '../money/decimal.ts';
import { nextPriceOf, traitsOf } from './kinds.ts';
import type { Term } from './types.ts';

/** Steps of money and doors from nothing: this many of the term's grid. */
const FIRST_STEP_GRIDS = 10;

/** The value one step away, within the term's ends; with price points a tag goes to the next of them, at either size. */
export function stepOf(
  term: Term,
  value: number,
  direction: 1 | -1,
  size: 'step' | 'tenth',
  pricePoints: PricePoints | null = null,
): number {
  if (pricePoints && term.unit === 'price') return nextPriceOf(value, pricePoints, direction) ?? value;
  const whole = stepSize(term, value);
  const step = size === 'step' ? whole : tenthOf(term, whole);
  const turns = value / step;
  const near = Math.round(turns);
  const from = Math.abs(turns - near) < 1e-6 ? near : direction > 0 ? Math.floor(turns) : Math.ceil(turns);
  const next = Number(((from + direction) * step).toFixed(6));
  const held = Math.min(term.most, Math.max(term.least, next));
  // an end between two round multiples is a step of its own, and past it there is none
  return direction > 0 ? Math.max(value, held) : Math.min(value, held);
}

function stepSize(term: Term, value: number): number {
  const fixed = traitsOf(term.name)?.step ?? null;
  if (fixed !== null) return fixed;
  if (value <= 0) return term.grid * FIRST_STEP_GRIDS;
  return Math.max(term.grid, moneyStep(dec(String(value))).toNumber());
}

const WHOLE = new Set<Term['unit']>(['days', 'weeks', 'cases', 'doors']);

function tenthOf({ unit, grid }: Term, step: number): number {
  if (WHOLE.has(unit)) return Math.max(1, Math.round(step / 10));
  return unit === 'share' ? step / 10 : Math.max(Math.min(grid, step), step / 10);
}
