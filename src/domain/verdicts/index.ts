// The four verdicts of a plan, each one word, one figure, one reason. Thresholds are the plan's own, and judgement.
// What can't be judged says so in words, never as a number.
import type { DealResult } from '../deals/types.ts';
import type { LadderResult } from '../ladder/types.ts';
import type { Plan } from '../plan/index.ts';
import type { Verdict, VerdictName } from '../results.ts';
import type { PassResult, RolloutReading } from '../rollout/types.ts';
import { cashVerdict } from './cash.ts';
import { dealVerdict } from './deal.ts';
import { ladderVerdict } from './ladder.ts';
import { promiseVerdict } from './promise.ts';
import type { Say } from './say.ts';

export interface VerdictArgs {
  plan: Plan;
  ladders: readonly LadderResult[];
  deals: readonly DealResult[];
  pass: PassResult;
  reading: RolloutReading;
  minorDigits: number;
  say: Say;
}

export function verdictsOf(args: VerdictArgs): Record<VerdictName, Verdict> {
  return {
    ladder: ladderVerdict(args.plan, args.ladders, args.say),
    deal: dealVerdict(args),
    cash: cashVerdict(args),
    promise: promiseVerdict(args),
  };
}
