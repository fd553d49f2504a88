// The range's door: many seeded draws of a plan, and what they say of cash, doors and revenue. RANGE.md is the method in
// words. Here all of it one after the other, as the command line does it; src/compute deals the draws out to workers.
// Worked figure: 10,000 draws of a plan without spreads are the plan 10,000 times: p10 = p50 = p90.
import { type RangeArgs, runChunk, setUpRange } from './chunk.ts';
import { checkExactly, type ExactCheck } from './exact.ts';
import { mergeChunks, type Range } from './merge.ts';

export { type Chunk, type RangeArgs, type RangeSetup, runChunk, setUpRange } from './chunk.ts';
export { CAUSES, type Cause } from './draws.ts';
export {
  checkExactly,
  type ExactCheck,
  type ExactRun,
  evenDraw,
  type Miss,
  runDrawUnfunded,
} from './exact.ts';
export { type Driver, type Fan, mergeChunks, type Range } from './merge.ts';
export type { Limits } from './quantiles.ts';
export { DRAWS_USUAL, SEED_USUAL, USUAL_RATE_SPREAD } from './usual.ts';

export const DRAWS_LEAST = 100;
export const DRAWS_MOST = 20_000;
export const SEED_MOST = 4_294_967_295;

/** `draws` from DRAWS_LEAST to DRAWS_MOST. */
export function rangeOf(args: RangeArgs, draws: number): Range & { exactCheck: ExactCheck } {
  const setup = setUpRange(args);
  const range = mergeChunks([runChunk(setup, 0, draws)], setup.coarse.weeks);
  return { ...range, exactCheck: checkExactly(setup, draws) };
}
