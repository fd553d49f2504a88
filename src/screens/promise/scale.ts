// The ends of the promise ruler's rods: from 0 to a round number that holds everything drawn, in four to seven rods.
// Worked figure: up to 1,900 doors: rods of 500, five ends from 0 to 2,000.

const ROUND = [1, 2, 2.5, 5, 10] as const;
const RODS_MOST = 6;
/** Amounts have four decimals at most. */
const LEAST = 1e-4;

/**
 * Rising, evenly apart, the first 0, the last at or above `most`; `whole` keeps them whole. No amount
 * is below `LEAST` but 0, which counts as 1.
 */
export function rodEnds(most: number, whole: boolean): number[] {
  const reach = most >= LEAST && Number.isFinite(most) ? most : 1;
  const rough = reach / RODS_MOST;
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = ROUND.find((each) => each * power >= rough * (1 - 1e-9)) ?? 10;
  const rod = whole ? Math.max(1, Math.ceil(factor * power)) : factor * power;
  const rods = Math.max(1, Math.ceil(reach / rod - 1e-9));
  return Array.from({ length: rods + 1 }, (_, index) => index * rod);
}
