// Fields bound to a place of the plan: what is typed goes to the session, what comes back is shown. All share the tag of
// a default, the sentence of a problem, and the text that was typed and not accepted.
// Worked example: <FieldFor path="accounts/corner/terms/latenessDays" label="Paid late" kind="whole" unit="days" step="days" />
import type { ComponentChildren, VNode } from 'preact';
import { getAt } from '../../domain/plan/path.ts';
import {
  AmountField,
  DateField,
  Segmented,
  SelectField,
  SwitchField,
  TextField,
  WholeNumberField,
} from '../../widgets/index.ts';
import { BasisTag, useBasis } from './basis-tag.tsx';
import { problemWords } from './problem-words.ts';
import { usePlan, useSession } from './session-context.ts';
import type { StepName } from './steps.ts';
import type { FieldKind } from './typed-kinds.ts';
import { useField } from './use-field.ts';

interface BoundProps {
  path: string;
  label: string;
  /** A quiet line below the field. */
  hint?: ComponentChildren | undefined;
}

export interface FieldForProps extends BoundProps {
  kind: FieldKind;
  /** After the number: "days", "a case". Percent has its own. */
  unit?: string | undefined;
  /** Before the number: a currency sign. */
  prefix?: string | undefined;
  /** Steppers beside the field, by this step; none without it. */
  step?: StepName | undefined;
  /** The least a stepper goes to; null where it may go below zero. Typing is checked by the plan. */
  least?: number | null | undefined;
  /** Shown in an empty field. */
  placeholder?: string | undefined;
}

/** An amount, a percentage, a count, a rate, or a name. */
export function FieldFor(props: FieldForProps): VNode {
  const { path, label, kind, unit, prefix, step, hint, placeholder, least = 0 } = props;
  const field = useField({ path, label, kind });
  const note = useBasis(path);
  const shared = {
    label,
    value: field.text,
    onInput: field.onInput,
    onCommit: field.onCommit,
    problem: field.problem,
    hint: field.readBack ?? hint,
    tag: note === null ? undefined : <BasisTag note={note} kind={kind} />,
    placeholder,
  };
  if (kind === 'text') return <TextField {...shared} maxLength={120} />;
  const Control = kind === 'whole' ? WholeNumberField : AmountField;
  return (
    <Control
      {...shared}
      prefix={prefix}
      suffix={kind !== 'percent' ? unitOf(field.text, unit) : field.text.includes('%') ? undefined : '%'}
      onStep={step === undefined ? undefined : field.stepBy(step, least)}
    />
  );
}

/** "1 week", "2 weeks". */
function unitOf(text: string, unit: string | undefined): string | undefined {
  return text.trim() === '1' ? unit?.replace(/^(week|day|unit)s\b/, '$1') : unit;
}

export interface ChoiceForProps extends BoundProps {
  choices: readonly { value: string; label: string }[];
  /** A list where there are many or their words are long; side by side otherwise. */
  asList?: boolean | undefined;
}

/** One of a few words that the plan keeps. */
export function ChoiceFor({ path, label, hint, choices, asList = false }: ChoiceForProps): VNode {
  const bound = useBound(path, label);
  const Control = asList ? SelectField : Segmented;
  return (
    <Control
      label={label}
      hint={hint}
      value={String(bound.value)}
      choices={[...choices]}
      problem={bound.problem}
      tag={bound.tag}
      onChoose={(value) => bound.set(value)}
    />
  );
}

/** True or false. */
export function SwitchFor({ path, label, hint }: BoundProps): VNode {
  const bound = useBound(path, label);
  return (
    <SwitchField
      label={label}
      hint={hint}
      on={bound.value === true}
      problem={bound.problem}
      tag={bound.tag}
      onChange={(on) => bound.set(on)}
    />
  );
}

/** A part of the plan that may be missing: switched on it starts as `blank`, switched off it is gone (undo brings it back). */
export function PartFor({ path, label, hint, blank }: BoundProps & { blank: () => unknown }): VNode {
  const bound = useBound(path, label);
  return (
    <SwitchField
      label={label}
      hint={hint}
      on={bound.value !== null}
      problem={bound.problem}
      tag={bound.tag}
      onChange={(on) => bound.set(on ? blank() : null)}
    />
  );
}

/**
 * A day, kept as YYYY-MM-DD. A date that is typed in part waits; an emptied box is told what it needs. Either way the plan
 * keeps the last whole one.
 */
export function DateFor({ path, label, hint }: BoundProps): VNode {
  const session = useSession();
  const bound = useBound(path, label);
  return (
    <DateField
      label={label}
      hint={hint}
      value={bound.refused ?? String(bound.value)}
      problem={bound.problem}
      tag={bound.tag}
      onInput={(isoDate, incomplete) => {
        if (incomplete) return;
        if (isoDate === '') session.typeInto(path, '', 'date');
        else bound.set(isoDate);
      }}
    />
  );
}

/** What every field that is not typed into shares: value, setter, problem, tag. */
function useBound(path: string, label: string) {
  const session = useSession();
  const plan = usePlan();
  const note = useBasis(path);
  const problem = session.problems.value.get(path)?.[0];
  const value = getAt(plan, path);
  const refused = session.typed.value.get(path) ?? null;
  return {
    value,
    /** A text that the plan didn't take; null where there is none. */
    refused,
    set: (value: unknown) => {
      session.setField(path, value);
      session.endStep();
    },
    problem:
      problem === undefined
        ? undefined
        : problemWords({
            label,
            isShare: false,
            typed: refused,
            still: refused === null ? '' : String(value),
            problem,
          }),
    tag: note === null ? undefined : <BasisTag note={note} kind="text" />,
  };
}
