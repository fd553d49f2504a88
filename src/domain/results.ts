// Everything computed from one plan, handed to screens and to the command line alike.
import type { DealResult } from './deals/types.ts';
import type { LadderResult } from './ladder/types.ts';
import type { Compiled } from './rollout/compiled.ts';
import type { FreeRun } from './rollout/free.ts';
import type { PassResult, RolloutReading } from './rollout/types.ts';

export type VerdictState = 'holds' | 'tight' | 'fails' | 'unknown';
export type VerdictName = 'ladder' | 'deal' | 'cash' | 'promise';

export interface Verdict {
  name: VerdictName;
  state: VerdictState;
  /** The one figure, formatted for reading ("0.63 of 4.99", "−12,300 · week 9"); '' when unknown. */
  figure: string;
  /** The same figure as a plain decimal text for machines, or null. */
  value: string | null;
  /** What binds, in a sentence. */
  reason: string;
  /** Account and item it is about, where it is about one. */
  accountId: string | null;
  itemId: string | null;
}

/** The guess a verdict leans on most: re-run at its plausible ends. */
export interface LeansOn {
  verdict: VerdictName;
  path: string;
  /** "Stores pay 10 days late" */
  label: string;
  flips: boolean;
  /** The end that flips or moves it most, as text, and the state there. */
  end: string;
  stateThere: VerdictState;
}

export interface Results {
  currency: string;
  minorDigits: number;
  /** Account outside, listing inside, in plan order. */
  ladders: readonly LadderResult[];
  deals: readonly DealResult[];
  pass: PassResult;
  reading: RolloutReading;
  verdicts: Record<VerdictName, Verdict>;
  /** What the pass ran on, for its workings and the solves. */
  compiled: Compiled;
  free: FreeRun;
}
