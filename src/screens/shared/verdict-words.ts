// The words of a verdict: its mark's name, and the guess it leans on. Worked example: "Leans on a guess: stores pay 10
// days late. At 30 it fails."
import type { LeansOn, VerdictName, VerdictState } from '../../domain/results.ts';
import { valueWords } from './typed-kinds.ts';

export const VERDICT_NAMES: readonly VerdictName[] = ['ladder', 'deal', 'cash', 'promise'];

export const VERDICT_TITLES: Record<VerdictName, string> = {
  ladder: 'Ladder',
  deal: 'Deal',
  cash: 'Cash',
  promise: 'Promise',
};

export const VERDICT_WORDS: Record<VerdictState, string> = {
  holds: 'Holds',
  tight: 'Tight',
  fails: 'Fails',
  unknown: 'Not known yet',
};

/** The sentence without the word it opens with ("Holds. We keep ..."), where the word stands beside it already. */
export function reasonAlone(reason: string): string {
  return reason.replace(/^(?:Holds|Tight|Fails|Not known yet)\.\s+/, '');
}

/** What the verdict leans on, in a sentence; '' where it leans on no guess. */
export function leansOnWords(leans: LeansOn | null, currency: string): string {
  if (leans === null) return '';
  const { label, path, flips, end, stateThere } = leans;
  // What opens with the name of an account keeps its capital.
  const guess = /^accounts\/[^/]+\/standing\//.test(path)
    ? label
    : `${label.charAt(0).toLowerCase()}${label.slice(1)}`;
  if (!flips) return `Moves most with a guess: ${guess}.`;
  return `Leans on a guess: ${guess}. At ${valueWords({ value: end, path, currency })} it ${AT_THE_END[stateThere]}.`;
}

const AT_THE_END: Record<VerdictState, string> = {
  holds: 'holds',
  tight: 'gets tight',
  fails: 'fails',
  unknown: 'is not known',
};
