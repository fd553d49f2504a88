/**
 * Our own number keypad: four rows of 48 px, so that the answer above it is never covered by a device keyboard.
 * It types into the field that has the focus (caret and selection kept) and never takes the focus away.
 * Worked figure: 4 x 48 = 192 px high.
 */
import type { VNode } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { useHoldRepeat } from './hold-repeat.ts';
import { type KeypadKey, type Typing, typeKey } from './keypad-typing.ts';
import { words } from './words.ts';

export interface KeypadProps {
  /** Spoken name of the pad, e.g. "Keypad for Stores". */
  readonly label: string;
  /** The active row's text and where a changed one goes. */
  readonly value: string;
  readonly onInput: (text: string) => void;
  readonly separator: '.' | ',';
  /** Goes to the next row; undefined on the last one. */
  readonly onNext?: (() => void) | undefined;
  readonly onDone: () => void;
}

const rows: readonly (readonly KeypadKey[])[] = [
  ['1', '2', '3', 'backspace'],
  ['4', '5', '6', 'k'],
  ['7', '8', '9', '%'],
];

/** Digits, decimal mark, k, %, backspace, next, done. */
export function Keypad(props: KeypadProps): VNode {
  const { value, onInput, separator } = props;
  const caret = useRef<{ readonly input: HTMLInputElement; readonly at: number } | undefined>(undefined);
  const typing = useRef<Typing>({ text: value, start: value.length, end: value.length });

  useLayoutEffect(() => {
    if (caret.current === undefined) return;
    const { input, at } = caret.current;
    caret.current = undefined;
    if (document.activeElement === input) input.setSelectionRange(at, at);
  }, [value]);

  const press = (key: KeypadKey): void => {
    const input = focusedInput(value);
    const before = input === undefined ? atEnd(value) : selectionOf(input);
    typing.current = typeKey(before, key);
    if (input !== undefined) caret.current = { input, at: typing.current.start };
    onInput(typing.current.text);
  };

  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would add a frame and a legend to a row of keys
    <div
      class="ff-keypad"
      role="group"
      aria-label={props.label}
      onPointerDown={keepFocus}
      onMouseDown={keepFocus}
    >
      {rows.flat().map((key) => (
        <Key key={key} name={key} onPress={press} />
      ))}
      <Key name={separator} onPress={press} />
      <Key name="0" onPress={press} />
      <button
        type="button"
        class="ff-key ff-key-word"
        disabled={props.onNext === undefined}
        onClick={() => props.onNext?.()}
      >
        {words.next}
      </button>
      <button type="button" class="ff-key ff-key-word ff-key-done" onClick={props.onDone}>
        {words.done}
      </button>
    </div>
  );
}

function Key({
  name,
  onPress,
}: {
  readonly name: KeypadKey;
  readonly onPress: (key: KeypadKey) => void;
}): VNode {
  const hold = useHoldRepeat(({ repeat }) => {
    if (!repeat || name === 'backspace') onPress(name);
  });
  return (
    <button type="button" class="ff-key ff-number" aria-label={spokenKeys[name]} {...hold}>
      {name === 'backspace' ? (
        <svg viewBox="0 0 24 16" aria-hidden="true">
          <path d="M8 1h15v14H8L1 8zM12 5l6 6M18 5l-6 6" />
        </svg>
      ) : (
        name
      )}
    </button>
  );
}

const spokenKeys: Partial<Record<KeypadKey, string>> = {
  '.': words.decimalMark,
  ',': words.decimalMark,
  '%': words.percent,
  backspace: words.clear,
  k: words.thousand,
};

/** A tap on a key must not move the focus out of the field, or the caret would be lost. */
function keepFocus(event: Event): void {
  event.preventDefault();
}

/** The focused text box, if it is the one the keypad types into. */
function focusedInput(value: string): HTMLInputElement | undefined {
  const focused = document.activeElement;
  return focused instanceof HTMLInputElement && focused.value === value ? focused : undefined;
}

function selectionOf(input: HTMLInputElement): Typing {
  const length = input.value.length;
  return { text: input.value, start: input.selectionStart ?? length, end: input.selectionEnd ?? length };
}

function atEnd(text: string): Typing {
  return { text, start: text.length, end: text.length };
}
