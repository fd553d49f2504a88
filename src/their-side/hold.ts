// A key that acts only when it was held for 1.2 s, by finger, mouse or Enter; a short press is told apart from it.
// Worked figure: let go after 1.1 s it was a short press, and the next one starts from nothing.
import { useEffect, useRef, useState } from 'preact/hooks';

export const HOLD_MS = 1200;

export interface Hold {
  isHeld: boolean;
  handlers: {
    onPointerDown: (event: PointerEvent) => void;
    onPointerUp: () => void;
    onPointerCancel: () => void;
    onPointerLeave: () => void;
    onContextMenu: (event: Event) => void;
    onClick: () => void;
  };
}

/** `name` is the key's id: Enter counts while it, or nothing, has the focus. */
export function useHold(name: string, acts: { onHeld: () => void; onShort: () => void }): Hold {
  const [isHeld, setIsHeld] = useState(false);
  const latest = useRef(acts);
  latest.current = acts;
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const wasHeld = useRef(false);

  const begin = useRef((): void => {
    if (timer.current !== undefined) return;
    wasHeld.current = false;
    setIsHeld(true);
    timer.current = setTimeout(() => {
      end.current();
      wasHeld.current = true;
      latest.current.onHeld();
    }, HOLD_MS);
  });
  /** True when a press was going on. */
  const end = useRef((): boolean => {
    const wasGoing = timer.current !== undefined;
    clearTimeout(timer.current);
    timer.current = undefined;
    setIsHeld(false);
    return wasGoing;
  });
  useEffect(() => followEnter({ name, begin: begin.current, end: end.current, latest }), [name]);

  const stop = (): void => void end.current();
  return {
    isHeld,
    handlers: {
      onPointerDown: ({ button }) => {
        if (button === 0) begin.current();
      },
      onPointerUp: stop,
      onPointerCancel: stop,
      onPointerLeave: stop,
      onContextMenu: (event) => event.preventDefault(),
      onClick: () => {
        if (!wasHeld.current) latest.current.onShort();
        wasHeld.current = false;
      },
    },
  };
}

function followEnter(args: {
  name: string;
  begin: () => void;
  end: () => boolean;
  latest: { current: { onShort: () => void } };
}): () => void {
  const { name, begin, end, latest } = args;
  const isOurs = ({ key, target }: KeyboardEvent): boolean =>
    key === 'Enter' && (target === document.body || (target instanceof Element && target.id === name));
  const down = (event: KeyboardEvent): void => {
    if (!isOurs(event)) return;
    event.preventDefault();
    if (!event.repeat) begin();
  };
  const up = (event: KeyboardEvent): void => {
    if (isOurs(event) && end()) latest.current.onShort();
  };
  const drop = (): void => void end();
  document.addEventListener('keydown', down);
  document.addEventListener('keyup', up);
  addEventListener('blur', drop);
  return () => {
    document.removeEventListener('keydown', down);
    document.removeEventListener('keyup', up);
    removeEventListener('blur', drop);
    end();
  };
}
