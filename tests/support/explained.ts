/**
 * A plan with its results and a way of writing, and the explanation of one key of it; a key that explains nothing throws.
 * Worked figure: explained(subjectOf(aPlan()), { of: 'listing', ..., figure: 'list' }).value is "2.60".
 */
import { isoDateOf } from '../../src/domain/calendar.ts';
import { evaluate, type SayFor } from '../../src/domain/evaluate.ts';
import { explain, keyText } from '../../src/domain/explain/index.ts';
import type { Explanation, FigureKey } from '../../src/domain/explain/types.ts';
import type { Plan } from '../../src/domain/plan/index.ts';
import { checkRules } from '../../src/domain/plan/rules.ts';
import { sentence } from '../../src/domain/problems.ts';
import type { Results } from '../../src/domain/results.ts';
import { plainSay, type Say } from '../../src/domain/verdicts/say.ts';
import { parsePlanText } from '../../src/plan-format/text.ts';

export interface Subject {
  plan: Plan;
  results: Results;
  say: Say;
}

export const sayFor: SayFor = ({ minorDigits, startDay }) =>
  plainSay({ minorDigits, startDay, dateOf: isoDateOf });

export function subjectOf(plan: Plan): Subject {
  const [problem] = checkRules(plan);
  if (problem) throw new Error(sentence(problem));
  const outcome = evaluate(plan, sayFor);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  const { currency, minorDigits, compiled } = outcome.value;
  return {
    plan,
    results: outcome.value,
    say: sayFor({ currency, minorDigits, startDay: compiled.startDay }),
  };
}

export function planOfText(text: string): Plan {
  const read = parsePlanText(text);
  if (!read.ok) throw new Error(JSON.stringify(read));
  return read.value;
}

export function explained(subject: Subject, key: FigureKey): Explanation {
  const found = explain({ ...subject, key });
  if (!found) throw new Error(`${keyText(key)} explains nothing`);
  return found;
}
