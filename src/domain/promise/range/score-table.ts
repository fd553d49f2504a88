// A quantity by its normal score, as a table that is read with straight lines between its places: 641 scores from -5 to 5.
// Worked figure: a spread of 0 is 1 at every score, exactly.
import { type Belief, sharesOfMeans } from '../rate-of-sale.ts';
import { normalShareBelow } from './normal.ts';

const STEPS_PER_SCORE = 64;
const REACH = 5;
const PLACES = 2 * REACH * STEPS_PER_SCORE + 1;

/** e^(spread x score): 1 in the middle. */
export function spreadTable(spread: number): Float64Array {
  return byScore((score) => Math.exp(spread * score));
}

/** Quantiles of what is believed of the mean rate of sale, over the plan's own rate. */
export function believedTable(belief: Belief, planned: number): Float64Array {
  const { means } = belief;
  const byMean = sharesOfMeans(belief);
  const half = Math.log((means[1] ?? 1) / (means[0] ?? 1)) / 2;
  let place = 0;
  let below = 0;
  return byScore((score) => {
    const share = normalShareBelow(score);
    while (place < means.length - 1 && below + (byMean[place] ?? 0) < share) {
      below += byMean[place] ?? 0;
      place += 1;
    }
    const here = byMean[place] ?? 0;
    const part = here === 0 ? 0.5 : Math.min(1, Math.max(0, (share - below) / here));
    return ((means[place] ?? 0) * Math.exp(half * (2 * part - 1))) / planned;
  });
}

function byScore(value: (score: number) => number): Float64Array {
  return Float64Array.from({ length: PLACES }, (_, place) => value(place / STEPS_PER_SCORE - REACH));
}

export function readTable(table: Float64Array, score: number): number {
  const inside = Math.min(REACH, Math.max(-REACH, score));
  const at = (inside + REACH) * STEPS_PER_SCORE;
  const place = Math.min(PLACES - 2, Math.floor(at));
  const from = table[place] ?? 1;
  return from + ((table[place + 1] ?? 1) - from) * (at - place);
}
