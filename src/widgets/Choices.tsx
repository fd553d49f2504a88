/**
 * Fields whose value is chosen, not typed: a list, a switch, a few choices side by side.
 * They are the device's own controls with our look. Worked figure: three choices share one 44 px row at 320 px,
 * or take a row each when their words are long.
 */
import type { VNode } from 'preact';
import { useId } from 'preact/hooks';
import { describe, Field, FieldBelow, type FieldFrameProps } from './FieldFrame.tsx';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

export interface ChoiceProps extends FieldFrameProps {
  readonly value: string;
  readonly choices: readonly Choice[];
  readonly onChoose: (value: string) => void;
}

/** One of many, from a list. */
export function SelectField(props: ChoiceProps): VNode {
  return (
    <Field
      {...props}
      wideControl
      control={(aria) => (
        <span class="ff-box ff-box-select">
          <select
            {...aria}
            class="ff-input"
            value={props.value}
            onChange={(event) => props.onChoose(event.currentTarget.value)}
          >
            {props.choices.map((choice) => (
              <option key={choice.value} value={choice.value}>
                {choice.label}
              </option>
            ))}
          </select>
        </span>
      )}
    />
  );
}

/** One of a few, all in sight. */
export function Segmented(props: ChoiceProps): VNode {
  const madeUpId = useId();
  const id = props.id ?? `ff-${madeUpId}`;
  return (
    <fieldset class="ff-field ff-field-wide" aria-describedby={describe(id, props)}>
      <legend class="ff-spoken">{props.label}</legend>
      <span class="ff-field-label ff-label" aria-hidden="true">
        {props.label}
      </span>
      <div class="ff-segments">
        {props.choices.map((choice) => (
          <label key={choice.value} class="ff-segment">
            <input
              type="radio"
              class="ff-spoken"
              name={id}
              value={choice.value}
              checked={choice.value === props.value}
              onChange={() => props.onChoose(choice.value)}
            />
            <span class="ff-segment-face">{choice.label}</span>
          </label>
        ))}
      </div>
      <FieldBelow {...props} id={id} />
    </fieldset>
  );
}

export interface SwitchFieldProps extends FieldFrameProps {
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}

/** On or off, at once. */
export function SwitchField(props: SwitchFieldProps): VNode {
  return (
    <Field
      {...props}
      wideControl={false}
      control={(aria) => (
        <span class="ff-switch">
          <input
            {...aria}
            class="ff-switch-input"
            type="checkbox"
            role="switch"
            checked={props.on}
            aria-checked={props.on}
            onChange={(event) => props.onChange(event.currentTarget.checked)}
          />
          <svg class="ff-switch-face" viewBox="0 0 44 24" aria-hidden="true">
            <path class="ff-switch-track" d="M1 23H43" />
            <path class="ff-switch-ends" d="M1 15v8M43 15v8" />
            <path class="ff-switch-knob" d="M5 3h16v17H5z" />
            <path class="ff-switch-tick" d="M27.5 11.5l3.8 4 6-8" />
          </svg>
        </span>
      )}
    />
  );
}
