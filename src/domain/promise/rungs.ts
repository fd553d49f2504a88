// How likely an account opens its doors, and how late, by how far it is agreed. The chances are judgement, no statistics:
// a person changes them account by account. An account without a standing opens as planned.
// Worked figure: likely 2 weeks late, at most 8: no slip 0.067, two weeks 0.2, the mean 3.33 weeks.
import type { Account } from '../plan/index.ts';

type Standing = NonNullable<Account['standing']>;

/** Usual chance by rung (judgement, no source). */
export const RUNG_CHANCES: Readonly<Record<Standing['rung'], number>> = {
  orderInHand: 0.95,
  signed: 0.9,
  saidYes: 0.6,
  inTalks: 0.25,
  hopedFor: 0.05,
};

/** Chance that its waves open at all, 0 to 1. */
export function chanceOf({ standing }: Pick<Account, 'standing'>): number {
  if (standing === null) return 1;
  return standing.chance === null ? RUNG_CHANCES[standing.rung] : Number(standing.chance);
}

/**
 * Shares of 0, 1, 2 ... weeks of slip, adding up to 1: a triangular distribution from no slip, most likely `likely`, to
 * `most`, each whole week weighed by its height (the ends stand half a week inside the triangle, so that none is 0).
 */
export function slipShares({ standing }: Pick<Account, 'standing'>): number[] {
  if (standing === null) return [1];
  const { slipLikelyWeeks: likely, slipMostWeeks: most } = standing;
  const heights = Array.from({ length: most + 1 }, (_, week) =>
    week <= likely ? (week + 1) / (likely + 1) : (most + 1 - week) / (most + 1 - likely),
  );
  const total = heights.reduce((sum, height) => sum + height, 0);
  return heights.map((height) => height / total);
}
