// The seven numbers of a plan that is there and still has a quick plan's shape: each accepted text is an edit of the plan
// like any other, with undo; defaults that follow from the numbers follow.
// Worked example: 350 stores typed over 60 also moves the doors a week from 8 to 44, unless those were typed.
import { useState } from 'preact/hooks';
import type { Session } from '../../app/session.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { fine } from '../../domain/problems.ts';
import {
  SEVEN_KEYS,
  SEVEN_PATHS,
  type SevenKey,
  type SevenNumbers,
  sevenOf,
  shownWith,
  withSeven,
} from '../../domain/quick/index.ts';
import { problemSentence } from '../shared/problem-words.ts';
import { useSession } from '../shared/session-context.ts';
import type { SevenModel } from './model.ts';
import { readSeven, type SevenTexts, textsOf } from './read-seven.ts';

/** Text under the fingers and the number the plan held right after it; another number means undo, or another view. */
type Typed = Partial<Record<SevenKey, { text: string; value: string | number | null }>>;

/** Null where the plan is not open, or holds more than seven numbers say. */
export function usePlanSeven(planId: string): SevenModel | null {
  const session = useSession();
  const [typed, setTyped] = useState<Typed>({});
  const plan = session.plan.value;
  const seven = plan?.id === planId ? sevenOf(plan) : null;
  if (plan === null || seven === null) return null;
  const { currency } = plan;
  const texts = textsShown({ typed, seven, currency });
  const read = readSeven({ texts, before: seven, currency });
  const shown = session.results.value;
  const results = shown?.results ?? null;
  return {
    texts,
    problems: { ...read.problems, ...refusedByPlan(session, plan) },
    seven,
    currency,
    plan,
    results,
    parts: results === null ? [] : shownWith(seven),
    older: Object.keys(read.problems).length > 0 || shown?.revision !== session.revision.value,
    trouble: '',
    type: (key, text) => {
      const next = readSeven({ texts: { ...texts, [key]: text }, before: seven, currency });
      if (next.problems[key] === undefined) {
        edit(session, SEVEN_PATHS[key], { [key]: next.seven[key] });
      }
      const after = session.plan.value === null ? null : sevenOf(session.plan.value);
      setTyped({ ...typed, [key]: { text, value: after?.[key] ?? null } });
    },
    leave: () => {
      setTyped(
        Object.fromEntries(
          Object.entries(typed).filter(([key]) => read.problems[key as SevenKey] !== undefined),
        ),
      );
      session.endStep();
    },
    set: (change) => edit(session, 'accounts', change),
  };
}

function edit(session: Session, at: string, change: Partial<SevenNumbers>): void {
  session.run(
    (before: Plan, args: { change: Partial<SevenNumbers> }) => {
      const now = sevenOf(before);
      return now === null ? fine(before) : withSeven(before, { ...now, ...args.change });
    },
    { change },
    at,
  );
}

function textsShown(args: { typed: Typed; seven: SevenNumbers; currency: string }): SevenTexts {
  const own = textsOf(args.seven, args.currency);
  const text = (key: SevenKey) => {
    const typed = args.typed[key];
    return typed !== undefined && typed.value === args.seven[key] ? typed.text : own[key];
  };
  return Object.fromEntries(SEVEN_KEYS.map((key) => [key, text(key)])) as SevenTexts;
}

/** Numbers that are fine by themselves and not with the rest of the plan. */
function refusedByPlan(session: Session, plan: Plan): Partial<Record<SevenKey, string>> {
  const entries = SEVEN_KEYS.flatMap((key) => {
    const problem = session.problems.value.get(SEVEN_PATHS[key])?.[0];
    return problem === undefined ? [] : [[key, problemSentence(plan, problem)] as const];
  });
  return Object.fromEntries(entries);
}
