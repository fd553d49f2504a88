/**
 * The bars of one group on a time axis: each with its text beside it and, where it can be moved, a grip at its start.
 * They share lanes as long as grips and texts keep apart; while one is in the hand no lane changes.
 * Worked figure: two bars of ten points at 12 px, both from point 4, stand in two lanes of 44 px.
 */
import type { VNode } from 'preact';
import { useRef } from 'preact/hooks';
import type { AxisDrag } from './axis-drag.ts';
import {
  type AxisBar,
  type AxisDrawing,
  type AxisGeometry,
  axisWidthPx,
  edgePx,
  type Lanes,
  lanesOf,
  STILL_LANE_SHARE,
  textPx,
} from './axis-spec.ts';
import { classNames } from './class-names.ts';

export interface AxisTrackProps {
  readonly bars: readonly AxisBar[];
  readonly geometry: AxisGeometry;
  readonly chosen: string | null;
  /** The bar in the hand. */
  readonly held: string | null;
  readonly drag: AxisDrag;
}

interface Placed {
  readonly moving: Lanes;
  readonly still: Lanes;
}

/** The bars; their element stays the same while they move, so that a drag is never lost. */
export function AxisTrack({ bars, geometry, chosen, held, drag }: AxisTrackProps): VNode {
  const { moving, still } = usePlaced(bars, geometry, held);
  const stillPx = geometry.laneHeightPx * STILL_LANE_SHARE;
  const topOf = (bar: AxisBar): number =>
    bar.move === null
      ? moving.count * geometry.laneHeightPx + (still.laneOf.get(bar.id) ?? 0) * stillPx
      : (moving.laneOf.get(bar.id) ?? 0) * geometry.laneHeightPx;
  const heightPx = moving.count * geometry.laneHeightPx + still.count * stillPx;
  return (
    <div class="ff-axis-track" style={{ width: `${axisWidthPx(geometry)}px`, height: `${heightPx}px` }}>
      {bars.map((bar) => (
        <Bar
          key={bar.id}
          bar={bar}
          geometry={geometry}
          topPx={topOf(bar)}
          heightPx={bar.move === null ? stillPx : geometry.laneHeightPx}
          chosen={bar.id === chosen}
          drag={drag}
        />
      ))}
    </div>
  );
}

function usePlaced(bars: readonly AxisBar[], geometry: AxisGeometry, held: string | null): Placed {
  const kept = useRef<Placed | null>(null);
  const isHeld = held !== null && bars.some(({ id }) => id === held);
  if (kept.current !== null && isHeld) return kept.current;
  kept.current = {
    moving: lanesOf(
      bars.filter(({ move }) => move !== null),
      geometry,
    ),
    still: lanesOf(
      bars.filter(({ move }) => move === null),
      geometry,
    ),
  };
  return kept.current;
}

interface BarProps {
  readonly bar: AxisBar;
  readonly geometry: AxisGeometry;
  readonly topPx: number;
  readonly heightPx: number;
  readonly chosen: boolean;
  readonly drag: AxisDrag;
}

function Bar({ bar, geometry, topPx, heightPx, chosen, drag }: BarProps): VNode {
  const { id, move } = bar;
  const startPx = edgePx(geometry, bar.from);
  const endPx = edgePx(geometry, Math.min(geometry.count, bar.to + 1));
  const leadPx = (bar.lead ?? 0) * geometry.pointPx;
  const tailPx = Math.max(0, Math.min(bar.tail ?? 0, geometry.count - 1 - bar.to)) * geometry.pointPx;
  const body = (
    <>
      {leadPx > 0 && <span class="ff-axis-thread" style={{ left: `${-leadPx}px`, width: `${leadPx}px` }} />}
      <span
        class={`ff-axis-face ff-axis-${bar.drawing}`}
        style={{ width: `${Math.max(3, endPx - startPx)}px` }}
      />
      {tailPx > 0 && (
        <span class="ff-axis-thread" style={{ left: `${endPx - startPx}px`, width: `${tailPx}px` }} />
      )}
      <span class="ff-axis-text ff-number" style={{ left: `${textPx(geometry, bar) - startPx}px` }}>
        {bar.text}
      </span>
    </>
  );
  const style = { left: `${startPx}px`, top: `${topPx}px`, height: `${heightPx}px` };
  if (move === null) {
    return (
      <div class="ff-axis-bar" style={style}>
        {body}
      </div>
    );
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: its grip is the slider; a mouse may take the whole bar
    <div
      class={classNames(
        'ff-axis-bar',
        'ff-axis-moves',
        `ff-axis-moves-${bar.drawing}`,
        chosen && 'ff-axis-chosen',
      )}
      style={style}
      onPointerDown={(event) => drag.down(event, id)}
      onPointerMove={drag.move}
      onPointerUp={drag.up}
      onPointerCancel={drag.cancel}
      onContextMenu={(event) => event.preventDefault()}
    >
      {body}
      <div
        class="ff-axis-grip"
        role="slider"
        tabIndex={0}
        data-bar={id}
        aria-label={move.label}
        aria-valuemin={0}
        aria-valuemax={geometry.count - 1}
        aria-valuenow={bar.from}
        aria-valuetext={move.valueText}
        onKeyDown={(event) => drag.key(event, id)}
      >
        <svg viewBox="0 0 26 26" aria-hidden="true">
          <path class="ff-axis-grip-face" d="M1 1h24v24H1z" />
          <path d={AXIS_DRAWINGS[bar.drawing]} transform="translate(5 4)" />
        </svg>
      </div>
    </div>
  );
}

/** In a box of 16 by 17. */
export const AXIS_DRAWINGS: Readonly<Record<AxisDrawing, string>> = {
  truck: 'M.5 3.5h9v9h-9zM9.5 6.5h3.5l2.5 3v3h-6M3.5 12.5v3M12.5 12.5v3',
  tag: 'M2.5 3.5h8l3 3v9h-11zM5 8h4',
  shelf: 'M1 5h14M1 10h14M1 15h14M3 2v14M13 2v14',
  closed: 'M2.5 3.5h11v12h-11zM5 6.5l6 6M11 6.5l-6 6',
};
