// A field that moves a rung: what is typed is tried as a move, and stays as typed until the field is left; a refused text
// stays with its sentence, and the ladder stays as it was.
// Worked example: "120" typed as a margin: "Margin: got “120”. It must be from 0 to below 100 %. Still showing the result
// for 42 %."
import type { ComponentChildren, VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { Problem } from '../../domain/problems.ts';
import { AmountField, type StepDirection, type StepKind } from '../../widgets/index.ts';
import { problemSentence, problemWords } from '../shared/problem-words.ts';
import { usePlan } from '../shared/session-context.ts';
import { readNumber, textOf } from '../shared/typed-kinds.ts';

export interface MoveFieldProps {
  label: string;
  kind: 'amount' | 'percent';
  /** What the ladder has, as the plan keeps such a value. */
  value: string;
  /** Tries the move; a problem when it was refused. */
  onMove: (value: string) => Problem | null;
  onStep?: ((direction: StepDirection, kind: StepKind) => void) | undefined;
  onDone: () => void;
  prefix?: string | undefined;
  suffix?: string | undefined;
  hint?: ComponentChildren | undefined;
}

interface Draft {
  text: string;
  problem: Problem | null;
  /** The ladder's value after the last keystroke: when it changes by other means, the draft is dropped. */
  value: string;
}

export function MoveField(props: MoveFieldProps): VNode {
  const { label, kind, value, onMove, onStep, onDone, prefix, suffix, hint } = props;
  const plan = usePlan();
  const [draft, setDraft] = useState<Draft | null>(null);
  const { currency } = plan;
  const kept = textOf({ value, kind, currency });
  const live = draft !== null && (draft.value === value || draft.problem === null) ? draft : null;

  const type = (text: string): void => {
    const read = readNumber({ text, kind, currency });
    if (read === null) return;
    if (read.ok) {
      setDraft({ text, problem: onMove(read.text), value });
      return;
    }
    const { got, expected } = read;
    setDraft({ text, problem: { code: 'field-invalid', path: '', got, expected }, value });
  };

  return (
    <AmountField
      label={label}
      value={live?.text ?? kept}
      onInput={type}
      onStep={
        onStep &&
        ((direction, step) => {
          setDraft(null);
          onStep(direction, step);
        })
      }
      onCommit={() => {
        if (draft?.problem === null) setDraft(null);
        onDone();
      }}
      prefix={prefix}
      suffix={kind === 'percent' ? '%' : suffix}
      hint={hint}
      problem={live === null || live.problem === null ? undefined : words(live, live.problem)}
    />
  );

  function words({ text }: Draft, problem: Problem): string {
    const still = kind === 'percent' ? `${kept} %` : kept;
    if (problem.code === 'field-invalid')
      return problemWords({ label, isShare: kind === 'percent', typed: text, still, problem });
    return `${problemSentence(plan, problem)} Still showing the result for ${still}.`;
  }
}
