/**
 * Press once, step once; keep pressing, and after 400 ms it steps eight times a second until let go.
 * A press that turns into a scroll steps nothing. Worked figure: held for one second it steps five times.
 */
import { useEffect, useRef } from 'preact/hooks';

export const holdDelayMs = 400;
export const holdIntervalMs = 125;

export interface StepKind {
  /** A tenth of the usual step (Shift held). */
  readonly fine: boolean;
  /** Second or later step of one hold: one hold is one undo. */
  readonly repeat: boolean;
}

export interface HoldHandlers {
  readonly onPointerDown: (event: PointerEvent) => void;
  readonly onPointerUp: () => void;
  readonly onPointerLeave: () => void;
  readonly onPointerCancel: () => void;
  readonly onContextMenu: (event: Event) => void;
  readonly onClick: (event: MouseEvent) => void;
}

/** Handlers for a button whose hold repeats. */
export function useHoldRepeat(onStep: (kind: StepKind) => void): HoldHandlers {
  const latest = useRef(onStep);
  latest.current = onStep;
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const held = useRef(false);

  const stop = (): void => {
    clearTimeout(timer.current);
    timer.current = undefined;
  };
  useEffect(() => stop, []);

  const repeat = (fine: boolean): void => {
    latest.current({ fine, repeat: held.current });
    held.current = true;
    timer.current = setTimeout(() => repeat(fine), holdIntervalMs);
  };

  return {
    onPointerDown: (event) => {
      if (event.button !== 0) return;
      stop();
      held.current = false;
      const fine = event.shiftKey;
      timer.current = setTimeout(() => repeat(fine), holdDelayMs);
    },
    onPointerUp: stop,
    onPointerLeave: stop,
    onPointerCancel: stop,
    onContextMenu: (event) => event.preventDefault(),
    onClick: (event) => {
      stop();
      if (!held.current) latest.current({ fine: event.shiftKey, repeat: false });
      held.current = false;
    },
  };
}
