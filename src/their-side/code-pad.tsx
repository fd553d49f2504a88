// Four digits instead of a held key. No text field: nothing to paste into, nothing a keyboard app would learn.
// Worked example: 4 7 1 2 where 4711 was chosen says "Not the code." and starts again.
import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9'];

export interface CodePadProps {
  code: string;
  onRight: () => void;
  onClose: () => void;
}

export function CodePad({ code, onRight, onClose }: CodePadProps): VNode {
  const [typed, setTyped] = useState('');
  const [said, setSaid] = useState('');
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => first.current?.focus(), []);
  const add = (digit: string): void => {
    const next = typed + digit;
    const isFull = next.length >= code.length;
    setTyped(isFull ? '' : next);
    setSaid(isFull && next !== code ? 'Not the code.' : '');
    if (next === code) onRight();
  };
  const key = (digit: string): VNode => (
    <button key={digit} type="button" class="ts-key" onClick={() => add(digit)}>
      {digit}
    </button>
  );
  return (
    <div
      class="ts-pad"
      role="dialog"
      aria-label="Code"
      onKeyDown={({ key: pressed }) => {
        if (/^[0-9]$/.test(pressed)) add(pressed);
        if (pressed === 'Backspace') setTyped(typed.slice(0, -1));
        if (pressed === 'Escape') onClose();
      }}
    >
      <p class="ts-dots" role="status">
        <span aria-hidden="true">{'●'.repeat(typed.length) + '○'.repeat(code.length - typed.length)}</span>
        <span class="ts-spoken">
          {typed.length} of {code.length} digits.
        </span>{' '}
        {said}
      </p>
      <div class="ts-pad-keys">
        <button ref={first} type="button" class="ts-key" onClick={() => add('1')}>
          1
        </button>
        {DIGITS.slice(1).map(key)}
        <button type="button" class="ts-key" onClick={onClose}>
          Close
        </button>
        {key('0')}
        <button
          type="button"
          class="ts-key"
          aria-label="Delete a digit"
          onClick={() => setTyped(typed.slice(0, -1))}
        >
          ‹
        </button>
      </div>
    </div>
  );
}
