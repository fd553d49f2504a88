/**
 * What every field has around its control: label, unit, default tag, hint, and the sentence of a problem, tied
 * together for a screen reader. It never parses: text goes out as typed, a problem comes back in words.
 * Worked figure: a row is 44 px high, label left and control right; a long label takes a line of its own.
 */
import type { ComponentChildren, VNode } from 'preact';
import { useId } from 'preact/hooks';
import { classNames } from './class-names.ts';

export interface FieldFrameProps {
  readonly label: string;
  /** The control's id, where something else must point at it; made up otherwise. */
  readonly id?: string | undefined;
  /** A quiet line below: an example, what others use, the value read back. */
  readonly hint?: ComponentChildren | undefined;
  /** What is wrong, in a sentence; undefined when nothing is. */
  readonly problem?: string | undefined;
  /** Where an untouched value comes from: an OriginTag. */
  readonly tag?: ComponentChildren | undefined;
  /** The row the keypad types into. */
  readonly active?: boolean | undefined;
  /** 44 px rows without boxes, for a screen that must fit many. */
  readonly dense?: boolean | undefined;
}

export interface ControlAria {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': 'true' | undefined;
}

export interface FieldLayout extends FieldFrameProps {
  readonly wideControl: boolean;
  readonly control: (aria: ControlAria) => ComponentChildren;
}

/** Lays out one field and hands its control the ids to carry. */
export function Field(props: FieldLayout): VNode {
  const madeUpId = useId();
  const id = props.id ?? `ff-${madeUpId}`;
  const below = describe(id, props);
  const aria: ControlAria = {
    id,
    'aria-describedby': below,
    'aria-invalid': props.problem === undefined ? undefined : 'true',
  };
  return (
    <div
      class={classNames(
        'ff-field',
        props.wideControl && 'ff-field-wide',
        props.active === true && 'ff-field-active',
        props.dense === true && 'ff-field-dense',
        props.problem !== undefined && 'ff-field-wrong',
      )}
    >
      <label class="ff-field-label ff-label" for={id}>
        {props.label}
      </label>
      <div class="ff-field-control">{props.control(aria)}</div>
      <FieldBelow {...props} id={id} />
    </div>
  );
}

/** Tag, hint and problem; the problem is announced when it appears. */
export function FieldBelow({ id, tag, hint, problem }: FieldFrameProps & { readonly id: string }): VNode {
  return (
    <div class="ff-field-below ff-least">
      {(tag !== undefined || hint !== undefined) && (
        <p id={`${id}-hint`} class="ff-field-hint">
          {tag}
          {hint !== undefined && <span>{hint}</span>}
        </p>
      )}
      <p id={`${id}-problem`} class="ff-field-problem" aria-live="polite">
        {problem}
      </p>
    </div>
  );
}

/** The ids that describe a control, or undefined when there is nothing below it. */
export function describe(
  id: string,
  { tag, hint, problem }: Omit<FieldFrameProps, 'label'>,
): string | undefined {
  const ids = [
    problem !== undefined && `${id}-problem`,
    (tag !== undefined || hint !== undefined) && `${id}-hint`,
  ].filter((part) => part !== false);
  return ids.length === 0 ? undefined : ids.join(' ');
}

export interface OriginTagProps {
  readonly text: string;
  /** Opens where the value comes from. */
  readonly onPress?: (() => void) | undefined;
}

/** A small cut tag saying where an untouched value comes from. */
export function OriginTag({ text, onPress }: OriginTagProps): VNode {
  if (onPress === undefined) return <span class="ff-origin">{text}</span>;
  return (
    <button type="button" class="ff-origin-open" onClick={onPress}>
      <span class="ff-origin">{text}</span>
    </button>
  );
}
