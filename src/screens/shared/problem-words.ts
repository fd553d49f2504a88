// A problem as a person reads it: the field by its label, what came, what was expected, and what is still shown.
// Shares are named in percent here, since that is how they are typed.
// Worked example: "Margin: got 120 %. It must be from 0 to below 100 %. Still showing the result for 42 %."
import type { Plan } from '../../domain/plan/index.ts';
import type { Problem } from '../../domain/problems.ts';
import { placeWords } from './path-words.ts';

/** What the model expects of a field, in the words of the screen; the rest is shown as the model says it. */
const EXPECTED_OF_SHARES: readonly (readonly [start: string, words: string])[] = [
  ['a share from 0 to below 1', 'It must be from 0 to below 100 %.'],
  ['a share from 0 to 1', 'It must be from 0 to 100 %.'],
  ['a number from 0 to 100 with', 'It must be from 0 to 10,000 %.'],
];

export interface FieldProblem {
  label: string;
  /** Shares are typed in percent. */
  isShare: boolean;
  /** What was typed, or null where a control without text was used. */
  typed: string | null;
  /** What the plan still holds, as text; '' where that says nothing. */
  still: string;
  problem: Problem;
}

/** The sentence under a field. */
export function problemWords({ label, isShare, typed, still, problem }: FieldProblem): string {
  const got =
    typed === null ? problem.got : typed.trim() === '' ? 'nothing' : `“${typed.trim().slice(0, 80)}”`;
  const rest = still === '' ? '' : ` Still showing the result for ${still}.`;
  return `${label}: got ${got}. ${expectedWords(problem, isShare ? (typed ?? '') : null)}${rest}`;
}

/** The sentence of a problem that stands by itself, its place named from the plan. */
export function problemSentence(plan: Plan | null, problem: Problem): string {
  const place = plan === null || problem.path === '' ? '' : placeWords(plan, problem.path);
  const where = place === '' ? (problem.path === '' ? 'The plan' : problem.path) : place;
  return `${where}: got ${problem.got}. ${expectedWords(problem, null)}`;
}

/** `percent`: what was typed, where the field is one of percent. */
function expectedWords({ expected }: Problem, percent: string | null): string {
  const share =
    percent === null ? undefined : EXPECTED_OF_SHARES.find(([start]) => expected.startsWith(start));
  if (share === undefined) return `Expected ${expected}${expected.endsWith('.') ? '' : '.'}`;
  // Within its ends and refused all the same: the range alone would not say why.
  const isFine = /[.,]\d{5}/.test(percent ?? '');
  return isFine ? share[1].replace(/\.$/, ', with at most 4 decimals.') : share[1];
}
