/**
 * Moving a bar along a time axis: by its grip with a finger, anywhere on it with a mouse, by arrow keys. Whole points
 * only; near the edge of what is in sight the axis scrolls on under the hand.
 * Worked figure: a drag of 40 px at 12 px a point moves a bar by three points.
 */
import { useRef } from 'preact/hooks';

export type ShiftPhase = 'start' | 'move' | 'end' | 'cancel';

export interface AxisMoves {
  /** Points from where the drag began; 'end' comes once, 'cancel' when it was broken off. */
  readonly onShift: (id: string, delta: number, phase: ShiftPhase) => void;
  /** One press of a key; `repeat` while it is held. */
  readonly onStep: (id: string, delta: number, repeat: boolean) => void;
  readonly onChoose: (id: string) => void;
}

interface Drag {
  readonly id: string;
  readonly startPx: number;
  readonly scrolledPx: number;
  atPx: number;
  delta: number;
  frame: number;
}

type PointerOn = PointerEvent & { readonly currentTarget: HTMLElement };

export interface DragArgs extends AxisMoves {
  /** What scrolls sideways. */
  readonly region: { readonly current: HTMLElement | null };
  readonly pointPx: number;
  /** A bar is in the hand, or no longer. */
  readonly onHold: (id: string | null) => void;
}

export interface AxisDrag {
  readonly down: (event: PointerOn, id: string) => void;
  readonly move: (event: PointerOn) => void;
  readonly up: () => void;
  readonly cancel: () => void;
  readonly key: (event: KeyboardEvent, id: string) => void;
}

const EDGE_PX = 28;
const CREEP_PX = 6;

/** Handlers that stay the same from one drawing to the next. */
export function useAxisDrag(args: DragArgs): AxisDrag {
  const latest = useRef(args);
  latest.current = args;
  const drag = useRef<Drag | null>(null);
  const handlers = useRef<AxisDrag | null>(null);
  handlers.current ??= makeDrag(latest, drag);
  return handlers.current;
}

function makeDrag(latest: { readonly current: DragArgs }, drag: { current: Drag | null }): AxisDrag {
  const follow = (): void => {
    const now = drag.current;
    if (now === null) return;
    const { region, pointPx, onShift } = latest.current;
    const moved = now.atPx - now.startPx + (region.current?.scrollLeft ?? 0) - now.scrolledPx;
    const delta = Math.round(moved / pointPx);
    if (delta === now.delta) return;
    now.delta = delta;
    onShift(now.id, delta, 'move');
  };
  const creep = (): void => {
    const now = drag.current;
    const element = latest.current.region.current;
    if (now === null || element === null) return;
    const { left, right } = element.getBoundingClientRect();
    const way = now.atPx > right - EDGE_PX ? 1 : now.atPx < left + EDGE_PX ? -1 : 0;
    if (way !== 0) {
      element.scrollLeft += way * CREEP_PX;
      follow();
    }
    now.frame = requestAnimationFrame(creep);
  };
  const finish = (phase: 'end' | 'cancel'): void => {
    const now = drag.current;
    if (now === null) return;
    cancelAnimationFrame(now.frame);
    drag.current = null;
    latest.current.onHold(null);
    latest.current.onShift(now.id, now.delta, phase);
  };
  return {
    down: (event, id) => {
      if (event.button !== 0 || drag.current !== null) return;
      latest.current.onChoose(id);
      const target = event.target instanceof Element ? event.target : null;
      if (event.pointerType !== 'mouse' && target?.closest('.ff-axis-grip') == null) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      const scrolledPx = latest.current.region.current?.scrollLeft ?? 0;
      drag.current = { id, startPx: event.clientX, atPx: event.clientX, scrolledPx, delta: 0, frame: 0 };
      latest.current.onHold(id);
      latest.current.onShift(id, 0, 'start');
      drag.current.frame = requestAnimationFrame(creep);
    },
    move: (event) => {
      if (drag.current === null) return;
      drag.current.atPx = event.clientX;
      follow();
    },
    up: () => finish('end'),
    cancel: () => finish('cancel'),
    key: (event, id) => {
      if (event.key === 'Escape' && drag.current !== null) {
        finish('cancel');
        return;
      }
      const delta = KEYS[event.key];
      if (delta === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
      event.preventDefault();
      latest.current.onStep(id, delta, event.repeat);
    },
  };
}

const KEYS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -4,
  PageUp: 4,
};
