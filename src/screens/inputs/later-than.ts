// A week for one step more of a list whose steps stand in the order of their weeks.
// Worked figure: after a step in week 26 the next one starts as week 30; in a plan of 28 weeks as week 27.

/** `first` where there is none yet; never past the plan. */
export function laterThan(
  steps: readonly { fromWeek: number }[],
  first: number,
  horizonWeeks: number,
): number {
  const last = steps.at(-1)?.fromWeek ?? Number.NEGATIVE_INFINITY;
  return Math.min(Math.max(first, last + 4), horizonWeeks - 1);
}
