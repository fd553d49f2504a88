// The words after --range and --seed, read; or why they can't be, as part of a sentence.
// Worked example: ["10000"] and ["7"] are 10,000 draws of seed 7; ["10,000"] is refused.

import { shown } from '../domain/plan/shown.ts';
import { DRAWS_LEAST, DRAWS_MOST, SEED_MOST, SEED_USUAL } from '../domain/promise/range/index.ts';

export interface RangeAsked {
  draws: number;
  seed: number;
}

/** What each option was given, as often as it was; null where there is no --range. */
export function rangeAskedOf(
  ranges: readonly string[],
  seeds: readonly string[],
): RangeAsked | string | null {
  const [range] = ranges;
  const [seed] = seeds;
  if (ranges.length > 1) return '--range is given twice';
  if (seeds.length > 1) return '--seed is given twice';
  if (range === undefined) return seed === undefined ? null : '--seed is given without --range';
  const draws = wholeIn(range, DRAWS_LEAST, DRAWS_MOST);
  if (draws === null)
    return `--range is given ${shown(range)}; expected ${DRAWS_LEAST} to ${DRAWS_MOST} draws, like 10000`;
  const from = seed === undefined ? SEED_USUAL : wholeIn(seed, 0, SEED_MOST);
  if (from === null)
    return `--seed is given ${shown(seed ?? '')}; expected a whole number from 0 to ${SEED_MOST}`;
  return { draws, seed: from };
}

function wholeIn(text: string, least: number, most: number): number | null {
  if (!/^\d{1,10}$/.test(text)) return null;
  const value = Number(text);
  return value >= least && value <= most ? value : null;
}
