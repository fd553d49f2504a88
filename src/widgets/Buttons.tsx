/**
 * Buttons and the links that look like them. Primary is ink on which paper writes: colour is kept for meaning.
 * Every one is at least 44 px high, and 8 px stand between neighbours in a ButtonRow.
 */
import type { ComponentChildren, VNode } from 'preact';
import { classNames } from './class-names.ts';

export type ButtonKind = 'primary' | 'plain' | 'quiet';

export interface ButtonProps {
  readonly onPress: () => void;
  readonly children: ComponentChildren;
  readonly kind?: ButtonKind | undefined;
  /** Spoken name where the face is a sign, e.g. "‹". */
  readonly label?: string | undefined;
  readonly disabled?: boolean | undefined;
  /** For a button that stays down: whether it is. */
  readonly pressed?: boolean | undefined;
  /** Fills its row. */
  readonly wide?: boolean | undefined;
}

/** Does something here. */
export function Button({
  onPress,
  children,
  kind = 'plain',
  label,
  disabled,
  pressed,
  wide = false,
}: ButtonProps): VNode {
  return (
    <button
      type="button"
      class={classNames('ff-button', `ff-button-${kind}`, wide && 'ff-button-wide')}
      onClick={onPress}
      disabled={disabled}
      aria-label={label}
      aria-pressed={pressed}
    >
      {children}
    </button>
  );
}

export interface LinkButtonProps {
  readonly href: string;
  readonly children: ComponentChildren;
  readonly kind?: ButtonKind | undefined;
  readonly wide?: boolean | undefined;
}

/** Goes somewhere, looks like a button. */
export function LinkButton({ href, children, kind = 'plain', wide = false }: LinkButtonProps): VNode {
  return (
    <a class={classNames('ff-button', `ff-button-${kind}`, wide && 'ff-button-wide')} href={href}>
      {children}
    </a>
  );
}

export interface FileButtonProps {
  readonly children: ComponentChildren;
  /** As in an input's accept, e.g. "application/json,.json". */
  readonly accept: string;
  readonly onFile: (file: File) => void;
  readonly kind?: ButtonKind | undefined;
}

/** Lets a file be chosen; the same file can be chosen twice in a row. */
export function FileButton({ children, accept, onFile, kind = 'plain' }: FileButtonProps): VNode {
  return (
    <label class={`ff-button ff-button-${kind} ff-button-file`}>
      {children}
      <input
        class="ff-spoken"
        type="file"
        accept={accept}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file !== undefined) onFile(file);
          event.currentTarget.value = '';
        }}
      />
    </label>
  );
}

/** Buttons beside each other, wrapping. */
export function ButtonRow({ children }: { readonly children: ComponentChildren }): VNode {
  return <div class="ff-button-row">{children}</div>;
}
