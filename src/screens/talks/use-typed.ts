// A number of the talks that is typed: the text stays as typed while it differs from what is kept, an accepted text acts
// at once, a refused one stays with its sentence. Worked example: "120" as a margin keeps 42 % in force and says why.
import { useState } from 'preact/hooks';
import type { Problem } from '../../domain/problems.ts';
import { problemWords } from '../shared/problem-words.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { type FieldKind, readNumber, textOf } from '../shared/typed-kinds.ts';

export interface TypedArgs {
  label: string;
  kind: FieldKind;
  /** What is kept, read anew after every edit; null: nothing. */
  read: () => string | number | null;
  /** Keeps a value; gives back what stands against it. Null for an emptied field. */
  put: (value: string | null) => readonly Problem[];
  /** Whether it may be emptied. */
  mayBeEmpty: boolean;
}

export interface TypedField {
  text: string;
  problem: string | undefined;
  onInput: (text: string) => void;
  onCommit: () => void;
}

export interface Typing {
  text: string;
  /** What was kept right after it: another value means an undo, or a step. */
  value: string | number | null;
  problem: string;
}

export function useTyped(args: TypedArgs): TypedField {
  const session = useSession();
  const { currency } = usePlan();
  const [typing, setTyping] = useState<Typing | null>(null);
  const value = args.read();
  const live = typing !== null && typing.value === value ? typing : null;
  return {
    text: live?.text ?? textOf({ value, kind: args.kind, currency }),
    problem: live === null || live.problem === '' ? undefined : live.problem,
    onInput: (text) => setTyping(typedIn({ ...args, text, currency })),
    onCommit: () => {
      setTyping(live !== null && live.problem !== '' ? live : null);
      session.endStep();
    },
  };
}

/** Reads a text and keeps it, or says what stands against it. */
export function typedIn(args: TypedArgs & { text: string; currency: string }): Typing {
  const { text, kind, currency } = args;
  const refused = (problem: Problem): Typing => ({
    text,
    value: args.read(),
    problem: problemWords({
      label: args.label,
      isShare: kind === 'percent',
      typed: text,
      still: stillWords(args),
      problem,
    }),
  });
  const at = { code: 'field-invalid', path: '' } as const;
  if (text.trim() === '') {
    if (!args.mayBeEmpty) return refused({ ...at, got: 'nothing', expected: expectedOf(kind) });
    args.put(null);
    return { text, value: args.read(), problem: '' };
  }
  const read = readNumber({ text, kind, currency });
  if (read === null || !read.ok) {
    return refused({ ...at, got: read?.got ?? text, expected: read?.expected ?? 'a number' });
  }
  const [problem] = args.put(read.text);
  return problem ? refused(inPoints(problem, kind)) : { text, value: args.read(), problem: '' };
}

function expectedOf(kind: FieldKind): string {
  return kind === 'whole' ? 'a whole number' : kind === 'percent' ? 'a percentage' : 'an amount';
}

function stillWords({ read, kind, currency }: TypedArgs & { currency: string }): string {
  const text = textOf({ value: read(), kind, currency });
  return text !== '' && kind === 'percent' ? `${text} %` : text;
}

/** "a share from 0 to 0.99; 42 % is 0.42" as it is typed: "a percentage from 0 to 99". */
function inPoints(problem: Problem, kind: FieldKind): Problem {
  const ends = /^a share from (\S+) to ([^\s;]+)/.exec(problem.expected);
  if (kind !== 'percent' || ends === null) return problem;
  const [low, high] = [ends[1], ends[2]].map((end) => Number((Number(end) * 100).toFixed(4)));
  return { ...problem, expected: `a percentage from ${low} to ${high}` };
}
