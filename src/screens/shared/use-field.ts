// One field of the plan as a widget needs it: the text to show, what typing and stepping do, its problem in words.
// While a field has the focus the text stays exactly as typed ("3." while 3.40 is on its way); once it is left, an
// accepted text becomes the plan's own writing and a refused one stays, with its problem.
// Worked example: "1.2k" typed into money down shows "1.2k", then "1200" when the field is left.
import { useEffect, useRef, useState } from 'preact/hooks';
import { setField } from '../../app/commands/field.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { getAt } from '../../domain/plan/path.ts';
import type { Outcome } from '../../domain/problems.ts';
import { problemWords } from './problem-words.ts';
import { usePlan, useSession } from './session-context.ts';
import { type StepName, stepped } from './steps.ts';
import { type FieldKind, readNumber, textOf } from './typed-kinds.ts';

export interface FieldArgs {
  path: string;
  label: string;
  kind: FieldKind;
}

export interface FieldState {
  text: string;
  problem: string | undefined;
  /** How a text that could be read two ways was read, and a moment after it was left; undefined otherwise. */
  readBack: string | undefined;
  onInput: (text: string) => void;
  onCommit: () => void;
  stepBy: (step: StepName, least: number | null) => (direction: 1 | -1, kind: StepPress) => void;
}

interface StepPress {
  fine: boolean;
  repeat: boolean;
}

/** Text under the fingers, and the plan's value it was accepted as; another value means undo or another view moved it. */
interface Draft {
  text: string;
  value: unknown;
}

/** The tap that leaves a field must find its key where it was: what was read back goes only after it. */
const AFTER_LEFT_MS = 600;

export function useField({ path, label, kind }: FieldArgs): FieldState {
  const session = useSession();
  const plan = usePlan();
  const [draft, setDraft] = useState<Draft | null>(null);
  const [left, setLeft] = useState<string | undefined>(undefined);
  const stepping = useRef(false);
  useEffect(() => {
    const timer = left === undefined ? undefined : setTimeout(() => setLeft(undefined), AFTER_LEFT_MS);
    return () => clearTimeout(timer);
  }, [left]);
  const value = getAt(plan, path);
  const { currency } = plan;
  const kept = textOf({ value, kind, currency });
  const refused = session.typed.value.get(path);
  const problem = session.problems.value.get(path)?.[0];
  const live = draft !== null && draft.value === value ? draft.text : undefined;
  const text = live ?? refused ?? kept;
  const readBack = live === undefined ? left : readBackOf({ text: live, kind, currency });
  const still = refused === undefined ? '' : kept;
  return {
    text,
    problem:
      problem === undefined
        ? undefined
        : problemWords({
            label,
            isShare: kind === 'percent',
            typed: refused ?? null,
            still: withUnit(still, kind),
            problem,
          }),
    readBack,
    onInput: (typed) => {
      stepping.current = false;
      session.typeInto(path, typed, kind);
      const now = session.plan.value;
      setDraft({ text: typed, value: now === null ? undefined : getAt(now, path) });
    },
    onCommit: () => {
      setLeft(readBack);
      setDraft(null);
      session.endStep();
    },
    stepBy:
      (step, least) =>
      (direction, { fine, repeat }) => {
        if (!repeat) session.endStep();
        setDraft(null);
        session.run(stepField, { path, kind, step, direction, fine, least }, path);
      },
  };
}

interface FieldStep {
  path: string;
  kind: FieldKind;
  step: StepName;
  direction: 1 | -1;
  fine: boolean;
  least: number | null;
}

/** From whatever the field holds when the step is taken, so that two presses are two steps. */
function stepField(plan: Plan, { path, kind, step, direction, fine, least }: FieldStep): Outcome<Plan> {
  const now = getAt(plan, path);
  const value = typeof now === 'string' || typeof now === 'number' ? now : null;
  const next = stepped({ value, step, direction, fine, least });
  return setField(plan, { path, value: kind === 'whole' ? Number(next) : next });
}

/** "Reads as 1200": only where the text could have meant another number too, or has k or m in it. */
function readBackOf({
  text,
  kind,
  currency,
}: {
  text: string;
  kind: FieldKind;
  currency: string;
}): string | undefined {
  const read = readNumber({ text, kind, currency });
  if (read === null || !read.ok) return undefined;
  if (read.couldBe === null && !/[km]\s*$/i.test(text)) return undefined;
  return `Reads as ${withUnit(textOf({ value: read.text, kind, currency }), kind)}`;
}

function withUnit(text: string, kind: FieldKind): string {
  return text !== '' && kind === 'percent' ? `${text} %` : text;
}
