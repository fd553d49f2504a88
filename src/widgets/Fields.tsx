/**
 * The fields a value is typed into: text, an amount with its unit and steppers, a whole number, a date.
 * Text goes out at every keystroke as it stands and is shown as it stands; reading it is the caller's work.
 * Worked figure: typing "1.2k" calls onInput with "1", "1.", "1.2", "1.2k".
 */
import type { VNode } from 'preact';
import { Field, type FieldFrameProps } from './FieldFrame.tsx';
import { type StepKind, useHoldRepeat } from './hold-repeat.ts';
import { words } from './words.ts';

export type StepDirection = 1 | -1;

export interface TextFieldProps extends FieldFrameProps {
  readonly value: string;
  readonly onInput: (text: string) => void;
  /** Enter, or leaving the field. */
  readonly onCommit?: (() => void) | undefined;
  readonly onFocus?: (() => void) | undefined;
  readonly placeholder?: string | undefined;
  readonly maxLength?: number | undefined;
}

/** A name or a note: the control takes the width that is left. */
export function TextField(props: TextFieldProps): VNode {
  return (
    <Field
      {...props}
      wideControl
      control={(aria) => (
        <span class="ff-box">
          <input
            {...aria}
            class="ff-input"
            type="text"
            value={props.value}
            placeholder={props.placeholder}
            maxLength={props.maxLength}
            autocomplete="off"
            onInput={(event) => props.onInput(event.currentTarget.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter') props.onCommit?.();
            }}
            onBlur={() => props.onCommit?.()}
            onFocus={() => props.onFocus?.()}
          />
        </span>
      )}
    />
  );
}

export interface AmountFieldProps extends FieldFrameProps {
  readonly value: string;
  readonly onInput: (text: string) => void;
  /** One step up or down: buttons, a hold, or the arrow keys. No steppers are shown without it. */
  readonly onStep?: ((direction: StepDirection, kind: StepKind) => void) | undefined;
  /** Enter, or leaving the field. */
  readonly onCommit?: (() => void) | undefined;
  readonly onFocus?: (() => void) | undefined;
  /** Before the number, e.g. "$". */
  readonly prefix?: string | undefined;
  /** After the number, e.g. "%" or "a case". */
  readonly suffix?: string | undefined;
  readonly placeholder?: string | undefined;
  /** The page has its own Keypad: no device keyboard on touch. */
  readonly ownKeypad?: boolean | undefined;
}

/** Money, a share, a rate: one row of label, value with its unit, and steppers if it can be stepped. */
export function AmountField(props: AmountFieldProps): VNode {
  return <NumberRow {...props} keyboard="decimal" />;
}

/** A count: same row, digits-only keyboard. */
export function WholeNumberField(props: AmountFieldProps): VNode {
  return <NumberRow {...props} keyboard="numeric" />;
}

function NumberRow(props: AmountFieldProps & { readonly keyboard: 'decimal' | 'numeric' }): VNode {
  const { onStep, label } = props;
  return (
    <Field
      {...props}
      wideControl={false}
      control={(aria) => (
        <>
          {onStep !== undefined && <StepButton label={label} direction={-1} onStep={onStep} />}
          <span class="ff-box ff-box-number">
            {props.prefix !== undefined && <span class="ff-unit ff-number">{props.prefix}</span>}
            <input
              {...aria}
              class="ff-input ff-input-number ff-number"
              type="text"
              inputMode={props.ownKeypad === true ? 'none' : props.keyboard}
              value={props.value}
              placeholder={props.placeholder}
              autocomplete="off"
              enterkeyhint="next"
              onInput={(event) => props.onInput(event.currentTarget.value)}
              onKeyDown={(event) => stepOrCommit(event, props)}
              onBlur={() => props.onCommit?.()}
              onFocus={() => props.onFocus?.()}
            />
            {props.suffix !== undefined && <span class="ff-unit ff-number">{props.suffix}</span>}
          </span>
          {onStep !== undefined && <StepButton label={label} direction={1} onStep={onStep} />}
        </>
      )}
    />
  );
}

function stepOrCommit(event: KeyboardEvent, { onStep, onCommit }: AmountFieldProps): void {
  if (event.key === 'Enter') onCommit?.();
  if (onStep === undefined || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
  event.preventDefault();
  onStep(event.key === 'ArrowUp' ? 1 : -1, { fine: event.shiftKey, repeat: event.repeat });
}

export interface StepButtonProps {
  /** What is stepped; spoken as "Stores, more". */
  readonly label: string;
  readonly direction: StepDirection;
  readonly onStep: (direction: StepDirection, kind: StepKind) => void;
  readonly disabled?: boolean | undefined;
}

/** − or +, 44 px, repeating while held. */
export function StepButton({ label, direction, onStep, disabled }: StepButtonProps): VNode {
  const hold = useHoldRepeat((kind) => onStep(direction, kind));
  return (
    <button
      type="button"
      class="ff-step"
      disabled={disabled}
      aria-label={`${label}, ${direction === 1 ? words.more : words.less}`}
      {...hold}
    >
      <svg viewBox="0 0 16 16" aria-hidden="true">
        <path d={direction === 1 ? 'M2 8h12M8 2v12' : 'M2 8h12'} />
      </svg>
    </button>
  );
}

export interface DateFieldProps extends FieldFrameProps {
  /** ISO date, or empty. */
  readonly value: string;
  /** The ISO date; incomplete while the device's date box holds only part of one (the date is "" then). */
  readonly onInput: (isoDate: string, incomplete: boolean) => void;
  readonly min?: string | undefined;
  readonly max?: string | undefined;
}

/** A day, in the device's own date box. */
export function DateField(props: DateFieldProps): VNode {
  return (
    <Field
      {...props}
      wideControl={false}
      control={(aria) => (
        <span class="ff-box ff-box-date">
          <input
            {...aria}
            class="ff-input ff-number"
            type="date"
            value={props.value}
            min={props.min}
            max={props.max}
            onInput={(event) =>
              props.onInput(event.currentTarget.value, event.currentTarget.validity.badInput)
            }
          />
        </span>
      )}
    />
  );
}
