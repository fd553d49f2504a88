// What the seven-number screen shows and does, whichever plan it is about: one to be (new-model.ts) or one that is there
// (plan-model.ts). Worked example: with three numbers typed, `parts` holds "ladder" and nothing else may be shown.
import type { Plan } from '../../domain/plan/index.ts';
import type { SevenKey, SevenNumbers, ShownPart } from '../../domain/quick/index.ts';
import type { Results } from '../../domain/results.ts';
import type { SevenProblems, SevenTexts } from './read-seven.ts';

export interface SevenModel {
  texts: SevenTexts;
  problems: SevenProblems;
  /** The last good numbers. */
  seven: SevenNumbers;
  currency: string;
  /** Null while the first three numbers are missing, or where nothing can be computed. */
  plan: Plan | null;
  results: Results | null;
  parts: readonly ShownPart[];
  /** What is shown belongs to an earlier text of some row. */
  older: boolean;
  /** Why sound numbers still can't be computed; '' when they can. */
  trouble: string;
  type: (key: SevenKey, text: string) => void;
  /** The row is left: later keystrokes are another undo step. */
  leave: () => void;
  set: (
    change: Partial<Pick<SevenNumbers, 'freeFill' | 'distributor' | 'productName' | 'chainName'>>,
  ) => void;
}
