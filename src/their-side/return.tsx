// The way back: a key in the corner that is held while its ring fills. For people who can't hold, six short presses in
// a row do; where a code was chosen before turning, a short press, or a screen reader's, opens four digits instead.
// Worked example: a tap says what to do; 1.2 s of pressing goes back; with the code 4711 a tap opens the keypad.
import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { CodePad } from './code-pad.tsx';
import { useHold } from './hold.ts';

const KEY = 'ts-return';
/** Long enough to read, then the page is plain again. */
const SAID_MS = 5000;
/** Short presses that mean it, when they come within this time. */
const PRESSES = 6;
const PRESSES_MS = 6000;

export function Return({ code, release }: { code: string | null; release: () => Promise<void> }): VNode {
  const [said, setSaid] = useState('');
  const [isPadOpen, setIsPadOpen] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setSaid(''), SAID_MS);
    return () => clearTimeout(timer);
  }, [said]);
  const leave = (): void => {
    release().catch(() => setSaid('This device did not let go. Try once more.'));
  };
  const presses = useRef<number[]>([]);
  const pressed = (): void => {
    const now = performance.now();
    presses.current = [...presses.current.filter((at) => now - at < PRESSES_MS), now];
    if (presses.current.length >= PRESSES) leave();
    else setSaid(`Keep it pressed until the ring is full, or press it ${PRESSES} times.`);
  };
  const { isHeld, handlers } = useHold(KEY, {
    onHeld: leave,
    onShort: () => {
      if (code === null) pressed();
      else setIsPadOpen(true);
    },
  });
  return (
    <div class="ts-return">
      <button
        id={KEY}
        type="button"
        class={isHeld ? 'ts-return-key ts-held' : 'ts-return-key'}
        aria-label={
          code === null
            ? 'Return: keep pressed, or press six times'
            : 'Return: keep pressed, or press for the code'
        }
        {...handlers}
      >
        <svg viewBox="0 0 44 44" width="44" height="44" aria-hidden="true" class="ts-sign">
          <circle class="ts-ring-track" cx="22" cy="22" r="19" />
          <circle class="ts-ring" cx="22" cy="22" r="19" pathLength="1" transform="rotate(-90 22 22)" />
          <path d="M20 15l-6 6 6 6M14 21h11a5 5 0 0 1 0 10h-3" />
        </svg>
      </button>
      <p class="ts-said" role="status">
        {said}
      </p>
      {isPadOpen && code !== null && (
        <CodePad code={code} onRight={leave} onClose={() => setIsPadOpen(false)} />
      )}
    </div>
  );
}
