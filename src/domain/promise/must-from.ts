// What each row of what would have to be true was worked out from, so that it can be said and checked.
// Worked figure: 170 doors claimed, none open, 8 weeks from the first opening on: 170 ÷ 8 = 21.25 a week.
import type { BreakEvenOf } from './mean-rates.ts';

/** Weeks from 0; money in minor units. */
export type MustFrom =
  /** The rates of the evidence times so many, which the whole plan was run with; null: no number did it. */
  | { by: 'rate'; times: number | null }
  | { by: 'breakEven'; accounts: readonly BreakEvenOf[] }
  /** Doors in the claim's week (null: no number did it) and those expected, less those open already, over the weeks. */
  | { by: 'pace'; doors: number | null; expected: number; running: number; weeks: number; firstWeek: number }
  /** The lids of `week` times so many. */
  | { by: 'lid'; times: number | null; week: number }
  /** The lowest cash in the week up to `week` that most is missing in, of the run with the claim's doors and no new funding. */
  | { by: 'hole'; opening: number; lowest: number; lowestWeek: number; week: number };
