/**
 * A long text typed or pasted, many lines of it: its own line ends stay, long lines scroll sideways instead of wrapping,
 * so that a table pasted from a sheet keeps its rows. Worked figure: 8 rows of 20 px and the frame are 178 px.
 */
import type { VNode } from 'preact';
import { describe, FieldBelow, type FieldFrameProps } from './FieldFrame.tsx';

export interface TextAreaFieldProps extends FieldFrameProps {
  readonly id: string;
  readonly value: string;
  readonly onInput: (text: string) => void;
  readonly rows: number;
  readonly placeholder?: string | undefined;
}

/** Label above, the text below it in the width there is. */
export function TextAreaField(props: TextAreaFieldProps): VNode {
  const { id, label, value, rows, placeholder, onInput } = props;
  return (
    <div class="ff-text-area">
      <label class="ff-label" for={id}>
        {label}
      </label>
      <textarea
        id={id}
        class="ff-text-area-box"
        rows={rows}
        wrap="off"
        spellcheck={false}
        autocomplete="off"
        value={value}
        placeholder={placeholder}
        aria-describedby={describe(id, props)}
        aria-invalid={props.problem === undefined ? undefined : 'true'}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
      <FieldBelow {...props} id={id} />
    </div>
  );
}
