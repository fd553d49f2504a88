// The roll-out room's door: a plan with its ladders in, the weekly pass and what is read off it out.
// PASS.md is the description in words; pass.ts is the kernel.
import type { LadderResult, Landed } from '../ladder/types.ts';
import type { Plan } from '../plan/index.ts';
import type { Recorder } from './books.ts';
import { compile } from './compile.ts';
import type { Compiled } from './compiled.ts';
import { type FreeRun, freeRun } from './free.ts';
import { runPass } from './pass.ts';
import { readPass } from './reading.ts';
import type { PassResult, RolloutReading } from './types.ts';

export interface Rollout {
  compiled: Compiled;
  free: FreeRun;
  pass: PassResult;
  reading: RolloutReading;
}

export interface RolloutArgs {
  plan: Plan;
  ladders: readonly LadderResult[];
  landed: readonly Landed[];
  minorDigits: number;
}

/** Throws RangeError(TOO_LARGE) when amounts outgrow exact arithmetic. */
export function rollOut(args: RolloutArgs): Rollout {
  const compiled = compile(args);
  const free = freeRun(compiled);
  const pass = runPass({ compiled, shippable: free.shippable, recorder: null });
  const unfunded = withoutFunding(compiled, free, pass);
  const reading = readPass({ compiled, pass, unfunded, bufferWeeks: args.plan.thresholds.cashBufferWeeks });
  return { compiled, free, pass, reading };
}

/** The same plan without the funding it counts on; the same pass when it counts on none. */
export function withoutFunding(compiled: Compiled, free: FreeRun, pass: PassResult): PassResult {
  if (compiled.business.funding.length === 0) return pass;
  const bare = { ...compiled, business: { ...compiled.business, funding: [] } };
  return runPass({ compiled: bare, shippable: free.shippable, recorder: null });
}

/** The plan's pass again with every posting told to a recorder, for the workings of a figure. */
export function replay(rollout: Pick<Rollout, 'compiled' | 'free'>, recorder: Recorder): PassResult {
  return runPass({ compiled: rollout.compiled, shippable: rollout.free.shippable, recorder });
}

/** Mean units on the shelf per open door at the first 52 week-ends, by listing; null when no door opens. */
export function shelfStockMeans(free: FreeRun): (number | null)[] {
  return free.shelf.map(({ stock, doorWeeks }) => (doorWeeks === 0 ? null : stock / doorWeeks));
}
