/**
 * What one keypad key does to a text with its caret. Pure, so that taps and tests agree.
 * Worked figure: "250" with the caret at its end and key "k" gives "250k", caret 4.
 */
export interface Typing {
  readonly text: string;
  /** Selected part; start equals end for a plain caret. Counted in characters. */
  readonly start: number;
  readonly end: number;
}

export type KeypadKey =
  | '0'
  | '1'
  | '2'
  | '3'
  | '4'
  | '5'
  | '6'
  | '7'
  | '8'
  | '9'
  | '.'
  | ','
  | 'k'
  | '%'
  | 'backspace';

/** The text and caret after one key; a selection is replaced. */
export function typeKey({ text, start, end }: Typing, key: KeypadKey): Typing {
  if (key !== 'backspace') return put(text, start, end, key);
  if (start !== end) return put(text, start, end, '');
  return put(text, Math.max(0, start - 1), end, '');
}

function put(text: string, start: number, end: number, piece: string): Typing {
  const caret = start + piece.length;
  return { text: text.slice(0, start) + piece + text.slice(end), start: caret, end: caret };
}
